using System.Globalization;
using System.Text;

namespace Scuff.Repertoire.Files;

/// <summary>
/// Names of files that Windows, macOS and Linux all take, made from titles. The rules are those of Microsoft's page "Naming Files, Paths, and
/// Namespaces", the strictest of the three; the length leaves room below the 255 bytes of ext4 and APFS.
/// </summary>
public static class SafeFileName
{
    private const int LongestBytes = 180;

    private const string Forbidden = "<>:\"/\\|?*";

    private static readonly HashSet<string> Devices = new(StringComparer.OrdinalIgnoreCase)
    {
        "CON", "PRN", "AUX", "NUL", "CONIN$", "CONOUT$",
        "COM0", "COM1", "COM2", "COM3", "COM4", "COM5", "COM6", "COM7", "COM8", "COM9", "COM¹", "COM²", "COM³",
        "LPT0", "LPT1", "LPT2", "LPT3", "LPT4", "LPT5", "LPT6", "LPT7", "LPT8", "LPT9", "LPT¹", "LPT²", "LPT³",
    };

    /// <summary>
    /// The stem of a file name for a title. What a system forbids becomes a blank; what cannot be seen goes; a name that Windows keeps for a
    /// device, or an empty one, gets the word "dance".
    /// </summary>
    public static string StemOf(string title)
    {
        StringBuilder stem = new(title.Length);
        foreach (Rune rune in title.EnumerateRunes())
        {
            bool isBlank = Rune.IsWhiteSpace(rune) || rune.Value == '\uFFFD' || (rune.IsAscii && Forbidden.Contains((char)rune.Value, StringComparison.Ordinal));
            if (isBlank)
            {
                stem.Append(' ');
            }
            else if (Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned))
            {
                stem.Append(rune.ToString());
            }
        }

        // a dot in front hides a file, a dot or blank at the end is dropped by Windows
        string tidy = string.Join(' ', stem.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries)).TrimStart('.', ' ', '~');
        tidy = Cut(tidy, LongestBytes).TrimEnd('.', ' ');
        return tidy.Length == 0 ? "dance" : Devices.Contains(tidy.Split('.')[0].TrimEnd()) ? $"dance {tidy}" : tidy;
    }

    /// <summary>The text cut to so many bytes of UTF-8, never inside a character.</summary>
    public static string Cut(string text, int bytes)
    {
        int used = 0;
        int length = 0;
        foreach (Rune rune in text.EnumerateRunes())
        {
            used += rune.Utf8SequenceLength;
            if (used > bytes)
            {
                return text[..length];
            }

            length += rune.Utf16SequenceLength;
        }

        return text;
    }

    /// <summary>The stem with an ending, or with the first number, from 2, that gives a name that is not taken.</summary>
    /// <param name="stem">The stem.</param>
    /// <param name="ending">The ending, with its dot.</param>
    /// <param name="isTaken">Whether a name is taken.</param>
    public static string Free(string stem, string ending, Func<string, bool> isTaken)
    {
        string name = stem + ending;
        for (int i = 2; isTaken(name); i++)
        {
            name = string.Create(CultureInfo.InvariantCulture, $"{stem} {i}{ending}");
        }

        return name;
    }
}
