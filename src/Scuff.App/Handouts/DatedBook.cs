using Scuff.App.Calendars;

namespace Scuff.App.Handouts;

/// <summary>The classes and evenings of a club as a calendar.</summary>
internal sealed class DatedBook : IHandoutMaker<BookOut>
{
    public IEnumerable<Handout<BookOut>> Handouts =>
    [
        new(
            "classes.ics",
            "Calendar of classes and evenings (ICS)",
            CalendarFile.MediaType,
            IsText: true,
            (book, stream, cancel) => HandoutBytes.SendAsync(CalendarFile.Write(book.Name, ClubCalendar.Of(book), book.Now), withMark: false, stream, cancel)),
    ];
}
