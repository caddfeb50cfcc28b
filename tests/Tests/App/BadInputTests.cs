using System.Text;

namespace Tests.App;

public sealed class BadInputTests
{
    public static TheoryData<string, byte[], string> BadBytes => new()
    {
        { "no bytes", [], "is empty" },
        { "only spaces", "  \n\n\t"u8.ToArray(), "is empty" },
        { "a picture", [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0x00, 0x00], "is not a text" },
        { "UTF-16 without a mark", Encoding.Unicode.GetBytes("Harbour Box"), "is not a text" },
        { "UTF-16 cut in half", [0xFF, 0xFE, 0x41, 0x00, 0x42], "is damaged" },
        { "no encoding at all", [0x41, 0x81, 0x8D, 0xFF], "save it as UTF-8" },
    };

    [Theory]
    [MemberData(nameof(BadBytes))]
    public void What_is_no_text_is_told_in_one_sentence(string what, byte[] bytes, string words)
    {
        using ProgramRun run = new();
        run.Put("bad.dance", bytes);

        foreach (string command in (string[])["check", "tidy", "sheet", "explain"])
        {
            Assert.Equal(2, run.Run(command, "bad.dance"));
            string sentence = Assert.Single(run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
            Assert.StartsWith("scuff: bad.dance ", sentence, StringComparison.Ordinal);
            Assert.True(sentence.Contains(words, StringComparison.Ordinal), $"{what}: {sentence}");
            Assert.Equal("", run.Out);
        }

        Assert.Equal(2, run.Run(["check"], bytes, colours: false));
        Assert.StartsWith("scuff: Standard input ", run.Error, StringComparison.Ordinal);
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_huge_file_is_refused_before_it_is_read()
    {
        using ProgramRun run = new();
        using (FileStream huge = File.Create(Path.Combine(run.Folder, "huge.dance")))
        {
            huge.SetLength(50L * 1024 * 1024);
        }

        // A file of holes: read whole it would be refused as binary instead.
        Assert.Equal(2, run.Run("check", "huge.dance"));
        Assert.Contains("huge.dance is 50 MB", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_huge_pipe_is_refused_as_well()
    {
        using ProgramRun run = new();

        Assert.Equal(2, run.Run(["check"], new byte[(10 * 1024 * 1024) + 1], colours: false));
        Assert.Contains("above 10 MB", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_gone_does_not_stop_the_others()
    {
        using ProgramRun run = new();
        run.Put("box.dance", ProgramRun.CleanDance);

        int code = run.Run("check", "gone.dance", "box.dance");

        Assert.Equal(2, code);
        Assert.Equal("scuff: There is no file or folder named gone.dance.", run.Error.Trim());
        Assert.Contains("Harbour Box: ", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_without_dances_is_told()
    {
        using ProgramRun run = new();
        Directory.CreateDirectory(Path.Combine(run.Folder, "empty"));

        Assert.Equal(2, run.Run("check", "empty"));
        Assert.Contains("no .dance file in the folder empty", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("utf-8 with mark")]
    [InlineData("utf-16 little")]
    [InlineData("utf-16 big")]
    public void Texts_with_a_byte_order_mark_are_read_as_they_are(string form)
    {
        using ProgramRun run = new();
        Encoding encoding = form switch
        {
            "utf-8 with mark" => new UTF8Encoding(encoderShouldEmitUTF8Identifier: true),
            "utf-16 little" => new UnicodeEncoding(bigEndian: false, byteOrderMark: true),
            _ => new UnicodeEncoding(bigEndian: true, byteOrderMark: true),
        };
        run.Put("box.dance", [.. encoding.GetPreamble(), .. encoding.GetBytes(ProgramRun.CleanDance)]);

        Assert.Equal(0, run.Run("check", "box.dance"));
        Assert.Contains("Harbour Box: 16 counts", run.Out, StringComparison.Ordinal);
        Assert.Equal("", run.Error);
    }

    [Fact]
    public void Windows_1252_is_read_with_a_note()
    {
        using ProgramRun run = new();
        byte[] bytes = Encoding.Latin1.GetBytes(ProgramRun.CleanDance.Replace("Harbour Box", "Café Box", StringComparison.Ordinal));
        run.Put("box.dance", bytes);

        Assert.Equal(0, run.Run("check", "box.dance"));
        Assert.StartsWith("Café Box: 16 counts", run.Out, StringComparison.Ordinal);
        Assert.Contains("read as Windows-1252", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(new[] { "chek" }, "There is no command chek")]
    [InlineData(new[] { "check", "--jsn", "x" }, "There is no option --jsn")]
    [InlineData(new[] { "sheet", "--format", "papyrus", "x" }, "papyrus")]
    [InlineData(new[] { "explain", "--wall", "0", "x" }, "from 1, and not 0")]
    [InlineData(new[] { "explain", "--wall", "two", "x" }, "from 1, and not two")]
    [InlineData(new[] { "steps", "--jsn" }, "There is no option --jsn")]
    [InlineData(new[] { "explain", "--height", "175", "x" }, "metres between 0.5 and 2.5")]
    [InlineData(new[] { "completion" }, "shell")]
    [InlineData(new[] { "help", "dance" }, "There is no command dance")]
    public void Wrong_usage_ends_with_2_and_says_what_is_wrong(string[] args, string words)
    {
        using ProgramRun run = new();

        Assert.Equal(2, run.Run(args));
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
        Assert.Equal("", run.Out);
    }
}
