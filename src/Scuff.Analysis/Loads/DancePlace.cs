using System.Globalization;
using Scuff.Diagnostics;
using Scuff.Timelines;

namespace Scuff.Analysis.Loads;

/// <summary>A place of a dance as a teacher would name it.</summary>
/// <param name="Part">The part of a phrased dance, or empty.</param>
/// <param name="Section">Number of the section in its part; zero in a tag.</param>
/// <param name="Tag">Name of the tag, or empty outside tags.</param>
/// <param name="Count">The count as printed (<c>3&amp;</c>, a pick-up <c>&amp;1</c>).</param>
/// <param name="Span">The words there.</param>
/// <param name="Line">One-based line of the text.</param>
public sealed record DancePlace(string Part, int Section, string Tag, string Count, TextSpan Span, int Line)
{
    /// <summary>The place in English: <c>section 3 count 4</c>.</summary>
    public string Words => Section == 0
        ? $"tag {Tag} count {Count}".Replace("  ", " ", StringComparison.Ordinal)
        : string.Create(CultureInfo.InvariantCulture, $"{(Part.Length > 0 ? $"part {Part} " : "")}section {Section} count {Count}");

    /// <summary>The place of an action.</summary>
    public static DancePlace Of(TimedStep step, Timeline timeline)
    {
        PlanStretch plan = timeline.Stretches[step.Stretch].Plan;
        bool isTag = plan.Kind == StretchKind.Tag;

        // a pick-up stands before count 1 and is printed with it
        string count = step.CountLabel.StartsWith('0') ? step.CountLabel[1..] + "1" : step.CountLabel;
        return new DancePlace(isTag ? "" : plan.Name, isTag ? 0 : step.Section.Number, isTag ? plan.Name : "", count, step.Written.Span, step.Written.Line);
    }
}
