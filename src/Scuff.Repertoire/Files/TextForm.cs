namespace Scuff.Repertoire.Files;

/// <summary>How a file wrote its characters.</summary>
public enum TextForm
{
    /// <summary>UTF-8, the form of a dance.</summary>
    Utf8,

    /// <summary>UTF-8 that begins with a byte order mark.</summary>
    Utf8WithMark,

    /// <summary>UTF-16 that begins with a byte order mark.</summary>
    Utf16,

    /// <summary>The western European form of old Windows programs, which nothing in the file proves.</summary>
    Windows1252,
}
