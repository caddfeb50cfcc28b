using Scuff;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Tests.Steps;

public sealed class StepCatalogueReaderTests
{
    private const string Lantern = """
        # the club's own
        step lantern_cross
          name lantern cross
          also lamp cross; cross the lantern
          level improver
          named-by first-foot
          meter 4/4
          call "lan-tern"
          from S
          to S
          row & O rock side ball weight
          row 1 S step cross-behind ball weight turn -2 finish
          row & O kick to-same none free
          row 2 - clap in-place none free stretch
          amounts 2 -4
          spread &:1 1:3
          with-turn any lantern_cross
          with-turn -2 lantern_cross
          rhythm 1 2 3 4; 1 & 2 &
          other "the lamp" lantern_cross
          other "the wick"
            row 1 S hold any none free
          cue default forward
          note Mind the lamp.
          conflict None.
          source harbour
          named-in harbour
          confidence common-practice

        source harbour
          title Harbour club notes
          url https://example.org/notes
          kind club page
        """;

    public static TheoryData<string> RuleIds => [.. CatalogueRules.All.Select(r => r.Id)];

    [Fact]
    public void Every_field_of_an_entry_is_read()
    {
        (StepCatalogue catalogue, ValueList<CatalogueComplaint> complaints) = StepCatalogue.Read([("lantern.steps", Lantern)]);

        Assert.Empty(complaints);
        StepDefinition step = Assert.Single(catalogue.Definitions);
        Assert.Same(step, catalogue.Find("lantern_cross"));
        Assert.Equal(("lantern cross", "improver", NamedBy.FirstFoot, 4), (step.Name, step.Level, step.NamedBy, step.Meter));
        Assert.Equal(["lamp cross", "cross the lantern"], step.Aliases);
        Assert.Equal((RelativeWeight.Same, RelativeWeight.Same), (step.From, step.To));
        Assert.Equal([2, -4], step.Amounts);
        Assert.Equal([new TurnShare("&", 1), new TurnShare("1", 3)], step.Spread);
        Assert.Equal([new TurnedForm(null, "lantern_cross"), new TurnedForm(-2, "lantern_cross")], step.TurnedForms);
        Assert.Equal([["1", "2", "3", "4"], ["1", "&", "2", "&"]], step.Rhythms);
        Assert.Equal(("the lamp", "lantern_cross"), (step.Others[0].Words, step.Others[0].Id));
        Assert.Equal(("the wick", ActionKind.Hold), (step.Others[1].Words, step.Others[1].Rows[0].Action.Kind));
        Assert.True(step.IsDefaultOfName);
        Assert.Equal(["forward"], step.Cues);
        Assert.Equal(("Mind the lamp.", "None.", Confidence.CommonPractice), (step.Note, step.Conflict, step.Confidence));
        Assert.Equal(new StepSource("harbour", "Harbour club notes", "https://example.org/notes", "club page"), catalogue.Sources["harbour"]);
    }

    [Fact]
    public void Rows_stand_at_their_places_and_are_right_named()
    {
        (StepCatalogue catalogue, _) = StepCatalogue.Read([("lantern.steps", Lantern)]);
        ValueList<PatternRow> rows = catalogue.Definitions[0].Rows;

        Assert.Equal(["-1/2", "0", "1/2", "1"], rows.Select(r => r.At.ToString()));
        Assert.Equal(
            new StepAction(ActionKind.Step, ActingFoot.Right, Direction.CrossBehind, Contact.Ball, WeightEffect.Takes, Turn.FromEighths(-2)),
            rows[1].Action);
        Assert.True(rows[1].IsFinish);
        Assert.Equal((Direction.Right, Contact.Air), (rows[2].Action.Direction, rows[2].Action.Contact));
        Assert.Equal(ActingFoot.None, rows[3].Action.Foot);
        Assert.True(rows[3].Stretches);
        Assert.Equal(Counts.FromWhole(2), catalogue.Definitions[0].Length);
    }

    [Theory]
    [MemberData(nameof(RuleIds))]
    public void A_planted_fault_is_told_by_its_own_rule_and_the_mended_text_is_not(string id)
    {
        Rule rule = CatalogueRules.All.Single(r => r.Id == id);

        (_, ValueList<CatalogueComplaint> broken) = StepCatalogue.Read([("planted.steps", rule.Breaks)]);
        (_, ValueList<CatalogueComplaint> mended) = StepCatalogue.Read([("planted.steps", rule.Keeps)]);

        CatalogueComplaint complaint = Assert.Single(broken);
        Assert.Same(rule, complaint.Diagnostic.Rule);
        Assert.Equal("planted.steps", complaint.File);
        Assert.DoesNotContain("{", complaint.Diagnostic.Message);
        Assert.Empty(mended);
    }

    [Fact]
    public void A_complaint_names_the_line_and_spans_it()
    {
        const string text = "step lantern_step\n  name lantern step\n  level beginner\n  named-by first-foot\n  row 1 S hop onward flat weight\n";

        (_, ValueList<CatalogueComplaint> complaints) = StepCatalogue.Read([("a.steps", text)]);

        CatalogueComplaint complaint = complaints[0];
        Assert.Equal(5, complaint.Line);
        Assert.Equal("  row 1 S hop onward flat weight", text.Substring(complaint.Diagnostic.Span.Start, complaint.Diagnostic.Span.Length));
        Assert.Equal("a.steps:5: catalogue/unknown-direction: “onward” is no direction of a row.", complaint.ToString());
    }

    [Fact]
    public void An_entry_with_an_unreadable_row_keeps_its_other_rows_and_never_throws()
    {
        const string text = "step a\n  name a\n  level beginner\n  named-by none\n  row 0 S step side flat weight\n  row 1 S step side flat weight turn\n  row\n\tname b\n";

        (StepCatalogue catalogue, ValueList<CatalogueComplaint> complaints) = StepCatalogue.Read([("a.steps", text)]);

        Assert.Single(catalogue.Definitions[0].Rows);
        Assert.Equal(
            ["catalogue/bad-label", "catalogue/unknown-row-word", "catalogue/empty-field", "catalogue/indentation"],
            complaints.Select(c => c.Diagnostic.Rule.Id));
    }

    [Fact]
    public void The_catalogue_that_comes_with_scuff_has_no_fault()
    {
        Assert.Empty(StepCatalogue.DefaultComplaints);
        Assert.True(StepCatalogue.Default.Definitions.Count > 200);
        Assert.NotNull(StepCatalogue.Default.Find("coaster_back"));
        Assert.True(StepCatalogue.Default.Sources.ContainsKey("ours"));
    }
}
