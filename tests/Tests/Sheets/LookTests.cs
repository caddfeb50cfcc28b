using System.Globalization;
using Scuff.Sheets.Formats;

namespace Tests.Sheets;

/// <summary>
/// Contrast of the colours, by the formula of WCAG 2.2 ("relative luminance" and "contrast ratio"):
/// at least 4.5 for text, at least 3 for edges, icons and large marks.
/// </summary>
public sealed class LookTests
{
    public static TheoryData<string> Themes => ["light", "dark"];

    [Fact]
    public void The_formula_gives_the_known_ends()
    {
        Assert.Equal(21.0, Contrast("#FFFFFF", "#000000"), 3);
        Assert.Equal(1.0, Contrast("#8A8577", "#8A8577"), 3);

        // WCAG's own border case: the lightest grey that may carry text on white.
        Assert.Equal(4.54, Contrast("#767676", "#FFFFFF"), 2);
    }

    [Theory]
    [MemberData(nameof(Themes))]
    public void Text_can_be_read_on_paper_and_on_the_floor(string theme)
    {
        Look look = Of(theme);
        foreach (string text in (string[])[look.Ink, look.Soft, look.Buoy, look.Tide])
        {
            Assert.True(Contrast(text, look.Paper) >= 4.5, $"{text} on paper");
            Assert.True(Contrast(text, look.Floor) >= 4.5, $"{text} on the floor");
        }
    }

    [Theory]
    [MemberData(nameof(Themes))]
    public void Lamp_carries_text_and_line_carries_edges_on_paper(string theme)
    {
        Look look = Of(theme);
        Assert.True(Contrast(look.Lamp, look.Paper) >= 4.5);
        Assert.True(Contrast(look.Lamp, look.Floor) >= 3);
        Assert.True(Contrast(look.Line, look.Paper) >= 3);
    }

    private static Look Of(string theme) => theme == "light" ? Look.Light : Look.Dark;

    private static double Contrast(string a, string b)
    {
        double first = Luminance(a);
        double second = Luminance(b);
        return (Math.Max(first, second) + 0.05) / (Math.Min(first, second) + 0.05);
    }

    private static double Luminance(string colour)
    {
        double[] channels = [.. Enumerable.Range(0, 3).Select(i => Linear(int.Parse(colour.AsSpan(1 + (2 * i), 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0))];
        return (0.2126 * channels[0]) + (0.7152 * channels[1]) + (0.0722 * channels[2]);
    }

    private static double Linear(double channel) => channel <= 0.04045 ? channel / 12.92 : Math.Pow((channel + 0.055) / 1.055, 2.4);
}
