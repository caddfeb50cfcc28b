using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>A figure that turns towards the side of its name, written with a turn the other way.</summary>
public sealed class TurnAwayFromName : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "turn/away-from-name",
        Severity.Warning,
        "Count {count}: a {figure} to the {side} turns {side}, but the sheet says {written}.",
        "A monterey, a rolling vine and a hinge turn towards the foot or side they are named by. One of the two words is the wrong one.",
        """
        Towards

        section 1
        1-4  monterey R 1/2 left
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together
        """,
        """
        Towards

        section 1
        1-4  monterey R 1/2 right
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together
        """,
        "trade rule R15");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (WrittenMove move in context.Dance.Sections.Concat(context.Dance.Tags.Select(tag => tag.Body))
            .SelectMany(section => section.Lines)
            .Where(line => !context.IsDoubtful(line.Span))
            .SelectMany(line => line.Moves))
        {
            if (move is { Definition: { } figure, Named: { } named, StatedTurn: { Sign: not 0 } turn, Steps.Count: > 0 }
                && TurnsTowardsItsName(figure)
                && turn.Sign != (named == Foot.Right ? 1 : -1))
            {
                string count = CountGrid.LabelOf(move.Steps[0].Count.Place);
                yield return TheRule
                    .At(
                        move.Span,
                        ("count", count),
                        ("figure", figure.Name),
                        ("side", named == Foot.Right ? "right" : "left"),
                        ("written", Walks.Words.Of(turn)))
                    .OnCount(count);
            }
        }
    }

    // by the table of moves itself: its right-named form turns right as a whole, and one turn carries the figure
    private static bool TurnsTowardsItsName(StepDefinition figure) => figure.TotalTurn.Sign > 0
        && figure.NamedBy is NamedBy.FirstFoot or NamedBy.Travel or NamedBy.Turn
        && figure.Rows.All(row => row.Action.Turn.Sign >= 0);
}
