using System.Text.Json;
using Scuff.App.Clubs;
using Scuff.Repertoire;

namespace Tests.App;

public sealed class BookCommandTests : IDisposable
{
    private readonly ProgramRun _run = new();

    public BookCommandTests()
    {
        _run.Put("in/box.dance", ProgramRun.CleanDance);
        _run.Put("in/tin.dance", ProgramRun.CleanDance.Replace("Harbour Box", "Tin Lantern", StringComparison.Ordinal));
        _run.Put("in/tide.dance", ProgramRun.CleanDance.Replace("Harbour Box", "Tin Tide", StringComparison.Ordinal).Replace("rock R forward", "rock R back", StringComparison.Ordinal));
        _run.Run("club", "import", "--club", "mine", "in");
    }

    public void Dispose() => _run.Dispose();

    [Fact]
    public void A_class_is_begun_changed_and_listed()
    {
        Book(0, "");
        Assert.StartsWith("There are no classes yet.", _run.Out, StringComparison.Ordinal);

        Book(0, "class", "Monday beginners", "--day", "mon", "--starts", "19:30", "--minutes", "90", "--place", "The net loft");
        Assert.Equal("Began Monday beginners: Mondays at 19:30, 90 minutes, The net loft\n", _run.Out);
        Book(0, "class", "monday beginners", "--people", "12", "--level", "beginner");
        Assert.Equal("Changed Monday beginners: beginner, Mondays at 19:30, 90 minutes, The net loft, about 12 people\n", _run.Out);
        Book(0, "class", "Monday", "--title", "Monday improvers");
        Assert.StartsWith("Changed Monday improvers:", _run.Out, StringComparison.Ordinal);

        // what another class is called by its beginning is a class of its own
        Book(0, "class", "Monday");
        Assert.Equal("Began Monday: no fixed day, 60 minutes\n", _run.Out);
        Book(0);
        Assert.Equal(
            """
              class             meets         minutes  level     place         people  last met  planned
              Monday improvers  Monday 19:30  90       beginner  The net loft  12
              Monday                          60

            """,
            _run.Out);
    }

