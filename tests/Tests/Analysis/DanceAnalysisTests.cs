using Scuff.Analysis;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Timing;
using Tests.Analysis.Checks;

namespace Tests.Analysis;

public sealed class DanceAnalysisTests
{
    [Fact]
    public void A_quarter_left_makes_four_walls_and_comes_home()
    {
        DanceAnalysis analysis = DanceAnalysis.Of(Quarter().Draft());
        Assert.Equal(Turn.FromEighths(-2), analysis.NetTurn);
        Assert.Equal(4, analysis.Walls);
        Assert.Equal(Counts.FromWhole(8), analysis.WallTimeline.Length);
        Assert.Equal((4, Facing.Front), (analysis.PlainTimeline.Walls, analysis.PlainTimeline.FacingAfter));
        Assert.Empty(analysis.TrackTimelines);
    }

    [Fact]
    public void Words_that_cannot_be_read_leave_turn_and_walls_unknown()
    {
        DanceAnalysis analysis = DanceAnalysis.Of(new DanceBuilder().Walls(4).Section("1-4: R step side, - unknown, L step side, R touch together").Draft());
        Assert.Null(analysis.NetTurn);
        Assert.Null(analysis.Walls);
        Assert.DoesNotContain(analysis.Report.Complaints, complaint => complaint.Rule.Id == "facing/walls-differ");
    }

    [Fact]
    public void A_turn_that_the_reader_asks_about_leaves_them_unknown_too()
    {
        Rule rule = new("turn/direction-missing", Severity.Error, "", "", "", "", "");
        Assert.Null(DanceAnalysis.Of(Quarter().Draft(rule.At(new TextSpan(0, 1)))).NetTurn);
    }

    [Fact]
    public void Complaints_of_the_reader_stand_among_the_others_in_order_of_place()
    {
        DanceBuilder dance = new DanceBuilder().Section(
            "1-2: R step side, L step together", "3-4: L step side, R touch together", "5-6: R step side, L step together", "7-8: R step side, L touch together");
        Rule rule = new("reading/spelling", Severity.Hint, "", "", "", "", "");
        Report report = DanceAnalysis.Of(dance.Draft(rule.At(new TextSpan(0, 1)))).Report;
        Assert.Equal(["reading/spelling", "weight/foot-not-free"], report.Complaints.Select(c => c.Rule.Id));
    }

    [Fact]
    public void Nothing_is_computed_twice()
    {
        DanceAnalysis analysis = DanceAnalysis.Of(Quarter().Draft());
        Assert.Same(analysis.PlainTimeline, analysis.PlainTimeline);
        Assert.Same(analysis.Report, analysis.Report);
    }

    [Fact]
    public void An_empty_text_has_an_analysis()
    {
        DanceAnalysis analysis = DanceAnalysis.Of(new DanceBuilder().Draft());
        Assert.Empty(analysis.Report.Complaints);
        Assert.Equal(1, analysis.Walls);
    }

    [Fact]
    public void No_text_with_a_line_lost_or_doubled_breaks_the_checks()
    {
        foreach (Rule rule in RuleBook.All)
        {
            string[] lines = rule.Breaks.Split('\n');
            for (int i = 0; i < lines.Length; i++)
            {
                Assert.NotNull(RuleBook.Complaints(string.Join('\n', lines.Where((_, at) => at != i))));
                Assert.NotNull(RuleBook.Complaints(string.Join('\n', lines.Take(i + 1).Concat(lines.Skip(i)))));
            }

            for (int length = 0; length < rule.Breaks.Length; length += 7)
            {
                Assert.NotNull(RuleBook.Complaints(rule.Breaks[..length]));
            }
        }
    }

    private static DanceBuilder Quarter() => new DanceBuilder().Section(
        "1-2: R step side, L step together", "3-4: R step side, L touch together",
        "5-6: L step side -2, R step together", "7-8: L step side, R touch together");
}
