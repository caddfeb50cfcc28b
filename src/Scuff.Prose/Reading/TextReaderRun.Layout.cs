using System.Text.RegularExpressions;
using Scuff.Prose.Reading.Sentences;
using Scuff.Prose.Words;

namespace Scuff.Prose.Reading;

// Pages whose tables were pasted cell by cell, each cell in a line of its own, and sentences that go on in lines of counts. What belongs together becomes
// one line before anything is read, and the lines it was made of are left empty.
internal sealed partial class TextReaderRun
{
    // so many labels or keys of their own make a page of cells; a single one may be anything
    private const int CellsOfPage = 2;

    // a key or a label is no longer than this
    private const int LongestKey = 24;

    private void JoinWhatBelongsTogether()
    {
        List<(int Head, int Under)> labels = [];
        List<(int Head, int Under)> keys = [];
        for (int i = 0; i + 1 < _lines.Count; i++)
        {
            TextLine line = _lines[i].Trimmed(_text);
            if (line.Start == line.End)
            {
                continue;
            }

            char first = _text[line.Start];
            bool isKey = char.IsLetter(first) && line.End - line.Start <= LongestKey && KeyIn(line) is not null;
            if (!isKey && !IsLoneLabel(line))
            {
                if (_text[line.End - 1] == ':' || (_text[line.End - 1] is 'o' or 'h' or 'e' or 'g' or 'G' && !char.IsAsciiDigit(first)))
                {
                    JoinChangedCounts(i, line);
                    JoinToldBelow(i, line);
                }

                continue;
            }

            int under = _lines[i + 1].Trimmed(_text) is var next && next.Start < next.End ? i + 1 : i + 2;
            if (under < _lines.Count && (isKey ? IsValue(line, _lines[under].Trimmed(_text), under == i + 1) : IsWords(_lines[under].Trimmed(_text))))
            {
                (isKey ? keys : labels).Add((i, under));
                i = under;
            }
        }

        Join(labels, labels.Count);
        Join(keys, keys.Exists(k => _text[_lines[k.Head].Trimmed(_text).End - 1] == ':') ? CellsOfPage : keys.Count);
    }

    private void Join(List<(int Head, int Under)> pairs, int told)
    {
        foreach ((int head, int under) in pairs)
        {
            if (told >= CellsOfPage)
            {
                JoinLines(head, under);
            }
        }
    }

    private void JoinLines(int from, int to)
    {
        int end = _lines[to].End;
        _lines[from] = _lines[from] with { End = end };
        for (int taken = from + 1; taken <= to; taken++)
        {
            _lines[taken] = _lines[taken] with { Start = end, End = end };
        }
    }

    // whether a line was joined to one before it, which leaves no gap
    private bool IsJoined(int index) => index > 0 && _lines[index].Start == _lines[index].End && _lines[index].Start == _lines[index - 1].End;

    // "1-2&", or the "1   2   3   4" of a row, in a line of its own
    private bool IsLoneLabel(TextLine line) => (char.IsAsciiDigit(_text[line.Start]) || _text[line.Start] is '&' or '(' or '[')
        && !_text.AsSpan(line.Start, line.End - line.Start).ContainsAnyInRange('b', 'z')
        && CountLabel.Read(_text, line.Start, line.End) is CountLabel label && label.End >= line.End;

