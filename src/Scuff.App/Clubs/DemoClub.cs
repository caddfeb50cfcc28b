using System.Globalization;
using Scuff.Repertoire;

namespace Scuff.App.Clubs;

/// <summary>The dances of the demo club: those of a small harbour town, all invented.</summary>
internal static class DemoClub
{
    private const string Root = "demo/";
    private const string Filled = "demo-filled";
    private const string All = "all";
    private const string Tag = "demo";
    private const string First = "tin-lantern";

    /// <summary>Puts the first demo dance into a club that never had them and is empty, so that there is something to look at at once.</summary>
    /// <returns>Whether others are still to come, by <see cref="Fill"/>.</returns>
    public static bool Begin(Club club)
    {
        if (club.Settings.Get(Filled) is { } filled)
        {
            return filled != All;
        }

        if (club.Dances.Search(new DanceQuery { Take = 1 }).Total > 0)
        {
            return false;
        }

        Add(club, Names().First());
        club.Settings.Set(ClubPlace.NameSetting, "Demo club");
        club.Settings.Set(Filled, "1");
        return true;
    }

    /// <summary>Puts in the others and the book of classes, while she already looks at the first. Goes on where it was stopped.</summary>
    /// <param name="club">The club.</param>
    /// <param name="today">The day it is.</param>
    public static void Fill(Club club, DateOnly today)
    {
        int done = int.TryParse(club.Settings.Get(Filled), NumberStyles.None, CultureInfo.InvariantCulture, out int kept) ? kept : 0;
        foreach (string name in Names().Skip(done))
        {
            Add(club, name);
            club.Settings.Set(Filled, (++done).ToString(CultureInfo.InvariantCulture));
        }

        DemoBook.Fill(club, today);
        club.Settings.Set(Filled, All);
    }

    private static void Add(Club club, string name)
    {
        using Stream file = typeof(DemoClub).Assembly.GetManifestResourceStream(name)!;
        using StreamReader reader = new(file);
        StoredDance added = club.Dances.Add(reader.ReadToEnd(), Hands.Import);
        club.Dances.SetTags(added.Id, [Tag]);
        if (name.Contains(First, StringComparison.Ordinal))
        {
            club.Settings.Set(ClubPlace.LastDanceSetting, added.Id);
        }
    }

    // the one that the guide begins with comes first
    private static IEnumerable<string> Names() => typeof(DemoClub).Assembly.GetManifestResourceNames()
        .Where(n => n.StartsWith(Root, StringComparison.Ordinal))
        .OrderBy(n => !n.Contains(First, StringComparison.Ordinal))
        .ThenBy(n => n, StringComparer.Ordinal);
}
