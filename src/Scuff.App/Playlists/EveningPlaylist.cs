using System.Globalization;
using Scuff.Sheets;

namespace Scuff.App.Playlists;

/// <summary>
/// The playlist of an evening. Players know no gap, so a gap is a file of silence between two songs: what is said before a dance, time left unused, a lesson and a
/// rest. Started on time and left alone, the playlist keeps to the clock of the programme; who is done with a rest skips its entry.
/// </summary>
internal static class EveningPlaylist
{
    /// <summary>A playlist for a folder of its own, silence among the songs.</summary>
    /// <param name="paper">The evening.</param>
    /// <param name="audioPathOf">The full path of the sound file of a track by its id, or null when there is none.</param>
    /// <param name="copies">Whether the songs lie in the folder under plain numbered names, or are played from where they are.</param>
    public static Playlist ForFolder(EveningPaper paper, Func<string, string?> audioPathOf, bool copies)
    {
        List<PlaylistEntry> entries = [];
        List<string> leftOut = [];
        Dictionary<string, string> names = new(StringComparer.Ordinal);

        // where the music stopped, in seconds of the evening; -1 before the first song
        int stopped = -1;
        foreach (EveningLine line in paper.Lines)
        {
            if (line.Kind == EveningLineKind.Dance)
            {
                AddSilence(line.StartSeconds + line.LeadSeconds, line.Title);
                if (Found(line, audioPathOf, leftOut) is not { } source)
                {
                    // the time in which it is played from elsewhere
                    AddSilence(line.StartSeconds + line.Seconds, line.Title, "From elsewhere: ");
                    continue;
                }

                string location = source;
                if (copies && !names.TryGetValue(source, out location!))
                {
                    location = NameOf(names.Count + 1, SongOf(line), source);
                    names.Add(source, location);
                }

                entries.Add(Song(paper, line, source, location));
                stopped = line.StartSeconds + line.Seconds;
            }
            else if (stopped >= 0)
            {
                AddSilence(line.StartSeconds, line.Title);
                Silence(line.Seconds, line.Kind == EveningLineKind.Lesson ? $"Lesson: {line.Title}" : "Rest");
                stopped = line.StartSeconds + line.Seconds;
            }
        }

        // nothing is waited for after the last song
        while (entries is [.., { IsSilence: true }])
        {
            entries.RemoveAt(entries.Count - 1);
        }

        return new Playlist { Title = PlaylistText.InOneLine(paper.Title) is { Length: > 0 } title ? title : "Evening", Entries = entries.ToValueList(), LeftOut = leftOut.ToValueList() };

        void AddSilence(int until, string dance, string lead = "Before ")
        {
            if (stopped >= 0 && until > stopped)
            {
                Silence(until - stopped, dance.Length > 0 ? lead + dance : "Silence");
                stopped = until;
            }
        }

        void Silence(int seconds, string title)
        {
            if (seconds > 0)
            {
                entries.Add(new PlaylistEntry { Title = title, Seconds = seconds, Location = SilenceFile.NameOf(seconds) });
            }
        }
    }

    /// <summary>A playlist of the songs alone, each played from where it is: what a single file can hold.</summary>
    /// <param name="paper">The evening.</param>
    /// <param name="audioPathOf">As in <see cref="ForFolder"/>.</param>
    public static Playlist OfSongs(EveningPaper paper, Func<string, string?> audioPathOf)
    {
        Playlist whole = ForFolder(paper, audioPathOf, copies: false);
        return whole with { Entries = [.. whole.Entries.Where(e => !e.IsSilence)] };
    }

    private static PlaylistEntry Song(EveningPaper paper, EveningLine line, string source, string location) => new()
    {
        Title = SongOf(line),
        Artist = line.Artist,
        Dance = line.IsSplit ? $"{line.Title} / {line.OtherTitle}" : line.Title,
        Remark = $"{paper.ClockAt(line.StartSeconds)} {(line.IsSplit ? $"{line.Title} and {line.OtherTitle}, split floor" : line.Title)}",
        Seconds = line.SongSeconds,
        Source = source,
        Location = location,
    };

    private static string SongOf(EveningLine line) => line.Song.Length > 0 ? line.Song : line.Title;

    private static string? Found(EveningLine line, Func<string, string?> audioPathOf, List<string> leftOut)
    {
        string? path = line.TrackId.Length > 0 ? audioPathOf(line.TrackId) : null;
        if (path is null)
        {
            leftOut.Add(line.Song.Length > 0
                ? $"The club has no audio of “{line.Song}” for {line.Title}; play it from elsewhere."
                : $"No song is named for {line.Title}; play it from elsewhere.");
        }

        return path;
    }

    // Signs that mean something in a URI would be read in two ways, since some players take the lines of an M3U for names and some for URIs.
    private static string NameOf(int number, string title, string source)
    {
        string plain = string.Concat(title.Select(c => c is '#' or '%' or ';' or '?' or '[' or ']' ? ' ' : c));
        return string.Create(CultureInfo.InvariantCulture, $"{number:00} {SafeFileName.StemOf(plain)}{Path.GetExtension(source).ToLowerInvariant()}");
    }
}
