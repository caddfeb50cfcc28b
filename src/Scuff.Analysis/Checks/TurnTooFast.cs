using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>Turns that ask more of a body than the level allows.</summary>
public sealed class TurnTooFast : ICheck
{
    // more than this on one count, or twice this in two
    private static readonly Ratio HalfTurn = 4;

    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "turn/too-fast",
        Severity.Warning,
        "Count {count}: {turn} {within} is fast for a dance below advanced{speed}.",
        "Up to half a turn a count, or a full turn in two, can be danced in control by most. Faster turns are for an advanced floor, or need an option without the turn.",
        """
        Spin

        level: improver

        section 1
        1-2  step R forward, pivot 3/4 left
        3-4  step R to side, touch L together
        5-6  step L to side, step R together
        7-8  step L to side, touch R together
        """,
        """
        Spin

        level: improver

        section 1
        1-2  step R forward, pivot 1/2 left
        3-4  step R to side, touch L together
        5-6  step L to side, step R together
        7-8  step L to side, touch R together
        """,
        "trade rule R32");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        Dance dance = context.Dance;
        if (dance.ClaimedLevel == Level.Advanced)
        {
            yield break;
        }

        Ratio? beats = dance.Tracks.FirstOrDefault(track => track.Tempo is not null)?.Tempo?.BeatsPerMinute;
        Ratio? countsPerMinute = beats is { Sign: > 0 } known && dance.BeatsPerCount.Sign > 0 ? known / dance.BeatsPerCount : null;
        foreach (Section section in dance.Sections.Concat(dance.Tags.Select(tag => tag.Body)))
        {
            WalkedStep[] steps = [.. context.StepsOf(section).Where(step => !step.IsDoubtful && step.Action.Turn.Sign != 0)];
            Counts told = Counts.FromWhole(-1);
            for (int i = 0; i < steps.Length; i++)
            {
                if (steps[i].Written.Count.Place >= told && TooMuch(steps, i, countsPerMinute) is { } found)
                {
                    told = steps[i].Written.Count.Place + Counts.FromWhole(2);
                    yield return found;
                }
            }
        }
    }

    private static Diagnostic? TooMuch(WalkedStep[] steps, int index, Ratio? countsPerMinute)
    {
        WalkedStep first = steps[index];
        Ratio lasts = first.Written.Duration.Value < 1 ? 1 : first.Written.Duration.Value;
        Ratio alone = first.Action.Turn.Amount;
        if (alone > HalfTurn * lasts)
        {
            string within = lasts == 1 ? "on one count" : "in " + Words.Of(Counts.FromRatio(lasts));
            return Tell(first, first.Action.Turn, lasts, within, countsPerMinute);
        }

        // several turns the same way within two counts
        Turn sum = Turn.None;
        Counts end = first.Written.Count.Place + Counts.FromWhole(2);
        for (int i = index; i < steps.Length && steps[i].Written.Count.Place < end; i++)
        {
            if (steps[i].Action.Turn.Sign != first.Action.Turn.Sign)
            {
                break;
            }

            sum += steps[i].Action.Turn;
        }

        return sum.Amount > HalfTurn * 2 ? Tell(first, sum, 2, "in two counts", countsPerMinute) : null;
    }

    /// <summary>Where the tempo is known, a slow one makes room: 360 degrees a second is a full turn in two counts at 120.</summary>
    private static Diagnostic? Tell(WalkedStep step, Turn turn, Ratio counts, string within, Ratio? countsPerMinute)
    {
        string speed = "";
        if (countsPerMinute is { } tempo)
        {
            Ratio degreesPerSecond = turn.Amount * 45 * tempo / (counts * 60);
            if (degreesPerSecond <= 360)
            {
                return null;
            }

            speed = " (" + Words.Of(degreesPerSecond.Floor) + " degrees a second)";
        }

        return TheRule
            .At(step.Written.Span, ("count", step.Label), ("turn", Words.Of(turn)), ("within", within), ("speed", speed))
            .OnCount(step.Label);
    }
}
