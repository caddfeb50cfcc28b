using System.Globalization;
using Microsoft.Data.Sqlite;
using Scuff.Repertoire;

namespace Killed;

/// <summary>What stands in a club, as a line for every thing in it: as it must be after some deeds, or as it is.</summary>
internal static class Witness
{
    /// <summary>What stands in a club that was just begun.</summary>
    public static Dictionary<string, string> Beginning()
    {
        Dictionary<string, string> lines = [];
        for (int slot = 0; slot < Deed.Classes; slot++)
        {
            Put(lines, Told(new Deed(0, DeedKind.Class, slot).AsClass()));
        }

        for (int slot = 0; slot < Deed.Dances; slot++)
        {
            Put(lines, TextTold(new Deed(0, DeedKind.Dance, slot).AsDance()));
        }

        return lines;
    }

    /// <summary>What stands there after one more deed.</summary>
    /// <param name="before">What stood there.</param>
    /// <param name="backup">What stands in the backup; null when there is none.</param>
    /// <param name="deed">The deed.</param>
    public static Dictionary<string, string> After(Dictionary<string, string> before, Dictionary<string, string>? backup, Deed deed)
    {
        Dictionary<string, string> lines = new(before);
        switch (deed.Kind)
        {
            case DeedKind.Class:
                Put(lines, Told(deed.AsClass()));
                break;
            case DeedKind.Session:
                Put(lines, Told(deed.AsSession(ClassName, DanceName), c => c));
                break;
            case DeedKind.NoSession:
                lines.Remove(deed.Name("session"));
                break;
            case DeedKind.Mark:
                Put(lines, Told(deed.AsMark(ClassName, DanceName), c => c, d => d));
                break;
            case DeedKind.Evening:
                Put(lines, Told(deed.AsEvening()));
                break;
            case DeedKind.Dance:
                Put(lines, TextTold(deed.AsDance()));
                break;
            case DeedKind.Setting:
                lines[Writer.SettingOf(deed.Slot)] = deed.Words(500);
                break;
            case DeedKind.Person:
                Put(lines, Told(deed.AsPerson()));
                break;
            case DeedKind.NoPeople:
                foreach (string person in lines.Keys.Where(k => k.StartsWith("person ", StringComparison.Ordinal)).ToList())
                {
                    lines.Remove(person);
                }

                break;
            case DeedKind.Restore:
                return backup is null ? lines : new Dictionary<string, string>(backup);
            case DeedKind.Backup:
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(deed));
        }

