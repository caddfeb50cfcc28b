namespace Scuff.App.Json;

/// <summary>An evening in a list.</summary>
/// <param name="Id">Its name within the club.</param>
/// <param name="Title">What she calls it.</param>
/// <param name="Date">The day.</param>
/// <param name="Starts">When it begins.</param>
/// <param name="Minutes">How long it lasts.</param>
/// <param name="Place">Where.</param>
internal sealed record NightRow(string Id, string Title, string Date, string Starts, int Minutes, string Place);
