using Microsoft.Data.Sqlite;
using Scuff.Repertoire.Storage;
using Tests.House;

namespace Tests.Repertoire.Storage;

/// <summary>Clubs of every form that was ever published, as text in <c>Forms/</c>.</summary>
internal static class EarlierForm
{
    private const string Folder = "tests/Tests/Repertoire/Storage/Forms/";

    /// <summary>The forms, by the step that led to each.</summary>
    public static IEnumerable<string> All => Repository.Files.Where(f => f.StartsWith(Folder, StringComparison.Ordinal)).Select(f => Path.GetFileNameWithoutExtension(f));

    /// <summary>The statements that make the database of such a club.</summary>
    public static string Text(string form) => Repository.Read($"{Folder}{form}.sql");

    /// <summary>Makes the database of such a club.</summary>
    public static void Make(string form, string file)
    {
        using SqliteConnection connection = new(ClubStore.Connection(file, SqliteOpenMode.ReadWriteCreate));
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = Text(form);
        command.ExecuteNonQuery();
    }
}
