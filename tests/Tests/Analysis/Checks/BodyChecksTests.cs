using Scuff.Analysis.Checks;
using Scuff.Analysis.Loads;
using Scuff.Diagnostics;

namespace Tests.Analysis.Checks;

/// <summary>What bodies, floors and tempi allow.</summary>
public sealed class BodyChecksTests
{
    private const string Home = """
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together
        """;

    [Fact]
    public void A_dance_that_nobody_could_dance_at_200_beats_a_minute_is_told_so_with_count_and_number()
    {
        Diagnostic complaint = Only("feet/too-quick", Run(200));
        Assert.Equal(
            "Count 1: from here on there are 6.7 weight changes a second at 200 beats a minute (“Downhill”); nobody dances more than 5.",
            complaint.Message);
        Assert.Equal(("1", Severity.Warning), (complaint.Count, complaint.Severity));
    }

    // two weight changes a beat are five a second at 150 beats a minute (trade: body and floor, 3; design value)
    [Theory]
    [InlineData("advanced", 150, 0)]
    [InlineData("advanced", 151, 1)]
    public void Beyond_five_a_second_is_too_quick_for_anybody(string level, int tempo, int complaints)
        => Assert.Equal(complaints, Of("feet/too-quick", Run(tempo, level)).Length);

    // and three and a half at 105; four beats of it may be quicker below advanced, six may not
    [Theory]
    [InlineData(6, "improver", 105, 0)]
    [InlineData(6, "improver", 106, 1)]
    [InlineData(6, "advanced", 106, 0)]
    [InlineData(4, "improver", 140, 0)]
    public void Three_and_a_half_a_second_are_for_a_few_beats_below_advanced(int beats, string level, int tempo, int complaints)
    {
        string labels = string.Concat(Enumerable.Range(1, beats).Select(i => $"{i}&"));
        string feet = string.Join(", ", Enumerable.Repeat("R, L", beats));
        string rest = beats == 6 ? "7-8  step R to side, touch L together\n" : "5-6  hold, hold\n7-8  hold, hold\n";
        string text = $"Sprint\n\nlevel: {level}\n\nsection 1\n{labels}  run {feet}\n{rest}\n{Track(tempo)}";
        Assert.Equal(complaints, Of("feet/too-quick", text).Length);
    }

    [Fact]
    public void Half_time_halves_the_tempo_that_feet_have_to_keep()
        => Assert.Empty(Of("feet/too-quick", Run(200).Replace("level:", "counted: half time\nlevel:", StringComparison.Ordinal)));

    [Fact]
    public void Without_a_tempo_nothing_is_said_about_speed()
        => Assert.Empty(Of("feet/too-quick", Run(200).Replace("200 bpm, ", "", StringComparison.Ordinal)));

    [Fact]
    public void A_foot_that_has_too_far_to_go_is_named_with_way_and_time()
    {
        Diagnostic complaint = Only("feet/too-far", RuleBook.Of("feet/too-far").Breaks);

        // from a long step behind to a long step ahead of the other foot: 2 × 0.375 × 1.68 = 1.26 m in half a count at 120
        Assert.Equal(
            "Count 3&: L has to go 1.3 m in 0.25 seconds at 120 beats a minute (“Downhill”): take a smaller step, or give it a whole count.",
            complaint.Message);
    }

    [Fact]
    public void The_fastest_foot_is_a_vigorous_walkers_and_a_fifth_more()
    {
        // 130 steps a minute are vigorous (Tudor-Locke), a step 0.413 of the height (healthfully.com), off the floor for 0.4 of the stride
        const double walker = 2 * 0.413 * 1.68 / (0.4 * 2 * 60 / 130);
        Assert.InRange(FarFeet.FastestFoot, walker, walker * 1.25);
    }

    [Fact]
    public void What_travels_is_told_with_metres_way_and_place()
    {
        // eight walks of 0.275 × 1.68 m; the hips stand 0.15 of the last one behind the weighted foot
        Assert.Equal(
            "The dance travels 3.6 m forward by section 1 count 8; half a dancer's place and four steps are 2.7 m.",
            Only("floor/travels", RuleBook.Of("floor/travels").Breaks).Message);
    }

    [Fact]
    public void The_room_is_half_a_place_in_class_and_four_steps()
    {
        // 1.5 m beside and 1.8 m behind, "more when the dance travels over 4 steps one way" (trade: body and floor, 2; design values)
        Assert.Equal(0.75 + (4 * 0.275 * 1.68), FloorRoom.Of(FloorWay.Left), 6);
        Assert.Equal(0.9 + (4 * 0.275 * 1.68), FloorRoom.Of(FloorWay.Back), 6);
    }

    [Fact]
    public void A_dance_of_one_wall_that_creeps_is_told_how_far_it_gets_on_its_track()
    {
        // 3 minutes at 108 less 16 counts are 308 counts, 38 times eight
        Assert.Contains("after 38 of them", Only("floor/drifts", RuleBook.Of("floor/drifts").Breaks).Message, StringComparison.Ordinal);
        Assert.Empty(Of("floor/drifts", RuleBook.Of("floor/drifts").Breaks.Replace(", 3:00", "", StringComparison.Ordinal)));
        Assert.Empty(Of("floor/drifts", RuleBook.Of("floor/drifts").Breaks.Replace("touch L together", "pivot 1/4 left", StringComparison.Ordinal)));
    }

