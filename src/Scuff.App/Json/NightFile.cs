namespace Scuff.App.Json;

/// <summary>A planned evening.</summary>
/// <param name="Id">Its name within the club.</param>
/// <param name="Title">What she calls it.</param>
/// <param name="Date">The day.</param>
/// <param name="Points">What the programme is worth.</param>
/// <param name="Bound">What no programme can exceed; equal to the points when it is proven.</param>
/// <param name="Lines">Its lines in order.</param>
/// <param name="Missed">What was asked for and is not in it, a sentence each.</param>
internal sealed record NightFile(string Id, string Title, string Date, int Points, int Bound, IReadOnlyList<NightLineRow> Lines, IReadOnlyList<string> Missed);
