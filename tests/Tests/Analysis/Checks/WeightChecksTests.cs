using Scuff;
using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Tests.Analysis.Checks;

public sealed class WeightChecksTests
{
    // brings any dance of eight counts home: L is free before it and R after it
    private const string End = "5-6: L step side, R step together";
    private const string Last = "7-8: L step side, R touch together";

    [Theory]
    [InlineData("R step side, L step together", "L step side, R step together", "weight/foot-not-free")]
    [InlineData("R step side, L touch together", "R kick forward, R kick forward", "weight/gesture-not-free")]
    [InlineData("R dig forward, L dig forward", "R touch back, R step together", "weight/switch-needs-step")]
    [InlineData("R step side, L hitch", "L hop, R step together", "weight/foot-not-standing")]
    [InlineData("R stomp together, R kick forward", "R step together, L touch together", "weight/stomp-unclear")]
    [InlineData("R step side, L drag together", "R step side, L touch together", "weight/close-unclear")]
    [InlineData("R sway side, L sway side", "L step side, R step together", "weight/close-unclear")]
    [InlineData("R step cross-front, - unwind -4", "R step side, L touch together", "weight/end-unstated")]
    [InlineData("B jump out, B jump in", "R step forward unnamed, L touch together", "weight/foot-unnamed-on-both")]
    public void One_fault_has_one_complaint(string first, string second, params string[] ids)
        => Assert.Equal(ids, new DanceBuilder().Section("1-2: " + first, "3-4: " + second, End, Last).Ids());

    [Theory]
    [InlineData("R step side, L step together", "R step side, L touch together")]
    [InlineData("R step side, L hitch", "R hop, L touch")]
    [InlineData("R stomp together, L kick forward", "L step together, R step together")]
    [InlineData("R stomp together keeps, R kick forward", "R step together, L touch together")]
    [InlineData("R touch forward, R drop", "L touch forward, L drop")]
    [InlineData("R press forward, L recover", "R step together, L touch together")]
    [InlineData("R rock back, L recover", "R step forward, L pivot takes -4")]
    [InlineData("B jump out, B jump in", "R step forward, L touch together")]
    [InlineData("B split-heels, B split-heels", "R step forward, L touch together")]
    [InlineData("R step cross-front, - unwind -4 stated", "L touch back, L kick forward")]
    [InlineData("R fan-toe, L fan-toe", "R step side, L touch together")]
    [InlineData("R sway side, L sway side", "R step side, L touch together")]
    [InlineData("R step side, L drag together", "L step side, R step together")]
    [InlineData("- unknown, - hold", "L step side, R step together")]
    public void What_can_be_danced_has_no_complaint(string first, string second)
        => Assert.Empty(new DanceBuilder().Section("1-2: " + first, "3-4: " + second, "5-8: B jump shares, L step side, R step side, L step together").Ids());

    [Fact]
    public void A_recover_onto_the_foot_that_rocked_is_a_fault()
        => Assert.Equal(["weight/foot-not-free"], new DanceBuilder().Section("1-2: R rock forward, R recover", "3-4: L step together, R step together", End, Last).Ids());

    [Fact]
    public void A_foot_not_free_offers_the_touch_before_it()
    {
        Diagnostic complaint = new DanceBuilder()
            .Section("1-2: R step side, L step together", "3-4: L step side, R touch together", "5-6: R step side, L touch together", Last).Only();
        Assert.Equal("Count 3: L cannot step to side, because the weight is on L since count 2.", complaint.Message);
        DanceEdit.ReplaceStep first = Assert.IsType<DanceEdit.ReplaceStep>(complaint.Fixes[0].Remedy);
        Assert.Equal("2", CountGrid.LabelOf(first.Old.Count.Place));
        Assert.Equal((ActionKind.Touch, WeightEffect.Keeps, ActingFoot.Left), (first.New.Kind, first.New.Effect, first.New.Foot));
        Assert.False(complaint.Fixes[0].IsSafe);
    }

    [Fact]
    public void A_gesture_by_the_wrong_foot_offers_the_other()
    {
        Diagnostic complaint = new DanceBuilder()
            .Section("1-2: R step side, L touch together", "3-4: R kick forward, L touch together", End, Last).Only();
        DanceEdit.ReplaceStep edit = Assert.IsType<DanceEdit.ReplaceStep>(Assert.Single(complaint.Fixes).Remedy);
        Assert.Equal(ActingFoot.Left, edit.New.Foot);
    }

