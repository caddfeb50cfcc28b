namespace Scuff.Sheets;

/// <summary>A track in words.</summary>
/// <param name="Name">Title and artist.</param>
/// <param name="Facts">Tempo, length and intro in one sentence, or empty.</param>
/// <param name="Sequence">Order of the parts on this track, or empty.</param>
/// <param name="Breaks">Where the pattern breaks on it.</param>
/// <param name="Ending">How the dance ends on it, or null for the dance's own ending.</param>
/// <param name="Notes">Other words on it.</param>
public sealed record SheetTrack(
    string Name,
    string Facts,
    ValueList<string> Sequence,
    ValueList<SheetBreak> Breaks,
    SheetBreak? Ending,
    ValueList<SheetNote> Notes);
