using System.Globalization;
using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>Reads a track line: <c>track: "Harbour Lights Out" by The Demo Band, 112 bpm, intro 32, 3:25</c>.</summary>
internal static class TrackReader
{
    /// <summary>The track of a line; words that mean nothing are kept as notes.</summary>
    public static Track Read(ReaderState state, TextLine line)
    {
        string text = state.Text;
        int colon = text.IndexOf(':', line.Start, line.End - line.Start);
        int at = colon + 1;
        int open = text.IndexOfAny(['"', '“'], at, line.End - at);
        string title;
        int after;
        if (open >= 0 && text.IndexOfAny(['"', '”'], open + 1, line.End - open - 1) is int close and > 0)
        {
            title = text[(open + 1)..close];
            after = close + 1;
        }
        else
        {
            int comma = text.IndexOf(',', at, line.End - at);
            after = comma < 0 ? line.End : comma;
            title = text[at..after].Trim();
        }

        Track track = new() { Title = title, Span = line.Span, Line = line.Number };
        List<Note> notes = [];
        int from = after;
        while (from < line.End)
        {
            int comma = text.IndexOfAny([',', ';'], from, line.End - from);
            int end = comma < 0 ? line.End : comma;
            TextLine piece = new TextLine(line.Number, from, end).Trimmed(text);
            if (piece.Start < piece.End)
            {
                track = TakePiece(track, text, piece, notes);
            }

            from = end + 1;
        }

        return track with { Notes = notes.ToValueList() };
    }

    private static Track TakePiece(Track track, string text, TextLine piece, List<Note> notes)
    {
        string words = text[piece.Start..piece.End];
        string lower = words.ToLowerInvariant();
        if (lower.StartsWith("by ", StringComparison.Ordinal))
        {
            return track with { Artist = words[3..].Trim() };
        }

        if (lower.Contains("bpm", StringComparison.Ordinal) || lower.Contains("beats", StringComparison.Ordinal))
        {
            if (Number(lower) is Ratio tempo && tempo.Sign > 0)
            {
                return track with { Tempo = new Tempo(tempo) };
            }
        }

        if (lower.Contains("intro", StringComparison.Ordinal))
        {
            bool seconds = lower.Contains("sec", StringComparison.Ordinal) && !lower.Contains("count", StringComparison.Ordinal);
            track = seconds ? track with { IntroSeconds = Number(lower) }
                : track with { Intro = Number(lower) is Ratio counts ? Counts.FromRatio(counts) : null };
            if (!seconds && lower.Contains("sec", StringComparison.Ordinal))
            {
                int second = lower.IndexOf("count", StringComparison.Ordinal);
                track = track with { IntroSeconds = Number(lower[second..]) };
            }

            if (Clock(lower) is Ratio clock)
            {
                track = track with { IntroSeconds = clock };
            }

            return track;
        }

        if (Clock(lower) is Ratio length)
        {
            return track with { LengthSeconds = length };
        }

        if (lower.EndsWith("seconds", StringComparison.Ordinal) && Number(lower) is Ratio intro)
        {
            return track with { IntroSeconds = intro };
        }

        notes.Add(new Note("track", words, piece.Span));
        return track;
    }

    /// <summary>A time of minutes and seconds, in seconds.</summary>
    private static Ratio? Clock(string words)
    {
        for (int i = 1; i + 2 < words.Length + 0 && i < words.Length - 2; i++)
        {
            if (words[i] == ':' && char.IsAsciiDigit(words[i - 1]) && char.IsAsciiDigit(words[i + 1]) && char.IsAsciiDigit(words[i + 2]))
            {
                int start = i;
                while (start > 0 && char.IsAsciiDigit(words[start - 1]) && i - start < 3)
                {
                    start--;
                }

                int minutes = int.Parse(words.AsSpan(start, i - start), NumberStyles.None, CultureInfo.InvariantCulture);
                return (minutes * 60) + ((words[i + 1] - '0') * 10) + (words[i + 2] - '0');
            }
        }

        return null;
    }

    private static Ratio? Number(string words)
    {
        int start = words.AsSpan().IndexOfAnyInRange('0', '9');
        if (start < 0)
        {
            return null;
        }

        int stop = start;
        while (stop < words.Length && char.IsAsciiDigit(words[stop]) && stop - start < 6)
        {
            stop++;
        }

        int whole = int.Parse(words.AsSpan(start, stop - start), NumberStyles.None, CultureInfo.InvariantCulture);
        if (stop + 1 < words.Length && words[stop] == '.' && char.IsAsciiDigit(words[stop + 1]))
        {
            int end = stop + 1;
            while (end < words.Length && char.IsAsciiDigit(words[end]) && end - stop < 4)
            {
                end++;
            }

            int part = int.Parse(words.AsSpan(stop + 1, end - stop - 1), NumberStyles.None, CultureInfo.InvariantCulture);
            int scale = 1;
            for (int i = stop + 1; i < end; i++)
            {
                scale *= 10;
            }

            return whole + new Ratio(part, scale);
        }

        return whole;
    }
}
