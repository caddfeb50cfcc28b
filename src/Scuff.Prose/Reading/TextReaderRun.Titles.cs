using Scuff.Prose.Words;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

// Sections that nothing but their counts tells apart: a title in a manner of the writer's own, or an empty line.
internal sealed partial class TextReaderRun
{
    // the index of the line after the last one that held counts
    private int _afterCounts;

    /// <summary>
    /// Opens a section for a line of words under which the counts begin anew ("II. ROCKS AND SHUFFLES", "Set 3", "Eight 2: vine left"); false when it is none.
    /// </summary>
    private bool ReadTitleOfSection(TextLine line, int index)
    {
        if (_tag is not null && _section is { Lines.Count: 0 })
        {
            return false;
        }

        if (NextCounts(index + 1) is not (int first, bool gap))
        {
            return false;
        }

        int danced = _section is { } section ? section.Length.Value.Floor + (section.Offset ?? 0) : _sectionsLength.Value.Floor;
        bool begins = first <= 1 || (first == danced + 1 && first > 4);
        bool waits = _section is { Lines.Count: 0, Title: "" };
        bool hasRoom = _section is null || _section.Lines.Count > 0 || waits;
        string words = _text[line.Start..line.End];
        if (!begins || !hasRoom || words.Length > 120 || (first > 1 && _section is null && _sections.Count == 0))
        {
            return false;
        }

        bool isFirst = _section is null && _sections.Count == 0;
        bool looksSo = IsNumbered(words) is not null || IsShouted(words);
        bool tellsMoves = TermReader.Read(_text, line.Start, line.End, _state.Lexicon).Exists(t => t.Kind is TermKind.Move or TermKind.Dir);
        if (gap ? !looksSo : !looksSo && !tellsMoves && isFirst)
        {
            // a remark, and then an empty line
            return false;
        }

        if (_heading.IsField(line) && !looksSo)
        {
            return false;
        }

        if (waits)
        {
            // "Section 1", and under it "SCISSOR STEP, HOLD (RIGHT & LEFT)"
            if (gap || !tellsMoves || IsTalk(line, words))
            {
                return false;
            }

            _section!.Title = TitleOf(words);
            return true;
        }

        OpenNext(TitleOf(words), line);
        return true;
    }

    /// <summary>Whether the counts of a line begin a section of their own without any title.</summary>
    private bool BeginsAnew(CountLabel label, int index)
    {
        if (_tag is not null || _section is not { Lines.Count: > 0 } section || FirstNumber(label) != 1 || label.Places[0].Place < Counts.Zero
            || (section.Offset ?? 0) != 0)
        {
            return false;
        }

        int length = section.Length.Value.Floor;
        bool gap = index > _afterCounts;
        return section.Claimed is null && length >= 4 && (gap || length >= 8 || (_state.IsWaltz && length is 6));
    }

    private void OpenNext(string title, TextLine line)
    {
        if (_tag is not null || _section is not null)
        {
            CloseSection();
        }

        OpenSection(title, null, line);
    }

    /// <summary>The first number of the next line that holds counts, wherever they stand in it, and whether empty lines come before it.</summary>
    private (int First, bool Gap)? NextCounts(int from)
    {
        bool gap = false;
        for (int at = from; at < _lines.Count; at++)
        {
            TextLine line = _lines[at].Trimmed(_text);
            if (line.Start == line.End)
            {
                gap = true;
                continue;
            }

            if (IsRule(line))
            {
                continue;
            }

            if (CountLabel.Read(_text, line.Start, line.End) is CountLabel label && label.End < line.End && !_heading.IsFacts(line))
            {
                // "B1: ..." and "[1-8] ..." are headings themselves
                bool heads = IsRangeHeading(line, label, at) is not null || LetteredSection(line, at) is not null;
                return heads ? null : (FirstNumber(label), gap);
            }

            if (TrailingLabels(line) is { Count: > 0 } trailing)
            {
                return (FirstNumber(trailing[0].Label), gap);
            }

            return CountsInBrackets(line) is { Count: > 0 } places && _text.AsSpan(line.Start, line.End - line.Start).IndexOf(')') > 8
                ? (places[0].Number, gap)
                : null;
        }

        return null;
    }

