using System.Globalization;
using Scuff.Diagnostics;
using Scuff.Prose.Reading.Sentences;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

// Counts that stand behind their moves with something said after them, or that are told in words, or that only the lines around them tell.
internal sealed partial class TextReaderRun
{
    // the counts behind the line that was asked about last
    private (int Start, int End, int Lines) _behindKey = (-1, -1, -1);
    private List<(CountLabel Label, int From, int To)> _behind = [];
    private int _behindTail;

    // what stands before counts told behind a line: ": times 1 to 4", "- counts 5-8"
    private static readonly string[] CountNames = ["times", "counts", "count", "cts", "beats", "beat", "on", "tempi", "temps"];

    /// <summary>Whether what stands behind the counts of a line moves nobody: a clock, a note on the weight, a remark.</summary>
    private bool TellsNoMove(int start, int end)
    {
        if (_text.AsSpan(start, end - start).Trim(" .,;!").IsEmpty)
        {
            return true;
        }

        bool weight = false;
        foreach (Term term in TermReader.Read(_text, start, end, _state.Lexicon))
        {
            weight |= term.Kind is TermKind.WeightOn;
            bool still = term.Kind is TermKind.Clock or TermKind.Filler or TermKind.Style or TermKind.Separator or TermKind.Open or TermKind.Close
                or TermKind.WeightOn or TermKind.WeightTakes or TermKind.WeightNone or TermKind.Then or TermKind.Join
                || (weight && term.Kind is TermKind.Side or TermKind.Foot);
            if (!still)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Holds what stands behind the counts of a line against where its moves have led: "(5-8) kl. 12.00", "(7-8). Weight on LF".</summary>
    private void ReadTail(int start, int end, string label)
    {
        if (start >= end)
        {
            return;
        }

        ClaimIn(start, end);
        List<Term> terms = TermReader.Read(_text, start, end, _state.Lexicon);
        int noted = terms.FindIndex(t => t.Kind is TermKind.WeightOn);
        if (noted >= 0 && terms.Find(t => t.Kind is TermKind.Side or TermKind.Foot) is { Meaning.Side: Foot foot } && _state.Weight != foot.ToWeight()
            && _state.Weight != Weight.Unknown)
        {
            TextSpan span = TextSpan.FromBounds(start, end);
            _state.Add(ReadingRules.WordsUnused.At(span, ("words", _text[start..end].Trim()), ("counts", label), ("unused", "weight"),
                ("read", foot == Foot.Left ? "R" : "L")));
        }
    }

    /// <summary>
    /// Counts behind their moves in the manners of many hands, and a remark behind them: "RF over LF : times 5 to 8", "turn 1/4 and right forward - 1 2 3 4,
    /// you stand on 12", "R to side 1, L beside R 2", "... [1-4]", "... /1-4/". Each with the stretch of its words, and where the remark begins; empty where
    /// there are none that go on from the section.
    /// </summary>
    private List<(CountLabel Label, int From, int To)> CountsBehind(TextLine line, out int tail)
    {
        (int, int, int) key = (line.Start, line.End, _section?.Lines.Count ?? -1);
        if (_behindKey != key)
        {
            // asked of one line by several readers
            _behindKey = key;
            _behind = FindCountsBehind(line, out _behindTail);
        }

        tail = _behindTail;
        return _behind;
    }

    private List<(CountLabel Label, int From, int To)> FindCountsBehind(TextLine line, out int tail)
    {
        tail = line.End;
        if (_text.AsSpan(line.Start, line.End - line.Start).IndexOfAnyInRange('0', '9') < 0)
        {
            return [];
        }

        List<(CountLabel Label, int From, int To)> runs = [];
        int from = line.Start;
        bool marked = false;
        int looked = line.Start;
        for (int i = line.Start + 4; i < line.End; i++)
        {
            if (!char.IsAsciiDigit(_text[i]) || !(char.IsWhiteSpace(_text[i - 1]) || _text[i - 1] is ':' or '-' or '–' or '[' or '(' or '/')
                || (_text[i - 1] is '/' && char.IsAsciiDigit(_text[i - 2])))
            {
                continue;
            }

            if (SaysRepeat(from, i) && !IsNextCount(i, line.End))
            {
                // "repeat 1-4 - 5-8": the first range is what is danced again
                while (i + 1 < line.End && (char.IsAsciiDigit(_text[i + 1]) || _text[i + 1] is '-' or '–' or '&'))
                {
                    i++;
                }

                looked = i + 1;
                continue;
            }

            if (CountsGoOnBefore(Math.Max(from, looked), i) || CountLabel.Read(_text, i, line.End) is not CountLabel label
                || !(runs.Count == 0 ? FollowsOn(label) : FirstNumber(label) == LastNumber(runs[^1].Label) + 1)
                || ClockWords.IsHour(_text, i, line.End, _state.Lexicon))
            {
                continue;
            }

            if (label.Places.Count == 1 && _text[i - 1] is '(')
            {
                // "R to side (1), L beside R (2)" is read as a whole
                return [];
            }

            int end = EndOfWords(from, i, out bool told);
            int after = label.Span.End;
            if (_text[i - 1] is '[' or '(' or '/' && after < line.End && _text[after] is ']' or ')' or '/')
            {
                after++;
                told = true;
            }

            if (end - from < 2 || (runs.Count == 0 && end - line.Start < 4))
            {
                return [];
            }

            if (!SaysAgain(from, end) && !TermReader.Read(_text, from, end, _state.Lexicon).Exists(t =>
                t.Kind is TermKind.Move or TermKind.Dir or TermKind.Foot or TermKind.Side
                or TermKind.Amount or TermKind.Part or TermKind.Repeat or TermKind.RepeatMirrored))
            {
                // "(5 6 7 8) now 9": the wall
                break;
            }

            runs.Add((label, from, end));
            marked |= told;
            from = after;
            tail = after;
            i = after - 1;
            while (from < line.End && (char.IsWhiteSpace(_text[from]) || _text[from] is ',' or ';' or '.' or '|'))
            {
                from++;
            }
        }

        int counts = runs.Sum(r => r.Label.Places.Count);
        bool goesOn = runs.Count == 1 && counts > 1 && _section is { Lines.Count: > 0 } && SaysAgain(line.Start, runs[0].To);
        marked |= goesOn;
        if (counts < 2 || (!marked && runs.Count < 2) || (runs.Count > 1 && counts < 3 && !marked) || !TellsNoMove(tail, line.End))
        {
            return [];
        }

        List<Term> terms = TermReader.Read(_text, line.Start, runs[0].To, _state.Lexicon);
        bool again = goesOn || (marked && terms.Exists(t => t.Kind is TermKind.Repeat or TermKind.RepeatMirrored));
        bool steps = terms.Exists(t => t.Kind is TermKind.Move or TermKind.Dir or TermKind.Part);
        int unknown = terms.Count(t => t.Kind is TermKind.Unknown);
        return again || (steps && (marked ? unknown * 3 <= terms.Count : unknown == 0)) ? runs : [];
    }

    // "repeat 3&4" after "1&2": nothing is danced there yet that could be repeated
    private bool IsNextCount(int at, int end) => _section is { Lines.Count: > 0 } section && CountLabel.Read(_text, at, end) is CountLabel label
        && FirstNumber(label) == section.Length.Value.Floor + (section.Offset ?? 0) + 1;

    /// <summary>
    /// The counts at the end of a line that nothing else was made of, where they go on from those before it: "now with the left 3-4". What stands before them
    /// is danced, and asked about where it is not understood.
    /// </summary>
    private (CountLabel Label, int WordsEnd)? NextCountsAtEnd(TextLine line)
    {
        int end = line.End;
        while (end > line.Start && _text[end - 1] is ' ' or '.' or ')' or ']')
        {
            end--;
        }

        int start = end;
        while (start > line.Start && (char.IsAsciiDigit(_text[start - 1]) || _text[start - 1] is '&' or '-' or '–'))
        {
            start--;
        }

        bool apart = start > line.Start + 4 && start < end && _text[start - 1] is ' ' or '(' or '[';
        return apart && IsNextCount(start, end) && CountLabel.Read(_text, start, end) is { Places.Count: > 1 } label && label.Span.End == end
            && TermReader.Read(_text, line.Start, start, _state.Lexicon).Exists(t => t.Kind is TermKind.Foot or TermKind.Side or TermKind.Lead
                or TermKind.Repeat or TermKind.RepeatMirrored)
            ? (label, EndOfWords(line.Start, start, out _)) : null;
    }

    // "and once more 5-8", "repeat 1-4 5-8"
    private bool SaysAgain(int from, int to)
    {
        ReadOnlySpan<char> words = _text.AsSpan(from, to - from);
        foreach (string again in (ReadOnlySpan<string>)["again", "once more", "more time", "time more", "another time", "repeat", "same", "as "])
        {
            if (words.Contains(again, StringComparison.OrdinalIgnoreCase))
            {
                return again is not "as " || words.StartsWith("as ", StringComparison.OrdinalIgnoreCase);
            }
        }

        return false;
    }

    // "repeat 1-4", "as counts 1-4": which counts are danced again
    private bool SaysRepeat(int from, int at)
    {
        ReadOnlySpan<char> before = _text.AsSpan(from, at - from).TrimEnd(" :");
        foreach (string name in CountNames)
        {
            before = EndsWithWord(before, name) ? before[..^name.Length].TrimEnd(' ') : before;
        }

        foreach (string word in (ReadOnlySpan<string>)["repeat", "repeats", "repeating", "as", "like", "again", "of", "steps", "redo", "do"])
        {
            if (EndsWithWord(before, word))
            {
                return true;
            }
        }

        return false;
    }

    private static bool EndsWithWord(ReadOnlySpan<char> words, string word) => words.EndsWith(word, StringComparison.OrdinalIgnoreCase)
        && (words.Length == word.Length || !char.IsLetter(words[^(word.Length + 1)]));

    // a digit that only goes on with the counts before it is no beginning
    private bool CountsGoOnBefore(int start, int at)
    {
        int back = at - 1;
        while (back > start && _text[back] is ' ' or '-' or '–' or ',' or '&')
        {
            back--;
        }

        if (char.IsAsciiDigit(_text[back]))
        {
            return true;
        }

        // "1 to 4", "1 till 4"
        int word = back;
        while (word > start && char.IsLetter(_text[word]))
        {
            word--;
        }

        return CountLabel.IsTo(_text.AsSpan(word + 1, back - word)) && word > start && _text[word] == ' ' && char.IsAsciiDigit(_text[word - 1]);
    }

    private bool FollowsOn(CountLabel label)
    {
        int danced = _section is { Lines.Count: > 0 } section ? section.Length.Value.Floor + (section.Offset ?? 0) : 0;
        return FirstNumber(label) == 1 || FirstNumber(label) == danced + 1 || _section is { Lines.Count: 0 };
    }

    private int EndOfBlanks(int start, int at)
    {
        while (at > start && char.IsWhiteSpace(_text[at - 1]))
        {
            at--;
        }

        return at;
    }

    // where the words before ": times 1 to 4" end, and whether anything marks what follows as counts
    private int EndOfWords(int start, int at, out bool marked)
    {
        int end = EndOfBlanks(start, at);
        marked = false;
        foreach (string name in CountNames)
        {
            if (end - start > name.Length && _text.AsSpan(start, end - start).EndsWith(name, StringComparison.OrdinalIgnoreCase)
                && !char.IsLetter(_text[end - name.Length - 1]))
            {
                end -= name.Length;
                marked = true;
                break;
            }
        }

        while (end > start && (char.IsWhiteSpace(_text[end - 1])
            || _text[end - 1] is ':' or '-' or '–' or '—' or '=' or '>' or ',' or '.' or '[' or '(' or '/'))
        {
            marked |= _text[end - 1] is ':' or '-' or '–' or '—' or '=' or '>' or ',';
            end--;
        }

        return end;
    }

    /// <summary>
    /// A line of steps that tells its length in words and has no counts: "Rumba box on 8 counts. R to side, ...", "R toe strut, L toe strut. Total 8 count."
    /// How many counts, and where its steps stand; null where it is none.
    /// </summary>
    private (int Counts, int From, int To)? LengthTold(TextLine line)
    {
        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start);
        int at = words.IndexOf(" count", StringComparison.OrdinalIgnoreCase);
        at = at < 0 ? words.IndexOf(" beat", StringComparison.OrdinalIgnoreCase) : at;
        at = at < 0 && (StartsWithWord(words, "in") || StartsWithWord(words, "on")) ? words.IndexOf(" times", StringComparison.OrdinalIgnoreCase) : at;
        if (at < 1 || SentenceReader.LooksLikeSentence(words))
        {
            return null;
        }

        int first = at;
        while (first > 0 && char.IsLetterOrDigit(words[first - 1]))
        {
            first--;
        }

        int after = at + 1;
        while (after < words.Length && char.IsLetter(words[after]))
        {
            after++;
        }

        if (NumberOf(words[first..at]) is not (>= 2 and <= 32 and int counts))
        {
            return null;
        }

        int stop = after;
        foreach (string all in (ReadOnlySpan<string>)[" in total", " total", " in all", " altogether", " together"])
        {
            stop = stop == after && words[after..].StartsWith(all, StringComparison.OrdinalIgnoreCase) ? after + all.Length : stop;
        }

        while (stop < words.Length && words[stop] is ' ' or ')')
        {
            stop++;
        }

        // in front, up to a colon or a full stop; or at the end, behind one
        int begins = first;
        while (begins > 0 && words[begins - 1] is not ('.' or ';' or ':' or '(' or '-' or '='))
        {
            begins--;
        }

        bool inFront = stop < words.Length && words[stop] is ':' or '.' or '-' && begins == 0;
        bool behind = stop >= words.Length || (words[stop] is '.' or '!' && stop + 1 >= words.Length);
        (int from, int to) = inFront ? (line.Start + stop + 1, line.End) : (line.Start, line.Start + Math.Max(0, begins - 1));
        if (stop < words.Length && words[stop] is '(' && words[^1] is ')' && words[stop..].IndexOf(')') == words.Length - stop - 1 && begins == 0)
        {
            // "Monterey 1/4 right twice, 8 counts (point R, 1/4 right closing R, point L, close L)"
            (inFront, from, to) = (true, line.Start, line.End);
        }

        if ((!inFront && !(behind && begins > 0)) || to - from < 12)
        {
            return null;
        }

        List<Term> terms = TermReader.Read(_text, from, to, _state.Lexicon);
        bool steps = terms.Count(t => t.Kind is TermKind.Move or TermKind.Dir) > 2 && terms.Count(t => t.Kind is TermKind.Foot or TermKind.Side
            or TermKind.Lead || t.Meaning.Side is not null) > 1 && !terms.Exists(t => t.Kind is TermKind.Unknown);
        return steps ? (counts, from, to) : null;
    }

    private static int? NumberOf(ReadOnlySpan<char> word) => int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number
        : word.Equals("two", StringComparison.OrdinalIgnoreCase) ? 2 : word.Equals("three", StringComparison.OrdinalIgnoreCase) ? 3
        : word.Equals("four", StringComparison.OrdinalIgnoreCase) ? 4 : word.Equals("six", StringComparison.OrdinalIgnoreCase) ? 6
        : word.Equals("eight", StringComparison.OrdinalIgnoreCase) ? 8 : word.Equals("sixteen", StringComparison.OrdinalIgnoreCase) ? 16 : null;

    /// <summary>
    /// A line of nothing but steps above one that begins with a later count: "RF point aside; RF close; LF point aside; LF close" above "5-8 repeat that". The
    /// first and last of its counts; null where it is none.
    /// </summary>
    private (int First, int Last)? CountsLeftOpen(TextLine line, int index)
    {
        int danced = _section is { Lines.Count: > 0 } section && _tag is null ? section.Length.Value.Floor + (section.Offset ?? 0) : 0;
        if (_tag is not null || NextCounts(index + 1) is not (int next, false) || next - danced is not (>= 3 and <= 9)
            || SentenceReader.LooksLikeSentence(_text.AsSpan(line.Start, line.End - line.Start)))
        {
            return null;
        }

        List<Term> terms = TermReader.Read(_text, line.Start, line.End, _state.Lexicon);
        bool steps = terms.Count(t => t.Kind is TermKind.Move or TermKind.Dir) >= next - danced - 1
            && terms.Count(t => t.Kind is TermKind.Foot or TermKind.Side or TermKind.Lead || t.Meaning.Side is not null) > 1
            && terms.Exists(t => t.Kind is TermKind.Separator or TermKind.Then)
            && !terms.Exists(t => t.Kind is TermKind.Unknown or TermKind.Number or TermKind.Repeat or TermKind.RepeatMirrored);
        return steps ? (danced + 1, next - 1) : null;
    }

    /// <summary>Reads a line whose counts stand behind its moves, are told in words, or are left to the line below; false when it is none.</summary>
    private bool ReadCountsElsewhere(TextLine line, int index)
    {
        return ReadCountsBehind(line, index, 1) || ReadLengthTold(line) || ReadLeftOpen(line, index);
    }

    private bool ReadCountsBehind(TextLine line, int index, int atLeast)
    {
        if (CountsBehind(line, out int tail) is { Count: > 0 } runs && runs.Count >= atLeast)
        {
            if (_section is null || BeginsAnew(runs[0].Label, index))
            {
                OpenNext("", new TextLine(line.Number, line.Start, line.Start));
            }

            foreach ((CountLabel label, int words, int end) in runs)
            {
                ReadRun(new TextLine(line.Number, words, end), label, words);
            }

            ReadTail(tail, line.End, _text.Substring(runs[^1].Label.Span.Start, runs[^1].Label.Span.Length));
            return true;
        }

        return false;
    }

    private bool ReadLengthTold(TextLine line)
    {
        if (LengthTold(line) is not (int counts, int from, int to))
        {
            return false;
        }

        bool begins = _section is not { Lines.Count: > 0 } going || going.Length.Value.Floor % 8 == 0;
        if (begins && _section is not { Lines.Count: 0 })
        {
            string heading = from > line.Start ? _text[line.Start..from].Trim().TrimEnd(':', '.', '-').Trim() : "";
            OpenNext(heading, new TextLine(line.Number, line.Start, line.Start));
        }

        ReadOpen(line with { Start = from, End = to }, 1, counts);
        return true;
    }

    private bool ReadLeftOpen(TextLine line, int index)
    {
        if (CountsLeftOpen(line, index) is not (int first, int last))
        {
            return false;
        }

        if (_section is null)
        {
            OpenNext("", new TextLine(line.Number, line.Start, line.Start));
        }

        int offset = _section!.Offset ?? 0;
        ReadOpen(line, first - offset, last - offset);
        return true;
    }

    // single counts in brackets, each further on than the count that is danced next: "walk R, L, R, kick L (4) walk back L, R, L, touch R (8)"
    private List<(int From, int To, int First, int Last)> UpToCounts(TextLine line)
    {
        List<(int, int, int, int)> stages = [];
        int offset = _section?.Offset ?? 0;
        int danced = _section is { Lines.Count: > 0 } section && _tag is null ? section.Length.Value.Floor : 0;
        int from = line.Start;
        for (int i = line.Start + 4; i + 2 < line.End; i++)
        {
            if (_text[i] is not '(' || _text.IndexOf(')', i, Math.Min(5, line.End - i)) is not (> 0 and int close)
                || !int.TryParse(_text.AsSpan(i + 1, close - i - 1), NumberStyles.None, CultureInfo.InvariantCulture, out int count))
            {
                continue;
            }

            if (count - offset - danced is not (>= 2 and <= 8))
            {
                return [];
            }

            stages.Add((from, i, danced + 1, count - offset));
            danced = count - offset;
            from = close + 1;
        }

        return TellsNoMove(from, line.End) ? stages : [];
    }

    // words whose counts stand nowhere beside them, from one count of the section's own counting to another
    private void ReadOpen(TextLine line, int first, int last)
    {
        int danced = _section is { Lines.Count: > 0 } section ? section.Length.Value.Floor : 0;
        int shift = Math.Max(0, danced + 1 - first);
        List<LabelPlace> places = [];
        for (int number = first + shift; number <= last + shift; number++)
        {
            places.Add(new LabelPlace(number.ToString(CultureInfo.InvariantCulture), number, Counts.FromWhole(number - 1), number > first + shift));
        }

        line = line.Trimmed(_text);
        string printed = string.Create(CultureInfo.InvariantCulture, $"{first + shift}-{last + shift}");
        ReadPlaces(line, places, line.Start, printed, new TextSpan(line.Start, 0));
    }
}
