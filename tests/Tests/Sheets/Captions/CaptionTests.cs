using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Scuff.Analysis;
using Scuff.Analysis.Calls;
using Scuff.Prose;
using Scuff.Sheets.Captions;
using Scuff.Timelines;
using Tests.House;
using Tests.Prose;

namespace Tests.Sheets.Captions;

public sealed partial class CaptionTests
{
    public static TheoryData<string> Dances => [.. SeedTexts.Demo.Select(d => d.Name)];

    // W3C, WebVTT: The Web Video Text Tracks Format (Candidate Recommendation, 4 April 2019), section 4.1: the syntax of a file, as a grammar. That an
    // independent parser reads the same is tested in a browser (tests/browser/captions.test.mjs).
    [Theory]
    [MemberData(nameof(Dances))]
    public void Captions_and_chapters_keep_the_syntax_of_the_standard(string name)
    {
        CaptionModel model = Model(SeedTexts.Demo.Single(d => d.Name == name).Text, 104);
        foreach (string format in (ReadOnlySpan<string>)["vtt", "chapters"])
        {
            string file = CaptionFormats.Find(format)!.Write(model);
            Assert.Matches(Vtt(), file);
            double until = 0;
            foreach (Match cue in Times().Matches(file))
            {
                double start = Seconds(cue.Groups[1].Value);
                double end = Seconds(cue.Groups[2].Value);
                Assert.True(end > start, cue.Value);
                Assert.True(start >= until - 0.0011, "Cues come in order and none overlaps: " + cue.Value);
                until = end;
            }
        }
    }

    [Fact]
    public void Signs_of_the_standard_in_her_words_stay_words()
    {
        CaptionModel model = new(
            "Up --> & <down>\nNOTE", [new CaptionCue(0, 1, "hips & <home> --> out\n\nNOTE hidden")], [], []);

        string file = CaptionFormats.Find("vtt")!.Write(model);

        Assert.Equal("WEBVTT Up -> & <down> NOTE\n\n1\n00:00:00.000 --> 00:00:01.000\nhips &amp; &lt;home&gt; --&gt; out  NOTE hidden\n\n", file);
    }

    [Fact]
    public void SubRip_has_a_comma_before_the_thousandths()
    {
        CaptionModel model = new("x", [new CaptionCue(3661.0404, 3662.5, "vine right")], [], []);

        Assert.Equal("1\n01:01:01,040 --> 01:01:02,500\nvine right\n\n", CaptionFormats.Find("srt")!.Write(model));
    }

    [Fact]
    public void Every_count_of_the_dance_is_there_with_wall_facing_and_what_is_danced()
    {
        CaptionModel model = Model(Repository.Read("demo/dances/tin-lantern.dance"), 120);

        using JsonDocument json = JsonDocument.Parse(CaptionFormats.Find("counts")!.Write(model));
        JsonElement[] counts = [.. json.RootElement.GetProperty("counts").EnumerateArray()];
        Assert.Equal([5, 6, 7, 8, 1, 2, 3], counts.Take(7).Select(c => c.GetProperty("count").GetInt32()));
        JsonElement turned = counts[4 + 12];
        Assert.Equal((2, 5, "9:00"), (turned.GetProperty("section").GetInt32(), turned.GetProperty("count").GetInt32(), turned.GetProperty("facing").GetString()!));
        Assert.Equal("cross R over L", turned.GetProperty("danced").GetString());

        // at 120 a count is half a second, and the count-in takes eight
        Assert.Equal(4 + (12 * 0.5), turned.GetProperty("start").GetDouble(), 4);
        Assert.Equal(Enumerable.Range(0, counts.Length - 1).Select(i => counts[i].GetProperty("end").GetDouble()), counts.Skip(1).Select(c => c.GetProperty("start").GetDouble()));
    }

    [Fact]
    public void A_chapter_begins_where_its_section_does()
    {
        CaptionModel model = Model(Repository.Read("demo/dances/tin-lantern.dance"), 120);

        Assert.Equal(("Intro", 0.0, 4.0), (model.Chapters[0].Text, model.Chapters[0].Start, model.Chapters[0].End));
        Assert.Equal("Wall 1, section 1: box with shuffles", model.Chapters[1].Text);
        Assert.Equal((8.0, 12.0), (model.Chapters[2].Start, model.Chapters[2].End));
        Assert.Contains(model.Chapters, c => c.Text == "Wall 2, tag Lamps");
        Assert.Equal(model.Chapters.Skip(1).Select(c => c.Start), model.Chapters.SkipLast(1).Select(c => c.End));
    }

    [Fact]
    public void A_call_stands_until_its_move_begins_and_never_into_the_next_call()
    {
        CaptionModel model = Model(Repository.Read("demo/dances/tin-lantern.dance"), 120);

        Assert.All(model.Calls, c => Assert.True(c.End > c.Start));
        Assert.Equal("right side", model.Calls[0].Text);
        CaptionCue vine = model.Calls.First(c => c.Text == "vine left");
        Assert.Equal(4 + (16 * 0.5), vine.End, 6);
    }

    private static CaptionModel Model(string text, double tempo)
    {
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(text));
        Timeline timeline = analysis.TrackTimelines.Count > 0 ? analysis.TrackTimelines[0].Timeline : analysis.PlainTimeline;
        CountClock clock = CountClock.Even(tempo, 8 * 60 / tempo);
        return CaptionBuilder.Build(analysis.Dance, timeline, clock, CallWriter.Write(analysis.Dance, timeline, clock));
    }

    private static double Seconds(string time) => TimeSpan.ParseExact(time, @"hh\:mm\:ss\.fff", CultureInfo.InvariantCulture).TotalSeconds;

    [GeneratedRegex(@"\AWEBVTT( [^\r\n]*)?\n\n([^\r\n]+\n\d\d+:[0-5]\d:[0-5]\d\.\d{3} --> \d\d+:[0-5]\d:[0-5]\d\.\d{3}\n(?:(?!-->)[^\r\n<])+\n\n)*\z")]
    private static partial Regex Vtt();

    [GeneratedRegex(@"(\d\d:\d\d:\d\d\.\d{3}) --> (\d\d:\d\d:\d\d\.\d{3})")]
    private static partial Regex Times();
}
