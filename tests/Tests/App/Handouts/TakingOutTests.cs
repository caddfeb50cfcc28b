using System.IO.Compression;
using System.Net;
using System.Text;
using Scuff.App;
using Scuff.App.Clubs;
using Scuff.App.Handouts;
using Scuff.App.Programmes;
using Scuff.App.Web;
using Scuff.Repertoire;
using Scuff.Solving;
using Tests.House;
using Tests.Web;

namespace Tests.App.Handouts;

/// <summary>From a club to files, by the command line and by the page.</summary>
public sealed class TakingOutTests : IDisposable
{
    private readonly ProgramRun _run = new();

    public TakingOutTests()
    {
        foreach (string name in (string[])["first-tide", "tin-lantern", "moorings", "net-loft", "gangplank"])
        {
            _run.Put($"in/{name}.dance", Repository.Read($"demo/dances/{name}.dance"));
        }

        _run.Run("club", "import", "--club", "mine", "in");
        using (Club club = OpenClub())
        {
            club.Tracks.Add(Sound("tide"), "tide.mp3", new TrackFacts { Title = "Low Water Lullaby", Artist = "The Slipway Six", Seconds = 178 });
            club.Tracks.Add(Sound("plank"), "plank.wav", new TrackFacts { Title = "Mind Your Step, Madam", Artist = "The Ferry Queue", Seconds = 185 });
        }

        Assert.Equal(ExitCode.Clean, _run.Run("night", "make", "Harbour social", "2026-12-05", "--minutes", "30", "--level", "improver:20", "--club", "mine"));
        Assert.Equal(ExitCode.Clean, _run.Run("night", "plan", "harbour", "--must", "first-tide", "gangplank", "--seconds", "1", "--club", "mine"));
    }

    public void Dispose() => _run.Dispose();

    [Fact]
    public void Every_form_of_an_evening_is_written_under_its_name()
    {
        foreach (Handout<EveningOut> form in EveningHandouts.All)
        {
            Assert.Equal(ExitCode.Clean, _run.Run("night", "write", "harbour", form.Name, "--club", "mine"));
            Assert.Equal($"Wrote Harbour social {form.Name}\n", _run.Out);
            Assert.True(new FileInfo(Path.Combine(_run.Folder, $"Harbour social {form.Name}")).Length > 0, form.Name);
        }
    }

