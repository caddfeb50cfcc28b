using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>An option that cannot be put in place of what it replaces.</summary>
public sealed class OptionDiffers : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "option/differs",
        Severity.Error,
        "The option {option} for {counts} does not drop in: {what}.",
        "An option is for the dancer who cannot do the original and must meet the others again one count later, on the same foot and facing the same wall.",
        """
        Easier

        section 1
        1-4  rolling vine right, touch L
             option 1-4 "easier": step R to side, step L together, step R to side, step L together
        5-6  step L to side, step R together
        7-8  step L to side, touch R together
        """,
        """
        Easier

        section 1
        1-4  rolling vine right, touch L
             option 1-4 "easier": step R to side, step L together, step R to side, touch L together
        5-6  step L to side, step R together
        7-8  step L to side, touch R together
        """,
        "trade rule R38");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (Section section in context.Dance.Sections)
        {
            foreach (StepOption option in section.Lines.SelectMany(line => line.Options))
            {
                List<WrittenStep> original = [.. section.Steps.Where(step => option.Replaces.Contains(step.Count.Place))];
                List<WrittenStep> other = [.. option.Steps];
                if (original.Count == 0
                    || other.Count == 0
                    || context.IsDoubtful(option.Span)
                    || original.Concat(other).Any(step => step.Action.Kind == ActionKind.Unknown)
                    || section.Lines.Any(line => line.Counts.Overlaps(option.Replaces) && context.IsDoubtful(line.Span)))
                {
                    continue;
                }

                List<string> differences = [.. Differences(option, original, other, context.WeightBefore(section, option.Replaces.Start))];
                if (differences.Count > 0)
                {
                    yield return TheRule.At(
                        option.Span,
                        ("option", option.Name.Length == 0 ? "" : "“" + option.Name + "”"),
                        ("counts", option.Label.Length == 0 ? "these counts" : option.Label),
                        ("what", Words.Join(differences)));
                }
            }
        }
    }

    private static IEnumerable<string> Differences(StepOption option, List<WrittenStep> original, List<WrittenStep> other, Weight before)
    {
        Counts start = other[0].Count.Place;
        Counts end = other.Max(step => (step.Count.Place + step.Duration).Value) is var last ? Counts.FromRatio(last) : start;
        if (start > option.Replaces.Start || end != option.Replaces.End)
        {
            Counts length = end - Counts.Min(start, option.Replaces.Start);
            yield return "it lasts " + Words.Of(length) + " and replaces " + Words.Of(option.Replaces.Length);
        }

        if (FirstNeed(other) is { } first && before.StandingFoot() == first)
        {
            yield return "it begins with " + Words.Of(first) + ", which has the weight there";
        }

        Weight after = End(original, before);
        Weight otherAfter = End(other, before);
        if (after != Weight.Unknown && otherAfter != Weight.Unknown && after != otherAfter)
        {
            yield return "it ends with the weight on " + Words.Of(otherAfter) + " instead of " + Words.Of(after);
        }

        Turn turn = Sum(original);
        Turn otherTurn = Sum(other);
        if (!((turn.Eighths - otherTurn.Eighths) / 8).IsWhole)
        {
            yield return "it turns " + Say(otherTurn) + " instead of " + Say(turn);
        }
    }

    private static Foot? FirstNeed(List<WrittenStep> steps)
    {
        foreach (WrittenStep step in steps)
        {
            if (step.Action.Foot.ToFoot() is { } foot && step.Action.Traits.FootRule == FootRule.Free)
            {
                return foot;
            }

            if (step.Action.Effect != WeightEffect.Keeps)
            {
                return null;
            }
        }

        return null;
    }

    private static Weight End(List<WrittenStep> steps, Weight before)
        => steps.Aggregate(before, (weight, step) => step.Action.WeightAfter(weight));

    private static Turn Sum(List<WrittenStep> steps) => steps.Aggregate(Turn.None, (turn, step) => turn + step.Action.Turn);

    private static string Say(Turn turn) => turn == Turn.None ? "not at all" : Words.Of(turn);
}
