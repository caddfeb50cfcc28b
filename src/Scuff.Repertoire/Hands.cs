namespace Scuff.Repertoire;

/// <summary>
/// Names of hands that texts come from. A page that writes gives a name of its own (any other string, the same from its opening to its closing); a
/// text from another hand than the last one's, and any from one of those here, makes the club keep the text before it as a version.
/// </summary>
public static class Hands
{
    /// <summary>An edit made outside, in the file of the linked folder.</summary>
    public const string Outside = "outside";

    /// <summary>A version that was gone back to.</summary>
    public const string Version = "version";

    /// <summary>A file that was imported.</summary>
    public const string Import = "import";

    /// <summary>Whether it is none of those here.</summary>
    internal static bool IsPage(string hand) => hand is not (Outside or Version or Import);
}
