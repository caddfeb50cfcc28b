using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>Spins on one foot that ask too much of the level.</summary>
public sealed class OneFootTurn : ICheck
{
    private static readonly Ratio HalfTurn = 4;
    private static readonly Ratio FullTurn = 8;

    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "turn/on-one-foot",
        Severity.Warning,
        "Count {count}: {turn} on one foot is more than {level} should ask for; half a turn is enough below intermediate, a full turn below advanced.",
        "There is nothing to hold on to. Balance goes first with tired legs, and an ankle pays for it; two steps make the same turn safely.",
        """
        Top

        level: improver

        section 1
        1-2  step R forward, hold
        3-4  turn 3/4 left on R
        5-6  step L to side, step R together
        7-8  step L to side, touch R together
        """,
        """
        Top

        level: improver

        section 1
        1-2  step R forward, hold
        3-4  turn 1/2 left on R
        5-6  step L to side, step R together
        7-8  step L to side, touch R together
        """,
        "trade: body and floor, 3 and 6 (design value)");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        Level? level = context.Dance.ClaimedLevel;
        if (level == Level.Advanced
            || context.Load.TurnOnOneFoot is not { } peak
            || peak.Amount <= (level is < Level.Intermediate ? HalfTurn : FullTurn)
            || context.IsDoubtful(peak.At.Written.Span)
            || TurnTooFast.TooFast(context).Any(other => other.Span == peak.At.Written.Span))
        {
            yield break;
        }

        string whom = level is { } claimed ? "a dance for " + Levels.LevelPhrases.Name(claimed) + " level" : "a dance below advanced";
        yield return TheRule
            .At(peak.At.Written.Span, ("count", peak.At.CountLabel), ("turn", Words.Turns(peak.Amount) + (peak.Amount == FullTurn ? " full turn" : " turns")), ("level", whom))
            .OnCount(peak.At.CountLabel);
    }
}
