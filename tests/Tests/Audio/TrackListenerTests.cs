using Scuff.Audio;
using Scuff.Audio.Signals;
using Scuff.Music;

namespace Tests.Audio;

/// <summary>From sound to a map: what is there is found, what is not there is not made up.</summary>
public sealed class TrackListenerTests
{
    [Theory]
    [InlineData(60)]
    [InlineData(90)]
    [InlineData(120)]
    [InlineData(150)]
    public void A_click_track_has_the_tempo_and_the_beats_of_its_clicks(int tempo)
    {
        // tempo is by definition sixty seconds over the seconds of a beat
        double[] clicks = [.. Enumerable.Range(0, tempo).Select(i => 0.4 + (i * 60.0 / tempo)).Where(t => t < 59.9)];
        TrackMap map = TrackListener.Listen(MadeSounds.Clicks(clicks, 60.5), cancel: TestContext.Current.CancellationToken);
        Assert.InRange(map.Tempo.Value, tempo * 0.999, tempo * 1.001);
        double furthest = map.Beats.Max(b => clicks.Min(c => Math.Abs(c - b.Seconds)));
        double missed = clicks.Max(c => map.Beats.Min(b => Math.Abs(c - b.Seconds)));
        Assert.InRange(furthest, 0, 0.02);
        Assert.InRange(missed, 0, 0.02);
    }

    [Fact]
    public void Clicks_at_200_are_counted_at_200_or_at_half_and_the_other_tempo_is_offered()
    {
        // bare clicks do not say which: people tap either
        double[] clicks = [.. Enumerable.Range(0, 198).Select(i => 0.4 + (i * 0.3))];
        TrackMap map = TrackListener.Listen(MadeSounds.Clicks(clicks, 60.5), cancel: TestContext.Current.CancellationToken);
        double[] tempos = [map.Tempo.Value, .. map.Tempo.Alternatives.Select(a => a.Value)];
        Assert.Contains(tempos, t => Math.Abs(t - 200) < 0.2);
        Assert.Contains(tempos, t => Math.Abs(t - 100) < 0.1);
        Assert.Contains(map.Tempo.Value, tempos.Where(t => Math.Abs(t - 200) < 0.2 || Math.Abs(t - 100) < 0.1));
        Assert.All(map.Beats, b => Assert.InRange(clicks.Min(c => Math.Abs(c - b.Seconds)), 0, 0.02));
    }

    [Fact]
    public void Counts_run_on_and_sections_fill_the_track()
    {
        double[] clicks = [.. Enumerable.Range(0, 100).Select(i => 0.4 + (i * 0.5))];
        TrackMap map = TrackListener.Listen(MadeSounds.Clicks(clicks, 51), cancel: TestContext.Current.CancellationToken);
        int cycle = map.Meter.Value.BeatsInEight;
        Assert.All(map.Beats, b => Assert.InRange(b.Count, 1, cycle));
        Assert.All(map.Beats, b => Assert.Equal(((b.Count - 1) % map.Meter.Value.BeatsInBar) + 1, b.BarPosition));
        Assert.All(map.Beats.Zip(map.Beats.Skip(1)), p => Assert.True(p.First.Seconds < p.Second.Seconds));
        Assert.All(map.Sections, s => Assert.Equal(1, map.Beats[s.FirstBeat].Count));
        Assert.All(map.Sections.Zip(map.Sections.Skip(1)), p => Assert.Equal(p.First.FirstBeat + p.First.Beats, p.Second.FirstBeat));
        Assert.Equal(map.Beats.Count, map.Sections[^1].FirstBeat + map.Sections[^1].Beats);
        Assert.InRange(map.Tempo.Confidence + map.Tempo.Alternatives.Sum(a => a.Confidence), 0, 1.000001);
        Assert.Equal([60.0, 240.0], map.Tempo.Alternatives.Select(a => Math.Round(a.Value)).Order());
    }

    public static TheoryData<string> Beatless =>
        ["silence", "nothing", "one second of noise", "one second of silence", "a steady tone", "white noise"];

    [Theory]
    [MemberData(nameof(Beatless))]
    public void Sound_without_a_beat_gives_no_beats_and_says_so(string kind)
    {
        MonoAudio audio = kind switch
        {
            "silence" => new MonoAudio(new float[30 * Hearing.Rate], Hearing.Rate),
            "nothing" => new MonoAudio([], Hearing.Rate),
            "one second of noise" => MadeSounds.Noise(1, 0.3, 5),
            "one second of silence" => new MonoAudio(new float[Hearing.Rate], Hearing.Rate),
            "a steady tone" => MadeSounds.Tone(30, 440, 0.3),
            _ => MadeSounds.Noise(30, 0.3, 7),
        };
        TrackMap map = TrackListener.Listen(audio, cancel: TestContext.Current.CancellationToken);
        Assert.Empty(map.Beats);
        Assert.EndsWith(".", map.Remark, StringComparison.Ordinal);
        Assert.Equal(0, map.Tempo.Value);
        Assert.Equal(-1, map.FirstCount.Value);
        Assert.Empty(map.Sections);
        Assert.Empty(map.Breaks);
        Assert.Equal(audio.Seconds, map.Seconds);
    }

    [Fact]
    public void The_same_sound_gives_an_equal_map()
    {
        double[] clicks = [.. Enumerable.Range(0, 40).Select(i => 0.4 + (i * 0.53))];
        TrackMap first = TrackListener.Listen(MadeSounds.Clicks(clicks, 22), cancel: TestContext.Current.CancellationToken);
        TrackMap second = TrackListener.Listen(MadeSounds.Clicks(clicks, 22), cancel: TestContext.Current.CancellationToken);
        Assert.Equal(first, second);
        Assert.NotEmpty(first.Beats);
    }

    [Fact]
    public void A_quiet_copy_has_the_beats_of_a_loud_one()
    {
        double[] clicks = [.. Enumerable.Range(0, 40).Select(i => 0.4 + (i * 0.53))];
        TrackMap loud = TrackListener.Listen(MadeSounds.Clicks(clicks, 22), cancel: TestContext.Current.CancellationToken);
        TrackMap quiet = TrackListener.Listen(MadeSounds.Clicks(clicks, 22, 0.005), cancel: TestContext.Current.CancellationToken);
        Assert.Equal(loud.Beats.Count, quiet.Beats.Count);
        Assert.All(loud.Beats.Zip(quiet.Beats), p => Assert.Equal(p.First.Seconds, p.Second.Seconds, 0.005));
    }

    [Theory]
    [InlineData(44_100)]
    [InlineData(22_051)]
    [InlineData(8_000)]
    public void Another_rate_is_refused(int rate)
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(
            () => TrackListener.Listen(new MonoAudio(new float[rate], rate), cancel: TestContext.Current.CancellationToken));
        Assert.Contains($"{rate}", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cancelled_listening_ends()
    {
        using CancellationTokenSource source = new();
        source.Cancel();
        Assert.Throws<OperationCanceledException>(() => TrackListener.Listen(MadeSounds.Noise(5, 0.3, 3), cancel: source.Token));
    }
}
