using Scuff.Analysis.Checks.Walks;
using Scuff.Analysis.Loads;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>Turns that ask more of a body than the level allows.</summary>
public sealed class TurnTooFast : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "turn/too-fast",
        Severity.Warning,
        "Count {count}: {turn} {within} is fast {whom}{speed}.",
        "Up to half a turn a count, or a full turn in two, can be danced in control by most. Beginners need twice that time. Faster turns are for an advanced floor, or need an option without the turn.",
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
    public IEnumerable<Diagnostic> Check(CheckContext context) => TooFast(context);

    /// <summary>Its complaints, for those checks that hold their tongue where this one speaks.</summary>
    internal static IEnumerable<Diagnostic> TooFast(CheckContext context)
    {
        Limits limits = Limits.Of(context.Dance.ClaimedLevel, context.Tempo);
        if (limits.IsUnlimited)
        {
            yield break;
        }

        foreach (Section section in context.Dance.Sections.Concat(context.Dance.Tags.Select(tag => tag.Body)))
        {
            WalkedStep[] steps = [.. context.StepsOf(section).Where(step => !step.IsDoubtful && step.Action.Turn.Sign != 0)];
            Counts told = Counts.FromWhole(-1);
            for (int i = 0; i < steps.Length; i++)
            {
                if (steps[i].Written.Count.Place >= told && TooMuch(steps, i, limits) is { } found)
                {
                    told = steps[i].Written.Count.Place + Counts.FromWhole(2);
                    yield return found;
                }
            }
        }
    }

    private static Diagnostic? TooMuch(WalkedStep[] steps, int index, Limits limits)
    {
        WalkedStep first = steps[index];
        Ratio lasts = first.Written.Duration.Value < 1 ? 1 : first.Written.Duration.Value;
        Ratio alone = first.Action.Turn.Amount;
        if (alone > limits.InOne * lasts)
        {
            string within = lasts == 1 ? "on one count" : "in " + Words.Of(Counts.FromRatio(lasts));
            return Tell(first, first.Action.Turn, lasts, within, limits.DegreesInOne, limits);
        }

        if (lasts > 2)
        {
            return null;
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

        return sum.Amount > limits.InTwo ? Tell(first, sum, 2, "in two counts", limits.DegreesInTwo, limits) : null;
    }

    /// <summary>Where the tempo is known, a slow one makes room.</summary>
    private static Diagnostic? Tell(WalkedStep step, Turn turn, Ratio counts, string within, int degrees, Limits limits)
    {
        string speed = "";
        if (limits.Tempo is { } tempo)
        {
            Ratio degreesPerSecond = tempo.PerSecond(turn.Amount * 45, counts);
            if (degreesPerSecond <= degrees)
            {
                return null;
            }

            speed = $" ({Words.Of(degreesPerSecond.Floor)} degrees a second{Words.Of(tempo)})";
        }

        return TheRule
            .At(step.Written.Span, ("count", step.Label), ("turn", Words.Of(turn)), ("within", within), ("whom", limits.Whom), ("speed", speed))
            .OnCount(step.Label);
    }

    /// <summary>
    /// How much turn a level allows: beginners a quarter a beat, taken over a step and its pivot; others half a beat; advanced dancers a
    /// full turn on one count (trade: body and floor, 3; design values). In degrees a second that is at 120 counts a minute.
    /// </summary>
    /// <param name="InOne">Most on one count, in eighths.</param>
    /// <param name="InTwo">Most within two counts, in eighths.</param>
    /// <param name="DegreesInOne">Most degrees a second on one count.</param>
    /// <param name="DegreesInTwo">Most degrees a second over two counts.</param>
    /// <param name="Whom">For whom.</param>
    /// <param name="Tempo">The tempo, or null.</param>
    private sealed record Limits(Ratio InOne, Ratio InTwo, int DegreesInOne, int DegreesInTwo, string Whom, DancedTempo? Tempo)
    {
        /// <summary>Without a tempo an advanced dance may ask for anything.</summary>
        public bool IsUnlimited => DegreesInOne > 360 && Tempo is null;

        public static Limits Of(Level? level, DancedTempo? tempo) => level switch
        {
            Level.AbsoluteBeginner or Level.Beginner => new Limits(4, 4, 360, 180, "for beginners", tempo),
            Level.Advanced => new Limits(4, 8, 720, 720, "for anybody", tempo),
            _ => new Limits(4, 8, 360, 360, "for a dance below advanced", tempo),
        };
    }
}
