using Scuff.Dances;

namespace Scuff.Prose.Reading;

/// <summary>The moves of one line and what was said beside them.</summary>
internal sealed record LineContent(ValueList<WrittenMove> Moves, ValueList<FacingClaim> Claims, bool Fits)
{
    /// <summary>Whether some of the words were taken for a remark and are danced nowhere.</summary>
    public bool LeavesWordsOut { get; init; }

    /// <summary>Its places, where the words know of an &amp; that the label does not have ("1-2 rock R, recover L &amp; close R"); or null.</summary>
    public IReadOnlyList<LabelPlace>? Places { get; init; }

    /// <summary>Styling words that stood among the footwork.</summary>
    public ValueList<Note> Notes { get; init; }
}