    [Fact]
    public void A_missing_and_between_heels_is_offered()
    {
        Diagnostic complaint = new DanceBuilder()
            .Section("1-2: R dig forward, L dig forward", "3-4: L step together, R touch together", "5-6: R step side, L touch together", Last).Only();
        DanceEdit.AddStep edit = Assert.IsType<DanceEdit.AddStep>(Assert.Single(complaint.Fixes).Remedy);
        Assert.Equal(("&", ActingFoot.Right, ActionKind.Step), (edit.Label, edit.New.Foot, edit.New.Kind));
    }

    [Fact]
    public void Two_sections_that_do_not_join_are_told_once()
        => Assert.Equal(["weight/section-hand-over"], new DanceBuilder()
            .Section("1-2: R step side, L step together", "3-4: R step side, L touch together", End, Last)
            .Section("1-2: L step forward, R touch together", "3-4: R step back, L touch together", End, Last).Ids());

    [Fact]
    public void A_dance_that_ends_on_its_first_foot_does_not_repeat()
    {
        Diagnostic complaint = new DanceBuilder()
            .Section("1-2: R step side, L step together", "3-4: R step side, L touch together", End, "7-8: L step side, R step together").Only();
        Assert.Equal("weight/does-not-repeat", complaint.Rule.Id);
        Assert.Equal("8", complaint.Count);
    }

    [Fact]
    public void A_fault_in_the_last_section_explains_why_it_does_not_repeat()
        => Assert.Equal(["weight/foot-not-free"], new DanceBuilder()
            .Section("1-2: R step side, L step together", "3-4: L step side, R step together", "5-6: L step side, R touch together", "7-8: R step side, L touch together").Ids());

    [Fact]
    public void A_dance_that_begins_left_begins_with_the_weight_on_the_right()
        => Assert.Empty(new DanceBuilder().Section("1-2: L step side, R step together", "3-4: L step side, R touch together",
            "5-6: R step side, L step together", "7-8: R step side, L touch together").Ids());

    [Fact]
    public void A_stated_start_is_believed()
        => Assert.Equal(["weight/foot-not-free"], new DanceBuilder().With(d => d with { Start = Weight.Left, StartIsStated = true })
            .Section("1-2: L step side, R step together", "3-4: L step side, R touch together", "5-6: R step side, L step together", "7-8: R step side, L touch together")
            .Ids());

    [Fact]
    public void An_unwind_at_the_end_says_which_foot_it_has_to_leave_free()
    {
        Diagnostic complaint = new DanceBuilder()
            .Section("1-2: R step side, L touch together", "3-4: L step side, R touch together", "5-6: R step side, L step together", "7-8: R step cross-front, - unwind -4").Only();
        Assert.Equal("Count 8: after the unwind the weight could be on either foot; R moves next, so say (weight on L).", complaint.Message);
    }

    [Fact]
    public void What_the_reader_asked_about_is_not_judged_again()
    {
        DanceBuilder dance = new DanceBuilder()
            .Section("1-2: R step side, L step together", "3&4: R step forward, L step forward", "5-6: L rock forward, R recover", "7-8: L step together, R touch together");
        WrittenLine line = dance.Dance().Parts[0].Sections[0].Lines[1];
        Rule reading = new("count/moves-do-not-fit", Severity.Error, "", "", "", "", "");
        Assert.Equal(["weight/foot-not-free"], dance.Ids());
        Assert.Empty(dance.Ids(reading.At(line.Span)));
    }

    [Fact]
    public void No_move_of_the_catalogue_breaks_the_weight_rules_by_itself()
    {
        List<string> broken = [];
        foreach (StepDefinition definition in StepCatalogue.Default.Definitions)
        {
            Weight start = definition.From switch
            {
                RelativeWeight.Same => Weight.Right,
                RelativeWeight.Other => Weight.Left,
                RelativeWeight.Both => Weight.Shared,
                _ => Weight.Unknown,
            };
            WrittenStep[] steps = [.. definition.Rows.Select(row => new WrittenStep(
                new WrittenCount(row.Label, row.At), Counts.One, row.Action, default, 1) { FootIsNamed = true, WeightIsStated = true })];
            WrittenMove move = new() { Definition = definition, Steps = steps.ToValueList(), Span = default, Words = definition.Name };
            Section section = new() { Number = 1, Length = Counts.FromWhole(8), Lines = default, Span = default };
            WeightWalk walk = WeightWalk.Over([.. steps.Select(step => new WalkedStep(step, move, section, false))], start, repeats: false);
            broken.AddRange(walk.Findings.Select(f => definition.Id + ": " + f.Trouble + " at " + f.Step.Label));
        }

        Assert.Empty(broken);
    }
}
