using Scuff;
using Scuff.Repertoire;

namespace Tests.Repertoire;

public sealed class ClubBookTests : IDisposable
{
    // the clock of the house stands on this day
    private static readonly DateOnly Today = new(2026, 3, 2);

    private readonly ClubHouse _house = new();

    private ClubBook Book => _house.Club.Book;

    public void Dispose() => _house.Dispose();

    [Fact]
    public void A_class_is_kept_as_it_was_said_and_changed_in_its_place()
    {
        ClubClass kept = Book.SaveClass(new ClubClass
        {
            Title = "  Monday\n beginners ",
            Level = "beginner",
            Weekday = DayOfWeek.Monday,
            Starts = new TimeOnly(19, 30, 40),
            Minutes = 90,
            Place = "The net loft",
            People = 14,
            Notes = "line one\r\nline two",
        });

        Assert.Equal("Monday beginners", kept.Title);
        Assert.Equal(new TimeOnly(19, 30), kept.Starts);
        Assert.Equal("line one\nline two", kept.Notes);
        Assert.Equal(kept, Book.Class(kept.Id));
        Assert.Equal(kept, Assert.Single(Book.Classes()));

        ClubClass changed = Book.SaveClass(kept with { Minutes = 60, People = null, Weekday = null, Starts = null });
        Assert.Equal(kept.Id, changed.Id);
        Assert.Equal(changed, _house.Reopen().Book.Class(kept.Id));
    }

    [Fact]
    public void Classes_come_by_weekday_from_Monday_then_by_time()
    {
        foreach ((string title, DayOfWeek? day, int? hour) in new (string, DayOfWeek?, int?)[]
        {
            ("whenever", null, null), ("Sunday", DayOfWeek.Sunday, 10), ("Monday late", DayOfWeek.Monday, 20), ("Monday, no time", DayOfWeek.Monday, null),
            ("Monday", DayOfWeek.Monday, 9), ("Friday", DayOfWeek.Friday, 9),
        })
        {
            Book.SaveClass(new ClubClass { Title = title, Weekday = day, Starts = hour is { } h ? new TimeOnly(h, 0) : null });
        }

        Assert.Equal(["Monday", "Monday late", "Monday, no time", "Friday", "Sunday", "whenever"], Book.Classes().Select(c => c.Title));
    }

    [Theory]
    [InlineData("", 60, 5, "A class needs a title.")]
    [InlineData(" \n ", 60, 5, "A class needs a title.")]
    [InlineData("A", 0, 5, "A class cannot last 0 minutes: it lasts from 1 minute to a day, which has 1440.")]
    [InlineData("A", -60, 5, "A class cannot last -60 minutes: it lasts from 1 minute to a day, which has 1440.")]
    [InlineData("A", 1441, 5, "A class cannot last 1441 minutes: it lasts from 1 minute to a day, which has 1440.")]
    [InlineData("A", 60, -1, "There cannot be -1 people in a class.")]
    public void A_class_that_cannot_be_is_refused_in_a_sentence(string title, int minutes, int people, string sentence)
    {
        ClubTrouble trouble = Assert.Throws<ClubTrouble>(() => Book.SaveClass(new ClubClass { Title = title, Minutes = minutes, People = people }));

        Assert.Equal(ClubTroubleKind.Impossible, trouble.Kind);
        Assert.Equal(sentence, trouble.Message);
        Assert.Empty(Book.Classes());
    }

    [Fact]
    public void A_class_with_held_sessions_is_ended_and_not_lost()
    {
        ClubClass held = AddClass("Monday");
        ClubClass fresh = AddClass("Tuesday");
        string session = Book.SaveSession(Held(held, Today)).Id;
        string planned = Book.SaveSession(new ClassSession { ClassId = fresh.Id, Date = Today }).Id;

        Assert.Equal(ClassRemoval.Ended, Book.RemoveClass(held.Id));
        Assert.Equal(ClassRemoval.Removed, Book.RemoveClass(fresh.Id));
        Assert.Equal(ClassRemoval.Gone, Book.RemoveClass(fresh.Id));
        Assert.Equal(ClassRemoval.Gone, Book.RemoveClass("nonsense"));

        Assert.Equal(Today, Book.Class(held.Id)!.EndedOn);
        Assert.NotNull(Book.Session(session));
        Assert.Null(Book.Session(planned));
        Assert.Single(Book.Classes());
        _house.Clock.GoOn(TimeSpan.FromDays(1));
        Assert.Empty(Book.Classes());
        Assert.Equal(held.Id, Assert.Single(Book.Classes(includeEnded: true)).Id);

        Assert.Equal(ClassRemoval.Removed, Book.RemoveClass(held.Id, forGood: true));
        Assert.Null(Book.Session(session));
    }