    // a quarter a beat for beginners and half a beat for others, over a step and its pivot (trade: body and floor, 3; design values)
    [Theory]
    [InlineData("beginner", "step R forward, pivot 1/2 left", 0)]
    [InlineData("beginner", "turn 1/4 left step R back, turn 1/2 left step L forward", 1)]
    [InlineData("improver", "turn 1/2 left step R back, turn 1/2 left step L forward", 0)]
    [InlineData("improver", "step R forward, pivot 3/4 left", 1)]
    [InlineData("advanced", "step R forward, pivot 3/4 left", 0)]
    public void Turns_are_judged_by_the_level(string level, string words, int complaints)
        => Assert.Equal(complaints, Of("turn/too-fast", $"Spin\n\nlevel: {level}\n\nsection 1\n1-2  {words}\n3-4  hold, hold\n5-8  hold, hold, hold, hold\n").Length);

    // a full turn on one count is 720 degrees a second at 120 (trade: body and floor, 3)
    [Theory]
    [InlineData(120, 0)]
    [InlineData(121, 1)]
    public void Beyond_720_degrees_a_second_is_too_fast_for_anybody(int tempo, int complaints)
    {
        Diagnostic[] found = Of("turn/too-fast", $"Spin\n\nlevel: advanced\n\nsection 1\n1-2  step R forward, full spiral turn left on R\n3-4  step L forward, step R together\n5-8  hold, hold, hold, hold\n\n{Track(tempo)}");
        Assert.Equal(complaints, found.Length);
        Assert.All(found, complaint => Assert.Equal("Count 2: full turn left on one count is fast for anybody (726 degrees a second at 121 beats a minute (“Downhill”)).", complaint.Message));
    }

    [Theory]
    [InlineData("improver", "turn 1/2 left on R", 0)]
    [InlineData("improver", "turn 3/4 left on R", 1)]
    [InlineData("intermediate", "full turn left on R", 0)]
    [InlineData("intermediate", "turn 1 1/4 left on R", 1)]
    [InlineData("advanced", "turn 1 1/4 left on R", 0)]
    public void Spins_on_one_foot_are_judged_by_the_level(string level, string words, int complaints)
        => Assert.Equal(complaints, Of("turn/on-one-foot", $"Top\n\nlevel: {level}\n\nsection 1\n1-2  step R forward, hold\n3-5  {words}\n6    step L to side\n7-8  step R together, step L in place\n").Length);

    [Fact]
    public void A_spin_that_is_too_fast_is_told_once()
        => Assert.Equal(
            ["turn/too-fast"],
            RuleBook.Complaints("Top\n\nlevel: improver\n\nsection 1\n1-2  step R forward, turn 3/4 left on R\n3-4  step L to side, step R together\n5-6  step L to side, touch R together\n7-8  hold, hold\n").Where(c => c.Severity > Severity.Hint).Select(c => c.Rule.Id));

    [Fact]
    public void An_option_without_the_turn_answers_for_dizzy_dancers()
    {
        string text = RuleBook.Of("turn/dizzy").Breaks;
        Assert.Single(Of("turn/dizzy", text));
        Assert.Empty(Of("turn/dizzy", text.Replace("7-8  step R", "      option 5-6 \"no turn\": step R forward, recover\n7-8  step R", StringComparison.Ordinal)));
    }

    [Fact]
    public void Turning_there_and_back_makes_nobody_dizzy()
        => Assert.Empty(Of("turn/dizzy", RuleBook.Of("turn/dizzy").Breaks.Replace("3-4  step R forward, pivot 1/2 left", "3-4  step L forward, pivot 1/2 right", StringComparison.Ordinal)));

    [Theory]
    [InlineData("5-6  jump forward, jump back", 1)]
    [InlineData("5-6  step R to side, step L together", 0)]
    public void Four_landings_in_eight_counts_are_enough_for_knees(string line, int complaints)
        => Assert.Equal(complaints, Of("body/knee-load", $"Hop\n\nsection 1\n1-4  jump forward, jump back, jump forward, jump back\n{line}\n7-8  step R to side, step L together\n").Length);

    private static string Track(int tempo) => $"track: \"Downhill\" by The Ferry Queue, {tempo} bpm, intro 32\n";

    private static string Run(int tempo, string level = "advanced")
        => $"Sprint\n\nlevel: {level}\n\nsection 1\n1&2&3&4& run R, L, R, L, R, L, R, L\n{Home}\n\n{Track(tempo)}";

    private static Diagnostic[] Of(string id, string text) => [.. RuleBook.Complaints(text).Where(complaint => complaint.Rule.Id == id)];

    private static Diagnostic Only(string id, string text) => Assert.Single(Of(id, text));
}
