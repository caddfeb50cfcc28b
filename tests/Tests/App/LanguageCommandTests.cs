using System.Text.Json;

namespace Tests.App;

public sealed class LanguageCommandTests
{
    [Fact]
    public void A_sheet_is_shown_in_the_language_named()
    {
        using ProgramRun run = new();
        run.Put("box.dance", ProgramRun.CleanDance);

        Assert.Equal(0, run.Run("sheet", "--language", "de", "box.dance"));

        Assert.Contains("RF Schritt nach rechts, LF an RF heransetzen", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Several_languages_make_several_files_and_English_keeps_its_name()
    {
        using ProgramRun run = new();
        run.Put("box.dance", ProgramRun.CleanDance);

        Assert.Equal(0, run.Run("sheet", "--language", "en,de, FR", "--output", "made", "box.dance"));

        Assert.Equal(["box.de.html", "box.fr.html", "box.html"], Directory.GetFiles(Path.Combine(run.Folder, "made")).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));
        Assert.Contains("<html lang=\"fr\"", run.Get("made/box.fr.html"), StringComparison.Ordinal);
    }

    [Fact]
    public void Several_languages_on_the_screen_are_pages_apart()
    {
        using ProgramRun run = new();
        run.Put("box.dance", ProgramRun.CleanDance);

        Assert.Equal(0, run.Run("sheet", "--language", "nl,da", "box.dance"));

        Assert.Equal(2, run.Out.Split('\f').Length);
    }

    [Theory]
    [InlineData("xx", "There is no language xx.")]
    [InlineData("de,tlh", "There is no language tlh.")]
    [InlineData(",", "There is no language ,.")]
    public void A_language_that_is_none_is_told(string codes, string told)
    {
        using ProgramRun run = new();
        run.Put("box.dance", ProgramRun.CleanDance);

        Assert.Equal(2, run.Run("sheet", "--language", codes, "box.dance"));

        Assert.Contains(told + " The languages are da, de, en, es, fr, it, nl, sv.", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_languages_are_told_with_how_sure_they_are()
    {
        using ProgramRun run = new();

        Assert.Equal(0, run.Run("languages"));

        Assert.Contains("Italiano (Italian)", run.Out, StringComparison.Ordinal);
        Assert.Contains("from memory", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_native_should_read_is_listed_with_the_English()
    {
        using ProgramRun run = new();

        Assert.Equal(0, run.Run("languages", "it"));

        Assert.Contains("label.notes  Note\n      Notes\n", run.Out.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.DoesNotContain("label.music", run.Out, StringComparison.Ordinal);
        Assert.Equal(2, run.Run("languages", "xx"));
    }

    [Fact]
    public void A_script_gets_the_same()
    {
        using ProgramRun run = new();

        Assert.Equal(0, run.Run("languages", "sv", "--json"));

        using JsonDocument answer = JsonDocument.Parse(run.Out);
        JsonElement swedish = Assert.Single(answer.RootElement.EnumerateArray());
        Assert.Equal("Svenska", swedish.GetProperty("name").GetString());
        Assert.Equal(swedish.GetProperty("fromMemory").GetInt32(), swedish.GetProperty("toRead").GetArrayLength());
        Assert.Empty(swedish.GetProperty("missing").EnumerateArray());
    }
}
