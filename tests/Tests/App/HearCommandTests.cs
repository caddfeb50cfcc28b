using System.Text;
using System.Text.Json;
using System.Xml.Linq;
using Scuff.App.Tracks;
using Scuff.Audio.Songs;
using Scuff.Music;

namespace Tests.App;

public sealed class HearCommandTests
{
    private const string ByHand = """
        title: Rope & <Tar>
        artist: The Demo Band
        tempo 112, first beat 0.35
        intro 32, A 32 verse, A 36 verse, B 32 chorus
        stop 20 to 21
        length 1:12
        """;

    private static readonly Lazy<byte[]> Song = new(() =>
    {
        SongRecipe recipe = DemoSongs.All.Single(s => s.Dance == "first-tide").Recipe;
        using MemoryStream wav = new();
        SongRenderer.Render(Scuff.Audio.Songs.Song.From(recipe with { Sections = [.. recipe.Sections.Take(4)] })).WriteWav(wav);
        return wav.ToArray();
    });

    [Fact]
    public void A_track_is_told_in_plain_words()
    {
        using ProgramRun run = new();
        run.Put("low-water.wav", Song.Value);

        Assert.InRange(run.Run("hear", "low-water.wav"), 0, 1);

        Assert.StartsWith("low-water  (low-water.wav, 0:4", run.Out, StringComparison.Ordinal);
        Assert.Contains("tempo     100 beats a minute", run.Out, StringComparison.Ordinal);
        Assert.Contains("50 or 200", run.Out, StringComparison.Ordinal);
        Assert.Contains("meter     4/4", run.Out, StringComparison.Ordinal);
        Assert.Contains("swing     straight", run.Out, StringComparison.Ordinal);
        Assert.Equal("", run.Error);
    }

    [Fact]
    public void A_map_by_hand_is_told_without_any_sound()
    {
        using ProgramRun run = new();
        run.Put("rope.track", ByHand);

        Assert.Equal(0, run.Run("hear", "rope.track"));

        Assert.Equal(
            """
            Rope & <Tar> by The Demo Band  (rope.track, 1:12)
              tempo     112 beats a minute, sure
              meter     4/4, sure
              swing     straight, a guess
              intro     32 counts: dance from 0:17.5, sure
              sections  start    counts  music
                        0:00.4       32  I intro
                        0:17.5       32  A verse
                        0:34.6       36  A verse
                        0:53.9       32  B chorus
              stops     0:20.0 to 0:21.0, 2 counts
              odd       0:51.8 in A verse, 32 counts into it: an eight of 4 counts, then 1
                        again

            """,
            run.Out,
            ignoreLineEndingDifferences: true);
    }

    [Fact]
    public void Json_has_the_fixed_fields()
    {
        using ProgramRun run = new();
        run.Put("rope.track", ByHand);

        Assert.Equal(2, run.Run("hear", "--json", "rope.track", "none.wav"));

        using JsonDocument json = JsonDocument.Parse(run.Out);
        JsonElement track = json.RootElement[0];
        Assert.Equal(
            [
                "file", "title", "artist", "seconds", "needsALook", "tempo", "meter", "swing", "firstCount", "introCounts", "sections", "breaks",
                "oddEights", "beats", "remark", "warning",
            ],
            track.EnumerateObject().Select(p => p.Name));
        Assert.Equal(["value", "confidence", "others"], track.GetProperty("tempo").EnumerateObject().Select(p => p.Name));
        Assert.Equal(["start", "end", "firstBeat", "beats", "label", "name", "confidence"], track.GetProperty("sections")[0].EnumerateObject().Select(p => p.Name));
        Assert.Equal(["start", "end", "kind", "confidence"], track.GetProperty("breaks")[0].EnumerateObject().Select(p => p.Name));
        Assert.Equal(["start", "firstBeat", "beats", "expected"], track.GetProperty("oddEights")[0].EnumerateObject().Select(p => p.Name));
        Assert.Equal(["seconds", "bar", "count"], track.GetProperty("beats")[0].EnumerateObject().Select(p => p.Name));
        Assert.Equal((132, "4/4", 32), (track.GetProperty("beats").GetArrayLength(), track.GetProperty("meter").GetProperty("value").GetString(), track.GetProperty("introCounts").GetInt32()));
        Assert.Equal("There is no file or folder named none.wav.", json.RootElement[1].GetProperty("error").GetString());
    }

