using Scuff.Diagnostics;

namespace Scuff.Prose.Words;

/// <summary>
/// Walls of the clock as they are written where English is learnt: "kl. 9", "9H00", "at the ore 9", "6 hour", "you stand on 12". All become clock times
/// before the words are looked at.
/// </summary>
internal static class ClockWords
{
    /// <summary>Puts a clock in place of every hour that a word beside it tells.</summary>
    /// <param name="tokens">The tokens of a line, changed in place.</param>
    /// <param name="lexicon">Knows the words that tell an hour.</param>
    /// <param name="bare">Whether a bare number may be an hour where one is said to stand there.</param>
    public static void Join(List<WordToken> tokens, Lexicon lexicon, bool bare = true)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Kind is WordTokenKind.Number && tokens[i].Value is >= 1 and <= 12)
            {
                i = JoinHour(tokens, i, lexicon, bare);
            }
            else if (tokens[i].Kind is WordTokenKind.Clock)
            {
                // "kl. 12.00", "9:00h"
                Merge(tokens, Before(tokens, i, lexicon), i, After(tokens, i, lexicon) ?? i, tokens[i].Value, ref i);
            }
        }
    }

    /// <summary>Whether the number at a place of the text is an hour, and so no count: "kl. 9", "9H00", "at 9 hours".</summary>
    /// <param name="text">The text.</param>
    /// <param name="at">Its first digit.</param>
    /// <param name="end">The end of the line.</param>
    /// <param name="lexicon">Knows the words that tell an hour.</param>
    public static bool IsHour(string text, int at, int end, Lexicon lexicon)
    {
        int stop = at;
        while (stop < end && char.IsAsciiDigit(text[stop]))
        {
            stop++;
        }

        int from = stop < end && text[stop] == ' ' ? stop + 1 : stop;
        int last = from;
        while (last < end && char.IsLetter(text[last]))
        {
            last++;
        }

        if (stop - at <= 2 && last > from && last - from < 8 && lexicon.TellsHour(text.AsSpan(from, last - from), before: false))
        {
            return true;
        }

        int back = at;
        while (back > 0 && text[back - 1] is ' ' or '.')
        {
            back--;
        }

        int first = back;
        while (first > 0 && char.IsLetter(text[first - 1]))
        {
            first--;
        }

        return back > first && back - first < 10 && lexicon.TellsHour(text.AsSpan(first, back - first), before: true);
    }

    private static int JoinHour(List<WordToken> tokens, int at, Lexicon lexicon, bool bare)
    {
        int hour = tokens[at].Value;
        if (at + 1 < tokens.Count && tokens[at + 1] is { Text: "h", SpaceBefore: false }
            && at + 2 < tokens.Count && tokens[at + 2] is { Kind: WordTokenKind.Number, SpaceBefore: false, Value: 0 or 30 } minutes)
        {
            // "9H00", "10h30"
            int past = (hour % 12 * 60) + minutes.Value;
            if (past % 90 == 0)
            {
                Merge(tokens, Before(tokens, at, lexicon), at, at + 2, past / 90, ref at);
            }

            return at;
        }

        if (hour % 3 != 0)
        {
            return at;
        }

        int before = Before(tokens, at, lexicon);
        int? after = After(tokens, at, lexicon);
        if (before < at || after is not null || (bare && TellsWhereOneStands(tokens, at, lexicon)))
        {
            Merge(tokens, before, at, after ?? at, hour % 12 * 2 / 3, ref at);
        }

        return at;
    }

    // "kl 9", "h. 6", "hour 12", "the ore 9": where the word before an hour stands, or the hour itself
    private static int Before(List<WordToken> tokens, int at, Lexicon lexicon)
    {
        int word = at - 1;
        if (word >= 0 && tokens[word].Text is "@")
        {
            return word;
        }

        if (word > 0 && tokens[word].Text is "." or ":")
        {
            word--;
        }

        return word >= 0 && tokens[word].Kind is WordTokenKind.Word && lexicon.TellsHour(tokens[word].Text, before: true) ? word : at;
    }

    // "9 h", "3 hour", "6 uhr", "3 o' clock"
    private static int? After(List<WordToken> tokens, int at, Lexicon lexicon)
        => at + 3 < tokens.Count && tokens[at + 1].Text is "o" && tokens[at + 2].Text is "'" && tokens[at + 3].Text is "clock" ? at + 3
        : at + 1 < tokens.Count && tokens[at + 1].Kind is WordTokenKind.Word && lexicon.TellsHour(tokens[at + 1].Text, before: false) ? at + 1 : null;

    /// <summary>"You stand on 12", "now see 6", "we finish at 3": a bare number at the end of its words that tells the wall.</summary>
    private static bool TellsWhereOneStands(List<WordToken> tokens, int at, Lexicon lexicon)
    {
        bool stops = at + 1 >= tokens.Count || tokens[at + 1] is { Kind: WordTokenKind.Mark, Text: "," or "." or ";" or ")" or "!" }
            || tokens[at + 1].Text is "now";
        int first = at - 1;
        bool tells = false;
        stops &= at > 0 && tokens[at - 1].Text is not "wall";
        while (stops && first >= 0 && first > at - 9 && lexicon.TellsArrival(tokens[first].Text, along: true))
        {
            tells |= lexicon.TellsArrival(tokens[first].Text, along: false) || tokens[first].Text is "look" or "looks" or "looking"
                || (tokens[first].Text is "now" && first == at - 1);
            first--;
        }

        return tells;
    }

    /// <summary>
    /// "We are at", "so that you come to stand on", "you can see", "we finish in": how many tokens say nothing but that a clock follows; null where none does.
    /// </summary>
    /// <param name="tokens">The tokens of a line, its clocks found.</param>
    /// <param name="at">Where the words may begin.</param>
    /// <param name="lexicon">Knows the words that tell where one stands.</param>
    public static int? Arrival(List<WordToken> tokens, int at, Lexicon lexicon)
    {
        if (tokens[at].Kind is not WordTokenKind.Word || !lexicon.TellsArrival(tokens[at].Text, along: true))
        {
            return null;
        }

        int end = at;
        bool tells = false;
        while (end < tokens.Count && end < at + 10 && lexicon.TellsArrival(tokens[end].Text, along: true))
        {
            tells |= lexicon.TellsArrival(tokens[end].Text, along: false);
            end++;
        }

        // "look at 9:00" may be said of the head, "you look at 9:00" is where one stands
        for (int i = at + 1; i < end; i++)
        {
            tells |= tokens[i].Text is "look" or "looks" or "looking" && tokens[i - 1].Text is "you" or "we" or "now" or "i";
        }

        // a line that only says where one waits is a hold: "8 stay at 12:00"
        bool alone = at == 0;
        return tells && !alone && end < tokens.Count && tokens[end].Kind is WordTokenKind.Clock ? end - at : null;
    }

    private static void Merge(List<WordToken> tokens, int first, int at, int last, int eighths, ref int index)
    {
        TextSpan span = TextSpan.FromBounds(tokens[first].Span.Start, tokens[last].Span.End);
        tokens[at] = new WordToken(WordTokenKind.Clock, tokens[at].Text, eighths, span, tokens[first].SpaceBefore);
        tokens.RemoveRange(at + 1, last - at);
        tokens.RemoveRange(first, at - first);
        index = first;
    }
}
