using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Prose;
using Scuff.Timelines;
using Tests.House;

namespace Tests.Analysis;

public sealed class TakenOptionsTests
{
    private const string Two = """
        Two Ways

        counts: 8
        walls: 1
        start: weight on L

        section 1
        1-4  rolling vine right, touch L
             option 1-4 "no turn": vine right, touch L
             option 1-4 "easier": step R to side, step L together, step R to side, touch L together
        5-6  step L to side, step R together
             option 5-6 "harder": hitch L, step L together
        7-8  step L to side, touch R together
        """;

    public static TheoryData<string> Demo => [.. Directory.GetFiles(Path.Combine(Repository.Root, "demo/dances")).Select(f => Path.GetFileName(f)!)];

    [Theory]
    [MemberData(nameof(Demo))]
    public void An_easier_dance_keeps_counts_weight_and_facing_wherever_a_section_ends(string file)
    {
        DanceAnalysis written = DanceAnalysis.Of(DanceReader.Read(Repository.Read("demo/dances/" + file)));
        DanceAnalysis easier = written.Easier;

        Assert.Equal(TakenOptions.IsOffered(written.Dance), !ReferenceEquals(easier, written));
        Assert.Equal(written.Dance.Length, easier.Dance.Length);
        Assert.Equal(written.PlainTimeline.Length, easier.PlainTimeline.Length);
        Assert.Equal(written.PlainTimeline.Stretches.Select(s => (s.Facing, s.WeightAfter, s.FacingAfter)), easier.PlainTimeline.Stretches.Select(s => (s.Facing, s.WeightAfter, s.FacingAfter)));
        Assert.All(easier.PlainTimeline.Steps, s => Assert.True(s.Written.Duration.Value.Sign >= 0));
    }

    [Fact]
    public void What_the_option_says_is_danced_where_the_original_was()
    {
        DanceAnalysis easier = DanceAnalysis.Of(DanceReader.Read(Repository.Read("demo/dances/tin-lantern.dance"))).Easier;
        TimedStep[] last = [.. easier.WallTimeline.Steps.Where(s => s.Section.Number == 2).TakeLast(3)];

        Assert.Equal(["7", "7&", "8"], last.Select(s => s.CountLabel));
        Assert.All(last, s => Assert.Contains("triple R in place", easier.Draft.Text[s.Written.Span.Start..], StringComparison.Ordinal));
        Assert.DoesNotContain(easier.Dance.Sections.SelectMany(s => s.Lines).SelectMany(l => l.Options), o => o.Name == "easier");
    }

    [Fact]
    public void Of_two_for_the_same_counts_the_one_named_easier_is_danced_and_none_that_is_harder()
    {
        Dance easier = TakenOptions.Of(DanceReader.Read(Two).Dance);
        WrittenLine[] lines = [.. easier.Sections.Single().Lines];

        Assert.Equal(4, lines[0].Steps.Count());
        Assert.Equal(4, lines[0].Moves.Count);
        Assert.Equal(["no turn"], lines[0].Options.Select(o => o.Name));
        Assert.Equal(["harder"], lines[1].Options.Select(o => o.Name));
        Assert.Equal(2, lines[1].Steps.Count());
    }
}
