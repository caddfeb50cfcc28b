using Scuff.Dances;
using Scuff.Diagnostics;

namespace Tests.Analysis.Checks;

public sealed class CountChecksTests
{
    private static readonly string[] Eight =
    [
        "1-2: R step side, L step together", "3-4: R step side, L touch together",
        "5-6: L step side, R step together", "7-8: L step side, R touch together",
    ];

    [Fact]
    public void A_sound_eight_has_no_complaint()
        => Assert.Empty(new DanceBuilder().Counts(8).Section(Eight).Ids());

    [Fact]
    public void A_missing_count_is_named()
    {
        Diagnostic complaint = new DanceBuilder()
            .Section("1-2: R step side, L step together", "3&4: R step side, L step together, R step side", "5-6: L rock forward, R recover", "8: L step together")
            .Only();
        Assert.Equal("count/missing", complaint.Rule.Id);
        Assert.Equal("Section 1 has nothing on count 7: write what is danced there, or hold.", complaint.Message);
    }

    [Fact]
    public void A_section_that_stops_at_six_misses_seven_and_eight()
    {
        Diagnostic complaint = new DanceBuilder()
            .Section("1-2: R step forward, L step forward", "3&4: R step forward, L step together, R step forward", "5-6: L rock forward, R recover")
            .Report().Complaints.Single(c => c.Rule.Id == "count/missing");
        Assert.Contains("counts 7 and 8", complaint.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Missing_counts_explain_a_total_that_differs()
        => Assert.Equal(["count/missing"], new DanceBuilder().Counts(16).Section(Eight)
            .Section("1-2: R step side, L touch together", "3-4: L step side, R touch together", "5-6: R step side, L step together").Ids());

    [Fact]
    public void A_short_last_section_is_fine_when_the_heading_counts_it()
        => Assert.Empty(new DanceBuilder().Counts(12).Section(Eight).Section("1-2: R step side, L touch together", "3-4: L step side, R touch together").Ids());

    [Fact]
    public void A_short_section_is_fine_when_its_own_heading_says_so()
        => Assert.Empty(new DanceBuilder().Section(4, "1-2: R step side, L touch together", "3-4: L step side, R touch together").Section(Eight).Ids());

    [Fact]
    public void A_short_section_that_nothing_states_is_a_warning()
    {
        Diagnostic complaint = new DanceBuilder().Section("1-2: R step side, L touch together", "3-4: L step side, R touch together").Section(Eight).Only();
        Assert.Equal(("count/section-length", Severity.Warning), (complaint.Rule.Id, complaint.Severity));
    }

    [Fact]
    public void A_total_that_differs_is_mended_by_the_sum()
    {
        Diagnostic complaint = new DanceBuilder().Counts(32).Section(Eight).Section(Eight).Only();
        Assert.Equal("count/total-differs", complaint.Rule.Id);
        Fix fix = Assert.Single(complaint.Fixes);
        Assert.True(fix.IsSafe);
        Assert.Equal(new DanceEdit.SetHeader("counts", "16"), fix.Remedy);
    }

    [Fact]
    public void Eight_counts_do_not_fit_music_in_three()
        => Assert.Equal(["count/section-length"], new DanceBuilder().Counts(8).With(d => d with { BeatsPerBar = 3 }).Section(Eight).Ids());

    [Fact]
    public void Six_and_twelve_counts_fit_music_in_three()
        => Assert.Empty(new DanceBuilder().With(d => d with { BeatsPerBar = 3 })
            .Section("1-3: R step forward, L step together, R step together", "4-6: L step back, R step together, L step together")
            .Section(
                "1-3: R step forward, L step together, R step together", "4-6: L step back, R step together, L step together",
                "7-9: R step forward, L step together, R step together")
            .Section("1-3: L step forward, R step together, L step together").Ids());

    [Fact]
    public void A_count_on_two_lines_is_doubled_and_not_out_of_order()
        => Assert.Equal(["count/doubled"], new DanceBuilder().Section(
            "1-2: R step side, L step together", "3-4: R step side, L touch together",
            "4-6: L step side, R step together, L step side", "7-8: R step side, L step together").Ids());

    [Fact]
    public void Lines_that_go_back_are_out_of_order()
        => Assert.Equal(["count/out-of-order"], new DanceBuilder().Section(Eight[0], Eight[2], Eight[1], Eight[3])
            .Ids().Where(id => id.StartsWith("count/", StringComparison.Ordinal)));

    [Fact]
    public void An_and_at_an_end_and_at_the_next_start_is_written_twice()
        => Assert.Equal(["count/and-twice"], new DanceBuilder()
            .Section(
                "1-2: R step side, L step together", "3-4: R step side, L touch together", "5-6: L step side, R touch together",
                "7&8&: R dig forward, R step together, L dig forward, L step together")
            .Section("&1: R step out, L step out", "2: - hold", "3-4: R step side, L touch together", "5-6: L step side, R touch together", "7-8: R step side, L step together")
            .Ids());
}
