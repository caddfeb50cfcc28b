using System.Security.Cryptography;
using Scuff.Repertoire;
using Scuff.Repertoire.Storage;

namespace Tests.Repertoire;

public sealed class ClubTracksTests : IDisposable
{
    private static readonly byte[] Sound = [.. Enumerable.Range(0, 300_000).Select(i => (byte)(i * 31 % 251))];

    private readonly ClubHouse _house = new();

    private ClubTracks Tracks => _house.Club.Tracks;

    private string Music => Path.Combine(_house.ClubFolder, "music");

    public void Dispose() => _house.Dispose();

    [Fact]
    public void A_sound_file_is_kept_byte_for_byte_under_its_digest()
    {
        TrackAdded added = Add(Sound, "Out of Harbour.MP3", new TrackFacts { Title = "Out of Harbour", Artist = "The Demo Band", Seconds = 181.25, Tempo = 112 });
        _house.Reopen();

        TrackRow track = Tracks.Get(added.Track.Id)!;
        Assert.Equal(added.Track, track);
        Assert.True(added.WasNew);
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(Sound)), track.Digest);
        Assert.Equal(("Out of Harbour.MP3", "audio/mpeg", 300_000L, 181.25), (track.FileName, track.MediaType, track.Bytes, track.Facts.Seconds));
        Assert.Equal([track.Digest + ".mp3"], FilesOfMusic());
        Assert.Equal(Sound, Read(track.Id));
        Assert.Equal(Sound, File.ReadAllBytes(Tracks.AudioPath(track.Id)!));
    }

    [Fact]
    public void The_same_file_twice_is_one_track()
    {
        TrackAdded first = Add(Sound, "a.mp3");
        Tracks.Remove(first.Track.Id);

        TrackAdded again = Add(Sound, "b.flac");

        Assert.False(again.WasNew);
        Assert.Equal(first.Track.Id, again.Track.Id);
        Assert.Null(again.Track.RemovedAt);
        Assert.Equal("a.mp3", again.Track.FileName);
        Assert.Single(FilesOfMusic());
    }

    [Fact]
    public void Audio_that_is_missing_is_told_and_put_back_by_the_same_file()
    {
        string id = Add(Sound, "a.mp3", new TrackFacts { Title = "Out of Harbour" }).Track.Id;
        File.Delete(Tracks.AudioPath(id)!);

        ClubTrouble trouble = Assert.Throws<ClubTrouble>(() => Tracks.OpenAudio(id));
        Assert.Equal(ClubTroubleKind.NoAudio, trouble.Kind);
        Assert.Equal("The audio of “Out of Harbour” is missing from the club. Drop its sound file here again; map and corrections are still there.", trouble.Message);
        Assert.Null(Tracks.AudioPath(id));

        Assert.Equal(id, Add(Sound, "a.wav").Track.Id);
        Assert.Equal(Sound, Read(id));
        Assert.Equal("audio/wav", Tracks.Get(id)!.MediaType);
    }

    [Fact]
    public void A_file_that_breaks_off_leaves_nothing()
    {
        ClubTrouble trouble = Assert.Throws<ClubTrouble>(() => Tracks.Add(new BreaksOff(200_000), "a.mp3", new TrackFacts()));

        Assert.Equal("The sound file could not be read to its end, so nothing of it was taken. Bring it again.", trouble.Message);

        Assert.Empty(FilesOfMusic());
        Assert.Equal(0, Tracks.Search(new TrackQuery()).Total);
    }

    [Fact]
    public void A_file_without_end_is_refused_in_words()
    {
        MusicFolder folder = new(_house.ClubFolder);

        ClubTrouble trouble = Assert.Throws<ClubTrouble>(() => folder.Take(new Endless(), largest: 3 << 20));

        Assert.Equal(ClubTroubleKind.TooLarge, trouble.Kind);
        Assert.Equal("The sound file is larger than 3 MB, so it was not taken. Save it as MP3, M4A or FLAC, or cut it to the song.", trouble.Message);
        Assert.Empty(FilesOfMusic());
    }

    [Theory]
    [InlineData("../../../etc/passwd", "passwd", ".sound")]
    [InlineData("..\\..\\boot.ini", "boot.ini", ".sound")]
    [InlineData("evil.html", "evil.html", ".sound")]
    [InlineData("a.mp3/../../b.exe", "b.exe", ".sound")]
    [InlineData("song.mp3.php", "song.mp3.php", ".sound")]
    [InlineData("tab\tand\nline.OGG", "tabandline.OGG", ".ogg")]
    [InlineData("", "", ".sound")]
    [InlineData("...", "...", ".sound")]
    public void The_name_a_file_came_with_leads_nowhere(string name, string kept, string ending)
    {
        TrackRow track = Add(Sound, name).Track;

        Assert.Equal(kept, track.FileName);
        Assert.Equal([track.Digest + ending], FilesOfMusic());
        Assert.Equal(ending == ".ogg" ? "audio/ogg" : "application/octet-stream", track.MediaType);
    }

    [Fact]
    public void A_long_name_keeps_its_ending() => Assert.EndsWith("x.flac", Add(Sound, new string('x', 5000) + ".flac").Track.FileName, StringComparison.Ordinal);

    [Fact]
    public void A_track_may_have_no_audio()
    {
        TrackRow track = Tracks.AddWithoutAudio("by hand.track", new TrackFacts { Title = "Hand" });

        Assert.False(track.HasAudio);
        Assert.Equal("", track.MediaType);
        Assert.Equal(ClubTroubleKind.NoAudio, Assert.Throws<ClubTrouble>(() => Tracks.OpenAudio(track.Id)).Kind);
        Tracks.AddWithoutAudio("another.track", new TrackFacts());
        Assert.Equal(2, Tracks.Search(new TrackQuery()).Total);
        Tracks.Remove(track.Id);
        Assert.Equal(1, Tracks.EmptyBin());
    }

    [Fact]
    public void A_map_comes_back_as_it_was_kept()
    {
        string id = Add(Sound, "a.mp3").Track.Id;
        string map = "{\"beats\":[" + string.Join(',', Enumerable.Range(0, 800).Select(i => i * 0.5357)) + "],\"é\":\"🎵\"}";
        Assert.Null(Tracks.Map(id));
        Assert.False(Tracks.Get(id)!.HasMap);

        Assert.True(Tracks.SaveMap(id, map, "scuff 1"));

        Assert.Equal(map, Tracks.Map(id));
        Assert.Equal("scuff 1", Tracks.Get(id)!.HeardBy);
        Assert.False(Tracks.SaveMap("t99", map, "scuff 1"));
        Assert.Throws<ArgumentException>(() => Tracks.SaveMap(id, map, ""));
    }

    [Fact]
    public void What_a_map_teaches_is_known_in_the_moment_the_map_is()
    {
        string id = Add(Sound, "a.mp3").Track.Id;
        Tracks.SetFacts(id, new TrackFacts { Artist = "The Lamplighters" });
        Assert.True(Tracks.SaveMap(id, "map", "scuff 1", known =>
        {
            return known with { Title = "Low Water", Tempo = 104 };
        }));

        TrackRow track = Tracks.Get(id)!;
        Assert.True(track.HasMap);
        Assert.Equal(new TrackFacts { Title = "Low Water", Artist = "The Lamplighters", Tempo = 104 }, track.Facts);
        Assert.Contains(Tracks.Search(new TrackQuery { Words = "low water" }).Rows, r => r.Id == id);
    }

    [Fact]
    public void Corrections_are_not_saved_over_someone_elses()
    {
        string id = Add(Sound, "a.mp3").Track.Id;
        Assert.Equal(new TrackCorrection("", 0), Tracks.Corrections(id));

        Assert.Equal(new SaveOutcome.Saved(1), Tracks.SaveCorrections(id, "one 3.2", 0));
        Assert.Equal(new SaveOutcome.Changed(1, "one 3.2"), Tracks.SaveCorrections(id, "half", 0));
        Assert.Equal(new SaveOutcome.Saved(1), Tracks.SaveCorrections(id, "one 3.2", 0));
        Assert.Equal(new SaveOutcome.Saved(2), Tracks.SaveCorrections(id, "", 1));
        Assert.Equal(new TrackCorrection("", 2), Tracks.Corrections(id));

        Tracks.SaveMap(id, "heard again", "scuff 2");
        Assert.Equal(2, Tracks.Get(id)!.CorrectionsRevision);
        Assert.IsType<SaveOutcome.Gone>(Tracks.SaveCorrections("t99", "x", 0));
        Assert.Null(Tracks.Corrections("t99"));
    }

    [Fact]
    public void Tracks_are_found_by_title_artist_file_and_tag()
    {
        string a = Add([1], "harbour-mix.mp3", new TrackFacts { Title = "Émile's Waltz", Artist = "Demo Band", Tempo = 90 }).Track.Id;
        string b = Add([2], "b.mp3", new TrackFacts { Title = "Boat", Artist = "Zed", Tempo = 120 }).Track.Id;
        Tracks.SetTags(b, ["Warm up"]);

        Assert.Equal(a, Assert.Single(Tracks.Search(new TrackQuery { Words = "emil demo" }).Rows).Id);
        Assert.Equal(a, Assert.Single(Tracks.Search(new TrackQuery { Words = "harb" }).Rows).Id);
        Assert.Equal(b, Assert.Single(Tracks.Search(new TrackQuery { Words = "warm" }).Rows).Id);
        Assert.Equal(b, Assert.Single(Tracks.Search(new TrackQuery { Tag = "WARM UP" }).Rows).Id);
        Assert.Equal([b, a], Tracks.Search(new TrackQuery()).Rows.Select(t => t.Id));
        Assert.Equal([a, b], Tracks.Search(new TrackQuery { Order = TrackOrder.Artist }).Rows.Select(t => t.Id));
        Assert.Equal([a, b], Tracks.Search(new TrackQuery { Order = TrackOrder.Tempo }).Rows.Select(t => t.Id));
        Assert.Equal([b, a], Tracks.Search(new TrackQuery { Order = TrackOrder.LastAdded }).Rows.Select(t => t.Id));
        Assert.Equal("Warm up", Assert.Single(Tracks.Tags()).Tag);

        Tracks.SetFacts(a, new TrackFacts { Title = "Renamed" });
        Assert.Equal(0, Tracks.Search(new TrackQuery { Words = "emil" }).Total);
        Assert.Equal("Renamed", Tracks.Search(new TrackQuery { Words = "renam" }).Rows.Single().Facts.Title);
    }

    [Fact]
    public void The_same_song_in_another_file_is_told()
    {
        string a = Add([1], "a.mp3", new TrackFacts { Title = "Boat", Artist = "Zed", Seconds = 180.0 }).Track.Id;
        TrackAdded b = Add([2], "b.flac", new TrackFacts { Title = "BOAT ", Artist = "zéd", Seconds = 180.9 });
        Add([3], "c.mp3", new TrackFacts { Title = "Boat", Artist = "Zed", Seconds = 240 });
        Add([4], "d.mp3", new TrackFacts { Title = "Boat", Artist = "Other", Seconds = 180 });
        Add([5], "e.mp3", new TrackFacts { Title = "Boat", Artist = "Zed" });

        Assert.Equal([a], b.SameSong);
        DuplicateGroup group = Assert.Single(Tracks.Duplicates());
        Assert.Equal((DuplicateReason.SameSong, $"{a} {b.Track.Id}"), (group.Reason, string.Join(' ', group.Ids)));
    }

    [Fact]
    public void An_emptied_bin_takes_the_audio_with_it_and_nothing_else()
    {
        string gone = Add([1], "a.mp3").Track.Id;
        string stays = Add([2], "b.mp3").Track.Id;
        Assert.True(Tracks.Remove(gone));
        Assert.False(Tracks.Remove(gone));
        Assert.Equal(gone, Assert.Single(Tracks.Search(new TrackQuery { InBin = true }).Rows).Id);
        Assert.True(Tracks.BringBack(gone));
        Tracks.Remove(gone);

        Assert.Equal(1, Tracks.EmptyBin());

        Assert.Null(Tracks.Get(gone));
        Assert.Equal([2], Read(stays));
        Assert.Single(FilesOfMusic());
    }

    [Fact]
    public async Task The_same_file_dropped_from_twenty_pages_at_once_is_one_track()
    {
        List<TrackAdded> added = [];
        await Parallel.ForAsync(0, 20, (_, _) =>
        {
            TrackAdded one = Add(Sound, "a.mp3");
            lock (added)
            {
                added.Add(one);
            }

            return ValueTask.CompletedTask;
        });

        Assert.Single(added.Select(a => a.Track.Id).Distinct());
        Assert.Single(added, a => a.WasNew);
        Assert.Single(FilesOfMusic());
        Assert.Equal(Sound, Read(added[0].Track.Id));
    }

    [Fact]
    public void Changes_of_tracks_are_told()
    {
        List<string> told = [];
        _house.Club.Changed += (_, change) => told.AddRange(change.Tracks);

        string id = Add(Sound, "a.mp3").Track.Id;
        Tracks.SaveMap(id, "m", "1");
        Tracks.SaveCorrections(id, "c", 0);
        Tracks.SetTags(id, ["x"]);
        Tracks.Remove(id);
        Tracks.Remove(id);

        Assert.Equal(5, told.Count);
    }

    private TrackAdded Add(byte[] sound, string name, TrackFacts? facts = null) => Tracks.Add(new MemoryStream(sound), name, facts ?? new TrackFacts());

    private byte[] Read(string id)
    {
        using Stream audio = Tracks.OpenAudio(id);
        Assert.True(audio.CanSeek);
        using MemoryStream all = new();
        audio.CopyTo(all);
        return all.ToArray();
    }

    private IEnumerable<string> FilesOfMusic() => Directory.Exists(Music) ? Directory.GetFiles(Music).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal) : [];

    private class Endless : Stream
    {
        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get; set; }

        public override void Flush()
        {
        }

        public override int Read(byte[] buffer, int offset, int count) => count;

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }

    private sealed class BreaksOff(int after) : Endless
    {
        private int _given;

        public override int Read(byte[] buffer, int offset, int count)
        {
            _given += count;
            return _given > after ? throw new IOException("The connection was lost.") : count;
        }
    }
}
