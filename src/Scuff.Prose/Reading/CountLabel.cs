using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>The counts at the start of a line: <c>1-2</c>, <c>3&amp;4</c>, <c>&amp;5-6</c>, <c>1a2</c>, <c>5 6 7&amp;8</c>.</summary>
internal sealed class CountLabel
{
    // More counts than this on one line are no dance line.
    private const int MaximumCounts = 128;

    private CountLabel(List<LabelPlace> places, TextSpan span, int end)
    {
        Places = places;
        Span = span;
        End = end;
    }

    /// <summary>The places in the order written.</summary>
    public List<LabelPlace> Places { get; }

    /// <summary>The label without surrounding brackets and blanks.</summary>
    public TextSpan Span { get; }

    /// <summary>Where the words after the label start.</summary>
    public int End { get; }

    private static bool RunOfDigits(string text, int from, int to)
    {
        for (int i = from + 1; i < to; i++)
        {
            if (text[i] != text[i - 1] + 1)
            {
                return false;
            }
        }

        return to - from >= 3;
    }

    /// <summary>Where four or more counts typed without a gap end ("1234", "12345678"), or null.</summary>
    private static int? CountsInARow(string text, int at, int end)
    {
        int stop = at + 1;
        while (stop < end && char.IsAsciiDigit(text[stop]) && text[stop] == text[stop - 1] + 1)
        {
            stop++;
        }

        return stop - at >= 4 && (stop >= end || !char.IsAsciiDigit(text[stop])) ? stop : null;
    }

    /// <summary>Where three or more counts parted by strokes end ("1/2/3", "4/5/6"): no fraction has two of them. Null where there are none.</summary>
    private static int? CountsInStrokes(string text, int at, int end)
    {
        int strokes = 0;
        int last = -1;
        int stop = at;
        while (true)
        {
            int digits = stop;
            while (digits < end && char.IsAsciiDigit(text[digits]) && digits - stop < 3)
            {
                digits++;
            }

            if (digits == stop || int.Parse(text.AsSpan(stop, digits - stop), System.Globalization.CultureInfo.InvariantCulture) is var number
                && last >= 0 && number != last + 1)
            {
                return null;
            }

            last = number;
            stop = digits;
            if (stop + 1 >= end || text[stop] != '/' || !char.IsAsciiDigit(text[stop + 1]))
            {
                return strokes > 1 ? stop : null;
            }

            strokes++;
            stop++;
        }
    }

    /// <summary>"4 count tag after walls 1, 3 and 5", "16-count intro", "1 restart: ...": how long or how many something is, and no label.</summary>
    private static bool TellsLength(string text, int at, int end)
    {
        int stop = at;
        while (stop < end && char.IsAsciiDigit(text[stop]))
        {
            stop++;
        }

        if (stop == at || stop >= end || !(text[stop] is ' ' or '-' || char.IsAsciiLetter(text[stop])))
        {
            return false;
        }

        // "8 counts: R to side, ...": how long it all is; "4ct tag"
        int unit = char.IsAsciiLetter(text[stop]) ? stop : stop + 1;
        ReadOnlySpan<char> told = text.AsSpan(unit, Math.Min(end - unit, 8)).TrimStart();
        int length = told.StartsWith("counts", StringComparison.OrdinalIgnoreCase) || told.StartsWith("beats ", StringComparison.OrdinalIgnoreCase) ? 6
            : told.StartsWith("count", StringComparison.OrdinalIgnoreCase) || told.StartsWith("beats", StringComparison.OrdinalIgnoreCase) ? 5 : 0;
        if (length > 0 && text[at] != '1' && (told.Length == length || told[length] is ':' or '.' or '-' or ','))
        {
            return true;
        }

        string[] words = text[stop..Math.Min(end, stop + 24)].ToLowerInvariant().Split([' ', '-', ',', ':', '.'], StringSplitOptions.RemoveEmptyEntries);
        return words.Length > 0 && words[0] is "restart" or "restarts" || words.Length > 1 && words[0] is "count" or "counts" or "beat" or "beats"
            or "ct" or "cts" or "cnt" && words[1] is "tag" or "tags" or "bridge" or "intro" or "introduction" or "ending" or "break" or "restart";
    }

