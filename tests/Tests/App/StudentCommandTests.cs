using System.Text.Json;
using System.Text.RegularExpressions;
using Scuff.Analysis;
using Scuff.Analysis.Floor;
using Scuff.App.Explaining;
using Scuff.App.Students;
using Scuff.App.Web;
using Scuff.App.Web.Contract;
using Scuff.Prose;
using Tests.House;

namespace Tests.App;

public sealed partial class StudentCommandTests
{
    // what a telephone loads over a poor net within some seconds, and what goes through every mail
    private const int Heaviest = 400_000;

    private static readonly string Lantern = Repository.Read("demo/dances/tin-lantern.dance");

    [Fact]
    public void The_page_lies_beside_the_dance_or_where_she_says()
    {
        using ProgramRun run = new();
        run.Put("lantern.dance", Lantern);

        Assert.Equal(0, run.Run("student", "lantern.dance"));
        Assert.Contains("Wrote lantern.student.html, ", run.Out, StringComparison.Ordinal);
        Assert.Equal(0, run.Run("student", "--output", "made/here.html", "lantern.dance"));

        Assert.Equal(run.Get("lantern.student.html"), run.Get("made/here.html"));
    }

    [Fact]
    public void No_word_of_hers_ends_the_element_it_stands_in()
    {
        const string Hostile = "</script><script>alert(1)</script><!-- </style> & \"'";
        string page = Page(Lantern.Replace("Tin Lantern", Hostile, StringComparison.Ordinal).Replace("style: small steps", $"style: {Hostile} small steps", StringComparison.Ordinal));

        Assert.Equal(2, Count(page, "</script"));
        Assert.Equal(2, Count(page, "<script"));
        Assert.Equal(1, Count(page, "</style"));
        Assert.DoesNotContain("<!--", page, StringComparison.Ordinal);
        Assert.Contains("<title>&lt;/script&gt;", page, StringComparison.Ordinal);
        Assert.Equal(Hostile, Data(page).GetProperty("title").GetString());
    }

    [Fact]
    public void The_file_stands_alone_and_may_ask_nobody()
    {
        string page = Page(Lantern);

        Assert.Contains("default-src 'none'", page, StringComparison.Ordinal);
        Assert.DoesNotContain("connect-src", page, StringComparison.Ordinal);
        Assert.Empty(Asking().Matches(page).Select(m => m.Value));
        Assert.DoesNotMatch("<audio|<video|data:audio", page);
    }

    [Fact]
    public void No_dance_of_the_demo_club_makes_a_heavy_page()
    {
        foreach (string file in Directory.GetFiles(Path.Combine(Repository.Root, "demo/dances")))
        {
            byte[] page = StudentPageFile.Write(Made(File.ReadAllText(file), ""));

            Assert.True(page.Length < Heaviest, $"{Path.GetFileName(file)}: {page.Length} bytes");
        }
    }

    [Fact]
    public void The_page_dances_what_the_program_dances()
    {
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(Lantern));
        StudentPage page = Made(Lantern, "");
        FloorAnswer floor = FloorSampler.Of(analysis, TimelineChoice.Of(analysis, null)!.Timeline, DancerSize.Default, 6);