    [Fact]
    public void A_session_is_kept_with_everything_that_was_danced_in_order()
    {
        ClubClass held = AddClass("Monday");
        string dance = AddDance("Harbour Box\n1 step");

        ClassSession kept = Book.SaveSession(new ClassSession
        {
            ClassId = held.Id,
            Date = Today,
            Starts = new TimeOnly(20, 0),
            Minutes = 75,
            IsHeld = true,
            People = 11,
            HowItWent = "They laughed.",
            Items =
            [
                new SessionItem { Role = ItemRole.WarmUp, Title = "A visitor's dance", Minutes = 5 },
                new SessionItem { Role = ItemRole.Taught, DanceId = dance, Minutes = 40, Note = "lost at the turn" },
                new SessionItem { Role = ItemRole.Danced, DanceId = dance },
            ],
        });

        Assert.Equal(
        [
            new SessionItem { Role = ItemRole.WarmUp, Title = "A visitor's dance", Minutes = 5 },
            new SessionItem { Role = ItemRole.Taught, DanceId = dance, Title = "Harbour Box", Revision = 1, Minutes = 40, Note = "lost at the turn" },
            new SessionItem { Role = ItemRole.Danced, DanceId = dance, Title = "Harbour Box", Revision = 1 },
        ],
        kept.Items);
        Assert.Equal(kept, _house.Reopen().Book.Session(kept.Id));
    }

    [Fact]
    public void A_planned_session_names_no_version_and_becomes_held_in_its_place()
    {
        ClubClass held = AddClass("Monday");
        string dance = AddDance("Harbour Box");
        ClassSession plan = Book.SaveSession(
            new ClassSession { ClassId = held.Id, Date = Today, Items = [new SessionItem { Role = ItemRole.Taught, DanceId = dance, Revision = 1 }] });

        Assert.Null(plan.Items[0].Revision);
        Assert.Empty(Book.LastDanced(held.Id));

        ClassSession done = Book.SaveSession(plan with { IsHeld = true });
        Assert.Equal(plan.Id, done.Id);
        Assert.Equal(1, done.Items[0].Revision);
        Assert.Equal(1, Book.Sessions(new SessionQuery()).Total);
    }

    [Fact]
    public void Sessions_come_latest_first_by_class_days_and_pages()
    {
        ClubClass monday = AddClass("Monday");
        ClubClass friday = AddClass("Friday");
        for (int week = 0; week < 6; week++)
        {
            Book.SaveSession(Held(monday, Today.AddDays(7 * week)));
            Book.SaveSession(new ClassSession { ClassId = friday.Id, Date = Today.AddDays((7 * week) + 4) });
        }

        SessionPage page = Book.Sessions(new SessionQuery { Skip = 1, Take = 3 });
        Assert.Equal(12, page.Total);
        Assert.Equal([Today.AddDays(35), Today.AddDays(32), Today.AddDays(28)], page.Sessions.Select(s => s.Date));
        Assert.Equal(6, Book.Sessions(new SessionQuery { ClassId = monday.Id }).Total);
        Assert.Equal(0, Book.Sessions(new SessionQuery { ClassId = "c99" }).Total);
        Assert.Equal(0, Book.Sessions(new SessionQuery { ClassId = "nonsense" }).Total);
        Assert.Equal(6, Book.Sessions(new SessionQuery { IsHeld = false }).Total);
        Assert.Equal(
            [Today.AddDays(11), Today.AddDays(7), Today.AddDays(4)],
            Book.Sessions(new SessionQuery { From = Today.AddDays(4), To = Today.AddDays(11) }).Sessions.Select(s => s.Date));
        Assert.True(Book.RemoveSession(page.Sessions[0].Id));
        Assert.False(Book.RemoveSession(page.Sessions[0].Id));
        Assert.Equal(11, Book.Sessions(new SessionQuery()).Total);
    }