    /// <summary>A label of one number of two digits as the two counts that they are: "12", "78".</summary>
    public CountLabel InTwos()
    {
        List<LabelPlace> two = [];
        Add(two, Places[0].Number / 10, false);
        Add(two, Places[0].Number % 10, true);
        return new CountLabel(two, Span, End);
    }

    /// <summary>Whole counts that are told within a sentence: "on three the left crosses behind", "on counts 5 and 6 rock forward, recover".</summary>
    public static CountLabel Told(int first, int last, int start, int end)
    {
        List<LabelPlace> told = [];
        for (int number = first; number <= last; number++)
        {
            Add(told, number, number > first);
        }

        return new CountLabel(told, TextSpan.FromBounds(start, end), end);
    }

    /// <summary>The label of a line of its own for a quick count, "a" or "e" as the &amp; has it; null where the line starts otherwise.</summary>
    public static CountLabel? ReadQuick(string text, int start, int end)
    {
        if (end - start < 3 || text[start] is not ('a' or 'e') || !char.IsWhiteSpace(text[start + 1]))
        {
            return null;
        }

        List<LabelPlace> places = [];
        AddLetter(places, char.ToString(text[start]), 0);
        return new CountLabel(places, new TextSpan(start, 1), SkipBlank(text, start + 1, end));
    }

