using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Dances;

/// <summary>An easier (or harder) replacement for some counts of a section.</summary>
/// <param name="Name">Its level or name: "easier".</param>
/// <param name="Replaces">The counts it replaces, within the section.</param>
/// <param name="Moves">What is danced instead.</param>
/// <param name="Span">Where it is written.</param>
/// <param name="Line">One-based line of the text.</param>
public sealed record StepOption(string Name, CountSpan Replaces, ValueList<WrittenMove> Moves, TextSpan Span, int Line)
{
    /// <summary>The actions of all its moves in order.</summary>
    public IEnumerable<WrittenStep> Steps => Moves.SelectMany(m => m.Steps);

    /// <summary>The counts as printed (<c>7&amp;8</c>).</summary>
    public string Label { get; init; } = "";
}