    /// <summary>"A1: WALKS": the part that a section is of, and where its title begins; null when a line is no such heading.</summary>
    private (string Part, int Title)? LetteredSection(TextLine line, int index)
    {
        int at = line.Start;
        if (line.End - at < 3 || _text[at] is < 'A' or > 'H' || !char.IsAsciiDigit(_text[at + 1]))
        {
            return null;
        }

        at++;
        while (at < line.End && char.IsAsciiDigit(_text[at]))
        {
            at++;
        }

        int digits = at - line.Start - 1;
        while (at < line.End && _text[at] == ' ')
        {
            at++;
        }

        if (digits > 2 || at >= line.End || !FollowedByOne(index + 1))
        {
            return null;
        }

        int title = at + (_text[at] is ':' or '.' or '-' or '–' or '|' or ')' or ']' ? 1 : 0);
        return (_text[line.Start].ToString(), title);
    }

    private bool FollowedByOne(int from)
    {
        for (int at = from; at < _lines.Count; at++)
        {
            TextLine line = _lines[at].Trimmed(_text);
            if (line.Start != line.End && !IsRule(line))
            {
                return CountLabel.Read(_text, line.Start, line.End) is CountLabel label && label.End < line.End && FirstNumber(label) <= 1;
            }
        }

        return false;
    }

    // "2. ROCK AND CROSS" over "1-2 rock L to side, ..."
    private bool IsNumberedHeading(TextLine line, CountLabel label, int index)
    {
        int after = line.Start;
        while (after < line.End && char.IsAsciiDigit(_text[after]))
        {
            after++;
        }

        bool dotted = label.Places.Count == 1 && after > line.Start && after + 1 < line.End && _text[after] is '.' or ')' or ':';
        if (!dotted || label.Places[0].Number != _sections.Count + (_section is null ? 0 : 1) + 1 || NextCounts(index + 1) is not (1, _))
        {
            return false;
        }

        TextLine next = _lines.Skip(index + 1).Select(l => l.Trimmed(_text)).First(l => l.Start < l.End && !IsRule(l));
        return (CountLabel.Read(_text, next.Start, next.End) is { Places.Count: > 1 } || TrailingLabels(next).Count > 0) && (_section is null
            || _section.Lines.Count > 0);
    }

    private bool ReadLetteredSection(TextLine line, int index)
    {
        if (CountLabel.Read(_text, line.Start, line.End) is CountLabel numbered && IsNumberedHeading(line, numbered, index))
        {
            OpenNext(TitleAfter(numbered, line), line);
            return true;
        }

        if (LetteredSection(line, index) is not (string part, int title))
        {
            return false;
        }

        bool isNamed = _partName.Length != 1 || !string.Equals(_partName, part, StringComparison.OrdinalIgnoreCase);
        bool isPhrased = _partName.Length == 1 || _lines.Exists(l => l.Trimmed(_text) is var t && t.End - t.Start > 2 && _text.AsSpan(t.Start, 2) is "B1");
        if (isPhrased && isNamed && (_partName.Length == 1 || (_partName.Length == 0 && _sections.Count == 0 && _section is null)))
        {
            OpenPart(part, null, line);
        }

        OpenNext(_text[title..line.End].Trim(), line);
        return true;
    }

    /// <summary>The words after a number of the section ("II.", "Set 3", "C)", "Eight 2:", "SEC 2 (9-16)"); null where there is none.</summary>
    private static string? IsNumbered(string words)
    {
        int at = 0;
        string[] names = ["set", "eight", "block", "phrase", "step block", "verse", "chorus", "part", "8", "count"];
        foreach (string name in names)
        {
            if (StartsWithWord(words, name))
            {
                int next = name.Length;
                while (next < words.Length && words[next] is ' ' or '#' or '.')
                {
                    next++;
                }

                int digits = next;
                while (digits < words.Length && char.IsAsciiDigit(words[digits]))
                {
                    digits++;
                }

                return digits > next ? words[digits..].TrimStart(' ', ':', '.', '-', '–', ')', '|') : null;
            }
        }

        while (at < words.Length && words[at] is 'I' or 'V' or 'X')
        {
            at++;
        }

        if (at == 0 && words.Length > 1 && words[0] is >= 'A' and <= 'L')
        {
            at = 1;
        }

        return at is > 0 and < 6 && at < words.Length && words[at] is '.' or ')' or ':' && at + 1 < words.Length ? words[(at + 1)..].Trim() : null;
    }

    private static bool IsShouted(string words) => words.Count(char.IsLetter) > 3 && !words.Any(char.IsLower);

    private static string TitleOf(string words) => (IsNumbered(words) ?? words).Trim().TrimEnd(':', '-', '–').Trim();
}
