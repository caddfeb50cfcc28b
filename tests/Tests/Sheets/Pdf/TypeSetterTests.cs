using System.Text;
using Scuff.Sheets;
using Scuff.Sheets.Drawings;
using Scuff.Sheets.Formats.Pdf;
using Tests.House;

namespace Tests.Sheets.Pdf;

public sealed class TypeSetterTests
{
    public static TheoryData<string> Demo => PdfSamples.Demo;

    [Theory]
    [MemberData(nameof(Demo))]
    public void Every_character_of_a_demo_dance_has_a_glyph_in_the_usual_face(string name)
    {
        foreach (PageBox.Type type in SheetLayout.Of(PdfSamples.Club(name)).Pages.SelectMany(p => p.Boxes).OfType<PageBox.Type>())
        {
            Assert.Null(type.Line.Spoken);
            foreach (SetRun run in type.Line.Runs)
            {
                Assert.True(run.Face == FontFaces.Plain || run.Face == FontFaces.Bold, $"“{run.Words}” is set in {run.Face.Name}");
                Assert.All(run.Words.EnumerateRunes(), r => Assert.True(run.Face.Has(r.Value), $"no glyph for {r} in “{run.Words}”"));
            }
        }
    }

    [Fact]
    public void Every_character_of_the_fixed_words_has_a_glyph_in_the_usual_face()
    {
        string[] words =
        [
            .. WordsOf(SheetLabels.English),
            .. WordsOf(DrawingLabels.English),
            .. Repository.Files.Where(f => f.StartsWith("data/languages/", StringComparison.Ordinal)).Select(Repository.Read),
        ];

        Assert.True(words.Length > 20, "the words were not found");
        Repository.AssertNone("characters without a glyph:", words
            .SelectMany(w => w.EnumerateRunes())
            .Where(r => !Rune.IsControl(r) && !(FontFaces.Plain.Has(r.Value) && FontFaces.Bold.Has(r.Value)))
            .Select(r => $"U+{r.Value:X4} {r}"));
    }

    [Theory]
    [InlineData("Приветъ")]
    [InlineData("Καλημέρα")]
    [InlineData("Điệu nhảy")]
    [InlineData("Łódź, Žďár, Reykjavík")]
    [InlineData("שלום עולם")]
    [InlineData("مرحبا بالعالم")]
    [InlineData("नमस्ते")]
    [InlineData("港の灯")]
    [InlineData("부두")]
    [InlineData("🎵 Night 🚢 ferry 👩‍👧 👍🏽")]
    [InlineData("→ ★ ♫ ↻ ✓ ♯")]
    [InlineData("𝓗𝓪𝓻𝓫𝓸𝓾𝓻 Ｑｕａｙ")]
    [InlineData("e\u0301t\u0308 \u200Fx\u00ADy\u0007z")]
    [InlineData("\uD800 half a pair \uDC00")]
    [InlineData("\U0001E030\U00012000")]
    public void Whatever_the_script_every_character_that_is_drawn_has_a_glyph(string words)
    {
        foreach (bool isBold in (bool[])[false, true])
        {
            SetLine line = TypeSetter.One(words, 10, isBold);

            Assert.NotEmpty(line.Runs);
            Assert.All(line.Runs, run => Assert.All(run.Words.EnumerateRunes(), r => Assert.True(run.Face.Has(r.Value), $"no glyph for {r}")));
        }
    }

    [Theory]
    [InlineData("plain words", "plain words", null)]
    [InlineData("港の灯台", "[U+6E2F U+306E U+706F][U+53F0]", "港の灯台")]
    [InlineData("Quay 港", "Quay [U+6E2F]", "Quay 港")]
    [InlineData("go → there", "go -> there", "go → there")]
    [InlineData("𝓗𝓪𝓻𝓫𝓸𝓾𝓻", "Harbour", "𝓗𝓪𝓻𝓫𝓸𝓾𝓻")]
    [InlineData("cafe\u0301", "café", null)]
    [InlineData("tab\tand\u0000null", "tab andnull", null)]
    public void What_no_face_has_is_told_readably(string words, string drawn, string? spoken)
    {
        SetLine line = TypeSetter.One(words, 10);

        Assert.Equal(drawn, string.Concat(line.Runs.Select(r => r.Words)));
        Assert.Equal(spoken, line.Spoken);
    }

