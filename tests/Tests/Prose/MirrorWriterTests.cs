using Scuff.Analysis;
using Scuff.Analysis.Compare;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Scuff.Stance;
using Scuff.Timelines;

namespace Tests.Prose;

public sealed class MirrorWriterTests
{
    public static TheoryData<string> Demo => [.. SeedTexts.Demo.Select(d => d.Name)];

    [Theory]
    [MemberData(nameof(Demo))]
    public void The_mirrored_text_is_danced_with_the_other_foot_at_the_other_walls(string name)
    {
        Dance dance = DanceReader.Read(Text(name)).Dance;
        MirroredText mirrored = MirrorWriter.Write(DanceReader.Read(Text(name)));
        Dance other = DanceReader.Read(mirrored.Text).Dance;

        Assert.Empty(mirrored.Open);
        Assert.Equal(dance.Tracks.Count, other.Tracks.Count);
        AssertMirrored(PlanBuilder.Plain(dance), PlanBuilder.Plain(other));
        foreach ((Track here, Track there) in dance.Tracks.Zip(other.Tracks))
        {
            AssertMirrored(PlanBuilder.ForTrack(dance, here, withEnding: true), PlanBuilder.ForTrack(other, there, withEnding: true));
        }

        void AssertMirrored(Plan here, Plan there)
        {
            Timeline mine = Unroller.Unroll(dance, here);
            Timeline theirs = Unroller.Unroll(other, there);
            Assert.Equal(mine.Steps.Select(s => (s.At, s.Action.Mirrored())), theirs.Steps.Select(s => (s.At, s.Action)));
            Assert.Equal(mine.Steps.Select(s => s.WeightAfter.Mirrored()), theirs.Steps.Select(s => s.WeightAfter));
            Assert.Equal(mine.Steps.Select(s => Facing.FromEighths(-s.FacingAfter!.Value.Eighths)), theirs.Steps.Select(s => s.FacingAfter!.Value));
        }
    }

    [Theory]
    [MemberData(nameof(Demo))]
    public void The_mirrored_text_passes_the_same_checks(string name)
    {
        DanceAnalysis here = DanceAnalysis.Of(DanceReader.Read(Text(name)));
        DanceAnalysis there = DanceAnalysis.Of(DanceReader.Read(MirrorWriter.Write(here.Draft).Text));

        Assert.Equal(Rules(here), Rules(there));

        static IEnumerable<(string, Severity)> Rules(DanceAnalysis analysis) => analysis.Report.Complaints.Select(c => (c.Rule.Id, c.Severity)).Order();
    }

    [Theory]
    [MemberData(nameof(Demo))]
    public void Mirrored_twice_it_is_the_same_dance(string name)
    {
        Draft draft = DanceReader.Read(Text(name));
        string twice = MirrorWriter.Write(DanceReader.Read(MirrorWriter.Write(draft).Text)).Text;

        Assert.True(DanceComparison.Of(DanceAnalysis.Of(draft), DanceAnalysis.Of(DanceReader.Read(twice))).IsSame);
        Assert.Equal(draft.Dance.Title, DanceReader.Read(twice).Dance.Title);
    }

    [Fact]
    public void Facings_tags_restarts_changed_counts_options_and_the_ending_turn_round_and_notes_stay()
    {
        const string text = """
            Left Bank

            by: Right Hand Club
            counts: 16
            start: weight on L
            ending: last wall, after 8 counts: step R forward, pivot 1/2 left, stomp R [3:00]

            section 1: vine right
            1-4  vine right turning 1/4 right, touch L together   [3:00]
                 option 1-4 "right for knees": step R to side turning 1/4 right, step L together, step R to side, touch L together
                 style: look over the left shoulder
                 call: "vine to the right"
            5-8  vine left, touch R together

            section 2
            1-2  step R forward, pivot 1/2 left     [9:00]
            3-4  Walk Right, LEFT
            5-8  jazz box R

            tag "Right Bank" 2 counts
            1-2  sway R, sway L

            track: "Turn Right at 9:00" by The Demo Band, 112 bpm, intro 16
            wall 2: after 16 tag "Right Bank"
            wall 3: after 8 restart, with count 8: stomp up R
            """;
        MirroredText mirrored = MirrorWriter.Write(DanceReader.Read(text));

        Assert.Contains("Left Bank (mirrored)\n", mirrored.Text, StringComparison.Ordinal);
        Assert.Contains("by: Right Hand Club\n", mirrored.Text, StringComparison.Ordinal);
        Assert.Contains("start: weight on R\n", mirrored.Text, StringComparison.Ordinal);
        Assert.Contains("step L forward, pivot 1/2 right, stomp L [9:00]", mirrored.Text, StringComparison.Ordinal);
        Assert.Contains("section 1: vine left\n1-4  vine left turning 1/4 left, touch R together   [9:00]", mirrored.Text, StringComparison.Ordinal);
        Assert.Contains("option 1-4 \"right for knees\": step L to side turning 1/4 left", mirrored.Text, StringComparison.Ordinal);
        Assert.Contains("style: look over the left shoulder", mirrored.Text, StringComparison.Ordinal);
        Assert.Contains("call: \"vine to the left\"", mirrored.Text, StringComparison.Ordinal);
        Assert.Contains("3-4  Walk Left, RIGHT", mirrored.Text, StringComparison.Ordinal);
        Assert.Contains("tag \"Right Bank\" 2 counts\n1-2  sway L, sway R", mirrored.Text, StringComparison.Ordinal);
        Assert.Contains("track: \"Turn Right at 9:00\"", mirrored.Text, StringComparison.Ordinal);
        Assert.Contains("with count 8: stomp up L", mirrored.Text, StringComparison.Ordinal);
        Assert.Equal("look over the left shoulder", Assert.Single(mirrored.Notes).Words);
        Assert.Empty(mirrored.Open);
    }

    [Fact]
    public void A_figure_that_goes_to_one_side_by_itself_is_told_so_that_it_goes_to_the_other()
    {
        const string text = "One Side\n\nstart: weight on L\n\nsection 1\n1-4  swivel heels right, swivel toes right, swivel heels right, hold\n5-8  heel splits, heel splits\n";
        MirroredText mirrored = MirrorWriter.Write(DanceReader.Read(text));
        Dance other = DanceReader.Read(mirrored.Text).Dance;

        Assert.Equal(
            DanceReader.Read(text).Dance.Sections.SelectMany(s => s.Steps).Select(s => s.Action.Mirrored()),
            other.Sections.SelectMany(s => s.Steps).Select(s => s.Action));
    }

    [Fact]
    public void Whatever_the_text_mirroring_gives_a_text_and_does_not_throw()
    {
        foreach (string text in SeedTexts.Cases.Select(SeedTexts.TextOf).Take(600))
        {
            Assert.NotNull(MirrorWriter.Write(DanceReader.Read(text)).Text);
        }
    }

    private static string Text(string name) => SeedTexts.Demo.First(d => d.Name == name).Text;
}
