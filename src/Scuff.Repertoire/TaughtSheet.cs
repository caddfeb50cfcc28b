namespace Scuff.Repertoire;

/// <summary>Which version of a dance a class was taught, beside the one there is now. Equal by value.</summary>
/// <param name="DanceId">The dance; not in the bin.</param>
/// <param name="Title">Its title now.</param>
/// <param name="TaughtOn">The day on which it was last taught or revised from a known version.</param>
/// <param name="Revision">The revision of that day.</param>
/// <param name="PresentRevision">The revision there is now.</param>
/// <param name="IsNewer">Whether the text is another now.</param>
/// <param name="FeetChanged">
/// Whether feet do something else now; false when only words are new; null when that cannot be said because the steps of one of the two were not
/// read, or not by the same program yet (<see cref="ClubDances.RefreshFacts"/>).
/// </param>
public sealed record TaughtSheet(
    string DanceId, string Title, DateOnly TaughtOn, int Revision, int PresentRevision, bool IsNewer, bool? FeetChanged);