        return lines;
    }

    /// <summary>What stands in a club.</summary>
    /// <param name="folder">Its folder.</param>
    /// <param name="faults">What is unsound about it is added here.</param>
    public static Dictionary<string, string> Seen(string folder, List<string> faults)
    {
        Dictionary<string, string> lines = [];
        using Club club = Club.Open(folder, TimeProvider.System, new FirstLineReader());
        ClubMap map = ClubMap.Read(club);
        Dictionary<string, string> classNames = map.Classes.ToDictionary(c => c.Value, c => ClassName(c.Key));
        Dictionary<string, string> danceNames = map.Dances.ToDictionary(d => d.Value, d => DanceName(d.Key));
        foreach (ClubClass held in club.Book.Classes(includeEnded: true))
        {
            Put(lines, Told(held));
        }

        foreach (ClassSession session in club.Book.Sessions(new SessionQuery { Take = int.MaxValue }).Sessions)
        {
            Put(lines, Told(session, c => classNames[c]));
            faults.AddRange(session.Items.Where(i => i.DanceId is null || session.IsHeld != i.Revision.HasValue).Select(i => $"{session.Id} has {i}"));

            // the text that was taught is kept, and it is one that was written
            faults.AddRange(session.Items.Where(i => i is { DanceId: not null, Revision: not null })
                .Where(i => club.Dances.TextOf(i.DanceId!, i.Revision!.Value)?.StartsWith(danceNames[i.DanceId!] + "\n", StringComparison.Ordinal) != true)
                .Select(i => $"no text of revision {i.Revision} of {i.Title}, which {session.Id} names"));
        }

        foreach (KnownMark mark in map.Classes.Values.SelectMany(c => club.Book.Marks(c, new DateOnly(2026, 1, 1))))
        {
            Put(lines, Told(mark, c => classNames[c], d => danceNames[d]));
        }

        foreach (string evening in map.Evenings.Values)
        {
            Put(lines, Told(club.Evenings.Get(evening)!));
        }

        foreach (string dance in map.Dances.Values)
        {
            Put(lines, TextTold(club.Dances.Get(dance)!.Text));
        }

        foreach (ClubPerson person in club.People.List())
        {
            Put(lines, Told(person));
        }

        for (int slot = 0; club.Settings.Get(Writer.SettingOf(slot)) is { } || slot < 10; slot++)
        {
            if (club.Settings.Get(Writer.SettingOf(slot)) is { } value)
            {
                lines[Writer.SettingOf(slot)] = value;
            }
        }

        faults.AddRange(Unsound(folder));
        return lines;
    }

    /// <summary>What SQLite itself finds wrong with the database of a club.</summary>
    public static List<string> Unsound(string folder)
    {
        List<string> faults = [];
        using SqliteConnection connection = new(new SqliteConnectionStringBuilder { DataSource = Path.Combine(folder, "club.db"), Pooling = false }.ToString());
        connection.Open();
        foreach (string check in new[] { "PRAGMA integrity_check", "PRAGMA foreign_key_check" })
        {
            using SqliteCommand command = connection.CreateCommand();
            command.CommandText = check;
            using SqliteDataReader reader = command.ExecuteReader();
            while (reader.Read())
            {
                if (reader.GetString(0) is not "ok" and string found)
                {
                    faults.Add($"{check}: {found}");
                }
            }
        }

        return faults;
    }

    /// <summary>The first few things in which two clubs differ.</summary>
    public static string Difference(Dictionary<string, string> expected, Dictionary<string, string> seen) => string.Join('\n', expected.Keys.Union(seen.Keys)
        .Where(k => expected.GetValueOrDefault(k) != seen.GetValueOrDefault(k))
        .Take(4)
        .Select(k => $"  {k}\n    expected {Short(expected.GetValueOrDefault(k))}\n    found    {Short(seen.GetValueOrDefault(k))}"));

    private static string Short(string? text) => text is null ? "nothing" : text.Length <= 160 ? text : $"{text[..160]}… ({text.Length})";

    private static string ClassName(int slot) => string.Create(CultureInfo.InvariantCulture, $"class {slot}");

    private static string DanceName(int slot) => string.Create(CultureInfo.InvariantCulture, $"dance {slot}");

    private static void Put(Dictionary<string, string> lines, (string Key, string Line) told) => lines[told.Key] = told.Line;

    private static (string Key, string Line) Told(ClubClass c) => (c.Title, $"{c.Minutes} {c.Notes}");

    // a session is called by the first two words about it
    private static (string Key, string Line) Told(ClassSession s, Func<string, string> classOf) => (
        string.Join(' ', s.HowItWent.Split(' ')[..2]),
        string.Create(CultureInfo.InvariantCulture, $"{classOf(s.ClassId)} {s.Date:yyyy-MM-dd} {s.IsHeld} {s.HowItWent} ")
            + string.Join('|', s.Items.Select(i => string.Create(CultureInfo.InvariantCulture, $"{i.Role} {i.Title} {i.Minutes} {i.Note}"))));

    private static (string Key, string Line) Told(KnownMark m, Func<string, string> classOf, Func<string, string> danceOf)
        => ($"mark of {classOf(m.ClassId)} for {danceOf(m.DanceId)}", $"{m.Knowing}");

    private static (string Key, string Line) Told(ClubEvening e) => (e.Title, string.Create(CultureInfo.InvariantCulture, $"{e.Date:yyyy-MM-dd} {e.Plan}"));

    private static (string Key, string Line) TextTold(string text) => (text.Split('\n')[0], text);

    private static (string Key, string Line) Told(ClubPerson p) => (p.Name, p.Notes);
}
