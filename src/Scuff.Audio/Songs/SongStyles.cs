namespace Scuff.Audio.Songs;

/// <summary>What is usual in each style.</summary>
public static class SongStyles
{
    private static readonly (SongStyle Style, string Name, double Low, double High)[] All =
    [
        (SongStyle.TwoStep, "two-step", 144, 200),
        (SongStyle.EastCoastSwing, "ecs", 126, 186),
        (SongStyle.ChaCha, "cha-cha", 100, 130),
        (SongStyle.PopRock, "pop-rock", 82, 142),
        (SongStyle.DancePop, "dance-pop", 112, 134),
        (SongStyle.Nightclub, "nightclub", 60, 92),
        (SongStyle.Waltz, "waltz", 84, 164),
        (SongStyle.Polka, "polka", 104, 136),
        (SongStyle.Groove, "groove", 84, 118),
        (SongStyle.Rumba, "rumba", 96, 136),
        (SongStyle.Samba, "samba", 92, 112),
        (SongStyle.Jig, "jig", 84, 126),
    ];

    /// <summary>The name of a style in files and on the command line.</summary>
    public static string NameOf(SongStyle style) => All[(int)style].Name;

    /// <summary>The style of a name; null if there is none.</summary>
    public static SongStyle? Named(string name)
        => Array.Find(All, s => s.Name == name) is { Name: not null } found ? found.Style : null;

    /// <summary>
    /// Usual tempos in beats a minute. The trade's ranges: competition and teachers' lists (letsdancedenver.com/docs/danceMusic,
    /// hollywoodballroomdc.com, centralhome.com/ballroomcountry/temp.htm), widened to what is played at socials.
    /// </summary>
    public static (double Low, double High) TemposOf(SongStyle style) => (All[(int)style].Low, All[(int)style].High);
}