    [Fact]
    public void What_cannot_be_a_session_is_refused_in_a_sentence_and_changes_nothing()
    {
        ClubClass held = AddClass("Monday");
        ClassSession kept = Book.SaveSession(Held(held, Today));

        Assert.Equal("There is no such class any more.", Refused(kept with { ClassId = "c99" }));
        Assert.Equal("There is no such class any more.", Refused(kept with { ClassId = "Monday" }));
        Assert.Equal("There is no such session any more.", Refused(kept with { Id = "s99" }));
        Assert.Equal("The book knows the years 1900 to 2199, and 0001-01-01 is in none of them.", Refused(kept with { Date = default }));
        Assert.Equal("A session cannot last 0 minutes: it lasts from 1 minute to a day, which has 1440.", Refused(kept with { Minutes = 0 }));
        Assert.Equal("Place 1 of the session names no dance.", Refused(kept with { Items = [new SessionItem { Role = ItemRole.Danced }] }));
        Assert.Equal(
            "A dance of the session is not in the club any more. Name it by its title.",
            Refused(kept with { Items = [new SessionItem { Role = ItemRole.Danced, DanceId = "d99" }] }));
        Assert.Equal(
            "Tin Lantern cannot last 1500 minutes: it lasts from 1 minute to a day, which has 1440.",
            Refused(kept with { Items = [new SessionItem { Role = ItemRole.Danced, Title = "Tin Lantern", Minutes = 1500 }] }));
        Assert.Equal(kept, Book.Session(kept.Id));

        string Refused(ClassSession session) => Assert.Throws<ClubTrouble>(() => Book.SaveSession(session)).Message;
    }

    [Fact]
    public void A_dance_the_club_does_not_have_stays_as_its_title()
    {
        ClassSession kept = Book.SaveSession(Held(AddClass("Monday"), Today) with
        {
            Items = [new SessionItem { Role = ItemRole.Danced, DanceId = "d99", Title = "Tin Lantern", Revision = 4 }],
        });

        Assert.Equal(new SessionItem { Role = ItemRole.Danced, Title = "Tin Lantern" }, Assert.Single(kept.Items));
    }

    [Fact]
    public void A_dance_that_goes_for_good_leaves_its_title_in_the_sessions_and_takes_its_marks_along()
    {
        ClubClass held = AddClass("Monday");
        string dance = AddDance("Harbour Box");
        string session = Book.SaveSession(Held(held, Today, dance)).Id;
        Book.SetMark(new KnownMark(held.Id, dance, Today, Knowing.KnowsAlone));

        _house.Club.Dances.Remove(dance);
        Assert.Equal(dance, Assert.Single(Book.LastDanced(held.Id)).DanceId);
        _house.Club.Dances.EmptyBin();

        SessionItem item = Assert.Single(Book.Session(session)!.Items);
        Assert.Null(item.DanceId);
        Assert.Equal("Harbour Box", item.Title);
        Assert.Empty(Book.LastDanced(held.Id));
        Assert.Empty(Book.Marks(held.Id, Today));
    }

    [Fact]
    public void The_last_mark_before_a_day_holds_on_it()
    {
        ClubClass held = AddClass("Monday");
        string box = AddDance("Harbour Box");
        string lantern = AddDance("Tin Lantern");
        KnownMark first = new(held.Id, box, Today, Knowing.Follows);
        KnownMark later = new(held.Id, box, Today.AddDays(14), Knowing.KnowsAlone);
        KnownMark back = new(held.Id, box, Today.AddDays(90), null);
        KnownMark other = new(held.Id, lantern, Today.AddDays(7), Knowing.KnowsTheStart);
        foreach (KnownMark mark in new[] { later, back, first with { Knowing = Knowing.KnowsWithCues }, first, other })
        {
            Book.SetMark(mark);
        }

        Assert.Empty(Book.Marks(held.Id, Today.AddDays(-1)));
        Assert.Equal([first], Book.Marks(held.Id, Today));
        Assert.Equal([first, other], Book.Marks(held.Id, Today.AddDays(13)).OrderBy(m => m.DanceId));
        Assert.Equal([later, other], Book.Marks(held.Id, Today.AddDays(89)).OrderBy(m => m.DanceId));
        Assert.Equal([other], Book.Marks(held.Id, Today.AddDays(90)));
        Assert.Equal([first, later, back], Book.MarkHistory(held.Id, box));
        Assert.Equal("There is no such dance any more.", Assert.Throws<ClubTrouble>(() => Book.SetMark(first with { DanceId = "d99" })).Message);
        Assert.Equal("There is no such class any more.", Assert.Throws<ClubTrouble>(() => Book.SetMark(first with { ClassId = "c99" })).Message);
    }

