using System.Security.Cryptography;
using Microsoft.AspNetCore.Http;
using Scuff.App.Tracks;
using Scuff.Audio;
using Scuff.Audio.Signals;
using Scuff.Audio.Songs;
using Scuff.Music;
using Scuff.Music.Corrections;
using Scuff.Repertoire;

namespace Scuff.App.Web.Tracks;

/// <summary>Where the tracks of the club are heard, kept and looked up. Safe to share between threads.</summary>
/// <param name="club">The club.</param>
/// <param name="cache">What was heard before, also by other means than the studio.</param>
/// <param name="tell">Where troubles of the program itself are told.</param>
internal sealed class TrackDesk(Club club, TrackCache cache, Action<string, Exception> tell) : IDisposable
{
    // Without its loudness a map takes some ten thousand bytes; this many are kept ready for matching.
    private const int Remembered = 6000;

    private const string ByHand = "hand";

    // Of playing a song and hearing it, playing takes so much.
    private const double PartOfPlaying = 0.6;

    private readonly Lock _lock = new();
    private readonly Dictionary<string, (string Key, TrackMap Map)> _ready = new(StringComparer.Ordinal);

    /// <summary>Work that waits, runs or is over.</summary>
    public TrackJobs Jobs { get; } = new(tell);

    /// <summary>A track of the club.</summary>
    /// <exception cref="RefusalException">There is none of that name.</exception>
    public TrackRow Find(string id) => club.Tracks.Get(id)
        ?? throw new RefusalException(
            StatusCodes.Status404NotFound,
            "This track is not in the club any more. Look for it in the list, or drop its file once more.");

    /// <summary>A track with all that is known of its music.</summary>
    public KnownTrack Known(string id)
    {
        TrackRow row = Find(id);
        CorrectionsReading said = SaidOf(row);
        TrackCorrections corrections = said.Corrections ?? TrackCorrections.None;
        string? trouble = said.Troubles.Count > 0 ? said.Troubles[0] : null;
        if (club.Tracks.Map(id) is not { } kept || TrackBytes.Read(FromText(kept)) is not ({ } heard, var warning))
        {
            return new KnownTrack(row, null, null, corrections, trouble);
        }

        TrackMap map = corrections.ApplyTo(heard) with { Title = KnownTrack.TitleOf(row), Artist = row.Facts.Artist };
        return new KnownTrack(row, map, warning, corrections, trouble);
    }

    /// <summary>The map of a track for matching and fitting, without its loudness; null when it was not heard.</summary>
    public TrackMap? Ready(TrackRow row)
    {
        string key = $"{row.HeardBy} {row.CorrectionsRevision} {KnownTrack.TitleOf(row)} {row.Facts.Artist}";
        lock (_lock)
        {
            if (_ready.TryGetValue(row.Id, out (string Key, TrackMap Map) known) && known.Key == key)
            {
                return known.Map;
            }
        }

        if (Known(row.Id).Map is not { } map)
        {
            return null;
        }

        map = map with { Loudness = LoudnessCurve.None };
        lock (_lock)
        {
            if (_ready.Count >= Remembered)
            {
                _ready.Clear();
            }

            _ready[row.Id] = (key, map);
        }

        return map;
    }

    /// <summary>Whether another version of the program heard a track, so that hearing it again may say more.</summary>
    public static bool IsOld(TrackRow row) => row is { HasMap: true, HasAudio: true } && row.HeardBy != TrackCache.Ear && !IsByHand(row);

    /// <summary>Whether a person wrote the map of a track.</summary>
    public static bool IsByHand(TrackRow row) => row.HeardBy.StartsWith(ByHand, StringComparison.Ordinal);