    private bool IsWords(TextLine line)
    {
        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start);
        return words.ContainsAnyInRange('A', 'z') && CountLabel.Read(_text, line.Start, line.End) is null && SectionHeading(words) is null
            && (!SentenceReader.LooksLikeSentence(words) || words.IndexOf('(') > 8);
    }

    // "Count", "Level:"; without a colon only what cannot be meant otherwise
    private string? KeyIn(TextLine line)
    {
        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start).TrimEnd();
        bool colon = words[^1] == ':';
        return HeadingReader.KeyOf(words.TrimEnd(": ")) is string key
            && (colon || key is "counts" or "walls" or "level" or "by" or "music" or "intro" or "restarts") ? key : null;
    }

    private bool IsValue(TextLine key, TextLine value, bool adjacent)
    {
        if (value.Start == value.End)
        {
            return false;
        }

        ReadOnlySpan<char> words = _text.AsSpan(value.Start, value.End - value.Start);
        string? told = KeyIn(key);
        if (told is "counts" or "walls")
        {
            return words.Length < 20 && char.IsAsciiDigit(words[0]);
        }

        if (told is "restarts" or "tags")
        {
            // "Restart", and under it "Wall 3: dance 24 counts and begin again"
            return told is "restarts" && adjacent && SentenceReader.NamesWall(words) && words.ContainsAnyInRange('0', '9');
        }

        return adjacent && !_heading.IsField(value) && SectionHeading(words) is null && KeyIn(value) is null
            && !(CountLabel.Read(_text, value.Start, value.End) is { Places.Count: > 1 } label && label.End < value.End);
    }

    /// <summary>
    /// "Restart on wall 4: change counts 7&amp;8 to", under it "7-8  step R to side, step L together", and perhaps "then start again": one sentence.
    /// </summary>
    private void JoinChangedCounts(int index, TextLine line)
    {
        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start);
        if (!OpensChange().IsMatch(words) || !SentenceReader.LooksLikeSentence(words))
        {
            return;
        }

        int last = index;
        bool counted = false;
        for (int at = index + 1; at < _lines.Count; at++)
        {
            TextLine next = _lines[at].Trimmed(_text);
            if (next.Start == next.End)
            {
                break;
            }

            if (CountLabel.Read(_text, next.Start, next.End) is { } label && label.End < next.End)
            {
                counted = true;
                last = at;
                continue;
            }

            last = counted && GoesOnToRestart().IsMatch(_text.AsSpan(next.Start, next.End - next.Start)) ? at : last;
            break;
        }

        if (counted)
        {
            JoinLines(index, last);
        }
    }

    /// <summary>"4 count tag, end of wall 4:" and under it "sway R, L, R, L"; "ENDING" and under it what is danced.</summary>
    private void JoinToldBelow(int index, TextLine line)
    {
        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start);
        bool ending = words.Length < 16 && HeadOfEnding().IsMatch(words);
        bool tag = words[^1] == ':' && (SentenceReader.HasWord(words, "tag") || SentenceReader.HasWord(words, "bridge")) && SentenceReader.NamesWall(words);
        TextLine next = _lines[index + 1].Trimmed(_text);
        if ((!ending && !tag) || next.Start == next.End || CountLabel.Read(_text, next.Start, next.End) is not null || TrailingLabels(next).Count > 0
            || (!ending && NextCounts(index + 2) is ( <= 1, false)))
        {
            return;
        }

        List<Term> terms = TermReader.Read(_text, next.Start, next.End, _state.Lexicon);
        if (ending || (terms.Exists(t => t.Kind is TermKind.Move) && !terms.Exists(t => t.Kind is TermKind.Unknown or TermKind.Repeat)))
        {
            JoinLines(index, index + 1);
        }
    }

    [GeneratedRegex(@"^\W*(?:ending|the ending|finish|to finish|big finish)\W*$", RegexOptions.IgnoreCase)]
    private static partial Regex HeadOfEnding();

    // "... then change counts 7&8 to:", "... replace the coaster cross with"
    [GeneratedRegex(@"\b(?:change|replace|changing|replacing|instead|substitute|swap)\b.*(?:\b(?:to|with|by|dance|do|these)|:)\s*:?$", RegexOptions.IgnoreCase)]
    private static partial Regex OpensChange();

    [GeneratedRegex(@"^\W*(?:and|then|now|before)\b.*\b(?:re-?start|again|over|beginning|top)", RegexOptions.IgnoreCase)]
    private static partial Regex GoesOnToRestart();
}
