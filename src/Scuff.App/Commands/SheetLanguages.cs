using Scuff.Sheets.Languages;

namespace Scuff.App.Commands;

/// <summary>Languages as one names them on the command line: codes with commas between.</summary>
internal static class SheetLanguages
{
    /// <summary>The codes, each once.</summary>
    public static IReadOnlyList<string> Split(string codes) =>
    [
        .. codes.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Select(c => c.ToLowerInvariant())
            .Distinct(StringComparer.Ordinal),
    ];

    /// <summary>The first that is no language of Scuff (an empty text when none is named at all), or null.</summary>
    public static string? Unknown(string codes)
    {
        IReadOnlyList<string> split = Split(codes);
        return split.Count == 0 ? codes : split.FirstOrDefault(c => !SheetLanguage.Codes.Contains(c));
    }
}