    // Expected orders are worked out by hand from the rules of UAX 9.
    [Theory]
    [InlineData("abc", "abc")]
    [InlineData("שלום", "םולש")]
    [InlineData("abc אבג 123", "abc 123 גבא")]
    [InlineData("אבג 123 abc", "abc 123 גבא")]
    [InlineData("אבג (דה) ו", "ו (הד) גבא")]
    [InlineData("Tin אבג, דה Lantern", "Tin הד ,גבא Lantern")]
    [InlineData("1-2 אב", "בא 1-2")]
    public void Words_from_right_to_left_stand_as_they_are_read(string words, string seen)
    {
        SetLine line = TypeSetter.One(words, 10);

        Assert.Equal(seen, string.Concat(line.Runs.Select(r => r.Words)));
    }

    // Presentation forms from the Unicode charts: seen first, then lam with alef at the end of its join, meem by itself.
    [Theory]
    [InlineData("\u0633\u0644\u0627\u0645", "\uFEB3\uFEFC\uFEE1")]
    [InlineData("\u0628\u064E\u0628", "\uFE91\u064E\uFE90")]
    [InlineData("\u062F\u0627\u0631", "\uFEA9\uFE8D\uFEAD")]
    [InlineData("\u067E\u06CC", "\uFB58\uFBFD")]
    [InlineData("\u0644\u0627", "\uFEFB")]
    public void Arabic_letters_are_joined(string word, string joined) => Assert.Equal(joined, ArabicForms.Join(word));

    [Fact]
    public void A_number_is_not_parted_from_what_it_counts()
    {
        const string words = "Intro 16 counts, about 8.3 seconds, then turn 1/4 left";
        foreach (int width in Enumerable.Range(60, 260))
        {
            List<SetLine> lines = TypeSetter.Set([new Wording(words)], 10, width);

            Assert.DoesNotContain(lines.SkipLast(1), l => char.IsAsciiDigit(string.Concat(l.Runs.Select(r => r.Words)).TrimEnd()[^1]));
        }
    }

    [Fact]
    public void The_last_word_does_not_stand_alone_under_a_long_line()
    {
        const string words = "The clock time is the wall that is faced, and it is twelve where the dance has its very first count and begins";
        List<int> alone = [.. Enumerable.Range(285, 240).Where(width => TypeSetter.Set([new Wording(words)], 10, width) is { Count: > 1 } lines
            && !string.Concat(lines[^1].Runs.Select(r => r.Words)).Contains(' ', StringComparison.Ordinal))];

        Assert.Empty(alone);
    }

    [Fact]
    public void The_last_move_of_one_word_takes_the_move_before_it_along()
    {
        const string words = "saut pieds écartés, saut pieds croisés, dérouler 1/2 tour à gauche, pause";
        double room = TypeSetter.One(words, 10).Width - 1;

        List<SetLine> lines = TypeSetter.Set([new Wording(words)], 10, room, atCommas: true);

        Assert.Equal(
            ["saut pieds écartés, saut pieds croisés,", "dérouler 1/2 tour à gauche, pause"],
            lines.Select(l => string.Concat(l.Runs.Select(r => r.Words)).TrimEnd()));
    }

    [Fact]
    public void A_long_word_is_broken_and_nothing_of_it_is_lost()
    {
        string word = string.Concat(Enumerable.Range(0, 300).Select(i => (char)('a' + (i % 26))));

        List<SetLine> lines = TypeSetter.Set([new Wording(word)], 10, 100);

        Assert.True(lines.Count > 5, "the word was to take several lines");
        Assert.All(lines, l => Assert.InRange(l.Width, 1, 100));
        Assert.Equal(word, string.Concat(lines.SelectMany(l => l.Runs).Select(r => r.Words)));
    }

    [Fact]
    public void A_width_is_the_sum_of_the_widths_in_the_font()
    {
        // widths of the face as its designers state them, in thousandths: 1 is 407, hyphen 362, 2 is 548
        Assert.Equal((407 + 362 + 548) * 20 / 1000.0, TypeSetter.One("1-2", 20).Width, 3);
    }

    private static IEnumerable<string> WordsOf(object labels) => labels.GetType().GetProperties()
        .Where(p => p.PropertyType == typeof(string))
        .Select(p => (string)p.GetValue(labels)!);
}
