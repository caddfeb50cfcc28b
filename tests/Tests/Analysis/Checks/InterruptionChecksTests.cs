using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Tests.Analysis.Checks;

public sealed class InterruptionChecksTests
{
    private static readonly string[] Eight =
    [
        "1-2: R step side, L touch together", "3-4: L step forward, R step together",
        "5-6: L step side, R touch together", "7-8: R step side, L step together",
    ];

    private static readonly string[] Free =
    [
        "1-2: R step side, L touch together", "3-4: L step side, R touch together",
        "5&6: R step side, L step together, R step side", "7-8: L step side, R touch together",
    ];

    [Fact]
    public void A_restart_on_the_wrong_foot_offers_a_touch()
    {
        Diagnostic complaint = new DanceBuilder().Section(Eight).Break(3, 4, new InterruptionAct.Restart()).Only();
        Assert.Equal("interruption/foot-not-free", complaint.Rule.Id);
        Assert.StartsWith("The restart in wall 3 begins with R, but the weight is on R there since count 4", complaint.Message, StringComparison.Ordinal);
        DanceEdit.ChangeLastCount edit = Assert.IsType<DanceEdit.ChangeLastCount>(Assert.Single(complaint.Fixes).Remedy);
        Assert.Equal(("4", ActionKind.Touch, ActingFoot.Right), (edit.Label, edit.New.Kind, edit.New.Foot));
    }

    [Fact]
    public void A_restart_on_the_right_foot_has_no_complaint()
        => Assert.Empty(new DanceBuilder().Section(Free).Break(3, 4, new InterruptionAct.Restart()).Ids());

    [Theory]
    [InlineData("4: R touch together")]
    [InlineData("4: L touch together", "weight/gesture-not-free")]
    public void A_step_change_is_danced_by_the_free_foot(string change, params string[] ids)
    {
        Dance other = new DanceBuilder().Section(change).Dance();
        DanceBuilder dance = new DanceBuilder()
            .Section("1-2: R step side, L touch together", "3-4: L step forward, R step together", "5-6: L step side, R touch together", "7-8: R step side, L step together")
            .Break(3, 4, new InterruptionAct.Restart())
            .With(d => d with
            {
                Interruptions = [d.Interruptions[0] with
                {
                    Changes = [new ChangedCounts(new CountSpan(Counts.FromWhole(3), Counts.FromWhole(4)), other.Parts[0].Sections[0].Lines[0].Moves)],
                }],
            });
        Assert.Equal(ids, dance.Ids());
    }

    [Fact]
    public void A_restart_that_cuts_a_figure_is_told_just_that()
        => Assert.Equal(["interruption/cuts-figure"], new DanceBuilder()
            .Section(Free[0], Free[1], "5&6: (R step side, L step together, R step side)", Free[3])
            .Break(4, 5, new InterruptionAct.Restart()).Ids());

    [Theory]
    [InlineData(6, "interruption/odd-place")]
    [InlineData(4)]
    public void An_odd_place_is_a_hint(int after, params string[] ids)
        => Assert.Equal(ids, new DanceBuilder().Section(
            "1-2: R step side, L touch together", "3-4: L step side, R touch together",
            "5-6: R step side, L step together", "7-8: R step side, L step together").Break(2, after, new InterruptionAct.Restart()).Ids());

    [Fact]
    public void A_restart_without_wall_or_count_is_incomplete()
    {
        Diagnostic complaint = new DanceBuilder().Section(Free).Break([], null, new InterruptionAct.Restart()).Only();
        Assert.Equal("This does not say in which wall it happens and after which count.", complaint.Message);
    }

    [Fact]
    public void A_restart_beyond_the_wall_does_not_exist()
        => Assert.Equal(["interruption/beyond-wall"], new DanceBuilder().Section(Free).Break(2, 16, new InterruptionAct.Restart()).Ids());

    [Fact]
    public void Restarts_are_counted_by_events()
    {
        Diagnostic complaint = new DanceBuilder()
            .With(d => d with { ClaimedRestarts = new NumberClaim(1, default) })
            .Section(Free).Break([3, 6], 4, new InterruptionAct.Restart()).Only();
        Assert.Equal("interruption/restarts-differ", complaint.Rule.Id);
        Assert.Contains("2 times (walls 3 and 6)", complaint.Message, StringComparison.Ordinal);
        Assert.Equal(new DanceEdit.SetHeader("restarts", "2"), complaint.Fixes[0].Remedy);
    }

    [Fact]
    public void A_restart_after_a_tag_at_the_end_of_a_wall_is_none()
        => Assert.Empty(new DanceBuilder()
            .With(d => d with { ClaimedRestarts = new NumberClaim(0, default), ClaimedTags = new NumberClaim(1, default) })
            .Section(Free).Tag("Buoys", 4, "1-4: R sway, L sway, R sway, L sway")
            .Break(3, 8, new InterruptionAct.PlayTag("Buoys"), new InterruptionAct.Restart()).Ids());

