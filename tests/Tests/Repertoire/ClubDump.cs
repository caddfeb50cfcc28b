using System.Globalization;
using Microsoft.Data.Sqlite;
using Scuff.Repertoire.Storage;

namespace Tests.Repertoire;

/// <summary>What is in the tables of a club, as lines that can be compared.</summary>
internal static class ClubDump
{
    /// <summary>The tables with their columns; indexes of words and what SQLite and the steps keep for themselves are left out.</summary>
    public static Dictionary<string, string[]> Tables(string file) => Ask(
        file,
        """
        SELECT m.name, group_concat(c.name, ',') FROM sqlite_master m, pragma_table_info(m.name) c
        WHERE m.type = 'table' AND m.name NOT LIKE '%Words%' AND m.name NOT LIKE 'sqlite%' AND m.name NOT LIKE '\_\_EF%' ESCAPE '\'
        GROUP BY m.name ORDER BY m.name
        """,
        r => (Table: r.GetString(0), Columns: r.GetString(1).Split(','))).ToDictionary(t => t.Table, t => t.Columns);

    /// <summary>All rows of these tables, in these columns: a line each, in order.</summary>
    public static List<string> Rows(string file, IReadOnlyDictionary<string, string[]> tables) =>
    [
        .. tables.OrderBy(t => t.Key, StringComparer.Ordinal).SelectMany(t => Ask(
            file,
            $"SELECT {string.Join(',', t.Value.Select(c => $"\"{c}\""))} FROM \"{t.Key}\"",
            r => $"{t.Key}: {string.Join(" | ", t.Value.Select((c, i) => $"{c}={Value(r, i)}"))}").Order(StringComparer.Ordinal)),
    ];

    /// <summary>All rows of all tables.</summary>
    /// <param name="file">The database.</param>
    /// <param name="without">Tables that are left out.</param>
    public static List<string> Rows(string file, params string[] without)
        => Rows(file, Tables(file).Where(t => !without.Contains(t.Key)).ToDictionary(t => t.Key, t => t.Value));

    /// <summary>What a statement answers about a database that nobody need have open.</summary>
    public static List<T> Ask<T>(string file, string sql, Func<SqliteDataReader, T> row)
    {
        using SqliteConnection connection = new(ClubStore.Connection(file, SqliteOpenMode.ReadWrite));
        connection.Open();
        return Scuff.Repertoire.Storage.Rows.Ask(connection, sql, row);
    }

    private static string Value(SqliteDataReader r, int column) => r.GetValue(column) switch
    {
        byte[] bytes => Convert.ToHexStringLower(bytes),
        object value => Convert.ToString(value, CultureInfo.InvariantCulture)!,
    };
}
