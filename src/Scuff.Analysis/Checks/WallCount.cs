using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;

namespace Scuff.Analysis.Checks;

/// <summary>The heading's walls against the net turn.</summary>
public sealed class WallCount : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "facing/walls-differ",
        Severity.Error,
        "The heading says {claimed}, but the turns of one repetition add up to {turn}, which makes {walls}.",
        "The net turn decides the walls: none makes one wall, a half two, a quarter four, an eighth eight. A wrong number usually means a turn that was not meant.",
        """
        Walls

        walls: 4

        section 1
        1-2  step R forward, pivot 1/2 left
        3-4  turn 1/4 right step R to side, touch L together
        5-6  turn 1/4 right step L to side, touch R together
        7-8  step R to side, step L together
        """,
        """
        Walls

        walls: 1

        section 1
        1-2  step R forward, pivot 1/2 left
        3-4  turn 1/4 right step R to side, touch L together
        5-6  turn 1/4 right step L to side, touch R together
        7-8  step R to side, step L together
        """,
        "trade rule R12");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        if (context.Dance.IsPhrased
            || context.Dance.ClaimedWalls is not { } claim
            || context.NetTurn is not { } turn
            || context.Walls is not { } walls
            || claim.Value == walls)
        {
            yield break;
        }

        // one cause, one complaint: a last printed facing that is off by as much as the walls is told where it stands
        if (context.Facings.Open is { } open && DanceAnalysis.WallsOf(turn + open.Offset) == claim.Value)
        {
            yield break;
        }

        string value = Words.Of(walls);
        yield return TheRule
            .At(claim.Span, ("claimed", Walls(claim.Value)), ("turn", turn == Turn.None ? "nothing" : Words.Of(turn)), ("walls", Walls(walls)))
            .WithFixes(new Fix("write walls: " + value, new DanceEdit.SetHeader("walls", value), IsSafe: true));
    }

    private static string Walls(int number) => number == 1 ? "1 wall" : Words.Of(number) + " walls";
}
