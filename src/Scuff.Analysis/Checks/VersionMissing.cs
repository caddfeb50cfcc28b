using Scuff.Dances;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>Sheets that nobody can tell from an earlier or a later one.</summary>
public sealed class VersionMissing : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "sheet/version-missing",
        Severity.Hint,
        "The sheet has neither a version nor a date{others}.",
        "A corrected sheet without a version is the main cause of two rooms that dance two versions.",
        """
        Twice

        by: The demo club

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        track: "Other Oar, Other Foot" by The Market Brass of Tarbarrow, 108 bpm, intro 32
        """,
        """
        Twice

        by: The demo club
        version: 1

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        track: "Other Oar, Other Foot" by The Market Brass of Tarbarrow, 108 bpm, intro 32
        """,
        "trade rule R37");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        Dance dance = context.Dance;
        bool isMissing = Namesake.EditionOf(dance).Length == 0;
        Namesake? bare = context.Namesakes.FirstOrDefault(other => isMissing || other.Edition.Length == 0);
        if (bare is not null)
        {
            string others = isMissing
                ? $", and {bare.Name} has the same title{(bare.Edition.Length > 0 ? $" ({bare.Edition})" : "")}"
                : $": {bare.Name}, which has the same title";
            Diagnostic found = TheRule.At(dance.TitleSpan, ("others", others)) with { Severity = Severity.Warning };
            yield return isMissing ? found.WithFixes(Mend) : found;
        }
        else if (isMissing && IsReadyToGoOut(dance))
        {
            yield return TheRule.At(dance.TitleSpan, ("others", "")).WithFixes(Mend);
        }
    }

    // not unasked: only she knows which version it is
    private static Fix Mend { get; } = new("write version: 1", new DanceEdit.SetHeader("version", "1"), IsSafe: false);

    // a name to answer for it and music to dance it to: before that it is a draft
    private static bool IsReadyToGoOut(Dance dance) => dance.Tracks.Count > 0 && dance.Header.Any(field => field.Key == "by");
}
