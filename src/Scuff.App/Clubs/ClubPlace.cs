namespace Scuff.App.Clubs;

/// <summary>Where a person's clubs lie when she does not say: the place that her system has for what programs keep for her.</summary>
internal static class ClubPlace
{
    /// <summary>The environment variable that names another place.</summary>
    public const string Variable = "SCUFF_HOME";

    /// <summary>The setting of a club that holds its name.</summary>
    public const string NameSetting = "name";

    /// <summary>The setting of a club that holds the dance she looked at last.</summary>
    public const string LastDanceSetting = "last-dance";

    private const string DemoFolder = "demo-club";

    /// <summary>
    /// The folder of the demo club below what the variable says, else below XDG_DATA_HOME or <c>~/.local/share</c>, <c>Library/Application Support</c> on a
    /// Mac, the local application data on Windows. Null where there is no such place.
    /// Source: XDG Base Directory Specification 0.8; the vendors' guides for the other two, from memory.
    /// </summary>
    /// <param name="variable">What an environment variable holds, or null.</param>
    /// <param name="home">The home folder of the user, or empty.</param>
    public static string? Demo(Func<string, string?> variable, string home)
    {
        if (variable(Variable) is { Length: > 0 } said)
        {
            return Path.Combine(Path.GetFullPath(said), DemoFolder);
        }

        string? root = OperatingSystem.IsWindows()
            ? Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData)
            : variable("XDG_DATA_HOME") is { Length: > 0 } given && Path.IsPathRooted(given) ? given
            : home.Length == 0 ? null
            : OperatingSystem.IsMacOS() ? Path.Combine(home, "Library", "Application Support")
            : Path.Combine(home, ".local", "share");
        return string.IsNullOrEmpty(root) ? null : Path.Combine(root, "scuff", DemoFolder);
    }
}
