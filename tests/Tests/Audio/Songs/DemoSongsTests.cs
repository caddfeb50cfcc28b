using Scuff.Audio.Evaluation;
using Scuff.Audio.Songs;
using Scuff.Dances;
using Scuff.Prose;
using Scuff.Timelines;
using Tests.House;

namespace Tests.Audio.Songs;

/// <summary>The demo club's songs are the tracks that its dances name.</summary>
public sealed class DemoSongsTests
{
    public static TheoryData<string> Titles => [.. DemoSongs.All.Select(s => s.Recipe.Title)];

    [Theory]
    [MemberData(nameof(Titles))]
    public void A_song_has_the_tempo_the_intro_and_the_length_that_its_dance_states(string title)
    {
        (DemoSong song, Track track, _) = Found(title);
        Assert.Equal(track.Artist, song.Artist);
        Assert.Equal((double)track.Tempo!.Value.BeatsPerMinute.Numerator / track.Tempo.Value.BeatsPerMinute.Denominator, song.Recipe.Tempo);
        TrackTruth truth = Song.From(song.Recipe).Truth("x");
        Assert.Equal(track.Intro!.Value.Value.Numerator, truth.Sections!.Value[0].Beats);
        Assert.InRange(truth.TempoBpm / song.Recipe.Tempo, 0.99, 1.01);
        if (track.LengthSeconds is { } length)
        {
            Assert.InRange(Song.From(song.Recipe).Seconds - ((double)length.Numerator / length.Denominator), -1.5, 1.5);
        }
    }

    [Theory]
    [MemberData(nameof(Titles))]
    public void A_section_begins_wherever_a_wall_begins(string title)
    {
        (DemoSong song, Track track, Dance dance) = Found(title);
        TrackTruth truth = Song.From(song.Recipe).Truth("x");
        int before = song.Recipe.CountInBeats + song.Recipe.PickupBeats + truth.Sections!.Value[0].Beats;
        double[] starts = [.. truth.Sections!.Value.Select(s => s.Start)];
        Timeline danced = Unroller.Unroll(dance, PlanBuilder.ForTrack(dance, track, withEnding: true));
        TimedStretch[] walls = [.. danced.Stretches.Where(s => s.Plan.StartsWall)];
        Assert.NotEmpty(walls);
        Assert.All(walls, w => Assert.Contains(truth.Beats[before + (int)w.Span.Start.Value.Numerator], starts));

        // the music lasts until the dance is over
        Assert.True(before + danced.Stretches[^1].Span.End.Value.Numerator <= truth.Beats.Count);
    }

    [Fact]
    public void Titles_and_dances_are_named_once()
    {
        Assert.Equal(DemoSongs.All.Count, DemoSongs.All.Select(s => s.Recipe.Title).Distinct().Count());
        Assert.InRange(DemoSongs.All.Count, 6, 12);
    }

    private static (DemoSong Song, Track Track, Dance Dance) Found(string title)
    {
        DemoSong song = DemoSongs.All.Single(s => s.Recipe.Title == title);
        Dance dance = DanceReader.Read(Repository.Read($"demo/dances/{song.Dance}.dance")).Dance;
        return (song, dance.Tracks.Single(t => t.Title == title), dance);
    }
}
