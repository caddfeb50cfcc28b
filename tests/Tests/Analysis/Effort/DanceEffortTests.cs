using Scuff.Analysis;
using Scuff.Analysis.Effort;
using Scuff.Prose;
using Tests.House;

namespace Tests.Analysis.Effort;

/// <summary>
/// Efforts against the values of the 2011 Compendium of Physical Activities: 3.0 for slow ballroom (03040), 5.0 and 7.3 for low and high impact aerobic dance
/// (03020, 03021), 7.8 for vigorous line dancing (03031).
/// </summary>
public sealed class DanceEffortTests
{
    [Fact]
    public void A_step_on_each_count_of_a_class_of_low_impact_is_five_METs()
        => Assert.InRange(Of(125, "1-8 walk R, L, R, L, R, L, R, L"), 48, 52);

    [Fact]
    public void Slow_dances_ask_as_much_as_slow_ballroom_and_no_less()
    {
        Assert.InRange(Of(70, "1-8 walk R, L, R, L, R, L, R, L"), 30, 32);
        Assert.Equal(30, Of(60, "1-8 sway R, hold, hold, hold, sway L, hold, hold, hold"));
    }

    [Fact]
    public void Jumping_asks_more_than_walking_and_nothing_more_than_the_most_the_compendium_gives()
    {
        int walked = Of(125, "1-8 walk R, L, R, L, R, L, R, L");
        int hopped = Of(125, "1-8 walk R, L, R, hop R, walk L, R, L, hop L");

        Assert.InRange(hopped, walked + 5, 78);
        Assert.Equal(78, Of(230, "1&2&3&4& step R in place, step L in place, step R in place, step L in place, step R in place, step L in place, step R in place, step L in place"));
    }

    [Fact]
    public void Every_dance_of_the_demo_club_lies_between_slow_ballroom_and_vigorous_line_dancing()
        => Assert.All(
            Repository.Files.Where(f => f.StartsWith("demo/dances/", StringComparison.Ordinal) && f.EndsWith(".dance", StringComparison.Ordinal)),
            f => Assert.InRange(DanceEffort.Of(DanceAnalysis.Of(DanceReader.Read(Repository.Read(f)))).Tenths, 30, 78));

    private static int Of(int tempo, string line)
        => DanceEffort.Of(DanceAnalysis.Of(DanceReader.Read($"Test\n\nbpm: {tempo}\n\nsection 1\n{line}\n"))).Tenths;
}