    [Fact]
    public void What_cannot_be_heard_does_not_stop_the_others()
    {
        using ProgramRun run = new();
        run.Put("a.wav", Encoding.ASCII.GetBytes("this is no sound at all, whatever it is called"));
        run.Put("b.track", ByHand);
        run.Put("c.track", "tempo fast, A 32");
        run.Put("d.beats.txt", "1\t1\t1\nnow\t2\t2\n");
        Directory.CreateDirectory(Path.Combine(run.Folder, "empty"));

        Assert.Equal(2, run.Run("hear", "gone.mp3", "a.wav", "b.track", "c.track", "d.beats.txt", "empty"));

        Assert.Contains("Rope & <Tar>", run.Out, StringComparison.Ordinal);
        string[] told = run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(5, told.Length);
        Assert.Equal("scuff: There is no file or folder named gone.mp3.", told[0].Trim());
        Assert.StartsWith("scuff: a.wav could not be heard. This is not a sound file", told[1], StringComparison.Ordinal);
        Assert.StartsWith("scuff: c.track, line 1: the tempo is a number", told[2], StringComparison.Ordinal);
        Assert.StartsWith("scuff: d.beats.txt, line 2: \"now\" is no time", told[3], StringComparison.Ordinal);
        Assert.Equal("scuff: There is no track in the folder empty.", told[4].Trim());
    }