    /// <summary>Hears the file of a track, when its turn comes.</summary>
    /// <exception cref="RefusalException">It has no sound here.</exception>
    public TrackJob Hear(TrackRow row)
    {
        string title = KnownTrack.TitleOf(row);
        string path = club.Tracks.AudioPath(row.Id)
            ?? throw new RefusalException(StatusCodes.Status409Conflict, $"The club keeps no sound for {title}, so it cannot be heard.");
        return Jobs.Add("hear", title, row.Id, (job, stop) => Keep(job, row.Id, new TrackReader(cache, Path.GetFullPath).Hear(path, row.FileName, job, stop)));
    }

    /// <summary>Hears sound that the browser decoded, when its turn comes.</summary>
    public TrackJob Hear(TrackRow row, MonoAudio audio) => Jobs.Add("hear", KnownTrack.TitleOf(row), row.Id, (job, stop) =>
        Keep(job, row.Id, new HeardTrack(row.FileName, TrackListener.Listen(audio, job, stop), null, null)));

    /// <summary>Lets our own band play a song of the demo club into the club, and hears it, when its turn comes.</summary>
    public TrackJob Play(DemoSong song) => Jobs.Add("play", song.Recipe.Title, null, (job, stop) =>
    {
        StereoSound sound = SongRenderer.Render(Song.From(song.Recipe), new Share(job, 0, PartOfPlaying), stop);
        stop.ThrowIfCancellationRequested();
        using MemoryStream file = new();
        sound.WriteWav(file, song.Recipe.Title, song.Artist);
        file.Position = 0;
        TrackRow row = club.Tracks.Add(file, DemoSongFile.NameOf(song), new TrackFacts { Title = song.Recipe.Title, Artist = song.Artist }).Track;
        job.Track = row.Id;
        if (!row.HasMap)
        {
            string path = club.Tracks.AudioPath(row.Id)!;
            Keep(job, row.Id, new TrackReader(cache, Path.GetFullPath).Hear(path, row.FileName, new Share(job, PartOfPlaying, 1), stop));
        }
    });

    /// <summary>Keeps a map that a person wrote.</summary>
    public void KeepByHand(string id, HeardTrack track)
    {
        if (track.Map is not { } map)
        {
            throw new RefusalException(StatusCodes.Status422UnprocessableEntity, track.Trouble!);
        }

        string text = Convert.ToBase64String(TrackBytes.Write(map, track.Warning));
        string digest = Convert.ToHexStringLower(SHA256.HashData(System.Text.Encoding.ASCII.GetBytes(text)))[..12];
        Keep(id, map, text, $"{ByHand} {digest}");
    }

    /// <summary>What she said of a track, or why it cannot be read.</summary>
    public CorrectionsReading SaidOf(TrackRow row) => club.Tracks.Corrections(row.Id) is { Text.Length: > 0 } kept
        ? CorrectionsText.Read(kept.Text)
        : new CorrectionsReading(TrackCorrections.None, []);

    public void Dispose() => Jobs.Dispose();

    private static byte[] FromText(string kept)
    {
        byte[] bytes = new byte[(kept.Length / 4 * 3) + 3];
        return Convert.TryFromBase64String(kept, bytes, out int written) ? bytes[..written] : [];
    }

    private void Keep(TrackJob job, string id, HeardTrack track)
    {
        if (track.Map is not { } map)
        {
            throw new RefusalException(StatusCodes.Status422UnprocessableEntity, track.Trouble!);
        }

        Keep(id, map, Convert.ToBase64String(TrackBytes.Write(map, track.Warning)), TrackCache.Ear);
        job.Sentence = track.Warning ?? map.Remark;
    }

    private void Keep(string id, TrackMap map, string text, string heardBy) => club.Tracks.SaveMap(id, text, heardBy, known => known with
    {
        // what she or the file said first stays
        Title = known.Title.Length > 0 ? known.Title : map.Title,
        Artist = known.Artist.Length > 0 ? known.Artist : map.Artist,
        Seconds = map.Seconds,
        Tempo = map.Beats.Count == 0 ? null : map.Tempo.Value,
    });

    private sealed class Share(TrackJob job, double from, double to) : IProgress<double>
    {
        public void Report(double value) => job.Report(from + ((to - from) * value));
    }
}
