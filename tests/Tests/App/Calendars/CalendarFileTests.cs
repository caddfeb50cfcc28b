using System.Text;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Scuff.App.Calendars;
using Tests.App.Handouts;

namespace Tests.App.Calendars;

/// <summary>Read by Ical.Net here, and by ical.js in <c>tests/browser/handouts.test.mjs</c>.</summary>
public sealed class CalendarFileTests
{
    private static readonly CalendarEntry Plain = new() { Uid = "class-c1@harbour.scuff", Title = "Class", Date = new DateOnly(2026, 11, 24), Starts = new TimeOnly(18, 30), Minutes = 90 };

    public static TheoryData<string> Hostile => [.. HandoutSamples.Hostile.Where(h => h.Trim().Length > 0)];

    // RFC 5545, section 3.1: lines end in CR LF and have at most 75 octets, and no character is cut.
    [Theory]
    [MemberData(nameof(Hostile))]
    public void Whatever_words_hold_lines_are_short_and_whole(string words)
    {
        string text = Write(Plain with { Title = words, Place = words, Words = words + "\n" + words });

        Assert.EndsWith("END:VCALENDAR\r\n", text, StringComparison.Ordinal);
        string[] lines = text[..^2].Split("\r\n");
        Assert.DoesNotContain(lines, l => l.Any(char.IsControl) || Encoding.UTF8.GetByteCount(l) > 75);
        _ = new UTF8Encoding(false, throwOnInvalidBytes: true).GetBytes(string.Concat(lines));
        Assert.All(lines, l => _ = new UTF8Encoding(false, throwOnInvalidBytes: true).GetBytes(l));
    }

    [Theory]
    [MemberData(nameof(Hostile))]
    public void Another_parser_reads_the_words_as_they_were(string words)
    {
        CalendarEvent read = Read(Plain with { Title = words, Place = words, Words = words.Trim() + "\nsecond line" });
        string plain = string.Concat(words.ReplaceLineEndings("\n").Replace('\t', ' ').EnumerateRunes().Where(r => r.Value == '\n' || !Rune.IsControl(r))).Trim();

        Assert.Equal(plain, read.Summary);
        Assert.Equal(plain, read.Location);
        Assert.Equal(plain + "\nsecond line", read.Description);
    }

    [Fact]
    public void Times_are_those_of_the_clock_on_the_wall_wherever_it_is_read()
    {
        CalendarEvent read = Read(Plain);

        Assert.Null(read.Start!.TzId);
        Assert.False(read.Start.IsUtc);
        Assert.Equal(new DateTime(2026, 11, 24, 18, 30, 0), read.Start.Value);
        Assert.Equal(new DateTime(2026, 11, 24, 20, 0, 0), read.End!.Value);
        Assert.Equal(new DateTime(2026, 11, 20, 17, 5, 9), read.DtStamp!.Value);
        Assert.True(read.DtStamp.IsUtc);
    }

    [Fact]
    public void An_entry_beyond_midnight_ends_on_the_next_day()
        => Assert.Equal(new DateTime(2026, 11, 25, 0, 30, 0), Read(Plain with { Starts = new TimeOnly(23, 0) }).End!.Value);

    [Fact]
    public void An_entry_without_a_time_takes_the_whole_day()
    {
        CalendarEvent read = Read(Plain with { Starts = null });

        Assert.True(read.IsAllDay);
        Assert.Equal(new DateOnly(2026, 11, 24), read.Start!.Date);
    }

    [Fact]
    public void The_name_of_the_calendar_and_who_wrote_it_are_in_it()
    {
        Calendar read = Calendar.Load(CalendarFile.Write("Harbour, Club", [Plain], HandoutSamples.Now))!;

        Assert.Equal("-//Scuff//Scuff//EN", read.ProductId);
        Assert.Equal("2.0", read.Version);
        Assert.Equal("Harbour, Club", read.Properties["NAME"]!.Value);
    }

    private static string Write(CalendarEntry entry) => CalendarFile.Write("Harbour Club", [entry], HandoutSamples.Now);

    private static CalendarEvent Read(CalendarEntry entry) => Assert.Single(Calendar.Load(Write(entry))!.Events);
}
