using System.Globalization;

namespace Scuff.Repertoire.Storage;

/// <summary>
/// Ids and the keys of the database: "d12" is the dance of key 12. SQLite gives no key twice (AUTOINCREMENT), so an old address never shows another
/// dance.
/// </summary>
internal static class Ids
{
    /// <summary>The id of a dance.</summary>
    public static string Dance(long key) => string.Create(CultureInfo.InvariantCulture, $"d{key}");

    /// <summary>The id of a track.</summary>
    public static string Track(long key) => string.Create(CultureInfo.InvariantCulture, $"t{key}");

    /// <summary>The id of a class.</summary>
    public static string Class(long key) => string.Create(CultureInfo.InvariantCulture, $"c{key}");

    /// <summary>The id of a session.</summary>
    public static string Session(long key) => string.Create(CultureInfo.InvariantCulture, $"s{key}");

    /// <summary>The id of an evening.</summary>
    public static string Evening(long key) => string.Create(CultureInfo.InvariantCulture, $"e{key}");

    /// <summary>The id of a person.</summary>
    public static string Person(long key) => string.Create(CultureInfo.InvariantCulture, $"p{key}");

    /// <summary>The key of a dance; null when it is no id of one.</summary>
    public static long? DanceKey(string id) => KeyOf(id, 'd');

    /// <summary>The key of a track; null when it is no id of one.</summary>
    public static long? TrackKey(string id) => KeyOf(id, 't');

    /// <summary>The key of a class; null when it is no id of one.</summary>
    public static long? ClassKey(string id) => KeyOf(id, 'c');

    /// <summary>The key of a session; null when it is no id of one.</summary>
    public static long? SessionKey(string id) => KeyOf(id, 's');

    /// <summary>The key of an evening; null when it is no id of one.</summary>
    public static long? EveningKey(string id) => KeyOf(id, 'e');

    /// <summary>The key of a person; null when it is no id of one.</summary>
    public static long? PersonKey(string id) => KeyOf(id, 'p');

    private static long? KeyOf(string id, char kind)
        => id.Length is > 1 and <= 19 && id[0] == kind && id[1] is >= '1' and <= '9'
            && long.TryParse(id.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out long key)
            ? key
            : null;
}
