using Scuff.App.Playlists;
using Scuff.Sheets;
using Tests.Sheets;

namespace Tests.App.Playlists;

public sealed class EveningPlaylistTests
{
    [Fact]
    public void Songs_and_silence_follow_each_other_by_the_clock_of_the_programme()
    {
        EveningPaper paper = EveningSamples.Social;
        Playlist playlist = EveningPlaylist.ForFolder(paper, id => $"/music/{id}.mp3", copies: true);

        // from the first note on, each song begins when the programme says
        int clock = paper.Lines[0].LeadSeconds;
        Queue<EveningLine> dances = new(paper.Lines.Where(l => l.Kind == EveningLineKind.Dance));
        foreach (PlaylistEntry entry in playlist.Entries)
        {
            if (!entry.IsSilence)
            {
                EveningLine line = dances.Dequeue();
                Assert.Equal(line.StartSeconds + line.LeadSeconds, clock);
                Assert.Equal((line.Song, line.SongSeconds), (entry.Title, entry.Seconds));
            }

            clock += entry.Seconds;
        }

        Assert.Empty(dances);
        Assert.False(playlist.Entries[0].IsSilence);
        Assert.False(playlist.Entries[^1].IsSilence);
        Assert.Equal(default, playlist.LeftOut);
    }

    [Fact]
    public void A_rest_and_a_lesson_are_entries_that_say_what_they_are()
    {
        Playlist playlist = EveningPlaylist.ForFolder(EveningSamples.Small, id => $"/music/{id}.mp3", copies: true);

        Assert.Contains(playlist.Entries, e => e is { IsSilence: true, Title: "Rest", Seconds: 600, Location: "silence 600 s.wav" });
        Assert.Contains(playlist.Entries, e => e is { IsSilence: true, Title: "Lesson: Capstan Stomp", Seconds: 900 });
        Assert.Contains(playlist.Entries, e => e is { IsSilence: true, Title: "Before Tin Lantern", Seconds: EveningSamples.Between });
    }

    [Fact]
    public void Time_that_is_left_unused_is_silence_too()
    {
        EveningPaper paper = EveningSamples.Of("Two", 20, [EveningSamples.Dance("market-day"), EveningSamples.Dance("first-tide")]);
        EveningLine later = paper.Lines[1] with { StartSeconds = paper.Lines[1].StartSeconds + 95 };

        Playlist playlist = EveningPlaylist.ForFolder(paper with { Lines = [paper.Lines[0], later] }, id => $"/music/{id}.mp3", copies: true);

        Assert.Equal(95 + EveningSamples.Between, playlist.Entries[1].Seconds);
    }

    [Fact]
    public void Copies_have_plain_numbered_names_and_a_song_that_comes_twice_lies_there_once()
    {
        Playlist playlist = EveningPlaylist.ForFolder(EveningSamples.Social, id => $"/music/{id}.MP3", copies: true);
        PlaylistEntry[] songs = [.. PlaylistFolder.Songs(playlist)];

        Assert.Equal("01 Two Hours till Tea.mp3", songs[0].Location);
        Assert.Equal(songs.Length, songs.Select(s => s.Source).Distinct().Count());
        Assert.Equal(Enumerable.Range(1, songs.Length).Select(n => n.ToString("00", null)), songs.Select(s => s.Location[..2]));
        Assert.True(songs.Length < playlist.Entries.Count(e => !e.IsSilence));
    }

    [Fact]
    public void Names_hold_no_sign_that_a_player_might_read_as_part_of_an_address()
    {
        foreach (string title in Handouts.HandoutSamples.Hostile)
        {
            EveningPaper paper = EveningSamples.Of("One", 20, [EveningSamples.Dance("market-day") with { Song = title }]);
            string name = Assert.Single(EveningPlaylist.ForFolder(paper, _ => "/music/x.mp3", copies: true).Entries).Location;

            Assert.StartsWith("01 ", name, StringComparison.Ordinal);
            Assert.EndsWith(".mp3", name, StringComparison.Ordinal);
            Assert.DoesNotContain(name, c => "#%?;[]<>:\"/\\|*\n\r".Contains(c, StringComparison.Ordinal) || char.IsControl(c));
        }
    }

    [Fact]
    public void Without_copies_songs_are_played_from_where_they_are()
    {
        Playlist playlist = EveningPlaylist.ForFolder(EveningSamples.Small, id => $"/music/{id}.mp3", copies: false);

        Assert.All(playlist.Entries.Where(e => !e.IsSilence), e => Assert.Equal(e.Source, e.Location));
        Assert.Empty(PlaylistFolder.Songs(playlist));
    }

    [Fact]
    public void A_song_without_audio_is_told_and_its_time_is_kept()
    {
        EveningPaper paper = EveningSamples.Of("Three", 20, [EveningSamples.Dance("market-day"), EveningSamples.Dance("first-tide"), EveningSamples.Dance("gangplank")]);
        Playlist playlist = EveningPlaylist.ForFolder(paper, id => id == "track-first-tide" ? null : $"/music/{id}.mp3", copies: true);

        Assert.Equal(["The club has no audio of “Low Water Lullaby” for First Tide; play it from elsewhere."], playlist.LeftOut);
        Assert.Equal(["Crates and Carnations", "Before First Tide", "From elsewhere: First Tide", "Before Gangplank", "Mind Your Step, Madam"], playlist.Entries.Select(e => e.Title));
        Assert.Equal(paper.Lines[1].SongSeconds, playlist.Entries[2].Seconds);
    }

    [Fact]
    public void A_list_of_songs_alone_has_no_silence()
    {
        Playlist playlist = EveningPlaylist.OfSongs(EveningSamples.Small, id => $"/music/{id}.mp3");

        Assert.Equal(EveningSamples.Small.Lines.Count(l => l.Kind == EveningLineKind.Dance), playlist.Entries.Count);
        Assert.All(playlist.Entries, e => Assert.False(e.IsSilence));
    }
}
