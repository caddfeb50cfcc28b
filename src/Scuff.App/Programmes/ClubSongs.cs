using Scuff.Analysis.Planning;
using Scuff.Repertoire;

namespace Scuff.App.Programmes;

/// <summary>The songs that dances of a club can be danced to: those their texts name, with what the club knows of them.</summary>
internal sealed class ClubSongs
{
    // how long a song is taken to play where the club does not have it (common practice: three to four minutes)
    private const int AssumedSeconds = 210;

    // what plays less is no song, what plays longer is an album
    private const int Shortest = 30;
    private const int Longest = 20 * 60;

    private readonly Dictionary<string, TrackRow> _tracks = [];

    public ClubSongs(Club club)
    {
        foreach (TrackRow track in club.Tracks.Search(new TrackQuery { Take = int.MaxValue }).Rows)
        {
            string key = TrackFacts.KeyOf(track.Facts.Title);
            if (key.Length > 0 && (!_tracks.TryGetValue(key, out TrackRow? known) || (!known.HasAudio && track.HasAudio)))
            {
                _tracks[key] = track;
            }
        }
    }

    /// <summary>The songs of a dance: those the club can play first, else in the order of its text.</summary>
    public ValueList<ProgrammeSong> Of(DanceRow dance)
        =>
        [
            .. dance.Facts.Songs
                .Select(title => (Title: title, Key: TrackFacts.KeyOf(title)))
                .Where(s => s.Key.Length > 0)
                .DistinctBy(s => s.Key)
                .Select(s => (s.Title, s.Key, Track: _tracks.GetValueOrDefault(s.Key)))
                .OrderByDescending(s => s.Track is { HasAudio: true })
                .Select(s => new ProgrammeSong(s.Key, Named(s.Title, s.Track), Seconds(s.Track), s.Track is { HasAudio: true } ? s.Track.Id : "")),
        ];

    private static string Named(string title, TrackRow? track)
        => track is { Facts.Artist.Length: > 0 } ? $"{title} – {track.Facts.Artist}" : title;

    private static int Seconds(TrackRow? track)
        => track?.Facts.Seconds is { } seconds && seconds >= Shortest && seconds <= Longest ? (int)Math.Ceiling(seconds) : AssumedSeconds;
}
