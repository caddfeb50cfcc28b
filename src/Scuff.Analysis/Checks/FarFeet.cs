using Scuff.Analysis.Checks.Walks;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>Steps that are longer than the leg can be carried in their time.</summary>
public sealed class FarFeet : ICheck
{
    /// <summary>
    /// The fastest a foot is asked to go, in metres a second, straight from place to place. Somebody 1.68 m tall who walks vigorously,
    /// 130 steps a minute (from memory, Tudor-Locke), carries each foot two step lengths of 0.413 of the height
    /// (https://healthfully.com/measure-ones-step-stride-2317449.html) in the four tenths of the stride that it is off the floor (from
    /// memory): 2 × 0.413 × 1.68 / (0.4 × 2 × 60 / 130) = 3.8. A fifth more is a design value.
    /// </summary>
    public const double FastestFoot = 4.5;

    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "feet/too-far",
        Severity.Warning,
        "Count {count}: {foot} has to go {metres} m in {seconds} seconds{tempo}: take a smaller step, or give it a whole count.",
        "The foot of somebody who walks vigorously goes 3.8 m a second. What asks for a fifth more is cut short, and the line comes apart.",
        """
        Giant

        section 1
        1-2  step R back, long step L back
        3&4  long step R forward, long step L forward, long step R forward
        5-6  step L to side, step R together
        7-8  step L to side, touch R together

        track: "Downhill" by The Ferry Queue, 120 bpm, intro 32
        """,
        """
        Giant

        section 1
        1-2  step R back, step L back
        3-4  step R forward, step L together
        5-6  step R to side, step L together
        7-8  step R to side, step L together

        track: "Downhill" by The Ferry Queue, 120 bpm, intro 32
        """,
        "trade: body and floor, 1 and 3");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        if (context.Tempo is not { } tempo || context.FloorUse.FastestFoot is not { } race || context.IsDoubtful(race.At.Written.Span))
        {
            yield break;
        }

        double seconds = race.Counts.ToDouble() * 60 / tempo.CountsPerMinute.ToDouble();
        if (race.Metres / seconds > FastestFoot)
        {
            yield return TheRule
                .At(
                    race.At.Written.Span,
                    ("count", race.At.CountLabel),
                    ("foot", Words.Of(race.Foot)),
                    ("metres", Words.Tenths(race.Metres)),
                    ("seconds", Words.Hundredths(seconds)),
                    ("tempo", Words.Of(tempo)))
                .OnCount(race.At.CountLabel);
        }
    }
}