    [Fact]
    public void Every_form_of_the_book_is_written_under_its_name()
    {
        foreach (Handout<BookOut> form in BookHandouts.All)
        {
            Assert.Equal(ExitCode.Clean, _run.Run("book", "write", form.Name, "--club", "mine"));
            Assert.Equal($"Wrote Classes and evenings {form.Name}\n", _run.Out);
        }

        Assert.Equal(ExitCode.Trouble, _run.Run("book", "write", "parchment", "--club", "mine"));
        Assert.Contains("Forms are book.xlsx, classes.csv,", _run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Print_and_language_can_be_chosen()
    {
        Assert.Equal(ExitCode.Clean, _run.Run("night", "write", "harbour", "programme.html", "big.html", "--large", "--paper", "letter", "--language", "de", "--club", "mine"));

        string page = _run.Get("big.html");
        Assert.Contains("<html lang=\"de\" class=\"large notice\">", page, StringComparison.Ordinal);
        Assert.Contains("size: letter", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_playlist_is_a_folder_with_the_songs_of_the_club_and_tells_what_it_lacks()
    {
        Assert.Equal(ExitCode.Clean, _run.Run("night", "playlist", "harbour", "--club", "mine"));

        Assert.StartsWith("Wrote Harbour social: 2 songs, with silence between them.", _run.Out, StringComparison.Ordinal);
        Assert.Contains("The club has no audio of “Harbour Lights Out” for Tin Lantern; play it from elsewhere.", _run.Error, StringComparison.Ordinal);
        string[] songs = [.. Directory.EnumerateFiles(Path.Combine(_run.Folder, "Harbour social")).Where(f => !Path.GetFileName(f).StartsWith("silence", StringComparison.Ordinal) && !f.Contains("playlist.", StringComparison.Ordinal))];
        Assert.Equal(["sound of plank", "sound of tide"], songs.Select(File.ReadAllText).Order(StringComparer.Ordinal));
        Assert.Contains(songs, s => Path.GetFileName(s)[3..] == "Low Water Lullaby.mp3");
        Assert.Contains(songs, s => Path.GetFileName(s)[3..] == "Mind Your Step, Madam.wav");

        Assert.Equal(ExitCode.Clean, _run.Run("night", "playlist", "harbour", "--club", "mine"));
        Assert.Equal(ExitCode.Trouble, _run.Run("night", "playlist", "harbour", "in", "--club", "mine"));
        Assert.Contains("in holds something else than a playlist", _run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void An_evening_is_one_entry_whether_it_is_taken_alone_or_with_the_club()
    {
        _run.Run("night", "write", "harbour", "evening.ics", "one.ics", "--club", "mine");
        _run.Run("book", "write", "classes.ics", "all.ics", "--club", "mine");
        string[] alone = [.. _run.Get("one.ics").Split("\r\n").Where(l => l.StartsWith("UID:", StringComparison.Ordinal) || l.StartsWith("SEQUENCE:", StringComparison.Ordinal))];

        Assert.NotEmpty(alone);
        Assert.All(alone, l => Assert.Contains(l + "\r\n", _run.Get("all.ics"), StringComparison.Ordinal));
        _run.Run("book", "write", "classes.ics", "again.ics", "--club", "mine");
        Assert.Contains(alone[0], _run.Get("again.ics"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_hands_out_the_same()
    {
        using Club club = OpenClub();
        using Studio studio = new(club, new SteppedClock(), Assert.Fail) { Night = new NightDesk(new ExactProgrammeSolver()) };
        await using StudioServer server = await StudioServer.Start(studio, 0);
        using HttpClient client = new() { BaseAddress = server.Address };
        string id = Assert.Single(club.Evenings.List()).Id;

        foreach (Handout<EveningOut> form in EveningHandouts.All)
        {
            using HttpResponseMessage answer = await client.GetAsync($"/api/evenings/{id}/file/{form.Name}", TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.EndsWith(form.Extension, answer.Content.Headers.ContentDisposition!.FileNameStar, StringComparison.Ordinal);
            Assert.Equal(answer.Content.Headers.ContentLength, (await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)).Length);
        }

        foreach (Handout<BookOut> form in BookHandouts.All)
        {
            using HttpResponseMessage answer = await client.GetAsync($"/api/book/file/{form.Name}", TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        }

        using ZipArchive pack = new(await client.GetStreamAsync($"/api/evenings/{id}/file/playlist.zip", TestContext.Current.CancellationToken), ZipArchiveMode.Read);
        Assert.Contains(pack.Entries, e => e.Name.EndsWith("Low Water Lullaby.mp3", StringComparison.Ordinal));
        string large = await client.GetStringAsync($"/api/evenings/{id}/file/programme.html?large=true&paper=letter", TestContext.Current.CancellationToken);
        Assert.Contains("class=\"large notice\"", large, StringComparison.Ordinal);
        Assert.Contains("size: letter", large, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_club_without_audio_is_told_so_and_no_half_file_is_sent()
    {
        using Club club = OpenClub();
        foreach (string track in club.Tracks.Search(new TrackQuery()).Rows.Select(t => t.Id).ToArray())
        {
            File.Delete(club.Tracks.AudioPath(track)!);
        }

        using Studio studio = new(club, new SteppedClock(), Assert.Fail) { Night = new NightDesk(new ExactProgrammeSolver()) };
        await using StudioServer server = await StudioServer.Start(studio, 0);
        using HttpClient client = new() { BaseAddress = server.Address };

        using HttpResponseMessage answer = await client.GetAsync($"/api/evenings/{Assert.Single(club.Evenings.List()).Id}/file/playlist.zip", TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("There is no song with audio in it", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    private static MemoryStream Sound(string name) => new(Encoding.UTF8.GetBytes("sound of " + name));

    private Club OpenClub() => Club.Open(Path.Combine(_run.Folder, "mine"), TimeProvider.System, new DanceFactReader());
}