        Assert.Equal(floor.Left.X, Unfolded(page.Plain.Floor.Left.X));
        Assert.Equal(floor.Right.Angle, Unfolded(page.Plain.Floor.Right.Angle));
        Assert.Equal(floor.Body.Facing, Unfolded(page.Plain.Floor.Body.Facing));
        Assert.Equal(floor.Steps.Select(s => (s.At, s.Count, s.Facing)), page.Plain.Steps.At.Select((at, i) => (at, page.Plain.Steps.Count[i], (string?)page.Plain.Steps.Facing[i])));
        Assert.NotNull(page.Easier);
        Assert.NotEqual(page.Plain.Floor.Left.X, page.Easier.Floor.Left.X);
        Assert.Equal(floor.Length, page.Easier.Floor.Length);
    }

    [Fact]
    public void Less_help_is_fewer_calls_and_none_begins_after_its_move()
    {
        StudentPage page = Made(Lantern, "");
        int[] many = [.. page.Plain.Calls.Select(c => c.Calls.Count)];

        Assert.Equal(["every-step", "headings", "warnings"], page.Plain.Calls.Select(c => c.Help));
        Assert.True(many[0] > many[1] && many[1] > many[2] && many[2] > 0, string.Join(' ', many));
        Assert.All(page.Plain.Calls.SelectMany(c => c.Calls), c => Assert.True(c.At < c.For));
    }

    [Fact]
    public void Every_line_that_is_danced_stands_on_the_sheet_and_every_count_is_on_one()
    {
        StudentPage page = Made(Lantern, "");
        int[] lines = [.. page.Sections.SelectMany(s => s.Lines).Select(l => l.Number)];
        FloorLine[] danced = [.. page.Plain.Floor.Sections.SelectMany(s => s.Lines)];

        Assert.All(danced, l => Assert.Contains(l.Number, lines));
        Assert.All(page.Plain.Steps.At, at => Assert.Contains(danced, l => l.At <= at && at < l.At + l.Counts));
        Assert.StartsWith("rock R back, recover", page.Sections[1].Lines[0].Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("club.example")]
    [InlineData("file:///etc/passwd")]
    public void What_is_no_address_is_refused_with_a_way_out(string address)
    {
        using ProgramRun run = new();
        run.Put("lantern.dance", Lantern);

        Assert.Equal(2, run.Run("student", "--address", address, "lantern.dance"));

        Assert.Contains("begins with https:// or http://", run.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(run.Folder, "lantern.student.html")));
    }

    [Fact]
    public void The_address_is_hers_or_that_of_the_heading()
    {
        string written = Lantern.Replace("version: 1\n", "version: 1\npage: https://club.example/a\n", StringComparison.Ordinal);

        Assert.Equal("https://club.example/a", Made(written, "").Address);
        Assert.Equal("https://club.example/b", Made(written, "https://club.example/b").Address);
        Assert.Equal("", Made(Lantern, "").Address);
    }

    [Fact]
    public void A_dance_that_cannot_be_danced_makes_a_page_that_says_what_can_be_said()
    {
        StudentPage page = Made("Scraps\n\nsection 1\n1-4 mumble over the railing\n", "");

        Assert.Equal("Scraps", page.Title);
        Assert.True(StudentPageFile.Write(page).Length > 0);
        Assert.True(StudentPageFile.Write(Made("", "")).Length > 0);
    }

    private static StudentPage Made(string text, string address) => StudentPageData.Of(DanceAnalysis.Of(DanceReader.Read(text)), address);

    private static string Page(string text)
    {
        using ProgramRun run = new();
        run.Put("d.dance", text);
        Assert.InRange(run.Run("student", "d.dance"), 0, 1);
        return run.Get("d.student.html");
    }

    private static JsonElement Data(string page)
    {
        const string Start = "id=\"dance\">";
        int from = page.IndexOf(Start, StringComparison.Ordinal) + Start.Length;
        return JsonDocument.Parse(page[from..page.IndexOf("</script>", from, StringComparison.Ordinal)]).RootElement.Clone();
    }

    private static int Count(string page, string words) => Regex.Count(page, Regex.Escape(words), RegexOptions.IgnoreCase);

    private static IEnumerable<int> Unfolded(int[] steps)
    {
        int sum = 0;
        return steps.Select(s => sum += s).ToArray();
    }

    // every way in which a page asks for another file; the words of the sheet are none
    [GeneratedRegex("<(?:script|img|iframe|link|source|object|embed)[^>]*(?:src|href)=[^>]*>|@import|url\\((?!\"?data:)[^)]*\\)", RegexOptions.IgnoreCase)]
    private static partial Regex Asking();
}
