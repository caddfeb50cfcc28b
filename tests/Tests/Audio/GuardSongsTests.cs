using Scuff;
using Scuff.Audio.Evaluation;
using Scuff.Music;

namespace Tests.Audio;

/// <summary>
/// Four songs that no ear was trained on are heard about as well as when this was written: the limits lie a little below what was
/// measured then, so that a change for the worse is seen at once. How good the analysis is on many songs, the bench says.
/// </summary>
public sealed class GuardSongsTests(GuardSongs songs) : IClassFixture<GuardSongs>
{
    public static TheoryData<string> Names => [.. GuardSongs.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void Beats_downbeats_tempo_and_the_first_count_are_right(string name)
    {
        TrackScore score = songs[name].Score;
        Assert.InRange(score.BeatF!.Value, 0.985, 1);
        Assert.InRange(score.DownbeatF!.Value, 0.98, 1);
        Assert.InRange(songs[name].Map.Tempo.Value / songs[name].Truth.TempoBpm, 0.998, 1.002);
        Assert.True(score.IsFirstCountRight);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Swing_is_told_from_straight(string name)
    {
        Assert.True(songs[name].Score.IsSwingClassRight);
        Assert.Equal(songs[name].Recipe.Swing, songs[name].Map.Swing.Value, 0.12);
    }

    // the two-step's count misses an added bar, which the bench counts against it too
    [Theory]
    [InlineData("TwoStep 2", 0.72)]
    [InlineData("ChaCha 4", 0.98)]
    [InlineData("Waltz 5", 0.97)]
    [InlineData("PopRock 10", 0.98)]
    public void Count_ones_are_where_they_were_played(string name, double least)
        => Assert.InRange(songs[name].Score.CountOneF!.Value, least, 1);

    [Theory]
    [InlineData("TwoStep 2", 0.45)]
    [InlineData("ChaCha 4", 0.8)]
    [InlineData("Waltz 5", 0.65)]
    [InlineData("PopRock 10", 0.7)]
    public void Sections_begin_where_they_were_played(string name, double least)
        => Assert.InRange(songs[name].Score.BoundaryFHalfSecond!.Value, least, 1);

    [Theory]
    [MemberData(nameof(Names))]
    public void A_waltz_is_told_from_four(string name)
    {
        Meter meter = songs[name].Map.Meter.Value;
        Assert.Equal(songs[name].Truth.Meter, meter.BeatsInBar);
        Assert.False(meter.IsCompound);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_stop_is_found_and_none_is_made_up(string name)
    {
        BreakTally stops = songs[name].Score.Breaks!.Value;
        Assert.Equal(stops.Truths, stops.Hits);
        Assert.Equal(stops.Truths, stops.Answers);
    }

    [Theory]
    [InlineData("TwoStep 2")]
    [InlineData("PopRock 10")]
    public void A_halved_bar_shows_in_the_counts_at_its_place(string name)
    {
        TrackTruth truth = songs[name].Truth;
        ValueList<int> counts = truth.Counts!.Value;
        double after = truth.Beats[Enumerable.Range(1, counts.Count - 1).Single(i => counts[i] == 1 && counts[i - 1] is 2 or 6)];
        TrackBeat[] beats = [.. songs[name].Map.Beats];
        Assert.Contains(beats.Zip(beats.Skip(1)), p => p.Second.Count == 1 && p.First.Count is 2 or 6 && Math.Abs(p.Second.Seconds - after) < 0.07);
    }

    [Fact]
    public void The_songs_have_the_oddities_that_the_tests_are_about()
    {
        Assert.Equal(4, songs.Songs.Sum(s => s.Score.Breaks!.Value.Truths));
        Assert.Contains(songs.Songs, s => s.Truth.Meter == 3);
        Assert.Contains(songs.Songs, s => s.Recipe.Swing > 1.6);
        Assert.Equal(2, songs.Songs.Count(s => s.Recipe.Sections.Any(r => r.ShortBar == 2)));
    }
}
