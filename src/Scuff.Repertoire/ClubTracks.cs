using System.Globalization;
using System.IO.Compression;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Scuff.Repertoire.Files;
using Scuff.Repertoire.Storage;

namespace Scuff.Repertoire;

/// <summary>The tracks of a club: audio, what was heard in it, and what a person said about it.</summary>
public sealed class ClubTracks
{
    /// <summary>Larger sound files are not taken: 1 GiB, about 100 minutes of CD sound.</summary>
    public const long LargestBytes = 1L << 30;

    private const int LongestName = 200;

    private static readonly string[] SignColumns =
        [nameof(TrackEntry.Title), nameof(TrackEntry.Artist), nameof(TrackEntry.FileName), nameof(TrackEntry.Tags)];

    private readonly Club _club;

    // between a file getting its name and its row in the database nobody may take the file away
    private readonly Lock _files = new();

    internal ClubTracks(Club club) => _club = club;

    /// <summary>
    /// Takes in a sound file, whole or not at all. The same file twice is one track. The club does not look into it: whether it is sound is the
    /// caller's to find out, before or after.
    /// </summary>
    /// <param name="audio">The file, read to its end from where it stands.</param>
    /// <param name="fileName">The name it came with; only its last part is kept, and its ending says the media type.</param>
    /// <param name="facts">What is known about it already.</param>
    /// <exception cref="ClubTrouble">It is larger than <see cref="LargestBytes"/>, breaks off, or could not be written.</exception>
    public TrackAdded Add(Stream audio, string fileName, TrackFacts facts)
    {
        string name = LastPart(fileName);
        try
        {
            using TakenAudio taken = _club.Music.Take(audio, LargestBytes);
            (TrackEntry track, bool wasNew) = Settled(taken, name, facts);
            _club.TellTracks([track.Key]);
            return new TrackAdded(Rows.Of(track), wasNew, SameSongs(track).Select(Ids.Track).ToValueList());
        }
        catch (Exception e) when (ClubWords.Knows(e))
        {
            throw ClubWords.Of(e, _club.Folder);
        }
    }

    /// <summary>Adds a track without audio: its map is written by hand, or its audio is where the club may not keep it.</summary>
    /// <param name="name">What to call it, as a file name.</param>
    /// <param name="facts">What is known about it.</param>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public TrackRow AddWithoutAudio(string name, TrackFacts facts)
    {
        TrackEntry track = _club.Store.Write(db => Added(db, new TrackEntry { FileName = LastPart(name) }, facts));
        _club.TellTracks([track.Key]);
        return Rows.Of(track);
    }

    /// <summary>A track, in the bin or not; null when there is none of that id.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public TrackRow? Get(string id) => Entry(id) is { } entry ? Rows.Of(entry) : null;

