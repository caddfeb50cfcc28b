using System.Globalization;
using Scuff.Sheets;

namespace Tests.Sheets;

public sealed class TextSheetFormatTests
{
    [Fact]
    public void No_line_is_wider_than_80_columns()
    {
        string words = string.Join(' ', Enumerable.Repeat("step the right foot forward, step the left foot together", 8)) + " " + new string('x', 200);

        string text = SheetSamples.Draw(SheetSamples.FullOf(words), "text");

        Assert.All(text.Split('\n'), l => Assert.True(new StringInfo(l).LengthInTextElements <= 80, l));
        Assert.All(text.Split('\n'), l => Assert.Equal(l.TrimEnd(), l));
    }

    [Fact]
    public void Counts_stand_left_and_facings_right()
    {
        SheetModel sheet = new()
        {
            Title = "Box",
            Parts =
            [
                new SheetPart("",
                [
                    new SheetSection("Section 1",
                    [
                        new SheetLine { Counts = "1-2", Words = "step R to side, step L together", Facing = "12:00" },
                        new SheetLine { Counts = "3&4", Words = "shuffle R forward", Facing = "10:30" },
                        new SheetLine { Counts = "5-6", Words = "words that could not be read" },
                    ],
                    []),
                ]),
            ],
        };

        string[] lines = SheetSamples.Draw(sheet, "text").Split('\n');

        Assert.Contains("1-2    step R to side, step L together" + new string(' ', 37) + "12:00", lines);
        Assert.Contains("3&4    shuffle R forward" + new string(' ', 51) + "10:30", lines);
        Assert.Contains("5-6    words that could not be read", lines);
    }

    [Fact]
    public void A_long_line_goes_on_under_its_words_and_the_facing_stands_at_its_end()
    {
        string words = string.Join(", ", Enumerable.Repeat("step R forward", 8));
        SheetModel sheet = new()
        {
            Title = "Long",
            Parts = [new SheetPart("", [new SheetSection("Section 1", [new SheetLine { Counts = "1-8", Words = words, Facing = "6:00" }], [])])],
        };

        string[] lines = [.. SheetSamples.Draw(sheet, "text").Split('\n').SkipWhile(l => !l.StartsWith("1-8", StringComparison.Ordinal)).TakeWhile(l => l.Length > 0)];

        Assert.Equal(2, lines.Length);
        Assert.StartsWith("       step R", lines[1], StringComparison.Ordinal);
        Assert.DoesNotContain("6:00", lines[0], StringComparison.Ordinal);
        Assert.Equal(80, lines[1].Length);
        Assert.EndsWith(" 6:00", lines[1], StringComparison.Ordinal);
    }
}
