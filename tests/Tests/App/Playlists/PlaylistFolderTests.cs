using System.IO.Compression;
using Scuff.App.Playlists;
using Scuff.Repertoire;
using Tests.Sheets;

namespace Tests.App.Playlists;

public sealed class PlaylistFolderTests : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("scuff-playlist-").FullName;

    private string Target => Path.Combine(_root, "Harbour Social");

    public void Dispose() => Directory.Delete(_root, recursive: true);

    [Fact]
    public async Task The_folder_holds_the_lists_the_songs_and_each_silence_once()
    {
        Playlist playlist = Made();

        await PlaylistFolder.WriteAsync(playlist, Target, TestContext.Current.CancellationToken);

        string[] expected = ["playlist.m3u8", "playlist.xspf", .. playlist.Entries.Select(e => e.Location).Distinct()];
        Assert.Equal(expected.Order(StringComparer.Ordinal), NamesIn(Target));
        Assert.All(PlaylistFolder.Songs(playlist), s => Assert.Equal(File.ReadAllBytes(s.Source), File.ReadAllBytes(Path.Combine(Target, s.Location))));
        Assert.Equal(["Harbour Social", "music"], NamesIn(_root));
    }

    [Fact]
    public async Task Every_line_of_the_list_names_a_file_that_is_there()
    {
        await PlaylistFolder.WriteAsync(Made(), Target, TestContext.Current.CancellationToken);

        string[] named = [.. (await File.ReadAllLinesAsync(Path.Combine(Target, "playlist.m3u8"), TestContext.Current.CancellationToken)).Where(l => l[0] != '#')];

        Assert.NotEmpty(named);
        Assert.All(named, n => Assert.True(File.Exists(Path.Combine(Target, n)), n));
    }

    [Fact]
    public async Task Without_copies_only_lists_and_silence_are_written()
    {
        await PlaylistFolder.WriteAsync(Made(copies: false), Target, TestContext.Current.CancellationToken);

        Assert.DoesNotContain(NamesIn(Target), n => n.EndsWith(".mp3", StringComparison.Ordinal));
        Assert.Contains("file:///", await File.ReadAllTextAsync(Path.Combine(Target, "playlist.m3u8"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_earlier_playlist_is_replaced_whole()
    {
        await PlaylistFolder.WriteAsync(Made(), Target, TestContext.Current.CancellationToken);
        Playlist shorter = Made();
        shorter = shorter with { Entries = [shorter.Entries[0]] };

        await PlaylistFolder.WriteAsync(shorter, Target, TestContext.Current.CancellationToken);

        Assert.Equal([shorter.Entries[0].Location, "playlist.m3u8", "playlist.xspf"], NamesIn(Target));
        Assert.Equal(["Harbour Social", "music"], NamesIn(_root));
    }

    [Fact]
    public async Task A_folder_with_anything_else_in_it_is_left_alone()
    {
        await PlaylistFolder.WriteAsync(Made(), Target, TestContext.Current.CancellationToken);
        string hers = Path.Combine(Target, "hers.txt");
        await File.WriteAllTextAsync(hers, "mine", TestContext.Current.CancellationToken);
        string[] before = NamesIn(Target);

        ClubTrouble trouble = await Assert.ThrowsAsync<ClubTrouble>(() => PlaylistFolder.WriteAsync(Made(), Target, TestContext.Current.CancellationToken));

        Assert.Equal("Harbour Social holds something else than a playlist, so nothing was written. Name another folder.", trouble.Message);
        Assert.Equal(before, NamesIn(Target));
        Assert.Equal(["Harbour Social", "music"], NamesIn(_root));
    }

    [Fact]
    public async Task A_file_of_that_name_is_left_alone()
    {
        await File.WriteAllTextAsync(Target, "mine", TestContext.Current.CancellationToken);

        await Assert.ThrowsAsync<ClubTrouble>(() => PlaylistFolder.WriteAsync(Made(), Target, TestContext.Current.CancellationToken));

        Assert.Equal("mine", await File.ReadAllTextAsync(Target, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_song_that_cannot_be_read_leaves_everything_as_it_was()
    {
        await PlaylistFolder.WriteAsync(Made(), Target, TestContext.Current.CancellationToken);
        string[] before = NamesIn(Target);
        Playlist playlist = Made();
        File.Delete(playlist.Entries[^1].Source);

        ClubTrouble trouble = await Assert.ThrowsAsync<ClubTrouble>(() => PlaylistFolder.WriteAsync(playlist, Target, TestContext.Current.CancellationToken));

        Assert.Contains("could not be read, so no playlist was written", trouble.Message, StringComparison.Ordinal);
        Assert.Equal(before, NamesIn(Target));
        Assert.Equal(["Harbour Social", "music"], NamesIn(_root));
    }

    [Fact]
    public async Task A_stop_on_the_way_leaves_nothing_lying_about()
    {
        using CancellationTokenSource stop = new();
        await stop.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => PlaylistFolder.WriteAsync(Made(), Target, stop.Token));

        Assert.Equal(["music"], NamesIn(_root));
    }

    [Fact]
    public async Task What_a_killed_program_left_behind_is_put_in_order()
    {
        // killed between its two moves: the earlier playlist stands aside, the next one is not in its place yet; no process has that number
        await PlaylistFolder.WriteAsync(Made(), Target, TestContext.Current.CancellationToken);
        Directory.Move(Target, Path.Combine(_root, ".Harbour Social.2147483647-1.old"));
        Directory.CreateDirectory(Path.Combine(_root, ".Harbour Social.2147483647-1.tmp"));
        string hers = Directory.CreateDirectory(Path.Combine(_root, ".Harbour Social.mine")).FullName;
        Playlist broken = Made();
        File.Delete(broken.Entries[0].Source);

        await Assert.ThrowsAsync<ClubTrouble>(() => PlaylistFolder.WriteAsync(broken, Target, TestContext.Current.CancellationToken));

        Assert.Contains("playlist.m3u8", NamesIn(Target));
        Assert.Equal([Path.GetFileName(hers), "Harbour Social", "music"], NamesIn(_root));
    }

    [Fact]
    public async Task Without_any_audio_nothing_is_written()
    {
        Playlist playlist = EveningPlaylist.ForFolder(EveningSamples.Small, _ => null, copies: true);

        await Assert.ThrowsAsync<ClubTrouble>(() => PlaylistFolder.WriteAsync(playlist, Target, TestContext.Current.CancellationToken));
        await Assert.ThrowsAsync<ClubTrouble>(() => PlaylistPack.WriteAsync(playlist, DateTimeOffset.UnixEpoch, Stream.Null, TestContext.Current.CancellationToken));

        Assert.Empty(NamesIn(_root));
    }

    [Fact]
    public async Task The_pack_holds_the_same_files_as_the_folder_and_the_same_bytes_twice()
    {
        Playlist playlist = Made();
        await PlaylistFolder.WriteAsync(playlist, Target, TestContext.Current.CancellationToken);
        using MemoryStream pack = new();
        using MemoryStream again = new();
        DateTimeOffset now = new(2026, 11, 28, 12, 0, 0, TimeSpan.Zero);

        await PlaylistPack.WriteAsync(playlist, now, pack, TestContext.Current.CancellationToken);
        await PlaylistPack.WriteAsync(playlist, now, again, TestContext.Current.CancellationToken);

        Assert.Equal(pack.ToArray(), again.ToArray());
        pack.Position = 0;
        using ZipArchive read = new(pack, ZipArchiveMode.Read);
        Assert.Equal(NamesIn(Target).Select(n => "Harbour Social/" + n), read.Entries.Select(e => e.FullName).Order(StringComparer.Ordinal));
        foreach (ZipArchiveEntry entry in read.Entries)
        {
            using MemoryStream bytes = new();
            await using Stream from = await entry.OpenAsync(TestContext.Current.CancellationToken);
            await from.CopyToAsync(bytes, TestContext.Current.CancellationToken);
            Assert.Equal(await File.ReadAllBytesAsync(Path.Combine(Target, entry.Name), TestContext.Current.CancellationToken), bytes.ToArray());
        }
    }

    // A class evening with files that stand for sound: what is in them is nobody's business here.
    private Playlist Made(bool copies = true)
    {
        string music = Directory.CreateDirectory(Path.Combine(_root, "music")).FullName;
        Playlist playlist = EveningPlaylist.ForFolder(EveningSamples.Small, id => Path.Combine(music, id + ".mp3"), copies);
        foreach (PlaylistEntry entry in playlist.Entries.Where(e => !e.IsSilence))
        {
            File.WriteAllText(entry.Source, "sound of " + entry.Title);
        }

        return playlist;
    }

    private static string[] NamesIn(string folder) => [.. Directory.EnumerateFileSystemEntries(folder).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];
}
