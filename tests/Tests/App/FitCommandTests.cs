using System.Text.Json;
using System.Xml.Linq;
using Tests.House;

namespace Tests.App;

public sealed class FitCommandTests
{
    private const string Song = "title: Nothing to Declare\nartist: Captain Oyster\ntempo 116, first beat 0.4, 4/4\nintro 32, A 32 verse, A 32 verse, B 32 chorus, A 32 verse, D 16, B 32, A 32, B 32, A 32, B 64\n";
    private const string Even = "title: Quay Road\ntempo 116, first beat 0.4, 4/4\nintro 32, A 32, B 32, A 32, B 32, A 32, B 32\n";

    [Fact]
    public void The_kindest_plan_is_told_with_wall_count_music_facing_and_lines()
    {
        using ProgramRun run = Prepared();

        Assert.Equal(0, run.Run("fit", "c.dance", "song.track"));

        Assert.Contains("Begins after 32 counts of intro, at 0:17.0", run.Out, StringComparison.Ordinal);
        Assert.Contains("Wall 5, after 16 counts, at 1:31.4", run.Out, StringComparison.Ordinal);
        Assert.Contains("wall 5: after 16 restart [12:00]", run.Out, StringComparison.Ordinal);
        Assert.Contains("no interruption:", run.Out, StringComparison.Ordinal);
        Assert.Contains("1 interruption (told above):", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void The_plan_is_written_into_the_text_and_nothing_else_changes()
    {
        using ProgramRun run = Prepared();
        string before = run.Get("c.dance");

        Assert.Equal(0, run.Run("fit", "--write", "c.dance", "song.track"));

        string after = run.Get("c.dance");
        Assert.Contains("wall 5: after 16 restart [12:00]\n", after, StringComparison.Ordinal);
        Assert.StartsWith(before[..before.IndexOf("track:", StringComparison.Ordinal)], after, StringComparison.Ordinal);
        Assert.Contains("Stamp and Seal", after, StringComparison.Ordinal);
        Assert.Equal(0, run.Run("check", "c.dance"));

        Assert.Equal(0, run.Run("fit", "--write", "c.dance", "song.track"));
        Assert.Equal(after, run.Get("c.dance"));
    }

    [Fact]
    public void A_plan_with_fewer_interruptions_can_be_taken()
    {
        using ProgramRun run = Prepared();

        Assert.Equal(0, run.Run("fit", "--interruptions", "0", "c.dance", "song.track"));

        Assert.Contains("no interruption (told above)", run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("after 16 restart [", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_picture_is_drawn_that_any_reader_of_XML_reads()
    {
        using ProgramRun run = Prepared();

        Assert.Equal(0, run.Run("fit", "--picture", "pictures", "c.dance", "song.track"));

        XDocument picture = XDocument.Parse(run.Get(Path.Combine("pictures", "song.fit.svg")));
        string words = string.Join("|", picture.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value));
        Assert.Contains("wall 5 faces 12:00", words, StringComparison.Ordinal);
        Assert.Contains("restart", words, StringComparison.Ordinal);
        Assert.Contains("B chorus", words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_script_gets_every_point_and_what_to_draw()
    {
        using ProgramRun run = Prepared();

        Assert.Equal(0, run.Run("fit", "--json", "c.dance", "song.track", "even.track"));

        JsonElement rows = JsonDocument.Parse(run.Out).RootElement;
        Assert.Equal(2, rows.GetArrayLength());
        JsonElement kindest = rows[0].GetProperty("plans")[rows[0].GetProperty("kindest").GetInt32()];
        Assert.Equal(kindest.GetProperty("points").GetInt32(), kindest.GetProperty("items").EnumerateArray().Sum(i => i.GetProperty("points").GetInt32()));
        JsonElement[] spans = [.. rows[0].GetProperty("chart").GetProperty("spans").EnumerateArray()];
        Assert.All(spans.Zip(spans.Skip(1)), p => Assert.Equal(p.First.GetProperty("to").GetInt32(), p.Second.GetProperty("from").GetInt32()));
        Assert.Equal(0, rows[1].GetProperty("plans")[0].GetProperty("interruptions").GetInt32());
    }

    [Fact]
    public void What_meets_a_stop_is_told_and_can_be_taken()
    {
        using ProgramRun run = Prepared();
        run.Put("h.dance", ProgramRun.CleanDance);

        // count 2 of section 1 in wall 2: 16 counts of intro and 17 more at half a second
        run.Put("stop.track", "title: Stop\ntempo 120, first beat 0.5, 4/4\nintro 16, A 32, B 32, A 32\nstop 17 to 17.5\n");

        Assert.Equal(0, run.Run("fit", "h.dance", "stop.track"));
        Assert.Contains("section 1, count 2): step L together is danced; stomp L", run.Out.Replace("\n    ", " ", StringComparison.Ordinal), StringComparison.Ordinal);

        Assert.Equal(0, run.Run("fit", "--accents", "--write", "h.dance", "stop.track"));
        Assert.Matches("1-2 +step R to side, stomp L", run.Get("h.dance"));
        Assert.Equal(0, run.Run("check", "h.dance"));
    }

    [Fact]
    public void Prices_can_be_set()
    {
        using ProgramRun run = Prepared();

        Assert.Equal(0, run.Run("fit", "--price", "interruption=9000", "c.dance", "song.track"));
        Assert.Contains("no interruption (told above)", run.Out, StringComparison.Ordinal);

        Assert.Equal(2, run.Run("fit", "--price", "kindness=3", "c.dance", "song.track"));
        Assert.Contains("There is no price kindness.", run.Error, StringComparison.Ordinal);
        Assert.Equal(2, run.Run("fit", "--price", "newKind=much", "c.dance", "song.track"));
        Assert.Contains("is a whole number of points", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_missing_is_told()
    {
        using ProgramRun run = Prepared();

        Assert.Equal(2, run.Run("fit", "c.dance"));
        Assert.Contains("Name a dance, then a track", run.Error, StringComparison.Ordinal);
        Assert.Equal(2, run.Run("fit", "none.dance", "song.track"));
        Assert.Equal(2, run.Run("fit", "c.dance", "none.track"));
        Assert.Equal(2, run.Run("fit", "--intro", "-3", "c.dance", "song.track"));
    }

    [Fact]
    public void A_plan_is_not_written_over_breaks_that_hold_for_every_track()
    {
        using ProgramRun run = Prepared();
        run.Put("own.dance", run.Get("c.dance").Replace("track: \"Nothing", "wall 2: after 16 restart\n\ntrack: \"Nothing", StringComparison.Ordinal));
        string before = run.Get("own.dance");

        run.Run("fit", "--write", "own.dance", "song.track");

        Assert.Contains("was not written", run.Error, StringComparison.Ordinal);
        Assert.Equal(before, run.Get("own.dance"));
    }

    [Fact]
    public void What_a_sheet_says_of_its_track_is_checked_against_the_music()
    {
        using ProgramRun run = Prepared();
        run.Put("wrong.dance", run.Get("c.dance").Replace("116 bpm, intro 32, 3:18", "104 bpm, intro 30, 2:10", StringComparison.Ordinal));

        Assert.Equal(1, run.Run("check", "--track", "song.track", "wrong.dance"));

        foreach (string rule in (string[])["track/tempo-measured", "track/intro-measured", "track/length-measured"])
        {
            Assert.Contains(rule, run.Out, StringComparison.Ordinal);
        }

        // a mend of something else does not make Scuff forget the music
        run.Put("mended.dance", run.Get("wrong.dance").Replace("counts: 32", "counts: 30", StringComparison.Ordinal));
        Assert.Equal(1, run.Run("check", "--fix", "--track", "song.track", "mended.dance"));
        Assert.Contains("counts: 32", run.Get("mended.dance"), StringComparison.Ordinal);
        Assert.Contains("track/tempo-measured", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Accents_are_put_in_only_where_the_text_is_written()
    {
        using ProgramRun run = Prepared();

        Assert.Equal(2, run.Run("fit", "--accents", "c.dance", "song.track"));
        Assert.Contains("say --write as well", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Tracks_are_ranked_for_a_dance_and_dances_for_a_track()
    {
        using ProgramRun run = Prepared();
        run.Put(Path.Combine("music", "even.track"), Even);
        run.Put(Path.Combine("music", "song.track"), Song);
        run.Put(Path.Combine("music", "fast.track"), Even.Replace("116", "160", StringComparison.Ordinal).Replace("Quay Road", "Spring Tide", StringComparison.Ordinal));
        run.Put(Path.Combine("dances", "c.dance"), run.Get("c.dance"));
        run.Put(Path.Combine("dances", "w.dance"), Repository.Read("demo/dances/slack-water-waltz.dance"));

        Assert.Equal(0, run.Run("match", "c.dance", "music"));
        Assert.Matches("(?s)1\\. Quay Road.*2\\. Nothing to Declare.*3\\. Spring Tide", run.Out);
        Assert.Contains("needs 1 interruption", run.Out, StringComparison.Ordinal);
        Assert.Contains("faster than usual for it", run.Out, StringComparison.Ordinal);

        Assert.Equal(0, run.Run("match", "--no-tags", "c.dance", "music"));
        Assert.DoesNotContain("Nothing to Declare", run.Out, StringComparison.Ordinal);

        Assert.Equal(0, run.Run("match", "--json", "dances", "even.track"));
        JsonElement rows = JsonDocument.Parse(run.Out).RootElement;
        Assert.EndsWith("c.dance", rows[0].GetProperty("dance").GetString(), StringComparison.Ordinal);
        Assert.True(rows[1].GetProperty("meter").GetInt32() > 0);

        Assert.Equal(2, run.Run("match", "c.dance"));
    }

    private static ProgramRun Prepared()
    {
        ProgramRun run = new();
        run.Put("c.dance", Repository.Read("demo/dances/customs-house.dance"));
        run.Put("song.track", Song);
        run.Put("even.track", Even);
        return run;
    }
}
