using System.Globalization;
using System.Text;

namespace Scuff.Sheets.Captions;

/// <summary>What the caption formats share.</summary>
internal static class CaptionText
{
    private const int MillisecondsPerHour = 3_600_000;
    private const int MillisecondsPerMinute = 60_000;
    private const int MillisecondsPerSecond = 1000;

    /// <summary>Hours, minutes, seconds and thousandths: <c>00:01:07.400</c>.</summary>
    /// <param name="seconds">Not below zero.</param>
    /// <param name="mark">Between seconds and thousandths: a full stop (WebVTT) or a comma (SRT).</param>
    public static string Time(double seconds, char mark)
    {
        long all = (long)Math.Round(Math.Max(0, seconds) * MillisecondsPerSecond);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{all / MillisecondsPerHour:00}:{all / MillisecondsPerMinute % 60:00}:{all / MillisecondsPerSecond % 60:00}{mark}{all % MillisecondsPerSecond:000}");
    }

    /// <summary>The words on one line, without what would end a cue.</summary>
    public static string OneLine(string words)
    {
        StringBuilder line = new(words.Length);
        foreach (char c in words)
        {
            line.Append(char.IsControl(c) || c is '\u2028' or '\u2029' ? ' ' : c);
        }

        return line.ToString().Trim();
    }

    /// <summary>Words for WebVTT: its signs written as the standard asks.</summary>
    public static string Escaped(string words) => OneLine(words)
        .Replace("&", "&amp;", StringComparison.Ordinal)
        .Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace(">", "&gt;", StringComparison.Ordinal);

    /// <summary>A WebVTT file.</summary>
    public static string Vtt(string title, IEnumerable<CaptionCue> cues)
    {
        StringBuilder text = new("WEBVTT");
        string head = OneLine(title).Replace("-->", "->", StringComparison.Ordinal);
        text.Append(head.Length > 0 ? " " + head : "").Append("\n\n");
        int number = 0;
        foreach (CaptionCue cue in cues)
        {
            number++;
            text.Append(CultureInfo.InvariantCulture, $"{number}\n{Time(cue.Start, '.')} --> {Time(cue.End, '.')}\n{Escaped(cue.Text)}\n\n");
        }

        return text.ToString();
    }

    /// <summary>An SRT file.</summary>
    public static string Srt(IEnumerable<CaptionCue> cues)
    {
        StringBuilder text = new();
        int number = 0;
        foreach (CaptionCue cue in cues)
        {
            number++;
            text.Append(CultureInfo.InvariantCulture, $"{number}\n{Time(cue.Start, ',')} --> {Time(cue.End, ',')}\n{OneLine(cue.Text)}\n\n");
        }

        return text.ToString();
    }
}
