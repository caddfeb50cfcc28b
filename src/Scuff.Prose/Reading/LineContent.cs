using Scuff.Dances;

namespace Scuff.Prose.Reading;

/// <summary>The moves of one line and what was said beside them.</summary>
internal sealed record LineContent(ValueList<WrittenMove> Moves, ValueList<FacingClaim> Claims, bool Fits)
{
    /// <summary>Styling words that stood among the footwork.</summary>
    public ValueList<Note> Notes { get; init; }
}
