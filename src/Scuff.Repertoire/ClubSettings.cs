using Microsoft.Data.Sqlite;
using Scuff.Repertoire.Storage;

namespace Scuff.Repertoire;

/// <summary>Small settings of a club, by name. They travel with its backups.</summary>
public sealed class ClubSettings
{
    // names that begin so are the club's own
    private const char Own = '.';

    private readonly Club _club;

    internal ClubSettings(Club club) => _club = club;

    /// <summary>What was set; null when nothing was.</summary>
    /// <exception cref="ArgumentException">The name is empty or begins with a dot.</exception>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public string? Get(string name) => Read(Checked(name));

    /// <summary>Sets it; null takes it away.</summary>
    /// <exception cref="ArgumentException">The name is empty or begins with a dot.</exception>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public void Set(string name, string? value) => Write(Checked(name), value);

    /// <summary>The same for names of the club's own.</summary>
    internal string? Read(string name) => Read(_club.Store, name);

    /// <summary>The same before there is a club.</summary>
    internal static string? Read(ClubStore store, string name) => store.Ask(connection =>
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "SELECT Value FROM Settings WHERE Name = $name";
        command.Parameters.AddWithValue("$name", name);
        return command.ExecuteScalar() as string;
    });

    /// <summary>The same for names of the club's own.</summary>
    internal void Write(string name, string? value) => _club.Store.Write(db =>
    {
        Put(db, name, value);
        return true;
    });

    /// <summary>Sets it within a change.</summary>
    internal static void Put(ClubDatabase db, string name, string? value)
    {
        SettingEntry? entry = db.Settings.Find(name);
        if (value is null)
        {
            if (entry is not null)
            {
                db.Settings.Remove(entry);
            }
        }
        else if (entry is null)
        {
            db.Settings.Add(new SettingEntry { Name = name, Value = value });
        }
        else
        {
            entry.Value = value;
        }
    }

    private static string Checked(string name)
        => name.Length > 0 && name[0] != Own ? name : throw new ArgumentException("A setting has a name that does not begin with a dot.", nameof(name));
}
