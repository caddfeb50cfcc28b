using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Scuff.Repertoire.Storage;

/// <summary>
/// The indexes of words (SQLite's FTS5): filled here and asked here, so that what is folded on the way in is folded alike on the way out. They are
/// derived, and made again when their form changes.
/// </summary>
internal static class WordIndex
{
    /// <summary>Changes whenever words are folded or laid down otherwise; an index of another form is made again at opening.</summary>
    public const string Form = "1";

    /// <summary>The setting that holds the form of the indexes.</summary>
    public const string FormSetting = ".words";

    /// <summary>The rank of a dance: words of the title weigh most, then who made it, her tags, the songs; the text least. Ours.</summary>
    public const string DanceRank = "bm25(DanceWords, 10.0, 6.0, 4.0, 6.0, 1.0)";

    /// <summary>The rank of a track. Ours.</summary>
    public const string TrackRank = "bm25(TrackWords, 10.0, 8.0, 2.0, 6.0)";

    /// <summary>Lays down the words of a dance in place of those before.</summary>
    public static void Put(ClubDatabase db, DanceEntry dance, string text) => db.Database.ExecuteSql(
        $"""
        INSERT OR REPLACE INTO DanceWords(rowid, title, choreographer, songs, tags, text)
        VALUES ({dance.Key}, {dance.FoldedTitle}, {dance.FoldedChoreographer}, {Folding.Fold(dance.Songs)}, {dance.FoldedTags}, {Folding.Fold(text)})
        """);

    /// <summary>Lays down the words of a track in place of those before.</summary>
    public static void Put(ClubDatabase db, TrackEntry track) => db.Database.ExecuteSql(
        $"""
        INSERT OR REPLACE INTO TrackWords(rowid, title, artist, file, tags)
        VALUES ({track.Key}, {track.FoldedTitle}, {track.FoldedArtist}, {Folding.Fold(track.FileName)}, {track.FoldedTags})
        """);

    /// <summary>Takes the words of a dance out.</summary>
    public static void Drop(ClubDatabase db, DanceEntry dance) => db.Database.ExecuteSql($"DELETE FROM DanceWords WHERE rowid = {dance.Key}");

    /// <summary>Takes the words of a track out.</summary>
    public static void Drop(ClubDatabase db, TrackEntry track) => db.Database.ExecuteSql($"DELETE FROM TrackWords WHERE rowid = {track.Key}");

    /// <summary>Makes both indexes again when they are of another form.</summary>
    public static void Refresh(ClubStore store)
    {
        if (ClubSettings.Read(store, FormSetting) == Form)
        {
            return;
        }

        store.Write(db =>
        {
            db.Database.ExecuteSql($"DELETE FROM DanceWords");
            db.Database.ExecuteSql($"DELETE FROM TrackWords");
            foreach (DanceEntry dance in db.Dances.Include(d => d.Body).ToList())
            {
                dance.FoldedTitle = Folding.FoldLine(dance.Title);
                dance.FoldedChoreographer = Folding.FoldLine(dance.Choreographer);
                dance.FoldedTags = TagLine.Fold(dance.Tags);
                Put(db, dance, dance.Body.Text);
            }

            foreach (TrackEntry track in db.Tracks.ToList())
            {
                track.FoldedTitle = Folding.FoldLine(track.Title);
                track.FoldedArtist = Folding.FoldLine(track.Artist);
                track.FoldedTags = TagLine.Fold(track.Tags);
                Put(db, track);
            }

            SettingEntry form = db.Settings.Find(FormSetting) ?? db.Settings.Add(new SettingEntry { Name = FormSetting }).Entity;
            return form.Value = Form;
        });
    }

    /// <summary>
    /// The keys of the rows that match, in order. All of them are asked for at once, as numbers: their count is the total, and only the rows of the
    /// page are read.
    /// </summary>
    /// <param name="connection">The database.</param>
    /// <param name="table">The table of rows, with a key and the columns that signs are looked for in.</param>
    /// <param name="words">The index over it.</param>
    /// <param name="typed">What she typed.</param>
    /// <param name="signColumns">Columns in which signs are looked for.</param>
    /// <param name="conditions">More conditions on the row <c>r</c>.</param>
    /// <param name="order">The order, of columns of <c>r</c>.</param>
    /// <param name="rank">The rank that comes before the order when there are words; null for none.</param>
    /// <param name="values">The values of the conditions, by name.</param>
    public static List<long> Keys(
        SqliteConnection connection,
        string table,
        string words,
        string typed,
        IReadOnlyList<string> signColumns,
        IReadOnlyList<string> conditions,
        string order,
        string? rank,
        IReadOnlyDictionary<string, object> values)
    {
        (IReadOnlyList<string> parts, IReadOnlyList<string> signs) = Folding.Words(typed);
        using SqliteCommand command = connection.CreateCommand();
        List<string> all = [.. conditions];
        for (int i = 0; i < signs.Count; i++)
        {
            all.Add($"({string.Join(" OR ", signColumns.Select(c => $"instr(r.{c}, $sign{i}) > 0"))})");
            command.Parameters.AddWithValue($"$sign{i}", signs[i]);
        }

        string from = $"{table} r";
        if (parts.Count > 0)
        {
            // each word in quotation marks is nothing but a word, whatever it is; none has a quotation mark in it
            from = $"{words} JOIN {table} r ON r.Key = {words}.rowid";
            all.Add($"{words} MATCH $match");
            command.Parameters.AddWithValue("$match", string.Join(" AND ", parts.Select(p => $"\"{p}\"*")));
            order = rank is null ? order : $"{rank}, {order}";
        }

        foreach ((string name, object value) in values)
        {
            command.Parameters.AddWithValue(name, value);
        }

        command.CommandText = $"SELECT r.Key FROM {from} WHERE {string.Join(" AND ", all)} ORDER BY {order}";
        using SqliteDataReader reader = command.ExecuteReader();
        List<long> keys = [];
        while (reader.Read())
        {
            keys.Add(reader.GetInt64(0));
        }

        return keys;
    }
}
