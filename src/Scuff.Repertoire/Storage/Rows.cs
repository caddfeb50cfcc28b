using Microsoft.Data.Sqlite;

namespace Scuff.Repertoire.Storage;

/// <summary>From rows of the database to what is handed out.</summary>
internal static class Rows
{
    /// <summary>The columns of a dance, for <see cref="Dance"/>.</summary>
    public const string DanceColumns = """
        r.Key, r.Revision, r.Title, r.Choreographer, r.Level, r.Counts, r.Walls, r.Rhythm, r.SlowestTempo, r.FastestTempo, r.Songs, r.Errors, r.Questions,
        r.Warnings, r.Fingerprint, r.Tags, r.AddedAt, r.SavedAt, r.RemovedAt, r.FileName, r.Effort, r.Rank, r.Feet
        """;

    /// <summary>The columns of a track, for <see cref="Track"/>.</summary>
    public const string TrackColumns = """
        r.Key, r.Title, r.Artist, r.Seconds, r.Tempo, r.FileName, r.Digest, r.Ending, r.Bytes, r.HeardBy, r.CorrectionsRevision, r.Tags, r.AddedAt, r.RemovedAt
        """;

    /// <summary>How many columns a dance has; what is asked for beside them follows.</summary>
    public const int DanceWidth = 23;

    /// <summary>A dance from its columns.</summary>
    public static DanceRow Dance(SqliteDataReader r) => new(
        Ids.Dance(r.GetInt64(0)),
        r.GetInt32(1),
        new DanceFacts
        {
            Title = r.GetString(2),
            Choreographer = r.GetString(3),
            Level = r.GetString(4),
            Counts = r.IsDBNull(5) ? null : r.GetInt32(5),
            Walls = r.IsDBNull(6) ? null : r.GetInt32(6),
            Rhythm = r.GetString(7),
            SlowestTempo = r.IsDBNull(8) ? null : r.GetDouble(8),
            FastestTempo = r.IsDBNull(9) ? null : r.GetDouble(9),
            Songs = TagLine.Read(r.GetString(10)),
            Errors = r.GetInt32(11),
            Questions = r.GetInt32(12),
            Warnings = r.GetInt32(13),
            Fingerprint = r.GetString(14),
            Effort = r.IsDBNull(20) ? null : r.GetInt32(20),
            Rank = r.IsDBNull(21) ? null : r.GetInt32(21),
            Feet = r.GetString(22),
        },
        TagLine.Read(r.GetString(15)),
        Time(r, 16),
        Time(r, 17),
        r.IsDBNull(18) ? null : Time(r, 18),
        r.IsDBNull(19) ? null : r.GetString(19));

    /// <summary>A track from its columns.</summary>
    public static TrackEntry Track(SqliteDataReader r) => new()
    {
        Key = r.GetInt64(0),
        Title = r.GetString(1),
        Artist = r.GetString(2),
        Seconds = r.IsDBNull(3) ? null : r.GetDouble(3),
        Tempo = r.IsDBNull(4) ? null : r.GetDouble(4),
        FileName = r.GetString(5),
        Digest = r.IsDBNull(6) ? null : r.GetString(6),
        Ending = r.GetString(7),
        Bytes = r.GetInt64(8),
        HeardBy = r.GetString(9),
        CorrectionsRevision = r.GetInt32(10),
        Tags = r.GetString(11),
        AddedAt = Time(r, 12),
        RemovedAt = r.IsDBNull(13) ? null : Time(r, 13),
    };

    /// <summary>What a statement answers, a row each.</summary>
    public static List<T> Ask<T>(SqliteConnection connection, string sql, Func<SqliteDataReader, T> row)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        using SqliteDataReader reader = command.ExecuteReader();
        List<T> rows = [];
        while (reader.Read())
        {
            rows.Add(row(reader));
        }

        return rows;
    }

    /// <summary>The rows of a page: asked for by their keys, given in the order of these.</summary>
    public static IEnumerable<T> Page<T>(SqliteConnection connection, string columns, string table, IReadOnlyList<long> keys, Func<SqliteDataReader, T> row)
    {
        // keys are numbers: nothing typed gets into the statement
        string sql = $"SELECT {columns} FROM {table} r WHERE r.Key IN ({string.Join(',', keys)})";
        Dictionary<long, T> rows = Ask(connection, sql, r => (Key: r.GetInt64(0), Row: row(r)))
            .ToDictionary(r => r.Key, r => r.Row);
        return keys.Select(k => rows[k]);
    }

    /// <summary>A version.</summary>
    public static DanceVersion Of(VersionEntry e) => new(e.Number, e.Name, e.SavedAt, e.Hand, e.Revision);

    /// <summary>A track.</summary>
    public static TrackRow Of(TrackEntry e) => new(
        Ids.Track(e.Key),
        new TrackFacts { Title = e.Title, Artist = e.Artist, Seconds = e.Seconds, Tempo = e.Tempo },
        e.FileName,
        e.Digest is null ? "" : MusicFolder.MediaTypeOf(e.Ending),
        e.Bytes,
        e.Digest,
        e.HeardBy,
        e.CorrectionsRevision,
        TagLine.Read(e.Tags),
        e.AddedAt,
        e.RemovedAt);

    // as ClubDatabase writes it
    private static DateTimeOffset Time(SqliteDataReader r, int column) => DateTimeOffset.FromUnixTimeMilliseconds(r.GetInt64(column));
}
