using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Scuff.App.Calendars;
using Scuff.App.Handouts;
using Scuff.Repertoire;
using Tests.App.Handouts;
using Tests.Golden;

namespace Tests.App.Calendars;

public sealed class ClubCalendarTests
{
    [Fact]
    public void A_whole_calendar_looks_as_it_was_last_read_and_approved() => GoldenFile.Matches("harbour-club.ics", Write(HandoutSamples.Book));

    [Fact]
    public void A_class_comes_every_week_and_its_sessions_take_their_days()
    {
        DateTime[] days = [.. DaysOf("Tuesday Beginners", 5)];

        // the weekly days from the first session on, and the Wednesday beside them
        Assert.Equal(
            [
                new DateTime(2026, 11, 10, 18, 30, 0), new DateTime(2026, 11, 17, 18, 30, 0), new DateTime(2026, 11, 24, 18, 30, 0), new DateTime(2026, 12, 1, 18, 30, 0),
                new DateTime(2026, 12, 2, 19, 0, 0),
            ],
            days);
    }

    [Fact]
    public void A_class_that_ended_comes_no_more()
    {
        DateTime[] days = [.. DaysOf("Net Loft Improvers", 50)];

        Assert.Equal(new DateTime(2026, 9, 3, 23, 30, 0), days[0]);
        Assert.Equal(new DateTime(2026, 10, 1, 20, 0, 0), days[^1]);
        Assert.Equal(5, days.Length);
    }

    [Fact]
    public void What_is_planned_and_what_was_done_are_told_apart()
    {
        CalendarEvent[] events = [.. Calendar.Load(Write(HandoutSamples.Book))!.Events];

        Assert.Contains(events, e => e.Description == "Warmed up: First Tide\nTaught: Tin Lantern\nDanced: First Tide");
        Assert.Contains(events, e => e.Description == "Revise: Tin Lantern\nTeach: A visitor's dance; new, and long");
    }

    [Fact]
    public void An_evening_has_its_programme_and_one_that_plans_a_class_is_left_to_its_session()
    {
        CalendarEvent[] events = [.. Calendar.Load(Write(HandoutSamples.Book))!.Events];

        CalendarEvent evening = Assert.Single(events, e => e.Summary == "Harbour Social");
        Assert.StartsWith("19:30 First Tide\n", evening.Description, StringComparison.Ordinal);
        Assert.Equal(2, evening.Sequence);
        Assert.DoesNotContain(events, e => e.Summary == "Plan of the beginners");
    }

    [Fact]
    public void Nothing_of_people_is_in_it()
    {
        string text = Write(HandoutSamples.Book).Replace("\r\n ", "", StringComparison.Ordinal);

        Assert.DoesNotContain("Marta", text, StringComparison.Ordinal);
        Assert.DoesNotContain("pilot", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Identities_stay_when_everything_else_changes()
    {
        BookOut later = HandoutSamples.Book with
        {
            Today = new DateOnly(2027, 1, 5),
            Classes = [.. HandoutSamples.Book.Classes.Select(c => c with { Title = c.Title + " II", Starts = new TimeOnly(17, 0) })],
        };

        Assert.Equal(ClubCalendar.Of(HandoutSamples.Book).Select(e => e.Uid), ClubCalendar.Of(later).Select(e => e.Uid));
        Assert.Contains(ClubCalendar.UidOf("harbour", "evening", "e1"), ClubCalendar.Of(later).Select(e => e.Uid));
    }

    [Fact]
    public void No_two_entries_are_the_same_one()
    {
        CalendarEntry[] entries = [.. ClubCalendar.Of(HandoutSamples.Book)];

        Assert.Equal(entries.Length, entries.Select(e => (e.Uid, e.InPlaceOf)).Distinct().Count());
    }

    [Fact]
    public void A_second_session_on_one_day_stands_beside_the_first()
    {
        ClassSession again = HandoutSamples.Book.Sessions[1] with { Id = "s9" };
        CalendarEntry[] entries = [.. ClubCalendar.Of(HandoutSamples.Book with { Sessions = [.. HandoutSamples.Book.Sessions, again] })];

        Assert.Single(entries, e => e.InPlaceOf == again.Date);
        Assert.Single(entries, e => e.Uid == "session-s9@harbour.scuff" && e.InPlaceOf is null);
    }

    [Fact]
    public void A_class_that_never_met_begins_in_the_present_week()
    {
        BookOut book = HandoutSamples.Book with { Sessions = default };
        CalendarEntry weekly = Assert.Single(ClubCalendar.Of(book), e => e.Title == "Tuesday Beginners");

        Assert.Equal((new DateOnly(2026, 11, 24), true), (weekly.Date, weekly.IsWeekly));
        Assert.DoesNotContain(ClubCalendar.Of(book), e => e.Title is "By appointment" or "Net Loft Improvers");
    }

    private static string Write(BookOut book) => CalendarFile.Write(book.Name, ClubCalendar.Of(book), book.Now);

    // As a calendar shows them: another library works out the weeks.
    private static IEnumerable<DateTime> DaysOf(string title, int most) => Calendar.Load(Write(HandoutSamples.Book))!
        .GetOccurrences<CalendarEvent>(new CalDateTime(2026, 1, 1))
        .TakeWhile(o => o.Period.StartTime.Value.Year < 2028)
        .Where(o => ((CalendarEvent)o.Source).Summary == title)
        .Take(most)
        .Select(o => o.Period.StartTime.Value);
}