    [Fact]
    public void A_tag_that_ends_on_the_first_foot_hands_back_the_wrong_one()
        => Assert.Equal(["tag/foot-not-free"], new DanceBuilder().Section(Free).Tag("Buoys", 4, "1-4: R sway, L sway, R sway, - hold")
            .Break(2, 8, new InterruptionAct.PlayTag("Buoys")).Ids());

    [Fact]
    public void A_tag_that_nobody_plays_yet_is_judged_too()
        => Assert.Equal(["tag/foot-not-free"], new DanceBuilder().Section(Free).Tag("Buoys", 4, "1-4: R sway, L sway, R sway, - hold").Ids());

    [Fact]
    public void A_tag_of_another_length_than_stated_is_told()
        => Assert.Equal(["tag/length-differs"], new DanceBuilder().Section(Free).Tag("Buoys", 4, "1-2: R sway, L sway")
            .Break(2, 8, new InterruptionAct.PlayTag("Buoys")).Ids());

    [Fact]
    public void A_tag_that_begins_with_the_standing_foot_is_told()
        => Assert.Equal(["interruption/foot-not-free"], new DanceBuilder().Section(Free).Tag("Ropes", 4, "1-4: L step side, R touch together, R step side, L step together")
            .Break(2, 8, new InterruptionAct.PlayTag("Ropes")).Ids());

    [Fact]
    public void A_tag_that_is_not_written_is_told()
        => Assert.Equal(["interruption/unknown-tag"], new DanceBuilder().Section(Free).Tag("Buoys", 4, "1-4: R sway, L sway, R sway, L sway")
            .Break(2, 8, new InterruptionAct.PlayTag("Nets")).Ids());

    [Theory]
    [InlineData(2, "9:00", 1)]
    [InlineData(2, "6:00", 0)]
    public void A_printed_facing_of_a_restart_is_compared(int wall, string clock, int complaints)
    {
        Facing facing = clock == "6:00" ? Facing.FromEighths(4) : Facing.FromEighths(6);
        string[] ids = new DanceBuilder()
            .Section("1-2: R step side, L touch together", "3-4: L step forward -2, R touch together", "5-6: R step side, L step together", "7-8: R step side, L step together")
            .Break(wall, 4, new InterruptionAct.Restart())
            .With(d => d with { Interruptions = [d.Interruptions[0] with { Claim = new FacingClaim(facing, Counts.FromWhole(4), default) }] })
            .Ids();
        Assert.Equal(complaints, ids.Count(id => id == "interruption/facing-differs"));
        Assert.Equal(complaints, ids.Length);
    }

    [Fact]
    public void An_option_has_to_hand_over_the_same_foot()
    {
        DanceBuilder dance = new DanceBuilder().Section(
            "1-2: R step side, L touch together", "3-4: L step side, R touch together", "5-8: R step side +2, L step side +4, R step side +2, L touch together");
        Diagnostic complaint = dance.Option("5-8: R step side, L step together, R step side, L step together")
            .Report().Complaints.Single(c => c.Rule.Id == "option/differs");
        Assert.Contains("it ends with the weight on L instead of R", complaint.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("turns", complaint.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("5-8: R step side, L step together, R step side, L touch together", "")]
    [InlineData("5-8: R step side +2, L step together, R step side, L touch together", "it turns 1/4 right instead of full turn right")]
    [InlineData("5-7: R step side, L step together, R step side", "it lasts 3 counts and replaces 4 counts")]
    [InlineData("5-8: L step side, R step together, L step side, R touch together", "it begins with L, which has the weight there")]
    public void An_option_is_compared_in_length_feet_and_turn(string option, string words)
    {
        DanceBuilder dance = new DanceBuilder().Section(
            "1-2: R step side, L touch together", "3-4: L step side, R touch together", "5-8: R step side +2, L step side +4, R step side +2, L touch together").Option(option);
        Dance made = dance.Dance();
        Section section = made.Parts[0].Sections[0];
        WrittenLine line = section.Lines[2];
        StepOption whole = line.Options[0] with { Replaces = new CountSpan(Counts.FromWhole(4), Counts.FromWhole(8)) };
        Dance fitted = made with
        {
            Parts = [made.Parts[0] with { Sections = [section with { Lines = [section.Lines[0], section.Lines[1], line with { Options = [whole] }] }] }],
        };
        Report report = Scuff.Analysis.DanceAnalysis.Of(new Draft("", fitted, Report.Empty)).Report;
        Diagnostic? complaint = report.Complaints.FirstOrDefault(c => c.Rule.Id == "option/differs");
        Assert.Equal(words.Length > 0, complaint is not null);
        if (complaint is not null)
        {
            Assert.Contains(words, complaint.Message, StringComparison.Ordinal);
        }
    }
}