    /// <summary>Reads the label at the start of a line; null when the line does not start with counts.</summary>
    public static CountLabel? Read(string text, int start, int end)
    {
        int at = SkipBlank(text, start, end);
        int opened = 0;
        at = BehindThen(text, BehindMarks(text, at, end), end);
        while (at < end && text[at] is '(' or '[' or '*' or '•' or '·' or '●' or '○' or '▪' or '■' or '◦' or '►' or '➤' or '→')
        {
            opened++;
            at = SkipBlank(text, at + 1, end);
        }

        bool named = false;
        bool many = false;
        foreach (string word in (ReadOnlySpan<string>)["counts", "count", "cts", "ct", "beats", "beat", "times", "from", "on"])
        {
            if (at + word.Length < end && text.AsSpan(at, word.Length).Equals(word, StringComparison.OrdinalIgnoreCase)
                && !char.IsLetter(text[at + word.Length]))
            {
                at = SkipBlank(text, at + word.Length, end);
                named = word is "times" or "from" or "on";
                many = word is "counts" or "beats";
                if (at < end && text[at] is ':' or '.')
                {
                    at = SkipBlank(text, at + 1, end);
                }

                break;
            }
        }

        if (TellsLength(text, at, end))
        {
            return null;
        }

        int labelStart = at;
        List<LabelPlace> places = [];
        int last = 0;
        int labelEnd = at;
        bool dash = false;
        bool comma = false;
        bool pendingAnd = false;
        string pendingLetter = "&";
        bool hasNumber = false;
        int inStrokes = 0;
        while (at < end && places.Count < MaximumCounts)
        {
            char c = text[at];
            if (c is 'l' or 'I' && at == labelStart && at + 3 < end && text[at + 1] is '-' or '–' or '&' && text[at + 2] is '2'
                && !char.IsLetterOrDigit(text[at + 3]))
            {
                // "l-2", "I&2": the letter that looks like the number
                Add(places, 1, false);
                last = 1;
                hasNumber = true;
                at++;
                labelEnd = at;
                continue;
            }

            if (char.IsAsciiDigit(c))
            {
                int stop = at;
                int number = 0;
                while (stop < end && char.IsAsciiDigit(text[stop]) && number < 100000)
                {
                    number = (number * 10) + (text[stop] - '0');
                    stop++;
                }

                if (!dash && number > 1000 && CountsInARow(text, at, end) is int rowEnd && (!hasNumber || text[at] - '0' == last + 1))
                {
                    // "1234 vine right", "5678": its first count, and the others like those of any run
                    stop = rowEnd;
                    number = text[at] - '0';
                }

                bool glued = at > labelStart && !char.IsWhiteSpace(text[at - 1]);
                bool isFraction = stop < end && text[stop] is '/' or '¼' or '½' or '¾' or '⁄'
                    && !(text[stop] == '/' && (stop + 1 >= end || text[stop + 1] is '/' or ' ' or '&'));
                bool pair = isFraction && !hasNumber && number is 5 or 7 && stop + 2 < end && text[stop] == '/' && text[stop + 1] - '0' == number + 1
                    && !char.IsAsciiDigit(text[stop + 2]) && !char.IsLetter(text[stop + 2]);
                inStrokes = isFraction && stop > inStrokes ? CountsInStrokes(text, at, end) ?? inStrokes : inStrokes;
                isFraction &= !pair && stop > inStrokes;
                bool isTimes = stop < end && text[stop] is 'x' or 'X' && (stop + 1 >= end || !char.IsLetter(text[stop + 1]));
                bool isClock = stop + 1 < end && text[stop] == ':' && char.IsAsciiDigit(text[stop + 1]);
                bool isOrdinal = stop + 1 < end && char.IsLetter(text[stop])
                    && text.AsSpan(stop, Math.Min(2, end - stop)) is "st" or "nd" or "rd" or "th"
                    && (stop + 2 >= end || !char.IsLetter(text[stop + 2]));
                int unit = SkipBlank(text, stop, end);
                bool isDegrees = number is 45 or 90 or 135 or 180 or 270 or 360 && unit < end && (text[unit] is '°' or 'º'
                    || (unit + 3 <= end && text.AsSpan(unit, 3).Equals("deg", StringComparison.OrdinalIgnoreCase)));
                bool follows = !hasNumber || dash || comma || pendingAnd || number == last + 1;
                if (isFraction || isTimes || isClock || isOrdinal || isDegrees || !follows || (number > 1000 && !RunOfDigits(text, at, stop)) || number < 1
                    || (hasNumber && !glued && !dash && !comma && !pendingAnd && number != last + 1)
                    || (hasNumber && dash && number < last))
                {
                    break;
                }

                if (pendingAnd)
                {
                    AddLetter(places, pendingLetter, hasNumber ? last : number - 1);
                    pendingAnd = false;
                }

                if (!dash && RunOfDigits(text, at, stop))
                {
                    // "123&4": three counts, written without a gap
                    for (int digit = at; digit < stop; digit++)
                    {
                        Add(places, text[digit] - '0', false);
                    }

                    last = text[stop - 1] - '0';
                    hasNumber = true;
                    comma = false;
                    at = stop;
                    labelEnd = at;
                    continue;
                }

                if (dash && hasNumber && number > last + 1 && number - last < MaximumCounts)
                {
                    for (int between = last + 1; between < number; between++)
                    {
                        Add(places, between, true);
                    }
                }

                Add(places, number, dash && hasNumber);
                last = number;
                hasNumber = true;
                dash = false;
                comma = false;
                at = stop;
                labelEnd = at;
                continue;
            }

            if (IsLetterMark(text, at, end, hasNumber, labelStart) is (string letter, int length))
            {
                if (pendingAnd)
                {
                    AddLetter(places, pendingLetter, hasNumber ? last : 0);
                }

                pendingAnd = true;
                pendingLetter = letter;
                at += length;
                labelEnd = at;
                dash = false;
                comma = false;
                continue;
            }

            if (char.IsWhiteSpace(c))
            {
                at++;
                continue;
            }

            if (hasNumber && c is '-' or '–' or '—' or '−' or '~' or '‐' or '‑')
            {
                int next = SkipBlank(text, at + 1, end);
                while (next < end && text[next] is '-' or '–' or '—')
                {
                    next = SkipBlank(text, next + 1, end);
                }

                if (next < end && (char.IsAsciiDigit(text[next]) || text[next] == '&'))
                {
                    dash = char.IsAsciiDigit(text[next]);
                    at = next;
                    continue;
                }

                break;
            }

            if (hasNumber && c is ',' or '.' or '/' or ';')
            {
                int next = SkipBlank(text, at + 1, end);
                bool dotted = next < end && c == '.' && text[next] == '.' && next == at + 1;
                while (next < end && text[next] is '.' or ',')
                {
                    next = SkipBlank(text, next + 1, end);
                }

                if (next + 1 < end && c == '.' && text[next] is '-' or '–' && next == at + 1 && char.IsAsciiDigit(text[next + 1]))
                {
                    // "1.-4.": ordinals, as German has them
                    dotted = true;
                    next++;
                }

                if (next + 2 < end && text[next] == '(' && char.IsAsciiDigit(text[next + 1]) && text[next + 2] == ')')
                {
                    // 1,2,(3),4: a count in brackets is a count
                    Add(places, text[next + 1] - '0', false);
                    last = text[next + 1] - '0';
                    at = next + 3;
                    labelEnd = at;
                    continue;
                }

                if (next < end && (char.IsAsciiDigit(text[next]) || text[next] == '&'))
                {
                    // "1..4" from one to the other
                    dash = dotted && char.IsAsciiDigit(text[next]);
                    comma = !dash;
                    at = next;
                    continue;
                }

                break;
            }

            if (hasNumber && char.IsAsciiLetter(c) && AfterTo(text, at, end) is int afterTo)
            {
                dash = true;
                at = afterTo;
                continue;
            }

            break;
        }

        if (pendingAnd && hasNumber)
        {
            AddLetter(places, pendingLetter, last);
        }
        else if (pendingAnd)
        {
            // a lone & line: it belongs to the count before the first number of what follows; placed by the section
            AddLetter(places, pendingLetter, 0);
        }

        if (places.Count == 0
            || (named && (places.Count < 2 || labelEnd >= end || text[SkipBlank(text, labelEnd, end - 1)] is not (':' or '-' or '–' or '='))))
        {
            // "from 1 to 4: ...", but "on 3 walls"
            return null;
        }

        if (many && places is [{ Place.IsWhole: true } one, { Place.IsWhole: false }, { Place.IsWhole: true } two] && two.Number == one.Number + 1
            && text.AsSpan(labelStart, labelEnd - labelStart).Contains("and", StringComparison.OrdinalIgnoreCase))
        {
            // "counts 1 and 2": those two, and no quick one between them
            places = [];
            Add(places, one.Number, false);
            Add(places, two.Number, true);
        }

        // "1" glued to letters is a word, not a count ("1st")
        if (labelEnd < end && char.IsLetter(text[labelEnd]) && labelEnd > labelStart && char.IsAsciiDigit(text[labelEnd - 1])
            && text[labelEnd] is not ('r' or 'R' or 'l' or 'L'))
        {
            int wordEnd = labelEnd;
            while (wordEnd < end && char.IsLetter(text[wordEnd]))
            {
                wordEnd++;
            }

            if (wordEnd - labelEnd < 2)
            {
                return null;
            }
        }

        int rest = labelEnd;
        rest = SkipBlank(text, rest, end);
        while (rest < end && (text[rest] is ':' or '|' or '=' or '\t' or '_' or '°' or 'º' or '>' || (text[rest] is '.' && places.Count > 0)
            || (text[rest] is '/' && rest == labelEnd && rest + 1 < end && text[rest + 1] == ' ')
            || (opened > 0 && text[rest] is ')' or ']' or '*')
            || (text[rest] is '-' or '–' or '—' && rest > labelEnd - 1) || (text[rest] is ')' or ']' && opened == 0)))
        {
            if (text[rest] is ')' or ']' or '*')
            {
                opened--;
            }

            rest = SkipBlank(text, rest + 1, end);
        }

        return new CountLabel(places, TextSpan.FromBounds(labelStart, labelEnd), rest);
    }

