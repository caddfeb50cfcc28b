using System.Text;
using CsCheck;
using Scuff.Repertoire.Files;

namespace Tests.Repertoire.Files;

public sealed class SafeFileNameTests
{
    // Microsoft's page "Naming Files, Paths, and Namespaces", the list of reserved names
    private static readonly string[] Reserved =
    [
        "CON", "PRN", "AUX", "NUL", "COM1", "COM2", "COM3", "COM4", "COM5", "COM6", "COM7", "COM8", "COM9", "COM¹", "COM²", "COM³",
        "LPT1", "LPT2", "LPT3", "LPT4", "LPT5", "LPT6", "LPT7", "LPT8", "LPT9", "LPT¹", "LPT²", "LPT³",
    ];

    public static TheoryData<string> Devices => [.. Reserved];

    [Theory]
    [InlineData("Tin Lantern", "Tin Lantern")]
    [InlineData("Søren's Café", "Søren's Café")]
    [InlineData("日本 🎵", "日本 🎵")]
    [InlineData("What? No!", "What No!")]
    [InlineData("A/B: \"C\" <D> | E* \\F", "A B C D E F")]
    [InlineData("../../etc/passwd", "etc passwd")]
    [InlineData(".hidden", "hidden")]
    [InlineData("~lock", "lock")]
    [InlineData("The End...", "The End")]
    [InlineData("The End . ", "The End")]
    [InlineData("a\tb\r\nc\0d", "a b cd")]
    [InlineData("\u202Egpj.exe", "gpj.exe")]
    [InlineData("lone \uD800 surrogate", "lone surrogate")]
    [InlineData("", "dance")]
    [InlineData("???", "dance")]
    [InlineData("...", "dance")]
    [InlineData("con", "dance con")]
    [InlineData("Con.Brio", "dance Con.Brio")]
    [InlineData("nul .x", "dance nul .x")]
    [InlineData("Convoy", "Convoy")]
    [InlineData("COM10", "COM10")]
    public void A_title_becomes_a_name_that_every_system_takes(string title, string stem) => Assert.Equal(stem, SafeFileName.StemOf(title));

    [Theory]
    [MemberData(nameof(Devices))]
    public void No_device_of_Windows_is_named(string device)
    {
        Assert.Equal($"dance {device}", SafeFileName.StemOf(device));
        Assert.Equal($"dance {device.ToLowerInvariant()}", SafeFileName.StemOf(device.ToLowerInvariant() + "."));
    }

    [Fact]
    public void Any_title_gives_a_name_within_the_rules()
        => Gen.String.Sample(title =>
        {
            string stem = SafeFileName.StemOf(title);
            return stem.Length > 0
                && Encoding.UTF8.GetByteCount(stem) <= 190
                && stem.IndexOfAny(['<', '>', ':', '"', '/', '\\', '|', '?', '*']) < 0
                && !stem.Any(char.IsControl)
                && stem[0] is not ('.' or ' ')
                && stem[^1] is not ('.' or ' ')
                && Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(stem)) == stem
                && !Reserved.Contains(stem.Split('.')[0].TrimEnd().ToUpperInvariant());
        });

    [Fact]
    public void A_long_title_is_cut_between_characters()
    {
        string stem = SafeFileName.StemOf(string.Concat(Enumerable.Repeat("🎵é", 200)));

        Assert.InRange(Encoding.UTF8.GetByteCount(stem), 170, 180);
        Assert.False(char.IsHighSurrogate(stem[^1]));
    }

    [Fact]
    public void A_name_that_is_taken_gets_the_first_free_number()
        => Assert.Equal("Box 3.dance", SafeFileName.Free("Box", ".dance", n => n is "Box.dance" or "Box 2.dance"));
}
