namespace Scuff.Analysis.Loads;

/// <summary>
/// How fast a rhythm is usually danced, in counts a minute: the lowest and the highest that any of the trade's lists gives (competition councils,
/// teachers' and DJs' lists, ballroom; trade: music, 1). They are there to name a rhythm and to warn, not to forbid.
/// </summary>
public static class UsualTempo
{
    private static readonly UsualRange[] All =
    [
        new("two-step", 84, 100),
        new("two-step", 168, 200),
        new("two step", 84, 100),
        new("two step", 168, 200),
        new("waltz", 76, 110),
        new("west coast", 112, 144),
        new("east coast", 124, 190),
        new("swing", 112, 190),
        new("cha", 96, 132),
        new("polka", 104, 130),
        new("nightclub", 54, 88),
        new("nightclub", 108, 128),
        new("rumba", 96, 144),
        new("samba", 96, 112),
        new("hustle", 104, 144),
        new("disco", 104, 144),
        new("jive", 152, 196),
    ];

    /// <summary>The ranges of the rhythm that is named in the words; none when none is.</summary>
    public static ValueList<UsualRange> Of(string rhythm)
    {
        ArgumentNullException.ThrowIfNull(rhythm);

        // the first rhythm that is named, so that "west coast swing" is not taken for any swing
        string? name = rhythm.Length == 0
            ? null
            : All.Select(range => range.Rhythm).FirstOrDefault(known => rhythm.Contains(known, StringComparison.OrdinalIgnoreCase));
        return name is null ? [] : [.. All.Where(range => range.Rhythm == name)];
    }
}
