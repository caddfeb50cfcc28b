using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Dances;

/// <summary>One count line of a section with everything that hangs on it.</summary>
public sealed record WrittenLine
{
    /// <summary>The counts as printed (<c>3&amp;4</c>).</summary>
    public required string Label { get; init; }

    /// <summary>The counts it covers, within the section.</summary>
    public required CountSpan Counts { get; init; }

    /// <summary>The moves in order.</summary>
    public required ValueList<WrittenMove> Moves { get; init; }

    /// <summary>Facings claimed on it.</summary>
    public ValueList<FacingClaim> Claims { get; init; }

    /// <summary>Whether some of its words were taken for a remark on a move and are danced nowhere; tidying leaves such a line alone.</summary>
    public bool LeavesWordsOut { get; init; }

    /// <summary>Styling, arms and other notes.</summary>
    public ValueList<Note> Notes { get; init; }

    /// <summary>Options for counts of it.</summary>
    public ValueList<StepOption> Options { get; init; }

    /// <summary>The whole line in the text.</summary>
    public required TextSpan Span { get; init; }

    /// <summary>The label in the text.</summary>
    public TextSpan LabelSpan { get; init; }

    /// <summary>The places named by the label, in order.</summary>
    public ValueList<WrittenCount> Places { get; init; }

    /// <summary>One-based line of the text.</summary>
    public required int Number { get; init; }

    /// <summary>The actions of all its moves in order.</summary>
    public IEnumerable<WrittenStep> Steps => Moves.SelectMany(m => m.Steps);
}