    /// <summary>Where the counts begin behind the marks of a list, which programs set one before the other: "- 1-4 vine", "#1-4", "• - 1-4".</summary>
    private static int BehindMarks(string text, int start, int end)
    {
        int at = start;
        while (at + 1 < end)
        {
            char next = text[at + 1];
            int far = text[at] is '#' ? at + 1 : SkipBlank(text, at + 1, end);
            if (far >= end || !(text[at] is '#' || IsBullet(text[at]) || (text[at] is '-' or '–' or '—' && next == ' '))
                || !(char.IsAsciiDigit(text[far]) || text[far] is '&' or '(' or '[' or '#' || IsBullet(text[far])
                || (text[far] is '-' or '–' or '—' && far + 1 < end && text[far + 1] == ' ')
                || (text[at] is not '#' && IsCounting(text.AsSpan(far, end - far)))
                || text.AsSpan(far, end - far) is ['*', '*', >= '0' and <= '9', ..]))
            {
                break;
            }

            if (text[at] is not '#' && (char.IsAsciiDigit(text[far]) || text[far] is '(' or '[' or '&' or '*') && IsBullet(text[at]))
            {
                // the last bullet is passed over with the brackets
                break;
            }

            at = far;
        }

        return at;
    }

    // "Then counts 5-8: ...", "Next, 5-8 ...": what joins the line to the one above
    private static int BehindThen(string text, int at, int end)
    {
        foreach (string word in (ReadOnlySpan<string>)["and then", "then", "next", "now"])
        {
            if (at + word.Length >= end || char.IsLetter(text[at + word.Length])
                || !text.AsSpan(at, word.Length).Equals(word, StringComparison.OrdinalIgnoreCase))
            {
                continue;
            }

            int far = SkipBlank(text, at + word.Length + (text[at + word.Length] is ',' or ':' ? 1 : 0), end);
            int stop = far;
            while (stop < end && char.IsAsciiDigit(text[stop]))
            {
                stop++;
            }

            int next = SkipBlank(text, stop, end);
            bool isRange = stop > far && next + 1 < end && text[next] is '-' or '–' or '&' && char.IsAsciiDigit(text[SkipBlank(text, next + 1, end - 1)]);
            return isRange || IsCounting(text.AsSpan(far, end - far)) ? far : at;
        }

        return at;
    }

