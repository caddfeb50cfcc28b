using System.IO.Compression;
using Scuff.Repertoire;

namespace Scuff.App.Playlists;

/// <summary>The folder of a playlist as one ZIP file, for a download.</summary>
internal static class PlaylistPack
{
    /// <summary>Writes the pack, all in a folder named after the playlist. What could not be read is met before the first byte, or not at all.</summary>
    /// <param name="playlist">The playlist, of <see cref="EveningPlaylist.ForFolder"/> with copies.</param>
    /// <param name="now">The time its files carry.</param>
    /// <param name="stream">Where it goes; not closed, and need not be able to seek.</param>
    /// <param name="cancel">Ends it early.</param>
    /// <exception cref="ClubTrouble">There is nothing to play, or a song could not be read.</exception>
    public static async Task WriteAsync(Playlist playlist, DateTimeOffset now, Stream stream, CancellationToken cancel)
    {
        PlaylistEntry[] songs = [.. PlaylistFolder.Songs(playlist)];
        if (songs.Length == 0)
        {
            throw new ClubTrouble(ClubTroubleKind.NoAudio, "There is no song with audio in it, so no playlist was written.");
        }

        List<Stream> opened = [];
        try
        {
            foreach (PlaylistEntry song in songs)
            {
                opened.Add(PlaylistFolder.Open(song));
            }

            string folder = SafeFileName.StemOf(playlist.Title) + "/";
            ZipArchive pack = await ZipArchive.CreateAsync(stream, ZipArchiveMode.Create, leaveOpen: true, entryNameEncoding: null, cancel);
            await using (pack)
            {
                foreach ((string name, Func<Stream, CancellationToken, Task> write) in PlaylistFolder.Texts(playlist))
                {
                    await AddAsync(folder + name, CompressionLevel.Fastest, write);
                }

                // sound does not get smaller
                foreach ((PlaylistEntry song, Stream from) in songs.Zip(opened))
                {
                    await AddAsync(folder + song.Location, CompressionLevel.NoCompression, from.CopyToAsync);
                }

                async Task AddAsync(string name, CompressionLevel level, Func<Stream, CancellationToken, Task> write)
                {
                    ZipArchiveEntry entry = pack.CreateEntry(name, level);
                    entry.LastWriteTime = now;
                    await using Stream to = await entry.OpenAsync(cancel);
                    await write(to, cancel);
                }
            }
        }
        finally
        {
            foreach (Stream from in opened)
            {
                await from.DisposeAsync();
            }
        }
    }
}
