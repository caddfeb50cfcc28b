using CsCheck;
using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Timing;

namespace Tests.Analysis.Checks;

public sealed class FacingChecksTests
{
    // Clock face and eighths: club training page on the clock (linedance-hamm.de, 2022, "Wissenswertes über das Line Dance Training"):
    // 12:00 ahead at the start, 3:00 to the right, 6:00 behind, 9:00 to the left; clockwise is right.
    [Theory]
    [InlineData("12:00", 2, "3:00")]
    [InlineData("12:00", -2, "9:00")]
    [InlineData("3:00", 4, "9:00")]
    [InlineData("9:00", 2, "12:00")]
    [InlineData("6:00", -1, "4:30")]
    [InlineData("10:30", 3, "3:00")]
    [InlineData("1:30", -8, "1:30")]
    [InlineData("12:00", 10, "3:00")]
    public void A_turn_moves_the_facing_round_the_clock(string from, int eighths, string to)
        => Assert.Equal(to, (Clock(from) + Turn.FromEighths(eighths)).ToString());

    [Fact]
    public void Facing_is_the_sum_of_the_turns_modulo_eight() => Gen.Int[-12, 12].Array[0, 20].Sample(turns =>
    {
        Facing facing = turns.Aggregate(Facing.Front, (at, turn) => at + Turn.FromEighths(turn));
        int expected = ((turns.Sum() % 8) + 8) % 8;
        Assert.Equal(expected, facing.Eighths.Numerator);
        Assert.True(facing.Eighths.IsWhole);
    });

    // Walls by the net turn: line dancing terms (midlandmavericks.com): two-wall dances use front and back, a four-wall dance turns a
    // quarter each time; independent of the rule in the code by dancing repetitions and counting the walls that are faced.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(-6)]
    [InlineData(12)]
    public void The_number_of_walls_is_the_number_of_facings_the_starts_have(int eighths)
    {
        HashSet<Facing> starts = [];
        Facing facing = Facing.Front;
        while (starts.Add(facing))
        {
            facing += Turn.FromEighths(eighths);
        }

        Assert.Equal(starts.Count, DanceAnalysis.WallsOf(Turn.FromEighths(eighths)));
    }

    // Swing: & is the third of three equal parts of the beat when the long is twice the short (the triplet definition of swung eighths).
    [Theory]
    [InlineData(1, 1, 1, 2)]
    [InlineData(2, 1, 2, 3)]
    [InlineData(3, 1, 3, 4)]
    [InlineData(3, 2, 3, 5)]
    public void A_swung_and_stands_where_the_long_part_ends(int longPart, int shortPart, int numerator, int denominator)
    {
        Counts performed = CountGrid.Performed(Counts.FromWhole(4) + Counts.Half, new Ratio(longPart, shortPart));
        Assert.Equal(Counts.FromWhole(4) + Counts.FromRatio(new Ratio(numerator, denominator)), performed);
        Assert.Equal(new Ratio(longPart, shortPart), new Ratio(numerator, denominator) / (1 - new Ratio(numerator, denominator)));
    }

    [Fact]
    public void A_false_facing_is_mended_by_the_computed_one()
    {
        Diagnostic complaint = Turning("5-6: R step forward, L pivot takes -2 [3:00]").Only();
        Assert.Equal("facing/claim-differs", complaint.Rule.Id);
        Assert.Equal(Clock("9:00"), Assert.IsType<DanceEdit.SetFacing>(Assert.Single(complaint.Fixes).Remedy).Facing);
        Assert.True(complaint.Fixes[0].IsSafe);
    }

    [Fact]
    public void A_true_facing_has_no_complaint() => Assert.Empty(Turning("5-6: R step forward, L pivot takes -2 [9:00]").Ids());

    [Fact]
    public void A_row_of_facings_off_by_one_turn_is_one_complaint()
    {
        Diagnostic complaint = new DanceBuilder().Section(
            "1-2: R step forward, L pivot takes -2 [6:00]", "3-4: R step forward, L pivot takes -2 [3:00]",
            "5-6: R step side, L step together [3:00]", "7-8: R step side, L step together [3:00]").Only();
        Assert.Equal(3, complaint.Related.Count);
        Assert.False(complaint.Fixes[0].IsSafe);
    }

    [Fact]
    public void Two_different_false_facings_are_two_complaints()
        => Assert.Equal(["facing/claim-differs", "facing/claim-differs"], new DanceBuilder().Section(
            "1-2: R step side, L step together [3:00]", "3-4: R step side, L step together [6:00]",
            "5-6: R step side, L step together [12:00]", "7-8: R step side, L step together").Ids());