    [Fact]
    public void Silence_is_told_and_wants_a_look()
    {
        using ProgramRun run = new();
        using MemoryStream wav = new();
        new StereoSound(new float[44100], new float[44100], 44100).WriteWav(wav);
        run.Put("still.wav", wav.ToArray());

        Assert.Equal(1, run.Run("hear", "--picture", "pictures", "--labels", "labels", "still.wav"));

        Assert.Contains("nothing to hear", run.Out, StringComparison.Ordinal);
        Assert.Equal("", run.Get("labels/still.beats.txt"));
        Assert.Contains("nothing to hear", run.Get("pictures/still.svg"), StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_heard_is_kept_by_content_and_damage_is_not_used()
    {
        using ProgramRun run = new();
        run.Put("quayside.wav", Song.Value);
        run.Put("harbour.wav", Song.Value);
        run.Run("hear", "--cache", "kept", "quayside.wav");
        string heard = run.Out;
        string entry = Assert.Single(Directory.GetFiles(Path.Combine(run.Folder, "kept"), "*", SearchOption.AllDirectories));
        byte[] whole = File.ReadAllBytes(entry);

        // another name, the same sound
        run.Run("hear", "--cache", "kept", "harbour.wav");
        Assert.Equal(heard.Replace("quayside", "harbour", StringComparison.Ordinal), run.Out);
        Assert.Single(Directory.GetFiles(Path.Combine(run.Folder, "kept"), "*", SearchOption.AllDirectories));

        // what stands there is what is told
        (TrackMap map, string? warning) = TrackBytes.Read(whole)!.Value;
        File.WriteAllBytes(entry, TrackBytes.Write(map with { Title = "From the cupboard" }, warning));
        run.Run("hear", "--cache", "kept", "quayside.wav");
        Assert.StartsWith("From the cupboard", run.Out, StringComparison.Ordinal);

        run.Run("hear", "--no-cache", "quayside.wav");
        Assert.Equal(heard, run.Out);

        // damaged, cut short or empty: heard anew, and kept again
        whole[^100] ^= 1;
        foreach (byte[] damaged in (byte[][])[whole, whole[..40], []])
        {
            File.WriteAllBytes(entry, damaged);
            run.Run("hear", "--cache", "kept", "quayside.wav");
            Assert.Equal(heard, run.Out);
            Assert.NotNull(TrackBytes.Read(File.ReadAllBytes(entry)));
        }
    }

    [Fact]
    public void One_sound_under_many_names_is_kept_though_all_are_heard_at_once()
    {
        using ProgramRun run = new();
        string[] names = [.. Enumerable.Range(0, 4).Select(i => run.Put($"{i}.wav", Song.Value))];

        run.Run(["hear", "--cache", "kept", .. names]);

        string entry = Assert.Single(Directory.GetFiles(Path.Combine(run.Folder, "kept"), "*", SearchOption.AllDirectories));
        Assert.NotNull(TrackBytes.Read(File.ReadAllBytes(entry)));
    }

    [Fact]
    public void A_cache_that_cannot_be_written_is_no_trouble()
    {
        using ProgramRun run = new();
        run.Put("one.wav", Song.Value);
        run.Put("kept", "a file where the folder should be");

        Assert.InRange(run.Run("hear", "--cache", "kept", "one.wav"), 0, 1);
        Assert.Equal("", run.Error);
    }

    [Fact]
    public void The_usual_place_to_keep_things_follows_what_the_user_has_set()
    {
        Assert.Equal("/somewhere", TrackCache.UsualFolder(v => v == TrackCache.Variable ? "/somewhere" : null, "/users/her"));
        if (OperatingSystem.IsLinux())
        {
            Assert.Equal("/caches/scuff/tracks", TrackCache.UsualFolder(v => v == "XDG_CACHE_HOME" ? "/caches" : null, "/users/her"));
            Assert.Equal("/users/her/.cache/scuff/tracks", TrackCache.UsualFolder(v => v == "XDG_CACHE_HOME" ? "not/rooted" : null, "/users/her"));
            Assert.Null(TrackCache.UsualFolder(_ => null, ""));
        }
    }

    [Fact]
    public void Labels_are_written_and_read_again_as_a_track()
    {
        using ProgramRun run = new();
        run.Put("rope.track", ByHand);

        Assert.Equal(0, run.Run("hear", "--labels", "labels", "rope.track"));
        Assert.Equal("Wrote labels/rope.beats.txt\nWrote labels/rope.sections.txt\n", run.Error.ReplaceLineEndings("\n").Replace('\\', '/'));
        Assert.StartsWith("0.3500\t0.3500\t1\n0.8857\t0.8857\t2\n", run.Get("labels/rope.beats.txt"), StringComparison.Ordinal);
        Assert.StartsWith("0.3500\t17.4929\tI intro\n", run.Get("labels/rope.sections.txt"), StringComparison.Ordinal);

        run.Run("hear", "labels");
        Assert.StartsWith("rope  (", run.Out, StringComparison.Ordinal);
        Assert.Contains("0:34.6       36  A verse", run.Out, StringComparison.Ordinal);
        Assert.Contains("an eight of 4 counts", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_picture_shows_sections_counts_and_stops_and_is_sound_xml()
    {
        using ProgramRun run = new();
        run.Put("rope.track", ByHand);

        Assert.Equal(0, run.Run("hear", "--picture", "pictures", "rope.track"));

        XElement svg = XDocument.Parse(run.Get("pictures/rope.svg")).Root!;
        string[] words = [.. svg.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)];
        Assert.Equal("Rope & <Tar> by The Demo Band", words[0]);
        Assert.Contains("A verse, 32 counts", words);
        Assert.Contains("(A verse)", words);
        Assert.Contains("4 counts", words);
        Assert.All(svg.Descendants().Where(e => e.Name.LocalName == "text"), t => Assert.InRange((double)t.Attribute("x")!, -20, 1208));
        Assert.Contains("the dance starts", words);
        Assert.Equal(["0:00", "0:40"], words.Where(w => w.Length == 4 && w[1] == ':'));
        Assert.Single(svg.Descendants(), e => (string?)e.Attribute("fill") == "url(#stop)");
        Assert.DoesNotContain("NaN", svg.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_tracks_of_one_name_do_not_write_over_each_other()
    {
        using ProgramRun run = new();
        run.Put("rope.track", ByHand);
        run.Put("other/rope.track", ByHand);

        Assert.Equal(2, run.Run("hear", "--picture", "pictures", "rope.track", "other"));
        Assert.Contains("already holds that of rope.track", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Corrections_are_stronger_than_what_was_heard()
    {
        using ProgramRun run = new();
        run.Put("rope.track", ByHand);
        run.Put("said/rope.corrections.json", """{"corrections": 1, "said": [{"kind": "swing", "ratio": 2}, {"kind": "beat", "is": "half"}]}""");
        run.Put("other.track", ByHand);

        Assert.Equal(0, run.Run("hear", "--corrections", "said/rope.corrections.json", "rope.track"));
        Assert.Contains("tempo     56 beats a minute, sure", run.Out, StringComparison.Ordinal);
        Assert.Contains("swung, 2.0 to 1, sure", run.Out, StringComparison.Ordinal);

        // a folder of them: each track has its own, or none
        Assert.Equal(0, run.Run("hear", "--corrections", "said", "rope.track", "other.track"));
        Assert.Contains("tempo     56", run.Out, StringComparison.Ordinal);
        Assert.Contains("tempo     112", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Corrections_that_cannot_be_read_are_told()
    {
        using ProgramRun run = new();
        run.Put("rope.track", ByHand);
        run.Put("bad.json", """{"corrections": 1, "said": [{"kind": "swing", "ratio": "much"}]}""");

        Assert.Equal(2, run.Run("hear", "--corrections", "bad.json", "rope.track"));
        Assert.Contains("bad.json: Correction 1: \"ratio\" must be a number", run.Error, StringComparison.Ordinal);
        Assert.Equal("", run.Out);

        Assert.Equal(2, run.Run("hear", "--corrections", "gone.json", "rope.track"));
        Assert.Contains("no file or folder named gone.json", run.Error, StringComparison.Ordinal);

        Assert.Equal(2, run.Run("hear", "--corrections", "bad.json", "rope.track", "rope.track"));
        Assert.Contains("name one track", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Work_on_many_comes_back_in_order_and_trouble_comes_to_whoever_asked()
    {
        Assert.Equal(Enumerable.Range(0, 200).Select(i => i * i), InParallel.Run(200, 7, i => i * i));
        Assert.Empty(InParallel.Run(0, 4, i => i));
        InvalidOperationException trouble = Assert.Throws<InvalidOperationException>(
            () => InParallel.Run(20, 3, i => i == 5 ? throw new InvalidOperationException("five") : i).Sum());
        Assert.Equal("five", trouble.Message);
    }

    [Fact]
    public void Progress_is_told_to_a_screen_only()
    {
        using ProgramRun run = new();
        using StringWriter screen = new();
        using StringWriter pipe = new();
        foreach ((StringWriter error, bool isScreen) in ((StringWriter, bool)[])[(screen, true), (pipe, false)])
        {
            HearingProgress progress = new(4, Of(error, isScreen), TimeSpan.Zero);
            progress.Of(0, "one.wav").Report(1);
            progress.Of(1, "two\e[2Jwo.wav").Report(0.5);
            progress.Clear();
        }

        Assert.Contains("hearing 38 %, 1 of 4 tracks: two·[2Jwo.wav", screen.ToString(), StringComparison.Ordinal);
        Assert.EndsWith(" \r", screen.ToString(), StringComparison.Ordinal);
        Assert.Equal("", pipe.ToString());

        Scuff.App.Terminal Of(TextWriter error, bool isScreen) => new()
        {
            Out = TextWriter.Null,
            Error = error,
            ErrorIsScreen = isScreen,
            OpenInput = () => Stream.Null,
            OpenOutput = () => Stream.Null,
            OutputIsPiped = true,
            InputIsPiped = false,
            Folder = run.Folder,
        };
    }
}
