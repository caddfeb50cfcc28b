using Scuff.Repertoire;

namespace Scuff.App.Memory;

/// <summary>What a class is likely to have left of a dance.</summary>
/// <param name="DanceId">The dance.</param>
/// <param name="Knowing">How well it was known last; null when nobody marked it.</param>
/// <param name="LastDanced">When it was last danced; null when it never was.</param>
/// <param name="LeftPercent">How much is likely left, 0 to 100.</param>
/// <param name="Left">The same in words: <c>likely most of it</c>.</param>
/// <param name="Due">How much it is due for revision, 0 to 100.</param>
/// <param name="Reason">Why it should be danced again, as a sentence: <c>Danced last five weeks ago and known with cues; about half is likely left.</c></param>
internal sealed record RememberedDance(string DanceId, Knowing? Knowing, DateOnly? LastDanced, int LeftPercent, string Left, int Due, string Reason);
