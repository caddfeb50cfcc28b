using System.Globalization;
using System.Text;

namespace Scuff.App.Calendars;

/// <summary>
/// A calendar as iCalendar. Source: RFC 5545 (2009); the name of the calendar after RFC 7986, and <c>X-WR-CALNAME</c> beside it by common practice. Written by
/// hand, since Ical.Net 5.2.4 cuts characters beyond 16 bits in two where it folds a line, which loses them; it reads these files in the tests.
/// </summary>
internal static class CalendarFile
{
    /// <summary>Its media type.</summary>
    public const string MediaType = "text/calendar; charset=utf-8";

    // RFC 5545, section 3.1: no line longer than 75 octets, its end not counted
    private const int LongestLine = 75;

    private const string ProgramName = "-//Scuff//Scuff//EN";

    /// <summary>The calendar as text; lines end as the standard wants them.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="entries">What is in it; a weekly entry before those that take its places.</param>
    /// <param name="now">When it was written.</param>
    public static string Write(string name, IEnumerable<CalendarEntry> entries, DateTimeOffset now)
    {
        StringBuilder text = new();
        string stamp = now.UtcDateTime.ToString("yyyyMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture);
        Line("BEGIN:VCALENDAR");
        Line("VERSION:2.0");
        Line("PRODID:" + ProgramName);
        Say("NAME", name);
        Say("X-WR-CALNAME", name);
        foreach (CalendarEntry entry in entries)
        {
            Line("BEGIN:VEVENT");
            Line("UID:" + Escaped(entry.Uid));
            Line("DTSTAMP:" + stamp);
            if (entry.InPlaceOf is { } day)
            {
                Line("RECURRENCE-ID" + Moment(day, entry.InPlaceOfStart));
            }

            Line("DTSTART" + Moment(entry.Date, entry.Starts));
            if (entry.Starts is { } starts)
            {
                Line("DTEND:" + Floating(entry.Date.ToDateTime(starts).AddMinutes(Math.Max(1, entry.Minutes))));
            }

            if (entry.IsWeekly)
            {
                // the end is of the kind of the beginning (section 3.3.10); the last moment of the day takes in its class
                Line("RRULE:FREQ=WEEKLY" + (entry.Until is not { } until ? ""
                    : ";UNTIL=" + (entry.Starts is null ? Whole(until) : Floating(until.ToDateTime(new TimeOnly(23, 59, 59))))));
            }

            if (entry.Changes > 0)
            {
                Line("SEQUENCE:" + entry.Changes.ToString(CultureInfo.InvariantCulture));
            }

            Say("SUMMARY", entry.Title);
            Say("LOCATION", entry.Place);
            Say("DESCRIPTION", entry.Words);
            Line("END:VEVENT");
        }

        Line("END:VCALENDAR");
        return text.ToString();

        void Say(string property, string words)
        {
            string escaped = Escaped(words);
            if (escaped.Length > 0)
            {
                Line(property + ":" + escaped);
            }
        }

        void Line(string line)
        {
            int used = 0;
            foreach (Rune rune in line.EnumerateRunes())
            {
                if (used + rune.Utf8SequenceLength > LongestLine)
                {
                    text.Append("\r\n ");
                    used = 1;
                }

                text.Append(rune.ToString());
                used += rune.Utf8SequenceLength;
            }

            text.Append("\r\n");
        }
    }

    private static string Moment(DateOnly day, TimeOnly? at) => at is { } time ? ":" + Floating(day.ToDateTime(time)) : ";VALUE=DATE:" + Whole(day);

    // without a zone and without Z: what every clock of the place shows (section 3.3.5, form 1)
    private static string Floating(DateTime moment) => moment.ToString("yyyyMMdd'T'HHmmss", CultureInfo.InvariantCulture);

    private static string Whole(DateOnly day) => day.ToString("yyyyMMdd", CultureInfo.InvariantCulture);

    // Section 3.3.11; control characters are not allowed in text, and ends of lines are all alike.
    private static string Escaped(string words)
    {
        StringBuilder escaped = new(words.Length);
        foreach (Rune rune in words.ReplaceLineEndings("\n").Trim().EnumerateRunes())
        {
            _ = rune.Value switch
            {
                '\n' => escaped.Append("\\n"),
                '\\' or ';' or ',' => escaped.Append('\\').Append((char)rune.Value),
                '\t' => escaped.Append(' '),
                _ when Rune.IsControl(rune) => escaped,
                _ => escaped.Append(rune.ToString()),
            };
        }

        return escaped.ToString();
    }
}