    // "Counts 1-2", "count 3"
    private static bool IsCounting(ReadOnlySpan<char> text)
    {
        foreach (string word in (ReadOnlySpan<string>)["counts", "count", "cts", "ct", "beats", "beat"])
        {
            if (text.StartsWith(word, StringComparison.OrdinalIgnoreCase))
            {
                ReadOnlySpan<char> rest = text[word.Length..].TrimStart([' ', '\u00A0', ':', '.']);
                return rest.Length < text.Length - word.Length && rest.Length > 0 && char.IsAsciiDigit(rest[0]);
            }
        }

        return false;
    }

    private static bool IsBullet(char c) => c is '•' or '·' or '●' or '○' or '▪' or '■' or '◦' or '►' or '➤' or '→';

    /// <summary>Whether a word stands between the first and the last of some counts: "1 to 4", "1 till 4", "1 bis 4".</summary>
    /// <param name="word">The word.</param>
    public static bool IsTo(ReadOnlySpan<char> word) => word is "to" or "till" or "til" or "until" or "thru" or "through" or "bis" or "tot" or "upto";

    // where the last number of "1 to 4" begins
    private static int? AfterTo(string text, int at, int end)
    {
        int stop = at;
        while (stop < end && char.IsAsciiLetter(text[stop]))
        {
            stop++;
        }

        int next = SkipBlank(text, stop, end);
        return next > stop && next < end && char.IsAsciiDigit(text[next]) && IsTo(text[at..stop].ToLowerInvariant()) ? next : null;
    }