    [Fact]
    public void The_days_a_dance_was_danced_are_told_once_each_in_order_and_only_of_held_sessions()
    {
        ClubClass held = AddClass("Monday");
        ClubClass other = AddClass("Friday");
        string box = AddDance("Harbour Box");
        Book.SaveSession(Held(held, Today.AddDays(7), box));
        Book.SaveSession(Held(held, Today, box) with
        {
            Items = [new SessionItem { Role = ItemRole.WarmUp, DanceId = box }, new SessionItem { Role = ItemRole.Danced, DanceId = box }],
        });
        Book.SaveSession(Held(held, Today.AddDays(14), box) with { IsHeld = false });
        Book.SaveSession(Held(other, Today.AddDays(4), box));

        Assert.Equal(new DancedDates(box, [Today, Today.AddDays(7)], Today.AddDays(7)), Assert.Single(Book.LastDanced(held.Id)));
        Assert.Equal(new DancedDates(box, [Today.AddDays(4)], Today.AddDays(4)), Assert.Single(Book.LastDanced(other.Id)));
    }

    [Fact]
    public void A_newer_sheet_than_the_one_that_was_taught_is_told_and_whether_feet_changed()
    {
        ClubClass held = AddClass("Monday");
        string box = AddDance("Harbour Box\n1 step");
        string lantern = AddDance("Tin Lantern\n1 rock");
        string rope = AddDance("Rope Walk\n1 vine");
        Book.SaveSession(Held(held, Today, box, lantern, rope));
        _house.Clock.GoOn(TimeSpan.FromDays(3));
        Save(box, "Harbour Box\nnote: gently\n1 step");
        Save(lantern, "Tin Lantern\n1 rock\n2 touch");

        Assert.Equal(
        [
            new TaughtSheet(box, "Harbour Box", Today, 1, 2, IsNewer: true, FeetChanged: false),
            new TaughtSheet(rope, "Rope Walk", Today, 1, 1, IsNewer: false, FeetChanged: false),
            new TaughtSheet(lantern, "Tin Lantern", Today, 1, 2, IsNewer: true, FeetChanged: true),
        ],
        Book.TaughtBefore(held.Id));
        Assert.Equal("Harbour Box\n1 step", _house.Club.Dances.TextOf(box, 1));

        // gone back to the words of that day, however often they changed between
        Save(box, "Harbour Box\n1 step");
        Assert.Equal(new TaughtSheet(box, "Harbour Box", Today, 1, 3, IsNewer: false, FeetChanged: false), Book.TaughtBefore(held.Id)[0]);

        // revised from the new sheet
        Book.SaveSession(Held(held, Today.AddDays(3)) with { Items = [new SessionItem { Role = ItemRole.Revised, DanceId = lantern }] });
        Assert.Equal(
            new TaughtSheet(lantern, "Tin Lantern", Today.AddDays(3), 2, 2, IsNewer: false, FeetChanged: false), Book.TaughtBefore(held.Id)[2]);
    }

    [Fact]
    public void The_text_that_was_taught_stays_as_long_as_a_session_names_it()
    {
        ClubClass held = AddClass("Monday");
        string box = AddDance("text 1");
        string session = "";
        for (int revision = 1; revision <= 400; revision++)
        {
            if (revision == 200)
            {
                session = Book.SaveSession(Held(held, DateOnly.FromDateTime(_house.Clock.GetUtcNow().DateTime), box)).Id;
                Assert.Equal(200, Book.Session(session)!.Items[0].Revision);
            }

            // every two minutes by one hand: most of these texts are not kept at all, and of the others one a week
            _house.Clock.GoOn(TimeSpan.FromMinutes(revision % 2 == 0 ? 2 : 20));
            Save(box, $"text {revision + 1}");
        }

        _house.Clock.GoOn(TimeSpan.FromDays(400));
        Save(box, "text of a year later");
        Assert.Equal("text 200", _house.Club.Dances.TextOf(box, 200));
        Assert.Null(_house.Club.Dances.TextOf(box, 199));

        Book.RemoveSession(session);
        _house.Clock.GoOn(TimeSpan.FromDays(400));
        Save(box, "text of two years later");
        Assert.Null(_house.Club.Dances.TextOf(box, 200));
    }

