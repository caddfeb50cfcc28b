using Scuff.App.Calendars;

namespace Scuff.App.Handouts;

/// <summary>An evening as an entry of a calendar, with its programme.</summary>
internal sealed class DatedEvening : IHandoutMaker<EveningOut>
{
    public IEnumerable<Handout<EveningOut>> Handouts =>
    [
        new(
            "evening.ics",
            "Calendar entry with the programme (ICS)",
            CalendarFile.MediaType,
            IsText: true,
            (evening, stream, cancel) => HandoutBytes.SendAsync(
                CalendarFile.Write(evening.Paper.Title, [EntryOf(evening)], evening.Now),
                withMark: false,
                stream,
                cancel)),
    ];

    private static CalendarEntry EntryOf(EveningOut evening) => new()
    {
        Uid = evening.Uid,
        Title = evening.Paper.Title,
        Date = evening.Paper.Date,
        Starts = evening.Paper.Starts,
        Minutes = evening.Paper.Minutes,
        Place = evening.Paper.Place,
        Changes = evening.Changes,
        Words = ClubCalendar.WordsOf(evening.Paper),
    };
}
