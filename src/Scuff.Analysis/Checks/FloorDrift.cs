using Scuff.Analysis.Checks.Walks;
using Scuff.Analysis.Loads;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>
/// One-wall dances that end a little further on each time: with more walls the turn brings the floor back. A track with its length
/// tells how often the dance is danced; without one nothing is said.
/// </summary>
public sealed class FloorDrift : ICheck
{
    // more than any track holds: a slip of the fingers in its length proves nothing
    private const int MostRepetitions = 99;

    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "floor/drifts",
        Severity.Hint,
        "Each repetition ends {each} m further {way}: after {times} of them the floor has moved {metres} m.",
        "A dance that faces one wall all the time does not come back by itself: the whole floor creeps until somebody stands against the wall.",
        """
        Creep

        section 1
        1-2  walk R, walk L
        3-4  step R to side, touch L together
        5-6  step L to side, step R together
        7-8  step L in place, touch R together

        track: "Beam and Bearing" by The Slipway Six, 108 bpm, intro 16, 3:00
        """,
        """
        Creep

        section 1
        1-2  walk R, walk L
        3-4  step R to side, touch L together
        5-6  step L to side, touch R together
        7-8  walk back R, walk back L

        track: "Beam and Bearing" by The Slipway Six, 108 bpm, intro 16, 3:00
        """,
        "trade rule R33");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        Dance dance = context.Dance;
        int times = Repetitions(dance);
        if (times == 0 || context.Walls != 1 || !context.FloorUse.IsCertain || context.Weights.Count > 0 || FloorTravel.TooFar(context) is not null)
        {
            yield break;
        }

        (FloorWay way, double each) = Farther(
            Signed(context.FloorUse.DriftRight, FloorWay.Right, FloorWay.Left),
            Signed(context.FloorUse.DriftForward, FloorWay.Forward, FloorWay.Back));
        if (each * times > FloorRoom.Of(way))
        {
            yield return TheRule.At(
                dance.TitleSpan,
                ("each", Words.Hundredths(each)),
                ("way", Words.Of(way)),
                ("times", Words.Of(times)),
                ("metres", Words.Tenths(each * times)));
        }
    }

    private static (FloorWay Way, double Metres) Signed(double metres, FloorWay way, FloorWay other)
        => metres >= 0 ? (way, metres) : (other, -metres);

    private static (FloorWay Way, double Metres) Farther((FloorWay Way, double Metres) a, (FloorWay Way, double Metres) b)
        => a.Metres >= b.Metres ? a : b;

    /// <summary>How often it is danced on the track that holds most of it; zero when no track tells.</summary>
    private static int Repetitions(Dance dance)
    {
        double most = 0;
        foreach (Track track in dance.Tracks)
        {
            if (dance.Length > Counts.Zero && track is { Tempo: { } tempo, LengthSeconds: { } length } && DancedTempo.IsBelievable(tempo.BeatsPerMinute))
            {
                double counts = length.ToDouble() / 60 * tempo.BeatsPerMinute.ToDouble() / dance.BeatsPerCount.ToDouble();
                most = Math.Max(most, (counts - (track.Intro ?? Counts.Zero).Value.ToDouble()) / dance.Length.Value.ToDouble());
            }
        }

        return (int)Math.Clamp(most, 0, MostRepetitions);
    }
}