    private static (string Letter, int Length)? IsLetterMark(string text, int at, int end, bool hasNumber, int labelStart)
    {
        char c = text[at];
        char next = at + 1 < end ? text[at + 1] : ' ';
        char previous = at > labelStart ? text[at - 1] : ' ';
        if (c == '&')
        {
            return ("&", 1);
        }

        if (c is '$' or '%' && hasNumber && char.IsAsciiDigit(next))
        {
            // the key beside the &
            return ("&", 1);
        }

        if (c == '+' && hasNumber)
        {
            return ("&", 1);
        }

        if (c is 'n' or 'N' && hasNumber && ((char.IsAsciiDigit(next) && char.IsAsciiDigit(previous)) || (char.IsWhiteSpace(next)
            && char.IsWhiteSpace(previous) && SkipBlank(text, at + 1, end) is var behind && behind < end && char.IsAsciiDigit(text[behind]))))
        {
            // "1n2", "3 n 4"
            return ("&", 1);
        }

        if (c is 'a' or 'A' or 'e' or 'E')
        {
            bool nextIsCount = char.IsAsciiDigit(next) || next == '&';
            bool previousIsCount = char.IsAsciiDigit(previous) || previous == '&' || previous is 'e' or 'E';
            if ((nextIsCount && !char.IsLetter(previous)) || (previousIsCount && !char.IsLetter(next)))
            {
                return (char.ToLowerInvariant(c).ToString(), 1);
            }

            int far = SkipBlank(text, at + 1, end);
            if (hasNumber && char.IsWhiteSpace(previous) && char.IsWhiteSpace(next) && far < end && char.IsAsciiDigit(text[far]))
            {
                return (char.ToLowerInvariant(c).ToString(), 1);
            }
        }

        if (at + 3 < end && text.AsSpan(at, 3).Equals("and", StringComparison.OrdinalIgnoreCase))
        {
            int far = SkipBlank(text, at + 3, end);
            if (far < end && char.IsAsciiDigit(text[far]) && (hasNumber || at == labelStart) && !IsFractionAt(text, far, end))
            {
                return ("&", 3);
            }

            // "1 and 2 and R heel, together, ...": in a label that says its & in full, the last is one too
            bool inFull = hasNumber && char.IsWhiteSpace(previous) && char.IsWhiteSpace(text[at + 3])
                && text.AsSpan(labelStart, at - labelStart).Contains("and", StringComparison.OrdinalIgnoreCase);
            if (inFull)
            {
                return ("&", 3);
            }
        }

        return null;
    }

    private static bool IsFractionAt(string text, int at, int end)
    {
        while (at < end && char.IsAsciiDigit(text[at]))
        {
            at++;
        }

        return at < end && text[at] is '/' or '¼' or '½' or '¾';
    }

    private static void Add(List<LabelPlace> places, int number, bool dash)
        => places.Add(new LabelPlace(number.ToString(System.Globalization.CultureInfo.InvariantCulture), number, Counts.FromWhole(number - 1), dash));

    private static void AddLetter(List<LabelPlace> places, string letter, int number)
    {
        Counts place = Counts.FromWhole(number - 1) + CountGrid.OffsetOf(letter[0])!.Value;
        places.Add(new LabelPlace(number.ToString(System.Globalization.CultureInfo.InvariantCulture) + letter, number, place, false));
    }

    private static int SkipBlank(string text, int at, int end)
    {
        while (at < end && char.IsWhiteSpace(text[at]))
        {
            at++;
        }

        return at;
    }
}