    [Fact]
    public void A_session_recorded_later_names_the_text_of_its_day()
    {
        ClubClass held = AddClass("Monday");
        string box = AddDance("text 1");
        _house.Clock.GoOn(TimeSpan.FromDays(2));
        Save(box, "text 2");

        Assert.Equal(1, Book.SaveSession(Held(held, Today, box)).Items[0].Revision);
        Assert.Equal(1, Book.SaveSession(Held(held, Today.AddDays(1), box)).Items[0].Revision);
        Assert.Equal(2, Book.SaveSession(Held(held, Today.AddDays(2), box)).Items[0].Revision);

        // typed in later than it was taught: what is there is what is known
        Assert.Equal(2, Book.SaveSession(Held(held, Today.AddDays(-300), box)).Items[0].Revision);
        Assert.Equal(2, Book.SaveSession(Held(held, Today, box) with { Items = [new SessionItem { Role = ItemRole.Taught, DanceId = box, Revision = 2 }] }).Items[0].Revision);
    }

    [Fact]
    public void A_session_saved_again_goes_on_naming_what_was_taught()
    {
        ClubClass held = AddClass("Monday");
        string box = AddDance("text 1");
        ClassSession kept = Book.SaveSession(Held(held, Today, box));
        Save(box, "text 2");

        ClassSession again = Book.SaveSession(kept with { HowItWent = "well", Items = [new SessionItem { Role = ItemRole.Taught, DanceId = box }] });

        Assert.Equal(1, again.Items[0].Revision);
        Assert.Equal("text 1", _house.Club.Dances.TextOf(box, 1));
    }

    [Fact]
    public void Taught_texts_are_read_again_by_a_newer_program()
    {
        ClubClass held = AddClass("Monday");
        string box = AddDance("Harbour Box\n1 step");
        Book.SaveSession(Held(held, Today, box));
        Save(box, "Harbour Box\n1 STEP");
        Club club = _house.Reopen(new PlainReader("2"));
        Assert.False(club.Book.TaughtBefore(held.Id)[0].FeetChanged);
        club.Dances.Save(box, "Harbour Box\n1 STEP?", 2, "page");

        // the one was read by the new program and the other by the old: nobody can say
        Assert.Null(club.Book.TaughtBefore(held.Id)[0].FeetChanged);
        club.Dances.RefreshFacts(TestContext.Current.CancellationToken);
        Assert.True(club.Book.TaughtBefore(held.Id)[0].FeetChanged);
    }

    [Fact]
    public void Every_change_is_told()
    {
        ClubClass held = AddClass("Monday");
        string box = AddDance("Harbour Box");
        List<ClubChange> told = [];
        _house.Club.Changed += (_, change) => told.Add(change);

        ClassSession session = Book.SaveSession(Held(held, Today, box));
        Book.SetMark(new KnownMark(held.Id, box, Today, Knowing.Follows));
        Book.RemoveSession(session.Id);

        Assert.Equal([[held.Id], [held.Id], [held.Id]], told.Select(t => t.Classes));
        Assert.Equal([[session.Id], [], [session.Id]], told.Select(t => t.Sessions));
        Assert.Equal([[box], [], []], told.Select(t => t.Dances));
    }

    [Fact]
    public void Two_programs_see_each_others_sessions()
    {
        ClubClass held = AddClass("Monday");
        using Club other = _house.Open();
        ClassSession kept = other.Book.SaveSession(Held(held, Today));

        Assert.Equal(kept, Book.Session(kept.Id));
        Book.RemoveClass(held.Id, forGood: true);
        Assert.Equal("There is no such class any more.", Assert.Throws<ClubTrouble>(() => other.Book.SaveSession(kept)).Message);
        Assert.Null(other.Book.Session(kept.Id));
    }

