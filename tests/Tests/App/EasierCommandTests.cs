using System.Text.Json;
using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Scuff.Timing;
using Tests.Prose;

namespace Tests.App;

public sealed class EasierCommandTests
{
    private const string Turning = """
        Weathercock

        by: Scuff demo
        level: improver
        counts: 8
        start: weight on L

        section 1
        1-4  rolling vine right, touch L together
        5-8  rolling vine left, touch R together
        """;

    public static TheoryData<string> Demo => [.. SeedTexts.Demo.Select(d => d.Name)];

    [Fact]
    public void Easier_says_what_it_offers_and_why()
    {
        using ProgramRun run = new();
        run.Put("cock.dance", Turning);

        Assert.Equal(0, run.Run("easier", "--most", "1", "cock.dance"));

        string said = string.Join(' ', run.Out.Split((char[])[' ', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.StartsWith("Weathercock: 2 moves above beginner, an easier way for 2 section 1 count 1: rolling vine right (improver) option 1-3 \"easier\": vine right", said, StringComparison.Ordinal);
        Assert.Contains("no turn instead of a full turn; absolute beginner instead of improver; ends on the same foot and wall", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Only_the_counts_that_are_asked_about_are_made_easier()
    {
        using ProgramRun run = new();
        run.Put("cock.dance", Turning);

        Assert.Equal(0, run.Run("easier", "--json", "--section", "1", "--counts", "5-8", "cock.dance"));

        using JsonDocument json = JsonDocument.Parse(run.Out);
        JsonElement move = Assert.Single(json.RootElement[0].GetProperty("moves").EnumerateArray());
        Assert.Equal("section 1 count 5", move.GetProperty("place").GetString());
        Assert.Equal(3, move.GetProperty("offers").GetArrayLength());
        Assert.Equal("vine left", move.GetProperty("offers")[0].GetProperty("words").GetString());
    }

    [Fact]
    public void Written_as_options_the_dance_is_clean_and_written_again_nothing_is_added()
    {
        using ProgramRun run = new();
        run.Put("cock.dance", Turning.ReplaceLineEndings("\r\n"));

        Assert.Equal(0, run.Run("easier", "--write", "cock.dance"));
        string written = run.Get("cock.dance");
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(written));

        Assert.Equal(2, analysis.Dance.Sections.SelectMany(s => s.Lines).Sum(line => line.Options.Count));
        Assert.DoesNotContain(analysis.Report.Complaints, c => c.Severity > Severity.Hint);
        Assert.Equal(written, written.ReplaceLineEndings("\r\n"));

        Assert.Equal(0, run.Run("easier", "--write", "cock.dance"));
        Assert.Equal(written, run.Get("cock.dance"));
    }

    [Fact]
    public void An_option_is_counted_as_its_section_is()
    {
        using ProgramRun run = new();
        run.Put("on.dance", """
            Counting On

            section 1
            1-4  step R to side, touch L together, step L to side, touch R together
            5-8  step R to side, touch L together, step L to side, touch R together

            section 2
            9-12  rolling vine right, touch L together
            13-16 vine left, touch R together
            """);

        Assert.Equal(0, run.Run("easier", "--write", "on.dance"));

        Assert.Contains("option 9-11 \"easier\": vine right", run.Get("on.dance"), StringComparison.Ordinal);
        StepOption option = Assert.Single(DanceReader.Read(run.Get("on.dance")).Dance.Sections.ElementAt(1).Lines[0].Options);
        Assert.Equal(new CountSpan(Counts.Zero, Counts.FromWhole(3)), option.Replaces);
    }

    [Theory]
    [MemberData(nameof(Demo))]
    public void An_easier_version_is_a_clean_dance_with_the_same_counts_walls_and_weight(string name)
    {
        string text = SeedTexts.Demo.First(d => d.Name == name).Text;
        using ProgramRun run = new();
        run.Put(name, text);

        Assert.Equal(0, run.Run("easier", "--output", "easy.dance", name));

        DanceAnalysis before = DanceAnalysis.Of(DanceReader.Read(text));
        DanceAnalysis after = DanceAnalysis.Of(DanceReader.Read(run.Get("easy.dance")));
        Assert.Equal(before.Dance.Title + " (easier)", after.Dance.Title);
        Assert.DoesNotContain(after.Report.Complaints, c => c.Severity > Severity.Hint);
        Assert.True(after.Level.Level <= before.Level.Level);
        Assert.Equal(before.Dance.Sections.Select(s => s.Length), after.Dance.Sections.Select(s => s.Length));
        Assert.Equal(before.Walls, after.Walls);
        Assert.Equal(before.PlainTimeline.Length, after.PlainTimeline.Length);
        Assert.Equal(before.PlainTimeline.WeightAfter, after.PlainTimeline.WeightAfter);
        Assert.Equal(before.PlainTimeline.FacingAfter, after.PlainTimeline.FacingAfter);
        Assert.Contains("ask Scuff demo before you hand it on", run.Get("easy.dance"), StringComparison.Ordinal);
        Assert.Equal(before.Dance.Header.First(f => f.Key == "by").Value, after.Dance.Header.First(f => f.Key == "by").Value);
    }

    [Fact]
    public void What_is_called_for_a_move_goes_with_it()
    {
        using ProgramRun run = new();
        run.Put("cock.dance", Turning.Replace("5-8  ", "     call: roll it\n5-8  ", StringComparison.Ordinal) + "\n     call 8: tap\n");

        Assert.Equal(0, run.Run("easier", "--output", "easy.dance", "cock.dance"));

        Assert.DoesNotContain("roll it", run.Get("easy.dance"), StringComparison.Ordinal);
        Assert.Contains("call 8: tap", run.Get("easy.dance"), StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_written_over()
    {
        using ProgramRun run = new();
        run.Put("cock.dance", Turning);
        run.Put("easy.dance", "mine");

        Assert.Equal(2, run.Run("easier", "--output", "easy.dance", "cock.dance"));
        Assert.Equal(2, run.Run("mirror", "--output", "easy.dance", "cock.dance"));

        Assert.Equal("mine", run.Get("easy.dance"));
        Assert.Contains("nothing is written over it", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--for is one of level, knees, turns, speed.", "--for", "elbows")]
    [InlineData("--level is one of absolute beginner, beginner, improver, intermediate.", "--level", "expert")]
    [InlineData("Say with --section in which section these counts are.", "--counts", "5-8")]
    [InlineData("--counts are counts of a section, for example 5-8.", "--section", "1", "--counts", "8-5")]
    [InlineData("--section is the number of a section, 1 or more.", "--section", "0")]
    [InlineData("--most is a number from 1 to 9.", "--most", "0")]
    [InlineData("--write, --output and --json go one at a time.", "--write", "--json")]
    public void What_cannot_be_asked_is_told_with_the_way_out(string sentence, params string[] options)
    {
        using ProgramRun run = new();
        run.Put("cock.dance", Turning);

        Assert.Equal(2, run.Run(["easier", .. options, "cock.dance"]));

        Assert.Contains(sentence, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Mirror_shows_the_dance_in_the_other_foot()
    {
        using ProgramRun run = new();
        run.Put("cock.dance", Turning);

        Assert.Equal(0, run.Run("mirror", "cock.dance"));

        Assert.Contains("Weathercock (mirrored)\n", run.Out.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.Contains("1-4  rolling vine left, touch R together\n", run.Out.ReplaceLineEndings("\n"), StringComparison.Ordinal);
    }
}
