namespace Scuff.App.Json;

/// <summary>A line of a planned evening.</summary>
/// <param name="At">When it begins, by the clock.</param>
/// <param name="Kind">What its stretch is for.</param>
/// <param name="Id">The dance; empty for a rest.</param>
/// <param name="Title">Its title.</param>
/// <param name="OtherId">The dance on the other side of a split floor; empty for none.</param>
/// <param name="OtherTitle">The title of that one.</param>
/// <param name="Song">The song; empty for a lesson or a rest.</param>
/// <param name="FloorPercent">How much of the floor can dance it.</param>
/// <param name="Mets">What it asks of a body, in METs.</param>
/// <param name="Why">Why it stands there, a sentence each.</param>
internal sealed record NightLineRow(
    string At, string Kind, string Id, string Title, string OtherId, string OtherTitle, string Song, int FloorPercent, double Mets, IReadOnlyList<string> Why);
