using Scuff.Analysis.Floor;
using Scuff.Stance;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Loads;

/// <summary>How much floor one repetition of a dance uses (of a phrased dance the whole sequence), in metres, for the default dancer.</summary>
public sealed record FloorUse
{
    /// <summary>The farthest the body gets from its start spot beyond what each way allows; where nothing goes too far, the farthest of all.</summary>
    public FloorReach? Farthest { get; init; }

    /// <summary>Where the body ends up: metres to the right of its start spot.</summary>
    public required double DriftRight { get; init; }

    /// <summary>Where the body ends up: metres forward of its start spot.</summary>
    public required double DriftForward { get; init; }

    /// <summary>The foot that has to go fastest, or null when nothing travels.</summary>
    public FootRace? FastestFoot { get; init; }

    /// <summary>Whether every word could be read; if not, the places are only a guess.</summary>
    public required bool IsCertain { get; init; }

    /// <summary>The use of a timeline that begins at 12:00.</summary>
    public static FloorUse Of(Timeline timeline)
    {
        FloorPath path = FloorSimulator.Simulate(timeline, DancerSize.Default);
        FloorReach? farthest = null;
        FootRace? fastest = null;
        FloorKey before = path.Start;
        Ratio time = 1;
        for (int i = 0; i < path.Keys.Count; i++)
        {
            FloorKey key = path.Keys[i];
            TimedStep step = timeline.Steps[i];
            FloorPoint way = key.Body - path.Start.Body;
            farthest = Farther(farthest, FloorWay.Right, way.X, step);
            farthest = Farther(farthest, FloorWay.Left, -way.X, step);
            farthest = Farther(farthest, FloorWay.Forward, way.Y, step);
            farthest = Farther(farthest, FloorWay.Back, -way.Y, step);

            // what stands on one count is one movement, and no foot is under way for more than a count
            if (i > 0 && step.At > timeline.Steps[i - 1].At)
            {
                time = Min(1, (step.At - timeline.Steps[i - 1].At).Value);
            }

            fastest = Faster(fastest, before, key, step, time);
            before = key;
        }

        FloorPoint drift = before.Body - path.Start.Body;
        return new FloorUse
        {
            Farthest = farthest,
            FastestFoot = fastest,
            DriftRight = drift.X,
            DriftForward = drift.Y,
            IsCertain = path.Keys.Count == 0 || before.IsCertain,
        };
    }

    private static Ratio Min(Ratio a, Ratio b) => a < b ? a : b;

    private static FloorReach? Farther(FloorReach? best, FloorWay way, double metres, TimedStep at)
        => best is null || metres - FloorRoom.Of(way) > best.Metres - FloorRoom.Of(best.Way) ? new FloorReach(way, metres, at) : best;

    // Only a foot that is carried through the air and set down is timed: what slides or swings takes its own time.
    private static FootRace? Faster(FootRace? best, FloorKey before, FloorKey key, TimedStep step, Ratio counts)
    {
        if (step.Action.Foot.ToFoot() is not { } foot || key.MotionOf(foot) != FootMotion.Travel || !key.IsCertain)
        {
            return best;
        }

        double metres = (key.Of(foot).Place - before.Of(foot).Place).Length;
        return best is null || metres / counts.ToDouble() > best.Metres / best.Counts.ToDouble() ? new FootRace(foot, metres, counts, step) : best;
    }
}