    [Fact]
    public void A_session_is_planned_held_and_shown()
    {
        Begin();
        Book(0, "plan", "monday", "2026-03-09", "--warm-up", "tin-lantern", "--taught", "HARBOUR", "--cool-down", "+A visitor's", "--minutes", "80");
        Assert.Equal(
            """
            Planned Monday beginners on 2026-03-09: 3 dances
              day                 class             role       minutes  dance
              2026-03-09 planned  Monday beginners  warm-up             Tin Lantern
                                                    taught              Harbour Box
                                                    cool-down           A visitor's (not in the club)

            """,
            _run.Out);

        Book(0, "record", "monday", "2026-03-09", "--people", "11", "--note", "laughing");
        Assert.StartsWith("Recorded as planned Monday beginners on 2026-03-09: 3 dances\n", _run.Out, StringComparison.Ordinal);
        Book(0, "record", "monday", "2026-03-16", "--danced", "harbour", "tin-l");
        Book(0, "known", "monday", "harbour", "cues", "--date", "2026-03-16");
        Assert.Equal("Monday beginners, Harbour Box: knows it with cues, from 2026-03-16\n", _run.Out);

        Book(0, "show", "monday");
        Assert.Equal(
            """
            Monday beginners: Mondays, 60 minutes

              dance        known               since       last danced  times  sheet
              Harbour Box  knows it with cues  2026-03-16  2026-03-16   2
              Tin Lantern                                  2026-03-16   2

            """,
            _run.Out);

        Book(0, "sessions", "monday", "--json");
        using JsonDocument json = JsonDocument.Parse(_run.Out);
        JsonElement session = json.RootElement[1];
        Assert.Equal(("2026-03-09", true, 11, "laughing", 80), (
            session.GetProperty("date").GetString(), session.GetProperty("held").GetBoolean(), session.GetProperty("people").GetInt32(),
            session.GetProperty("howItWent").GetString(), session.GetProperty("minutes").GetInt32()));
        Assert.Equal(["warm-up", "taught", "cool-down"], session.GetProperty("dances").EnumerateArray().Select(d => d.GetProperty("role").GetString()));
        Assert.False(session.GetProperty("dances")[2].TryGetProperty("dance", out _));

        Book(2, "plan", "monday", "2026-03-09");
        Assert.Contains("met on 2026-03-09 already", _run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_newer_sheet_is_told_with_what_changed()
    {
        Begin();
        Book(0, "record", "monday", "today", "--taught", "harbour", "tin-lantern");
        Change("Harbour Box", text => text.Replace("rock R forward", "rock R back", StringComparison.Ordinal));
        Change("Tin Lantern", text => text + "\nnote: softly\n");

        Book(0, "show", "monday");

        Assert.Matches(@"Harbour Box .* newer than taught\n", _run.Out);
        Assert.Matches(@"Tin Lantern .* newer than taught, in words only\n", _run.Out);
        Assert.Matches(@"Harbour Box, since it was taught on \d{4}-\d\d-\d\d:\n  \S.*rock", _run.Out);

        Book(0, "show", "monday", "--json");
        using JsonDocument json = JsonDocument.Parse(_run.Out);
        JsonElement box = json.RootElement.GetProperty("dances").EnumerateArray().Single(d => d.GetProperty("title").GetString() == "Harbour Box");
        Assert.True(box.GetProperty("newer").GetBoolean());
        Assert.True(box.GetProperty("feetChanged").GetBoolean());
        Assert.Contains(box.GetProperty("changes").EnumerateArray(), c => c.GetString()!.Contains("rock", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("There is no class called Friday. The classes are Monday beginners.", "show", "Friday")]
    [InlineData("There is no dance called Rope in the club. For a dance of somebody else write + before its title: \"+Rope\"", "record", "monday", "2026-03-09", "--taught", "Rope")]
    [InlineData("tin may be one of 2 dances: Tin Lantern (d3), Tin Tide (d2). Write more of the title, or the dance's id.", "known", "monday", "tin", "alone")]
    [InlineData("A class knows a dance in one of these ways: follows, start, cues, alone or none; well is none of them.", "known", "monday", "harbour", "well")]
    [InlineData("2026-13-40 is no day. Write year, month and day, such as ", "plan", "monday", "2026-13-40")]
    [InlineData("The book knows the years 1900 to 2199, and 1066-10-14 is in none of them.", "plan", "monday", "1066-10-14")]
    [InlineData("A session cannot last -5 minutes: it lasts from 1 minute to a day, which has 1440.", "plan", "monday", "2026-03-09", "--minutes", "-5")]
    [InlineData("noon is no time. Write hours and minutes, such as 19:30.", "class", "monday beginners", "--starts", "noon")]
    [InlineData("t is no day of the week. Write it out, such as monday.", "class", "monday beginners", "--day", "t")]
    [InlineData("--for-good goes with --remove.", "class", "monday beginners", "--for-good")]
    [InlineData("--taught does not go with show.", "show", "monday", "--taught", "harbour")]
    [InlineData("Usage: scuff book known CLASS DANCE HOW", "known", "monday")]
    [InlineData("Usage: scuff book classes", "classes", "monday")]
    [InlineData("Nobody called Wren is kept, so nobody was erased. Write the whole name.", "people", "erase", "Wren")]
    [InlineData("Say what to do with the people: scuff book people [add NAME | export FILE | erase NAME | erase --all]", "people", "erase")]
    public void What_cannot_be_is_told_in_a_sentence(string sentence, params string[] words)
    {
        Begin();

        Book(2, words);

        Assert.Contains(sentence, _run.Error, StringComparison.Ordinal);
        Assert.Equal("", _run.Out);
    }

    [Fact]
    public void A_club_that_is_not_there_is_not_made()
    {
        Assert.Equal(2, _run.Run("book", "--club", "nowhere"));
        Assert.Contains("There is no club in ", _run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(_run.Folder, "nowhere")));
    }

    [Fact]
    public void A_class_that_met_is_ended_and_removed_only_for_good()
    {
        Begin();
        Book(0, "record", "monday", "2026-03-09", "--danced", "harbour");

        Book(0, "class", "monday", "--remove");
        Assert.StartsWith("Ended Monday beginners; what it did stays in the book.", _run.Out, StringComparison.Ordinal);
        Book(0, "sessions", "monday");
        Assert.Contains("Harbour Box", _run.Out, StringComparison.Ordinal);
        Book(0, "class", "monday", "--remove", "--for-good");
        Assert.Equal("Removed Monday beginners\n", _run.Out);
        Book(0, "sessions");
        Assert.Equal("None yet.\n", _run.Out);
    }

    [Fact]
    public void People_are_added_written_out_and_erased()
    {
        Begin();
        Book(0, "people");
        Assert.Equal("No people are kept, and nothing needs any.\n", _run.Out);
        Book(0, "people", "add", "Wren Quillfeather", "--class", "monday", "--needs", "a chair near");
        Book(0, "people");
        Assert.Contains("Wren Quillfeather         Monday beginners  a chair near", _run.Out, StringComparison.Ordinal);
        Book(0, "people", "export", "people.csv");
        Assert.Equal("Wrote 1 person into people.csv\n", _run.Out);
        Assert.Contains("\"Wren Quillfeather\",\"\",\"Monday beginners\",\"a chair near\"", _run.Get("people.csv"), StringComparison.Ordinal);

        Assert.Equal(0, _run.Run("club", "backup", "--club", "mine", "mine.zip"));
        Assert.EndsWith("The people you keep were left out (--people puts them in).\n", _run.Out, StringComparison.Ordinal);
        Assert.Equal(0, _run.Run("club", "backup", "--people", "--club", "mine", "mine.zip"));
        Assert.DoesNotContain("left out", _run.Out, StringComparison.Ordinal);
        Assert.Equal(2, _run.Run("club", "export", "--people", "--club", "mine", "out"));
        Assert.Contains("--people goes with backup, not with export.", _run.Error, StringComparison.Ordinal);

        Book(0, "people", "erase", "wren quillfeather");
        Assert.StartsWith("Erased 1 person for good.", _run.Out, StringComparison.Ordinal);
        Book(0, "people", "erase", "--all");
        Assert.StartsWith("Erased 0 people for good.", _run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_class_is_about_to_forget_is_told_with_the_reason()
    {
        Begin();
        Book(0, "revise", "monday");
        Assert.Contains("is about to forget nothing by", _run.Out, StringComparison.Ordinal);
        Book(0, "record", "monday", "2026-01-05", "--taught", "tin-lantern", "--danced", "harbour");
        Book(0, "known", "monday", "tin-lantern", "cues", "--date", "2026-01-05");

        Book(0, "revise", "monday", "2026-03-02");

        Assert.StartsWith("Dance these with Monday beginners on 2026-03-02:", _run.Out, StringComparison.Ordinal);
        Assert.Contains("Danced last eight weeks ago and known with cues; about half is likely left.", _run.Out, StringComparison.Ordinal);
        Book(0, "revise", "monday", "2026-03-02", "--all", "--json");
        using JsonDocument told = JsonDocument.Parse(_run.Out);
        Assert.Equal(["Harbour Box", "Tin Lantern"], told.RootElement.EnumerateArray().Select(d => d.GetProperty("title").GetString()).Order());
    }

    [Fact]
    public void Dances_that_are_alike_by_their_feet_are_found()
    {
        Book(0, "alike", "harbour");

        Assert.Contains("Tin Lantern  100 %  section 1 is its 1; section 2 is its 2", _run.Out, StringComparison.Ordinal);
        Assert.Contains("Tin Tide", _run.Out, StringComparison.Ordinal);
        Book(2, "alike", "nowhere");
    }

    private void Begin() => Book(0, "class", "Monday beginners", "--day", "monday");

    private void Book(int code, params string[] words)
    {
        int ended = _run.Run(["book", .. words.Where(w => w.Length > 0), "--club", "mine"]);
        Assert.True(code == ended, $"ended with {ended}: {_run.Error}");
    }

    private void Change(string title, Func<string, string> change)
    {
        using Club club = Club.Open(Path.Combine(_run.Folder, "mine"), TimeProvider.System, new DanceFactReader());
        StoredDance dance = club.Dances.Get(club.Dances.Named(title)[0].Id)!;
        Assert.IsType<SaveOutcome.Saved>(club.Dances.Save(dance.Id, change(dance.Text), dance.Revision, "page"));
    }
}
