using Scuff.Analysis.Floor;

namespace Tests.Analysis.Floor;

/// <summary>The dancer's measures against what is published about bodies; the source of each stands beside it.</summary>
public sealed class ProportionsTests
{
    [Theory]
    [InlineData(1.75, 0.265)]
    [InlineData(1.62, 0.240)]
    public void A_foot_is_about_fifteen_hundredths_of_the_height(double height, double metres)
        => Assert.InRange(new DancerSize(height).FootLength, metres - 0.005, metres + 0.005); // ttu-ir.tdl.org/items/89c3a984, rounded to 5 mm

    [Theory]
    [InlineData(1.75, 0.085, 0.110)]
    [InlineData(1.62, 0.080, 0.100)]
    public void A_foot_is_as_broad_as_those_of_nine_adults_in_ten(double height, double least, double most)
        => Assert.InRange(new DancerSize(height).FootBreadth, least, most); // British adults, 5th to 95th centile: personal.cityu.edu.hk, dimension 31

    [Fact]
    public void A_dance_walk_is_shorter_than_a_walking_step_and_a_long_step_is_not_longer()
    {
        const double women = 0.413; // healthfully.com/measure-ones-step-stride-2317449.html
        Assert.True(Proportions.Walk < women);
        Assert.True(Proportions.Long <= women);
    }

    [Fact]
    public void Steps_lie_in_the_ranges_of_teachers()
    {
        // "small steps under the body": docsbay.net/instructions-for-ultra-beginner-class; the ranges are design values
        Assert.InRange(Proportions.Walk, 0.25, 0.30);
        Assert.InRange(Proportions.OffBeat, 0.10, 0.15);
        Assert.InRange(Proportions.Side, 0.20, 0.25);
        Assert.InRange(Proportions.Long, 0.35, 0.40);
        Assert.InRange(Proportions.Apart, 0.20, 0.25);
        Assert.InRange(Proportions.Stance, 0.05, 0.10);
    }

    [Fact]
    public void The_longest_step_is_within_the_reach_of_both_legs_with_the_hips_a_little_lower()
    {
        // leg 0.530 of the height (Drillis and Contini 1966); hips sunk by 15 % of it
        Assert.Equal(Proportions.Reach, 0.53 * Math.Sqrt(1 - (0.85 * 0.85)), 3);
        Assert.True(Proportions.Long + Proportions.Stance < 2 * Proportions.Reach);
    }
}
