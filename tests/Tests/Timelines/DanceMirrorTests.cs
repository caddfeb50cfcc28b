using CsCheck;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Timelines;
using static Tests.Timelines.HandMade;

namespace Tests.Timelines;

public sealed class DanceMirrorTests
{
    [Fact]
    public void Mirroring_twice_gives_the_dance_back() => AnyDance.Sample(dance => Assert.Equal(dance, DanceMirror.Mirror(DanceMirror.Mirror(dance))));

    [Fact]
    public void The_mirrored_dance_is_danced_with_the_other_foot_the_other_way_round() => AnyDance.Sample(dance =>
    {
        Dance mirrored = DanceMirror.Mirror(dance);
        Timeline here = Unroller.Unroll(dance, PlanBuilder.OneWall(dance));
        Timeline there = Unroller.Unroll(mirrored, PlanBuilder.OneWall(mirrored));

        Assert.Equal(here.Steps.Select(s => s.WeightAfter.Mirrored()), there.Steps.Select(s => s.WeightAfter));
        Assert.Equal(here.Steps.Select(s => Facing.FromEighths(-s.FacingAfter!.Value.Eighths)), there.Steps.Select(s => s.FacingAfter!.Value));
    });

    [Fact]
    public void Claims_words_and_the_ending_are_mirrored_too()
    {
        Dance dance = QuarterDance() with
        {
            Ending = EndingOf(null) with { WallFacing = Facing.FromEighths(2) },
            Interruptions = [Break(1, 4) with { Claim = new FacingClaim(Facing.FromEighths(1), Count(0), Nowhere) }],
        };

        Dance mirrored = DanceMirror.Mirror(dance);

        Assert.Equal("step L", mirrored.Parts[0].Sections[0].Lines[0].Moves[0].Words);
        Assert.Equal("9:00", mirrored.Ending!.WallFacing.ToString());
        Assert.Equal("10:30", mirrored.Interruptions[0].Claim!.Facing.ToString());
        Assert.Equal(Weight.Right, mirrored.Start);
    }
}
