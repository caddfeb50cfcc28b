using System.Globalization;

namespace Scuff.Sheets.Formats.Html;

/// <summary>A facing as a clock hand with the notches of its wall: none for 12, one for 3, two for 6, three for 9.</summary>
internal static class FacingSign
{
    /// <summary>The sign of a clock word, for eyes at a distance; a screen reader gets the word. Empty when the word is no clock word.</summary>
    public static string Of(string facing)
    {
        string[] parts = facing.Split(':');
        if (parts.Length != 2
            || !int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out int hours)
            || !int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out int minutes))
        {
            return "";
        }

        double degrees = ((hours % 12) * 30) + (minutes * 0.5);
        int notches = minutes == 0 && hours % 3 == 0 ? hours % 12 / 3 : 0;
        string marks = string.Concat(Enumerable.Range(0, notches).Select(i => string.Create(CultureInfo.InvariantCulture, $"M{12.5 - (i * 4)} 6V14")));
        return (notches > 0 ? $"<svg viewBox=\"0 0 36 20\" aria-hidden=\"true\"><path class=\"si\" stroke-width=\"1.8\" d=\"{marks}\"/>" : "<svg viewBox=\"0 0 36 20\" aria-hidden=\"true\">")
            + string.Create(
                CultureInfo.InvariantCulture,
                $"<circle class=\"sl\" cx=\"26\" cy=\"10\" r=\"8.5\" stroke-width=\"1.2\"/><path class=\"si\" stroke-width=\"2.2\" d=\"M26 11.5V3.8\" transform=\"rotate({degrees} 26 10)\"/></svg>");
    }
}