    /// <summary>Changes what is known about a track.</summary>
    /// <returns>The track; null when there is none of that id.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public TrackRow? SetFacts(string id, TrackFacts facts) => Change(id, (db, track) =>
    {
        SetFacts(track, facts);
        WordIndex.Put(db, track);
        return Rows.Of(track);
    });

    /// <summary>Opens the audio of a track; it can seek.</summary>
    /// <exception cref="ClubTrouble">There is no such track, it has no audio, or the file is missing.</exception>
    public Stream OpenAudio(string id)
    {
        TrackEntry track = Entry(id) ?? throw new ClubTrouble(ClubTroubleKind.NotFound, "There is no such track in the club any more.");
        if (track.Digest is null)
        {
            throw new ClubTrouble(ClubTroubleKind.NoAudio, $"The club keeps no audio for {NameOf(track)}. Drop its sound file here to hear it.");
        }

        try
        {
            return new FileStream(_club.Music.PathOf(track.Digest, track.Ending), FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ClubTrouble(
                e is FileNotFoundException or DirectoryNotFoundException ? ClubTroubleKind.NoAudio : ClubWords.KindOf(e),
                $"The audio of {NameOf(track)} is missing from the club. Drop its sound file here again; map and corrections are still there.",
                e);
        }
    }

    /// <summary>Full path of the audio file of a track, to read from; null when it has none or the file is missing.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public string? AudioPath(string id)
        => Entry(id) is { Digest: { } digest } track && _club.Music.PathOf(digest, track.Ending) is var path && File.Exists(path) ? path : null;

    /// <summary>Keeps the map of a track, in a form that only the caller knows.</summary>
    /// <param name="id">The track.</param>
    /// <param name="map">The map.</param>
    /// <param name="heardBy">Names the program version that made it, or who wrote it; not empty.</param>
    /// <param name="learn">
    /// What is known of the track with the map, from what was known before; null leaves it. It is kept in the same moment: whoever sees the map sees these too,
    /// and what someone says meanwhile is not lost.
    /// </param>
    /// <returns>Whether there is such a track.</returns>
    /// <exception cref="ArgumentException"><paramref name="heardBy"/> is empty.</exception>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public bool SaveMap(string id, string map, string heardBy, Func<TrackFacts, TrackFacts>? learn = null)
    {
        ArgumentException.ThrowIfNullOrEmpty(heardBy);
        byte[] packed = Packed(map);
        return Change(id, (db, track) =>
        {
            db.TrackContents.Find(track.Key)!.Map = packed;
            track.HeardBy = heardBy;
            if (learn is not null)
            {
                SetFacts(track, learn(Rows.Of(track).Facts));
                WordIndex.Put(db, track);
            }

            return (bool?)true;
        }) ?? false;
    }

    /// <summary>The map of a track as it was kept; null when there is none.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public string? Map(string id) => Ids.TrackKey(id) is long key
        && _club.Store.Read(db => db.TrackContents.Where(c => c.Key == key).Select(c => c.Map).SingleOrDefault()) is { } packed
        ? Unpacked(packed)
        : null;

    /// <summary>
    /// What a person said about a track, kept apart from its map so that it outlives another hearing; null when there is no such track.
    /// </summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public TrackCorrection? Corrections(string id) => Ids.TrackKey(id) is long key
        ? _club.Store.Read(db => db.Tracks.Where(t => t.Key == key).Select(t => new TrackCorrection(t.Body.Corrections, t.CorrectionsRevision)).SingleOrDefault())
        : null;

    /// <summary>
    /// Saves what a person said about a track, in a form that only the caller knows. As with dances, never over what someone else said meanwhile.
    /// </summary>
    /// <param name="id">The track.</param>
    /// <param name="text">The corrections; empty takes them all back.</param>
    /// <param name="baseRevision">The revision they were made upon; 0 for the first.</param>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public SaveOutcome SaveCorrections(string id, string text, int baseRevision) => Change<SaveOutcome>(id, (db, track) =>
    {
        TrackContent content = db.TrackContents.Find(track.Key)!;
        if (content.Corrections == text)
        {
            return new SaveOutcome.Saved(track.CorrectionsRevision);
        }

        if (track.CorrectionsRevision != baseRevision)
        {
            return new SaveOutcome.Changed(track.CorrectionsRevision, content.Corrections);
        }

        content.Corrections = text;
        return new SaveOutcome.Saved(++track.CorrectionsRevision);
    }) ?? new SaveOutcome.Gone();

    /// <summary>Gives a track these tags instead of those it has. White space at the ends goes, and so do empty ones and repetitions.</summary>
    /// <returns>The tags as kept; null when there is no such track.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public ValueList<string>? SetTags(string id, IReadOnlyList<string> tags)
    {
        ValueList<string> tidy = TagLine.Tidy(tags);
        return Change(id, (db, track) =>
        {
            track.Tags = TagLine.Write(tidy);
            track.FoldedTags = TagLine.Fold(track.Tags);
            WordIndex.Put(db, track);
            return (ValueList<string>?)tidy;
        });
    }

    /// <summary>The tags in use, in order of the alphabet.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<TagCount> Tags()
        => TagLine.Count(_club.Store.Read(db => db.Tracks.Where(t => t.RemovedAt == null && t.Tags != "").OrderBy(t => t.AddedAt).Select(t => t.Tags).ToList()));

    /// <summary>Looks for tracks. Any words are allowed.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public TrackPage Search(TrackQuery query)
    {
        List<string> conditions = [query.InBin ? "r.RemovedAt IS NOT NULL" : "r.RemovedAt IS NULL"];
        Dictionary<string, object> values = [];
        if (query.Tag is { } tag)
        {
            conditions.Add("instr(r.FoldedTags, $tag) > 0");
            values["$tag"] = TagLine.Sought(tag);
        }

        string order = query.Order switch
        {
            TrackOrder.Artist => "r.FoldedArtist = '', r.FoldedArtist, r.FoldedTitle, r.Key",
            TrackOrder.LastAdded => "r.AddedAt DESC, r.Key DESC",
            TrackOrder.Tempo => "r.Tempo IS NULL, r.Tempo, r.FoldedTitle, r.Key",
            _ => "r.FoldedTitle, r.Key",
        };
        string? rank = query.Order == TrackOrder.BestMatch ? WordIndex.TrackRank : null;
        return _club.Store.Ask(connection =>
        {
            List<long> keys = WordIndex.Keys(
                connection, "Tracks", "TrackWords", query.Words, SignColumns, conditions, order, rank, values);
            List<long> page = [.. keys.Skip(Math.Max(0, query.Skip)).Take(Math.Max(0, query.Take))];
            return new TrackPage(Rows.Page(connection, Rows.TrackColumns, "Tracks", page, Rows.Track).Select(Rows.Of).ToValueList(), keys.Count);
        });
    }

    /// <summary>
    /// Tracks outside the bin of the same title and artist that are as long within a second of the next longer one. The same file is never there
    /// twice.
    /// </summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<DuplicateGroup> Duplicates()
    {
        var songs = _club.Store.Read(db => db.Tracks.Where(t => t.RemovedAt == null && t.FoldedTitle != "" && t.Seconds != null)
            .Select(t => new { t.Key, t.FoldedTitle, t.FoldedArtist, Seconds = t.Seconds!.Value }).ToList());
        List<List<long>> groups = [];
        foreach (var alike in songs.GroupBy(s => (s.FoldedTitle, s.FoldedArtist)).Where(g => g.Skip(1).Any()))
        {
            List<long> run = [];
            double last = double.NegativeInfinity;
            foreach (var song in alike.OrderBy(s => s.Seconds))
            {
                if (song.Seconds - last > SameLength)
                {
                    groups.Add(run = []);
                }

                run.Add(song.Key);
                last = song.Seconds;
            }
        }

        return groups.Where(g => g.Count > 1).OrderBy(g => g.Min())
            .Select(g => new DuplicateGroup(DuplicateReason.SameSong, g.Order().Select(Ids.Track).ToValueList())).ToValueList();
    }

    /// <summary>Puts a track into the bin.</summary>
    /// <returns>Whether there was such a track outside the bin.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public bool Remove(string id) => InBin(id, isGoing: true);

    /// <summary>Takes a track out of the bin.</summary>
    /// <returns>Whether there was such a track in the bin.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public bool BringBack(string id) => InBin(id, isGoing: false);

    /// <summary>Removes what lies in the bin for good, with its audio.</summary>
    /// <returns>How many tracks that were.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public int EmptyBin()
    {
        List<TrackEntry> gone;
        lock (_files)
        {
            gone = _club.Store.Write(db =>
            {
                List<TrackEntry> binned = [.. db.Tracks.Where(t => t.RemovedAt != null)];
                foreach (TrackEntry track in binned)
                {
                    WordIndex.Drop(db, track);
                }

                db.Tracks.RemoveRange(binned);
                return binned;
            });

            // the rows first: a file without a row does no harm, a row without its file does
            foreach (TrackEntry track in gone.Where(t => t.Digest is not null))
            {
                _club.Music.Remove(track.Digest!, track.Ending);
            }
        }

        _club.TellTracks(gone.ConvertAll(t => t.Key));
        return gone.Count;
    }

    // seconds by which two encodings of one recording differ: padding at the start and the end
    private const double SameLength = 1;

    private static byte[] Packed(string map)
    {
        using MemoryStream packed = new();
        using (DeflateStream deflate = new(packed, CompressionLevel.Fastest))
        {
            deflate.Write(Encoding.UTF8.GetBytes(map));
        }

        return packed.ToArray();
    }

    private static string Unpacked(byte[] packed)
    {
        using DeflateStream inflate = new(new MemoryStream(packed), CompressionMode.Decompress);
        using StreamReader reader = new(inflate, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), detectEncodingFromByteOrderMarks: false);
        return reader.ReadToEnd();
    }

    // A name from anywhere: paths of any system before it are not kept, nor is what a screen could not show.
    private static string LastPart(string name)
    {
        string last = name[(name.AsSpan().LastIndexOfAny('/', '\\') + 1)..];
        last = string.Concat(last.EnumerateRunes().Where(r => !System.Text.Rune.IsControl(r))).Trim();
        string ending = Path.GetExtension(last);
        return last.Length > LongestName ? SafeFileName.Cut(last[..^ending.Length], LongestName - 20) + SafeFileName.Cut(ending, 20) : last;
    }

    private static string NameOf(TrackEntry track) => track.Title.Length > 0 ? $"“{track.Title}”" : track.FileName.Length > 0 ? track.FileName : "this track";

    private static void SetFacts(TrackEntry track, TrackFacts facts)
    {
        track.Title = facts.Title.Trim();
        track.FoldedTitle = Folding.FoldLine(facts.Title);
        track.Artist = facts.Artist.Trim();
        track.FoldedArtist = Folding.FoldLine(facts.Artist);
        track.Seconds = facts.Seconds;
        track.Tempo = facts.Tempo;
    }

    private TrackEntry Added(ClubDatabase db, TrackEntry track, TrackFacts facts)
    {
        SetFacts(track, facts);
        track.AddedAt = _club.Now;
        track.Body = new TrackContent();
        db.Tracks.Add(track);
        db.SaveChanges();
        WordIndex.Put(db, track);
        return track;
    }

    private (TrackEntry Track, bool WasNew) Settled(TakenAudio taken, string name, TrackFacts facts)
    {
        string ending = MusicFolder.EndingOf(name);
        lock (_files)
        {
            if (Known(taken.Digest) is { } known && File.Exists(_club.Music.PathOf(taken.Digest, known.Ending)))
            {
                ending = known.Ending;
            }
            else
            {
                taken.Settle(ending);
            }

            return _club.Store.Write(db =>
            {
                TrackEntry? before = db.Tracks.SingleOrDefault(t => t.Digest == taken.Digest);
                if (before is null)
                {
                    return (Added(db, new TrackEntry { FileName = name, Digest = taken.Digest, Ending = ending, Bytes = taken.Bytes }, facts), true);
                }

                before.RemovedAt = null;
                before.Ending = ending;
                return (before, false);
            });
        }
    }

    private TrackEntry? Known(string digest) => _club.Store.Read(db => db.Tracks.AsNoTracking().SingleOrDefault(t => t.Digest == digest));

    private List<long> SameSongs(TrackEntry track) => track is { FoldedTitle.Length: > 0, Seconds: double seconds }
        ? _club.Store.Read(db => db.Tracks.Where(t => t.Key != track.Key && t.RemovedAt == null
            && t.FoldedTitle == track.FoldedTitle && t.FoldedArtist == track.FoldedArtist
            && t.Seconds >= seconds - SameLength && t.Seconds <= seconds + SameLength).OrderBy(t => t.Key).Select(t => t.Key).ToList())
        : [];

    private TrackEntry? Entry(string id) => Ids.TrackKey(id) is long key
        ? _club.Store.Ask(connection => Rows.Ask(
            connection,
            $"SELECT {Rows.TrackColumns} FROM Tracks r WHERE r.Key = {key.ToString(CultureInfo.InvariantCulture)}",
            Rows.Track)) is [var track] ? track : null
        : null;

    // null, and nothing told, when there is no such track
    private T? Change<T>(string id, Func<ClubDatabase, TrackEntry, T?> change)
    {
        if (Ids.TrackKey(id) is not long key)
        {
            return default;
        }

        T? answer = _club.Store.Write(db => db.Tracks.Find(key) is { } track ? change(db, track) : default);
        if (answer is not null)
        {
            _club.TellTracks([key]);
        }

        return answer;
    }

    private bool InBin(string id, bool isGoing) => Change(id, (_, track) =>
    {
        if (track.RemovedAt.HasValue == isGoing)
        {
            return null;
        }

        track.RemovedAt = isGoing ? _club.Now : null;
        return (bool?)true;
    }) ?? false;
}
