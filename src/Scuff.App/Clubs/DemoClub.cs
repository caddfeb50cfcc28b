using Scuff.Repertoire;

namespace Scuff.App.Clubs;

/// <summary>The dances of the demo club: those of a small harbour town, all invented.</summary>
internal static class DemoClub
{
    private const string Root = "demo/";
    private const string Filled = "demo-filled";
    private const string Tag = "demo";
    private const string First = "tin-lantern";

    /// <summary>Puts the demo dances into a club that never had them and is empty, so that there is something to look at.</summary>
    public static void Fill(Club club)
    {
        if (club.Settings.Get(Filled) is not null || club.Dances.Search(new DanceQuery { Take = 1 }).Total > 0)
        {
            return;
        }

        // the one that the guide begins with comes last, so it is the one that was saved last
        foreach (string name in Names().OrderBy(n => n.Contains(First, StringComparison.Ordinal)).ThenBy(n => n, StringComparer.Ordinal))
        {
            using Stream file = typeof(DemoClub).Assembly.GetManifestResourceStream(name)!;
            using StreamReader reader = new(file);
            StoredDance added = club.Dances.Add(reader.ReadToEnd(), Hands.Import);
            club.Dances.SetTags(added.Id, [Tag]);
        }

        club.Settings.Set(ClubPlace.NameSetting, "Demo club");
        club.Settings.Set(Filled, "1");
    }

    private static IEnumerable<string> Names() => typeof(DemoClub).Assembly.GetManifestResourceNames().Where(n => n.StartsWith(Root, StringComparison.Ordinal));
}
