using Scuff.Analysis.Floor;
using Scuff.Stance;
using Scuff.Timelines;

namespace Tests.Prose;

/// <summary>What holds of every dance as danced.</summary>
internal static class DancedLaws
{
    /// <summary>Weight is on one foot or both, each action begins where the last one ended, and the turns add up to the facing.</summary>
    public static void AssertHeld(Timeline timeline)
    {
        Turn turned = Turn.None;
        for (int i = 0; i < timeline.Steps.Count; i++)
        {
            TimedStep step = timeline.Steps[i];
            turned += step.Action.Turn;
            Assert.NotEqual(Weight.Unknown, step.WeightBefore);
            Assert.NotEqual(Weight.Unknown, step.WeightAfter);
            Assert.Equal(Facing.Front + turned, step.FacingAfter);
            if (i > 0)
            {
                Assert.Equal(timeline.Steps[i - 1].WeightAfter, step.WeightBefore);
                Assert.Equal(timeline.Steps[i - 1].FacingAfter, step.FacingBefore);
                Assert.True(timeline.Steps[i - 1].At <= step.At);
            }
        }

        Assert.Equal(Facing.Front + turned, timeline.FacingAfter);
    }

    /// <summary>After all its walls the dancer stands where the dance began, and faces the front.</summary>
    public static void AssertComesHome(Timeline timeline)
    {
        FloorPath path = FloorSimulator.Simulate(timeline, DancerSize.Default);
        FloorKey end = path.Keys[^1];

        Assert.Equal(Facing.Front, timeline.FacingAfter);
        Assert.Equal(0, end.Body.X - path.Start.Body.X, 6);
        Assert.Equal(0, end.Body.Y - path.Start.Body.Y, 6);
    }
}
