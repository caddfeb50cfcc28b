using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>A tag or restart in the middle of a figure.</summary>
public sealed class InterruptionCutsFigure : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "interruption/cuts-figure",
        Severity.Error,
        "After {after} the dance is left in the middle of {figure}: move the place to a count where the figure ends.",
        "Feet cannot stop between 1 and &: dancers finish the figure and come late into the first count.",
        """
        Cut

        section 1
        1-2  step R to side, step L together
        3&4  shuffle R forward
        5-6  rock L forward, recover
        7-8  step L back, touch R together

        wall 2: after 3 restart
        """,
        """
        Cut

        section 1
        1-2  step R to side, step L together
        3&4  shuffle R forward
        5-6  rock L forward, recover
        7-8  step L back, touch R together

        wall 2: after 4 restart, with count 4: touch R forward
        """,
        "trade rule R22");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (Interruption interruption in context.Interruptions)
        {
            if (CutPlace.Of(context, interruption) is not { } cut)
            {
                continue;
            }

            bool withinABeat = cut.CutsWithinABeat(context);
            if (!withinABeat && (IsUsual(context.Dance, interruption) || cut.CutMove is null))
            {
                continue;
            }

            Diagnostic complaint = TheRule
                .At(interruption.Span, ("after", Words.Of(interruption.AfterCounts!.Value)), ("figure", Figure(cut)))
                .OnCount(cut.Place.IsWhole ? Words.Of(cut.Place.Value.Floor) : CountGrid.LabelOf(cut.Place));
            if (cut.CutMove is { } move)
            {
                complaint = complaint.WithRelated(move.Span, "this figure is cut");
            }

            // a figure of whole counts can be left, though hardly anybody means to
            yield return withinABeat ? complaint : complaint with { Severity = Severity.Warning };
        }
    }

    /// <summary>Whether the interruption cuts a figure, so that its place has to move before anything else about it matters.</summary>
    internal static bool Concerns(CheckContext context, Interruption interruption)
        => CutPlace.Of(context, interruption) is { } cut && cut.CutsWithinABeat(context);

    /// <summary>Whether the place is a usual one: a multiple of four counts, or of a bar in 3/4.</summary>
    internal static bool IsUsual(Dance dance, Interruption interruption)
        => interruption.AfterCounts is not { } after || (after.Value / (dance.BeatsPerBar == 3 ? 3 : 4)).IsWhole;

    private static string Figure(CutPlace cut) => cut.CutMove switch
    {
        { Definition.Name: { Length: > 0 } name } => "the " + name,
        { Words: { Length: > 0 } words } => words,
        _ => "a count",
    };
}
