using System.Text;
using Scuff.App.Handouts;
using Scuff.App.Playlists;
using Scuff.Sheets;
using Scuff.Sheets.Formats;
using Tests.Sheets;

namespace Tests.App.Handouts;

public sealed class HandoutsTests
{
    public static TheoryData<string> OfEvening => [.. EveningHandouts.All.Select(h => h.Name)];

    public static TheoryData<string> OfBook => [.. BookHandouts.All.Select(h => h.Name)];

    [Fact]
    public void Every_form_has_a_name_of_its_own_that_is_a_name_of_a_file()
    {
        foreach ((string Name, string Title)[] forms in ((string, string)[][])
            [[.. EveningHandouts.All.Select(h => (h.Name, h.Title))], [.. BookHandouts.All.Select(h => (h.Name, h.Title))]])
        {
            Assert.Equal(forms.Length, forms.Select(f => f.Name).Distinct().Count());
            Assert.Equal(forms.Length, forms.Select(f => f.Title).Distinct().Count());
            Assert.All(forms, f => Assert.Matches("^[a-z]+\\.[a-z0-9]+$", f.Name));
        }
    }

    [Fact]
    public void An_evening_goes_out_on_paper_in_every_sheet_format_as_music_as_a_date_and_as_a_table()
    {
        string[] expected =
        [
            .. SheetFormats.All.SelectMany(f => (string[])["programme" + f.Extension, "notes" + f.Extension]),
            .. PlaylistFormats.All.Select(f => "playlist." + f.Name),
            "playlist.zip", "evening.ics", "evening.xlsx", "evening.csv",
        ];

        Assert.Equal(expected.Order(StringComparer.Ordinal), EveningHandouts.All.Select(h => h.Name));
    }

    [Fact]
    public void A_book_goes_out_as_a_calendar_and_as_tables()
        => Assert.Equal(["book.xlsx", "classes.csv", "classes.ics", "dances.csv", "known.csv", "sessions.csv"], BookHandouts.All.Select(h => h.Name));

    [Theory]
    [MemberData(nameof(OfEvening))]
    public async Task Every_form_of_an_evening_can_be_written(string name)
    {
        string song = Path.GetTempFileName();
        try
        {
            await AssertWritten(EveningHandouts.Find(name)!, HandoutSamples.Evening with { AudioPathOf = _ => song });
        }
        finally
        {
            File.Delete(song);
        }
    }

    [Theory]
    [MemberData(nameof(OfBook))]
    public async Task Every_form_of_a_book_can_be_written(string name) => await AssertWritten(BookHandouts.Find(name)!, HandoutSamples.Book);

    [Theory]
    [MemberData(nameof(OfBook))]
    public async Task An_empty_club_can_be_taken_out_too(string name)
        => await AssertWritten(BookHandouts.Find(name)!, new BookOut { Name = "New", ClubKey = "new", Today = HandoutSamples.Book.Today, Now = HandoutSamples.Now });

    [Fact]
    public async Task Print_paper_and_language_are_obeyed()
    {
        using MemoryStream usual = new();
        using MemoryStream large = new();
        Handout<EveningOut> programme = EveningHandouts.Find("programme.html")!;

        await programme.WriteAsync(HandoutSamples.Evening, usual, TestContext.Current.CancellationToken);
        await programme.WriteAsync(HandoutSamples.Evening with { Choices = new SheetChoices { IsLarge = true, Language = "de" } }, large, TestContext.Current.CancellationToken);

        Assert.Contains("lang=\"de\"", Encoding.UTF8.GetString(large.ToArray()), StringComparison.Ordinal);
        Assert.NotEqual(usual.ToArray(), large.ToArray());
    }

    [Fact]
    public void A_file_is_named_after_what_is_taken_out()
    {
        Handout<EveningOut> handout = EveningHandouts.Find("programme.pdf")!;

        Assert.Equal("Harbour Social programme.pdf", handout.FileNameFor(EveningSamples.Small.Title));
        Assert.Equal("etc passwd programme.pdf", handout.FileNameFor("../../etc/passwd"));
    }

    [Fact]
    public void There_is_no_form_of_a_name_that_nobody_gave()
    {
        Assert.Null(EveningHandouts.Find("programme.doc"));
        Assert.Null(BookHandouts.Find(""));
    }

    private static async Task AssertWritten<T>(Handout<T> handout, T what)
    {
        using MemoryStream stream = new();
        await handout.WriteAsync(what, stream, TestContext.Current.CancellationToken);

        // the stream stays open, for whoever owns it
        Assert.True(stream is { CanWrite: true, Length: > 0 });
        if (handout.IsText)
        {
            Assert.DoesNotContain("\ufffd", new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(stream.ToArray()), StringComparison.Ordinal);
        }
    }
}
