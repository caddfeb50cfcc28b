using Scuff.Audio.Decoding;
using Scuff.Audio.Songs;
using Tests.Audio;

namespace Tests.App;

public sealed class CallTrackCommandTests
{
    private const int Rate = SongRenderer.Rate;

    [Theory]
    [InlineData("100", 0.5)]
    [InlineData("80", 0.625)]
    public void Every_count_is_struck_on_time_from_the_count_in_to_the_end(string speed, double secondsPerCount)
    {
        using ProgramRun run = new();
        run.Put("a.dance", ProgramRun.CleanDance);

        Assert.Equal(0, run.Run("calltrack", "--bpm", "120", "--speed", speed, "--help-level", "silent", "a.dance"));

        StereoSound heard = AudioFile.ReadSides(Path.Combine(run.Folder, "a.calls.wav")).Sound;
        Assert.Contains("Wrote a.calls.wav", run.Out, StringComparison.Ordinal);
        int counts = 0;

        // the count-in speaks over its last four clicks
        for (int count = 0; count < 24; count++)
        {
            if (count is < 4 or >= 9)
            {
                double at = count * secondsPerCount;
                Assert.InRange(Measured.Onset(heard.Left, Rate, at - 0.1, at + 0.1, 0.15f) - at, -0.003, 0.003);
                counts++;
            }
        }

        Assert.Equal(19, counts);
    }

    [Fact]
    public void Her_own_words_are_said_with_her_recordings_and_the_rest_by_the_voice_that_comes_along()
    {
        using ProgramRun run = new();
        run.Put("a.dance", ProgramRun.CleanDance);
        Directory.CreateDirectory(Path.Combine(run.Folder, "words"));
        float[] tone = [.. Enumerable.Range(0, Rate / 4).Select(i => (float)(0.4 * Math.Sin(2 * Math.PI * 333 * i / Rate)))];
        using (FileStream file = File.Create(Path.Combine(run.Folder, "words", "5.wav")))
        {
            new StereoSound(tone, tone, Rate).WriteWav(file);
        }

        Assert.Equal(0, run.Run("calltrack", "--bpm", "120", "--voice", "words", "a.dance", "-o", "b.wav"));

        float[] heard = AudioFile.ReadSides(Path.Combine(run.Folder, "b.wav")).Sound.Left;
        Assert.InRange(Measured.Amplitude(heard.AsSpan((int)(2.05 * Rate), Rate / 8), Rate, 333), 0.1, 0.5);
        Assert.InRange(Measured.Rms(heard.AsSpan((int)(2.55 * Rate), Rate / 5)), 0.02, 0.5);
    }

    [Fact]
    public void Over_a_track_the_count_in_is_spoken_on_the_counts_of_the_map_at_practice_speed()
    {
        using ProgramRun run = new();
        DemoSong song = DemoSongs.All[0];
        run.Put("a.dance", File.ReadAllText(Path.Combine(House.Repository.Root, "demo", "dances", song.Dance + ".dance")));
        using (FileStream file = File.Create(Path.Combine(run.Folder, "song.wav")))
        {
            // its beginning is enough
            SongRecipe begins = song.Recipe with { Sections = [.. song.Recipe.Sections.Take(3)] };
            SongRenderer.Render(Song.From(begins)).WriteWav(file, song.Recipe.Title, song.Artist);
        }

        Assert.InRange(run.Run("calls", "--cache", "kept", "--speed", "80", "--format", "json", "a.dance", "song.wav"), 0, 1);
        (double Seconds, string Words)[] numbers =
        [
            .. System.Text.Json.JsonDocument.Parse(run.Out).RootElement.GetProperty("calls").EnumerateArray()
                .Where(c => c.GetProperty("kind").GetString() == "count-in")
                .Select(c => (c.GetProperty("seconds").GetDouble(), c.GetProperty("words").GetString()!)),
        ];
        Assert.InRange(run.Run("calltrack", "--cache", "kept", "--speed", "80", "a.dance", "song.wav", "-o", "slow.wav"), 0, 1);

        float[] heard = AudioFile.ReadSides(Path.Combine(run.Folder, "slow.wav")).Sound.Left;
        Scuff.Audio.Voices.Speaker speaker = new(new Scuff.Audio.Voices.ShippedVoice());
        Assert.InRange(numbers.Length, 4, 8);
        Assert.All(
            numbers.Where(n => n.Words.Length == 1),
            n => Assert.InRange(Measured.Lag(heard, Rate, speaker.Say(n.Words).Sound.Samples, n.Seconds), -0.010, 0.010));
    }

    [Theory]
    [InlineData("x.ogg does not say what kind of file to write", "-o", "x.ogg", "a.dance")]
    [InlineData("There is no file or folder named no.mp3.", "a.dance", "no.mp3")]
    [InlineData("There is no such folder of recordings.", "--voice", "nowhere", "a.dance")]
    [InlineData("--speed takes per cent between", "--speed", "fast", "a.dance")]
    [InlineData("There is no help named loud", "--help-level", "loud", "a.dance")]
    [InlineData("no.dance", "no.dance")]
    [InlineData("holds no music", "a.dance", "a.track")]
    [InlineData("its folder does not exist", "-o", "no/where.wav", "a.dance")]
    public void Wrong_input_gets_a_sentence_and_nothing_is_written(string sentence, params string[] args)
    {
        using ProgramRun run = new();
        run.Put("a.dance", ProgramRun.CleanDance);
        run.Put("a.track", "title: Quay Road\ntempo 116, first beat 0.4, 4/4\nintro 32, A 32, B 32, A 32, B 32, A 32, B 32\n");

        Assert.Equal(2, run.Run(["calltrack", .. args]));

        Assert.Contains(sentence, run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain(Directory.EnumerateFiles(run.Folder), f => f.EndsWith(".wav", StringComparison.Ordinal) || f.EndsWith(".tmp", StringComparison.Ordinal));
    }

    [Fact]
    public void Words_that_nobody_can_say_are_told_with_a_way_out()
    {
        using ProgramRun run = new();
        run.Put("a.dance", ProgramRun.CleanDance.Replace("3-4  step R forward, touch L together", "3-4  step R forward, touch L together\ncall: hullabaloo", StringComparison.Ordinal));

        int code = run.Run("calltrack", "--bpm", "100", "a.dance");

        Assert.Equal(1, code);
        Assert.Contains("No voice can say: hullabaloo. Record them", run.Error, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(run.Folder, "a.calls.wav")));
    }
}
