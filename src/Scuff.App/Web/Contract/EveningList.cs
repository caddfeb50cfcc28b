namespace Scuff.App.Web.Contract;

/// <summary>The evenings.</summary>
/// <param name="Today">The day it is, as <c>2026-11-29</c>.</param>
/// <param name="Rows">Those to come, the next first, then those that were, the last first: a page.</param>
/// <param name="Total">How many there are in all.</param>
internal sealed record EveningList(string Today, IReadOnlyList<EveningHead> Rows, int Total);

/// <summary>An evening in a list.</summary>
/// <param name="Id">Its name in addresses.</param>
/// <param name="Title">What she calls it.</param>
/// <param name="Date">The day, as <c>2026-12-05</c>.</param>
/// <param name="Starts">When it begins, as <c>19:30</c>.</param>
/// <param name="Minutes">How long it lasts.</param>
/// <param name="Place">Where, or empty.</param>
/// <param name="Words">When and where, in one line.</param>
/// <param name="IsPast">Whether its day is over.</param>
internal sealed record EveningHead(string Id, string Title, string Date, string Starts, int Minutes, string Place, string Words, bool IsPast);