    [Fact]
    public void Two_programs_that_write_at_once_lose_nothing()
    {
        ClubClass held = AddClass("Monday");
        string box = AddDance("text 1");
        using Club other = _house.Open();
        Club[] clubs = [_house.Club, other];
        Thread[] programs = [.. clubs.Select((club, who) => new Thread(() =>
        {
            for (int i = 0; i < 25; i++)
            {
                DateOnly day = Today.AddDays((2 * i) + who);
                club.Book.SaveSession(Held(held, day, box));
                club.Book.SetMark(new KnownMark(held.Id, box, day, Knowing.KnowsAlone));
                club.Evenings.Save(new ClubEvening { Title = "Social", Date = day }, 0);
            }
        }))];
        Array.ForEach(programs, p => p.Start());
        Array.ForEach(programs, p => p.Join());

        IEnumerable<DateOnly> days = Enumerable.Range(0, 50).Select(d => Today.AddDays(d));
        Assert.Equal(days, Book.LastDanced(held.Id)[0].Dates);
        Assert.Equal(days, Book.MarkHistory(held.Id, box).Select(m => m.Date));
        Assert.Equal(days.Reverse(), other.Evenings.List().Select(e => e.Date));
    }

    [Fact]
    public void Things_are_found_by_what_she_types_of_their_titles()
    {
        ClubClass monday = AddClass("Monday beginners");
        ClubClass gone = Book.SaveClass(new ClubClass { Title = "Monday babes", EndedOn = Today.AddDays(-1) });
        string lantern = AddDance("Tin Lantern");
        string tide = AddDance("Tîn Tide");
        string binned = AddDance("Tin Whistle");
        _house.Club.Dances.Remove(binned);

        Assert.Equal([monday], Book.Named("monday"));
        Assert.Equal([gone], Book.Named("monday ba"));
        Assert.Equal([gone], Book.Named(gone.Id));
        Assert.Empty(Book.Named("friday"));
        Assert.Equal([lantern, tide], _house.Club.Dances.Named("tin").Select(d => d.Id));
        Assert.Equal([tide], _house.Club.Dances.Named("TIN-TIDE").Select(d => d.Id));
        Assert.Equal([tide], _house.Club.Dances.Named(tide).Select(d => d.Id));
        Assert.Empty(_house.Club.Dances.Named(binned));
    }

    [Fact]
    public void All_dances_outside_the_bin_come_with_what_a_programme_needs()
    {
        AddDance("Tin Lantern\nlevel: beginner\nrank: 1\neffort: 52\nfeet: abc\ncounts: 32\ntempo: 120\ntrack: Low Tide by The Net Menders");
        string binned = AddDance("Rope Walk");
        AddDance("harbour box");
        _house.Club.Dances.Remove(binned);

        ValueList<DanceRow> rows = _house.Club.Dances.Every();

        Assert.Equal(["harbour box", "Tin Lantern"], rows.Select(r => r.Facts.Title));
        Assert.Equal((1, 52, "abc", 32, 120.0), (rows[1].Facts.Rank, rows[1].Facts.Effort, rows[1].Facts.Feet, rows[1].Facts.Counts, rows[1].Facts.FastestTempo));
        Assert.Equal(rows[1], _house.Club.Dances.Get(rows[1].Id)!.Row);
        Assert.Equal((null, null, ""), (rows[0].Facts.Rank, rows[0].Facts.Effort, rows[0].Facts.Feet));
    }

    private ClubClass AddClass(string title) => Book.SaveClass(new ClubClass { Title = title });

    private string AddDance(string text) => _house.Club.Dances.Add(text, "page").Id;

    private void Save(string dance, string text)
        => Assert.IsType<SaveOutcome.Saved>(_house.Club.Dances.Save(dance, text, _house.Club.Dances.Get(dance)!.Revision, "page"));

    // a session in which these dances were taught
    private static ClassSession Held(ClubClass held, DateOnly date, params string[] dances) => new()
    {
        ClassId = held.Id,
        Date = date,
        IsHeld = true,
        Items = dances.Select(d => new SessionItem { Role = ItemRole.Taught, DanceId = d }).ToValueList(),
    };
}
