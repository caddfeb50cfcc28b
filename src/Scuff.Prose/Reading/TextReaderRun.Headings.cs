using System.Globalization;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose.Reading.Sentences;
using Scuff.Prose.Words;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

// What the headings of sections, parts and tags look like.
internal sealed partial class TextReaderRun
{
    private bool LooksLikeBody(TextLine line)
    {
        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start);
        if (CountLabel.Read(_text, line.Start, line.End) is { Places.Count: > 1 } label && label.End < line.End
            && TermReader.Read(_text, label.End, line.End, _state.Lexicon).Exists(t => t.Kind is TermKind.Move))
        {
            // a text without a title begins with its first counts
            return true;
        }

        if (SectionHeading(words) is (_, int used)
            && CountLabel.Read(_text, TrimMarks(line with { Start = line.Start + used }).Start, line.End) is CountLabel counts
            && counts.End < line.End)
        {
            // "S1: 1-2 walk R, L"
            return true;
        }

        return StartsWithWord(words, "section") && words.Length < 60 && words.IndexOfAnyInRange('0', '9') is > 0 and < 12;
    }

    /// <summary>
    /// The first counts under a heading that is told by its own counts, "[1-8] walks and shuffle" or "9-16 VINE"; null where the counts are danced on the
    /// line itself. Without brackets the lines under it have to dance the same counts once more.
    /// </summary>
    private CountLabel? IsRangeHeading(TextLine line, CountLabel label, int index)
    {
        if (label.Places.Count < 3 || !label.Places.Skip(1).All(p => p.AfterDash))
        {
            return null;
        }

        bool bracketed = _text[line.Start] is '[' or '(';
        int from = label.Places[0].Number;
        int length = label.Places[^1].Number - from + 1;
        CountLabel? first = null;
        int next = 0;
        for (int at = index + 1; at < _lines.Count; at++)
        {
            TextLine following = _lines[at].Trimmed(_text);
            if (following.Start == following.End || IsRule(following))
            {
                continue;
            }

            (CountLabel? Label, int Last) counts = CountsOf(following);
            if (counts.Label is not CountLabel inner)
            {
                return null;
            }

            if (first is not null && IsLoneAnd(inner))
            {
                // "&  step L together", in a line of its own
                continue;
            }

            int starts = FirstNumber(inner);
            if (first is null)
            {
                if (!(starts <= 1 || starts == from) || counts.Last - starts + 1 >= length)
                {
                    return null;
                }

                first = inner;
                next = starts <= 1 ? 1 : from;
                if (bracketed)
                {
                    return first;
                }
            }
            else if (starts != next)
            {
                return null;
            }

            next = counts.Last + 1;
            if (next >= (FirstNumber(first) >= from ? from : 1) + length)
            {
                return length >= 6 ? first : null;
            }
        }

        return null;
    }

    // the first counts of a line and its last number, wherever the counts stand in it
    private (CountLabel? Label, int Last) CountsOf(TextLine line)
    {
        if (CountLabel.Read(_text, line.Start, line.End) is CountLabel first)
        {
            return (first, Runs(line, first) is [.., var last] ? LastNumber(last.Label) : LastNumber(first));
        }

        return TrailingLabels(line) is { Count: > 0 } trailing ? (trailing[0].Label, LastNumber(trailing[^1].Label)) : (null, 0);
    }

    private string TitleAfter(CountLabel label, TextLine line) => _text[label.End..line.End].Trim().TrimStart(':', '-', '–', '.', ')', ']').Trim();

    private static Counts? LengthOf(CountLabel label) => Counts.FromWhole(label.Places[^1].Number - label.Places[0].Number + 1);

    // what follows "(counts 1-8):" or "[9-16]", where counts of the line's own do
    private TextLine? BehindRange(TextLine tail)
    {
        bool bracketed = tail.Start < tail.End && _text[tail.Start] is '(' or '[';
        if (!bracketed || CountLabel.Read(_text, tail.Start, tail.End) is not { Places.Count: >= 6 } range || range.End >= tail.End
            || CountLabel.Read(_text, range.End, tail.End) is not CountLabel counts || counts.End >= tail.End)
        {
            return null;
        }

        return (tail with { Start = range.End }).Trimmed(_text);
    }

    // whether headings are marked by two signs and more, as no comment of hers is
    private bool IsMarkedUp() => _isMarkedUp ??= _lines.Count(l => l.End - l.Start > 4 && _text.AsSpan(l.Start, l.End - l.Start).StartsWith("## ")
        && !_text.AsSpan(l.Start + 3).TrimStart().StartsWith("WALL") && !_text.AsSpan(l.Start + 3).TrimStart().StartsWith("RESTART")) >= 2;

    private bool? _isMarkedUp;

    private bool IsSectionRange(TextLine tail, CountLabel label, int index)
    {
        // "S1 1-8 vine and touch": a range of a whole section followed by a title, the counts come on the next lines
        bool range = label.Places.Count >= 6 && label.Places.Skip(1).All(p => p.AfterDash);
        if (!range || index + 1 >= _lines.Count)
        {
            return false;
        }

        TextLine next = _lines[index + 1].Trimmed(_text);
        return CountsOf(next).Label is CountLabel inner && inner.Places[^1].Number < label.Places[^1].Number;
    }

    private TextLine TrimMarks(TextLine line)
    {
        int start = line.Start;
        while (start < line.End && (char.IsWhiteSpace(_text[start]) || _text[start] is ':' or '.' or '-' or '–' or ')'))
        {
            start++;
        }

        return new TextLine(line.Number, start, line.End);
    }

    /// <summary>
    /// The counts that stand in a line after a heading of words: "JAZZ SQUARE 5-8 cross R over L, ...". Null where the line has none that steps follow, or
    /// where they go on from no count of the section.
    /// </summary>
    private CountLabel? GluedLabel(TextLine line)
    {
        for (int i = line.Start + 3; i < line.End; i++)
        {
            if (!(char.IsAsciiDigit(_text[i]) || _text[i] is '&') || !(char.IsWhiteSpace(_text[i - 1]) || _text[i - 1] is ':' or '.' or '('))
            {
                continue;
            }

            if (_text[i - 1] is '(' && (CountLabel.Read(_text, i, line.End) is not { Places.Count: > 1 } told
                || !(_text.AsSpan(told.Span.End) is [')', ':', ..] or [')', ' ', '-' or '–' or '—' or ':', ' ', ..])))
            {
                // "Heel jack (&1&2): step R back, ..."; other brackets hold no counts of what follows
                continue;
            }

            if (CountLabel.Read(_text, i, line.End) is not CountLabel label || label.End >= line.End || NextWordIsNoMove(label, line.End)
                || (label.Places.Count == 1 && !(_text[label.Span.End] is ':' or ')' && Runs(line with { Start = i }, label).Count > 1)
                && !(_text.AsSpan(line.Start, i - line.Start).TrimEnd().EndsWith(":") && Runs(line with { Start = i }, label).Count > 2)))
            {
                // "(waltz) 1: L step forward 2: R point to side 3: hold": a single count has to be marked, and gone on from, as in "V step: 1 R, 2 L, 3 R, 4 L"
                continue;
            }

            string before = TextBefore(line, label);
            string last = before.Split([' ', ',', ':', '(', '['], StringSplitOptions.RemoveEmptyEntries).LastOrDefault("").ToLowerInvariant();
            // "Monterey turn, counts 1 till 4: ..." marks its counts, "the first counts 1-4 of the dance" does not
            bool named = last is "count" or "counts" or "beat" or "beats" or "times" && _text[label.Span.End] is ':' or ')';
            bool tellsOtherwise = !named && last is "count" or "counts" or "beat" or "beats" or "repeat" or "of" or "on" or "wall" or "walls"
                or "after" or "section"
                or "sections" or "to" or "and" or "from" or "times" or "intro" or "with" or "for" or "the" or "over" or "at" or "by"
                || (last is "step" or "steps" && before.Contains("repeat", StringComparison.OrdinalIgnoreCase));
            int next = _section is { Lines.Count: > 0 } section ? section.Length.Value.Floor + (section.Offset ?? 0) + 1 : FirstNumber(label);
            bool steps = TermReader.Read(_text, label.End, line.End, _state.Lexicon).Find(t => t.Kind is not (TermKind.Filler or TermKind.Style))
                .Meaning is
            {
                Kind: TermKind.Move or TermKind.Foot or TermKind.Side or TermKind.Dir or TermKind.Amount or TermKind.Turn or TermKind.Size
                    or TermKind.Part
            };
            if (before.Length <= 80 && before.Count(char.IsLetter) >= 3 && !tellsOtherwise && steps && (FirstNumber(label) == next || FirstNumber(label) == 1))
            {
                return label;
            }

            return null;
        }

        return null;
    }

    private string TextBefore(TextLine line, CountLabel label) => _text[line.Start..label.Span.Start].Trim().TrimEnd(':', '-', '–', '(', '[').Trim();

    /// <summary>A heading with its counts in one line: the heading of a section where the counts begin anew, and a note on them otherwise.</summary>
    private void ReadGlued(TextLine line, CountLabel label)
    {
        string heading = TextBefore(line, label);
        if (FirstNumber(label) is > 1 and <= 9 && _section is null or { Lines.Count: 0 } && StepsBefore(line, label))
        {
            // "L cross rock, recover R; 3&4 L side shuffle": the counts before the first that is told
            if (_section is null)
            {
                OpenNext("", new TextLine(line.Number, line.Start, line.Start));
            }

            int end = EndOfWords(line.Start, label.Span.Start, out _);
            ReadOpen(line with { End = end }, 1, FirstNumber(label) - 1);
            ReadCounts(line with { Start = label.Span.Start }, label);
            return;
        }

        bool begins = FirstNumber(label) == 1 && _section is null or { Lines.Count: > 0 };
        if (begins)
        {
            OpenSection(heading, null, new TextLine(line.Number, line.Start, line.Start));
        }

        ReadCounts(line with { Start = label.Span.Start }, label);
        if (!begins)
        {
            AddNote(new Note("note", heading, TextSpan.FromBounds(line.Start, label.Span.Start)));
        }
    }

    // whether the words before the counts are steps, told with their feet, and no heading
    private bool StepsBefore(TextLine line, CountLabel label)
    {
        int before = EndOfBlanks(line.Start, label.Span.Start);
        if (_text[before - 1] is not (';' or ',' or '.'))
        {
            // "LEFT VINE WITH 1/4 TURN LEFT, BRUSH 5-8 step L to side, ..." is a heading
            return false;
        }

        List<Term> terms = TermReader.Read(_text, line.Start, label.Span.Start, _state.Lexicon);
        return terms.Count(t => t.Kind is TermKind.Move or TermKind.Dir) > 1 && terms.Count(t => t.Kind is TermKind.Foot or TermKind.Side) > 1
            && terms.Exists(t => t.Kind is TermKind.Separator or TermKind.Then or TermKind.Join or TermKind.Amp)
            && !terms.Exists(t => t.Kind is TermKind.Unknown);
    }

    // "Part 1 - walks" heads a section where the parts are no longer than one and hold none, and nothing tells in which order they are danced
    private bool PartsAreSections()
    {
        if (_partsAreSections is bool known)
        {
            return known;
        }

        _partsAreSections = true;
        bool underPart = false;
        foreach (TextLine raw in _lines)
        {
            TextLine line = raw.Trimmed(_text);
            if (line.Start == line.End)
            {
                continue;
            }

            ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start);
            bool part = StartsWithWord(words, "part");
            bool whole = part && PartName(words) is (string name, int after)
                && (!char.IsAsciiDigit(name[0]) || TitleAndLength(words[after..].ToString()).Length > Counts.FromWhole(16));
            bool holds = underPart && !part && (words[0] == '[' || SectionHeading(words) is not null);
            if (whole || holds || SequenceReader.StartOf(words) is not null)
            {
                _partsAreSections = false;
                break;
            }

            underPart = part;
        }

        return _partsAreSections.Value;
    }

    private bool? _partsAreSections;

    private (int Number, int Used)? SectionHeading(ReadOnlySpan<char> words)
    {
        int at;
        if (StartsWithWord(words, "part"))
        {
            return PartName(words) is (string part, int used) && char.IsAsciiDigit(part[0]) && part.Length < 3 && char.IsAsciiDigit(part[^1])
                && !TellsOtherParts(words) && PartsAreSections()
                ? (int.Parse(part, CultureInfo.InvariantCulture), used) : null;
        }

        if (words[0] is '[' or '(' && words.Length > 3 && words[1] is 's' or 'S' && char.IsAsciiDigit(words[2]))
        {
            at = 2;
        }
        else if (StartsWithWord(words, "section"))
        {
            at = 7;
        }
        else if (StartsWithWord(words, "sect"))
        {
            at = 4;
        }
        else if (StartsWithWord(words, "sec"))
        {
            at = 3;
        }
        else if (words.Length > 1 && words[0] is 's' or 'S' && char.IsAsciiDigit(words[1]))
        {
            at = 1;
        }
        else
        {
            return null;
        }

        while (at < words.Length && words[at] is ' ' or '.' or '#' or '\t')
        {
            at++;
        }

        int start = at;
        while (at < words.Length && char.IsAsciiDigit(words[at]))
        {
            at++;
        }

        if (at > start)
        {
            int number = int.TryParse(words[start..at], NumberStyles.None, CultureInfo.InvariantCulture, out int value) ? Math.Clamp(value, 0, 9999)
                : 1;
            while (at < words.Length && words[at] is ']' or ')')
            {
                at++;
            }

            return (number, at);
        }

        foreach ((string word, int value) in ((string, int)[])[("one", 1), ("two", 2), ("three", 3), ("four", 4), ("five", 5), ("six", 6),
            ("seven", 7), ("eight", 8)])
        {
            if (StartsWithWord(words[at..], word))
            {
                return (value, at + word.Length);
            }
        }

        // "Section A"
        if (at < words.Length && char.IsLetter(words[at]) && (at + 1 == words.Length || !char.IsLetter(words[at + 1])))
        {
            return (char.ToUpperInvariant(words[at]) - 'A' + 1, at + 1);
        }

        return null;
    }

    private static (string Title, Counts? Length) TitleAndLength(string rest)
    {
        Counts? length = null;
        string title = rest;
        int at = rest.IndexOf("count", StringComparison.OrdinalIgnoreCase);
        if (at > 0)
        {
            int stop = at;
            while (stop > 0 && rest[stop - 1] is ' ' or '-')
            {
                stop--;
            }

            int start = stop;
            while (start > 0 && char.IsAsciiDigit(rest[start - 1]))
            {
                start--;
            }

            if (start < stop && int.TryParse(rest.AsSpan(start, stop - start), NumberStyles.None, CultureInfo.InvariantCulture, out int number)
                && number is > 0 and < 1000)
            {
                length = Counts.FromWhole(number);
                int end = at + 5;
                if (end < rest.Length && rest[end] is 's' or 'S')
                {
                    end++;
                }

                title = (rest[..start].TrimEnd(' ', '(', '[', '-', ':', ',') + rest[end..].TrimStart(' ', ')', ']')).Trim();
            }
        }

        return (title.Trim().TrimStart(':', '-', '.', '–', ')', ']').Trim(), length);
    }

    private static (string Name, int After)? PartName(ReadOnlySpan<char> words)
    {
        int at = 4;
        while (at < words.Length && words[at] is ' ' or ':' or '"' or '“')
        {
            at++;
        }

        int start = at;
        while (at < words.Length && (char.IsLetterOrDigit(words[at]) || words[at] is '\'' or '+'))
        {
            at++;
        }

        return at > start && at - start <= 12 ? (words[start..at].ToString(), at) : null;
    }

    /// <summary>
    /// The tag whose counts stand under a sentence that says where it is danced: "Tag: at the end of wall 3 dance these 4 counts". Null where they do not.
    /// </summary>
    private TagHeading? TagUnder(TextLine line, int index)
    {
        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start);
        int tag = words.IndexOf("tag", StringComparison.OrdinalIgnoreCase);
        int bridge = words.IndexOf("bridge", StringComparison.OrdinalIgnoreCase);
        bool isDanced = _section is { Lines.Count: > 0 } || _sections.Count > 0 || _parts.Count > 0;
        bool isOpen = _tag is not null && _section is { Lines.Count: 0 };
        if ((tag < 0 && bridge < 0) || !isDanced || isOpen)
        {
            return null;
        }

        bool titled = false;
        for (int at = index + 1; at < _lines.Count; at++)
        {
            TextLine next = _lines[at].Trimmed(_text);
            if (next.Start == next.End || IsRule(next))
            {
                continue;
            }

            bool counted = CountLabel.Read(_text, next.Start, next.End) is CountLabel label ? label.End < next.End && FirstNumber(label) <= 1
                : CountsInBrackets(next) is [{ Number: 1 }, ..];
            if (!counted)
            {
                // "Jazz box 1/4 R" may stand between, as the title of what is danced
                bool isTitle = !titled && next.End - next.Start < 60 && CountLabel.Read(_text, next.Start, next.End) is null
                    && !SentenceReader.LooksLikeSentence(_text.AsSpan(next.Start, next.End - next.Start))
                    && TermReader.Read(_text, next.Start, next.End, _state.Lexicon).Exists(t => t.Kind == TermKind.Move);
                if (!isTitle)
                {
                    return null;
                }

                titled = true;
                continue;
            }

            // "tag 2 after wall 4": by its number where it has one
            int after = tag >= 0 ? tag + 3 : bridge + 6;
            ReadOnlySpan<char> rest = words[after..].TrimStart();
            int digits = 0;
            while (digits < rest.Length && char.IsAsciiDigit(rest[digits]))
            {
                digits++;
            }

            bool isNumber = digits is > 0 and < 3 && !rest[digits..].TrimStart(" -").StartsWith("count", StringComparison.OrdinalIgnoreCase);
            return new TagHeading(isNumber ? rest[..digits].ToString() : "", tag < 0, TitleAndLength(words.ToString()).Length, line.Span);
        }

        return null;
    }

    private TagHeading? TagHeadingOf(TextLine line)
    {
        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start);
        bool bridge = StartsWithWord(words, "bridge");
        if (!bridge && !StartsWithWord(words, "tag"))
        {
            return null;
        }

        // a sentence ("tag after wall 2: ...") is read later
        string lower = words.ToString().ToLowerInvariant();
        if (SentenceReader.NamesWall(lower) || lower.Contains("end of", StringComparison.Ordinal))
        {
            return null;
        }

        int at = bridge ? 6 : 3;
        string name = "";
        while (at < words.Length && words[at] is ' ' or ':')
        {
            at++;
        }

        if (at < words.Length && words[at] is '"' or '“' or '\'')
        {
            int close = words[(at + 1)..].IndexOfAny('"', '”', '\'');
            if (close >= 0)
            {
                name = words.Slice(at + 1, close).ToString().Trim();
            }
        }
        else
        {
            int start = at;
            while (at < words.Length && char.IsLetterOrDigit(words[at]))
            {
                at++;
            }

            string word = words[start..at].ToString();
            bool isLength = at < words.Length && words[at..].TrimStart().StartsWith("count", StringComparison.OrdinalIgnoreCase);
            if (!isLength)
            {
                name = word;
            }
        }

        Counts? length = TitleAndLength(words.ToString()).Length;

        // "tag: 1-2 sway" with the steps on the same line is not a heading of this kind
        return new TagHeading(name, bridge, length, line.Span);
    }
}