    [Fact]
    public void After_unknown_words_a_printed_facing_is_believed()
        => Assert.Equal(["facing/claim-differs"], new DanceBuilder().Section(
            "1-2: - unknown, - hold", "3-4: R step side, L step together [6:00]",
            "5-6: R step side, L step together [6:00]", "7-8: R step side, L step together [9:00]").Ids());

    [Fact]
    public void Half_left_and_two_quarters_right_make_one_wall()
    {
        Diagnostic complaint = new DanceBuilder().Walls(4).Section(
            "1-2: R step forward, L pivot takes -4", "3-4: R step side +2, L step together", "5-6: R step side +2, L step together", "7-8: R step side, L step together").Only();
        Assert.Equal("The heading says 4 walls, but the turns of one repetition add up to nothing, which makes 1 wall.", complaint.Message);
        Assert.Equal(new DanceEdit.SetHeader("walls", "1"), Assert.Single(complaint.Fixes).Remedy);
    }

    [Fact]
    public void A_last_facing_that_agrees_with_the_walls_shares_their_fault()
        => Assert.Equal(["facing/claim-differs"], new DanceBuilder().Walls(4).Section(
            "1-2: R step side, L step together", "3-4: R step side, L step together", "5-6: R step side, L step together", "7-8: R step side, L step together [3:00]").Ids());

    [Theory]
    [InlineData("R step forward, L pivot takes +4", "turn/pivot-direction")]
    [InlineData("R step forward, L pivot takes -4")]
    [InlineData("R step back, L pivot takes +4")]
    [InlineData("R step forward, R turn +4")]
    [InlineData("R step forward, R turn +6", "turn/too-fast")]
    [InlineData("R step forward -8, L step together", "turn/too-fast")]
    [InlineData("R step forward -4, L step together -4")]
    public void Turns_are_judged_by_direction_and_speed(string moves, params string[] ids)
        => Assert.Equal(ids, new DanceBuilder().Section(
            "1-2: " + moves, "3-4: B jump, R step side", "5-6: L step side, R step together", "7-8: L step side, R touch together").Ids());

    [Fact]
    public void More_than_a_full_turn_in_two_counts_is_fast()
        => Assert.Equal(["turn/too-fast"], new DanceBuilder().Section(
            "1&2: R step forward +4, L step together +4, R step forward +2", "3-4: L step side, R touch together",
            "5-6: R step side, L step together", "7-8: R step side, L step together").Ids());

    [Fact]
    public void An_advanced_floor_may_spin()
        => Assert.Empty(new DanceBuilder().With(d => d with { ClaimedLevel = Level.Advanced }).Section(
            "1-2: R step forward -8, L step together", "3-4: R step side, L touch together", "5-6: L step side, R step together", "7-8: L step side, R touch together").Ids());

    [Theory]
    [InlineData(76, 0)]
    [InlineData(120, 1)]
    public void A_slow_track_gives_time_to_turn(int beats, int complaints)
        => Assert.Equal(complaints, new DanceBuilder().With(d => d with
        {
            Tracks = [new Track { Title = "Fog Bell", Tempo = new Tempo(beats), Intro = Counts.FromWhole(16), Span = default, Line = 1 }],
        }).Section("1-2: R step forward, R turn -6", "3-4: L step side, R touch together", "5-6: R step side, L step together", "7-8: R step side, L step together").Ids().Length);

    [Theory]
    [InlineData("R touch lock-behind, R step lock-front", "feet/impossible-cross")]
    [InlineData("R step lock-behind, L step right", "feet/impossible-cross")]
    [InlineData("R step cross-front, L step side")]
    [InlineData("R step lock-behind, L step forward")]
    [InlineData("R touch cross-behind, R step side")]
    public void Legs_have_to_uncross(string moves, params string[] ids)
        => Assert.Equal(ids, new DanceBuilder().Section(
            "1-2: " + moves, "3-4: B jump, R step side", "5-6: L step side, R step together", "7-8: L step side, R touch together").Ids());

    private static DanceBuilder Turning(string line) => new DanceBuilder().Section(
        "1-2: R step side, L step together", "3-4: R step side, L step together", line, "7-8: R step side, L step together");

    private static Facing Clock(string words)
    {
        string[] parts = words.Split(':');
        return Facing.FromClock(int.Parse(parts[0], System.Globalization.CultureInfo.InvariantCulture), int.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture))!.Value;
    }
}
