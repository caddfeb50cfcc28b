using System.Globalization;
using Scuff.Repertoire;

namespace Killed;

/// <summary>What the killed program does.</summary>
internal static class Writer
{
    /// <summary>What it says when it begins.</summary>
    public const string Ready = "ready";

    /// <summary>The setting of a slot.</summary>
    public static string SettingOf(int slot) => string.Create(CultureInfo.InvariantCulture, $"setting {slot}");

    /// <summary>The backup of a club.</summary>
    public static string BackupOf(string folder) => folder + ".zip";

    /// <summary>Does deed after deed without a pause, and says the number of each when it is done. Ends only by being killed.</summary>
    public static void Write(string folder, int seed, int serial, TextWriter output)
    {
        using Club club = Club.Open(folder, TimeProvider.System, new FirstLineReader());
        ClubMap map = ClubMap.Read(club);
        Say(output, Ready);
        for (int next = serial; ; next++)
        {
            map = Do(Deed.Of(seed, next), club, map);
            Say(output, next.ToString(CultureInfo.InvariantCulture));
        }
    }

    /// <summary>Opens one club after the other, and says the number of each when it is open.</summary>
    public static void Open(string clubs, int count, TextWriter output)
    {
        Say(output, Ready);
        for (int i = 0; i < count; i++)
        {
            string number = i.ToString(CultureInfo.InvariantCulture);
            Club.Open(Path.Combine(clubs, number), TimeProvider.System, new FirstLineReader()).Dispose();
            Say(output, number);
        }
    }

    /// <summary>Puts classes and dances into a new club, which all deeds go by.</summary>
    public static void Begin(Club club)
    {
        for (int slot = 0; slot < Deed.Classes; slot++)
        {
            club.Book.SaveClass(new Deed(0, DeedKind.Class, slot).AsClass());
        }

        for (int slot = 0; slot < Deed.Dances; slot++)
        {
            club.Dances.Add(new Deed(0, DeedKind.Dance, slot).AsDance(), "writer");
        }
    }

    // Answers with where things are afterwards.
    private static ClubMap Do(Deed deed, Club club, ClubMap map)
    {
        switch (deed.Kind)
        {
            case DeedKind.Class:
                club.Book.SaveClass(deed.AsClass() with { Id = map.Classes[deed.Slot] });
                return map;
            case DeedKind.Session:
                ClassSession session = deed.AsSession(s => map.Classes[s], s => map.Dances[s]);
                map.Sessions[deed.Slot] = club.Book.SaveSession(session with { Id = map.Sessions.GetValueOrDefault(deed.Slot, "") }).Id;
                return map;
            case DeedKind.NoSession:
                if (map.Sessions.Remove(deed.Slot, out string? gone))
                {
                    club.Book.RemoveSession(gone);
                }

                return map;
            case DeedKind.Mark:
                club.Book.SetMark(deed.AsMark(s => map.Classes[s], s => map.Dances[s]));
                return map;
            case DeedKind.Evening:
                string evening = map.Evenings.GetValueOrDefault(deed.Slot, "");
                int upon = evening.Length == 0 ? 0 : club.Evenings.Get(evening)!.Revision;
                map.Evenings[deed.Slot] = ((EveningOutcome.Saved)club.Evenings.Save(deed.AsEvening() with { Id = evening }, upon)).Evening.Id;
                return map;
            case DeedKind.Dance:
                string dance = map.Dances[deed.Slot];
                club.Dances.Save(dance, deed.AsDance(), club.Dances.Get(dance)!.Revision, deed.Serial % 2 == 0 ? "even" : "odd");
                return map;
            case DeedKind.Setting:
                club.Settings.Set(SettingOf(deed.Slot), deed.Words(500));
                return map;
            case DeedKind.Person:
                map.People[deed.Slot] = club.People.Save(deed.AsPerson() with { Id = map.People.GetValueOrDefault(deed.Slot, "") }).Id;
                return map;
            case DeedKind.NoPeople:
                club.People.EraseAll();
                map.People.Clear();
                return map;
            case DeedKind.Backup:
                club.Backup(BackupOf(club.Folder), withMusic: false, withPeople: true);
                return map;
            case DeedKind.Restore:
                if (!File.Exists(BackupOf(club.Folder)))
                {
                    return map;
                }

                club.Restore(BackupOf(club.Folder));
                return ClubMap.Read(club);
            default:
                throw new ArgumentOutOfRangeException(nameof(deed));
        }
    }

    private static void Say(TextWriter output, string line)
    {
        output.WriteLine(line);
        output.Flush();
    }
}
