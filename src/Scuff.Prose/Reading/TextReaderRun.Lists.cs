using System.Globalization;
using System.Text.RegularExpressions;
using Scuff.Prose.Reading.Sentences;
using Scuff.Prose.Words;

namespace Scuff.Prose.Reading;

// Numbers that count the items of a list and no beats, and counts that are told within sentences.
internal sealed partial class TextReaderRun
{
    /// <summary>
    /// "1) skate R, skate L (1-2)", under it "2) shuffle forward R, L, R (3&amp;4)": where the counts behind the items go on from one to the next, and are
    /// others than the numbers in front, those number the list and are passed over.
    /// </summary>
    private void PassOverItemNumbers()
    {
        List<(int Index, int Start)> items = [];
        char mark = '\0';
        int next = 1;
        int counts = 0;
        for (int i = 0; i <= _lines.Count; i++)
        {
            TextLine line = i < _lines.Count ? _lines[i].Trimmed(_text) : default;
            if (i < _lines.Count && line.Start == line.End)
            {
                continue;
            }

            if (i < _lines.Count && ItemAt(line, items.Count + 1) is (int start, char after) && (items.Count == 0 || after == mark)
                && CountsOfItem(line with { Start = start }) is (int first, int last, int many) && first == next)
            {
                items.Add((i, start));
                mark = after;
                next = last + 1;
                counts += many;
                continue;
            }

            if (items.Count > 1 && counts > items.Count)
            {
                items.ForEach(item => _lines[item.Index] = _lines[item.Index] with { Start = item.Start });
            }

            bool begins = items.Count > 0;
            items.Clear();
            next = 1;
            counts = 0;
            i -= begins && i < _lines.Count ? 1 : 0;
        }
    }

    // where the words of the item with that number begin, and what stands behind the number
    private (int Start, char Mark)? ItemAt(TextLine line, int number)
    {
        Match found = ItemNumber().Match(_text[line.Start..line.End]);
        return found.Success && int.Parse(found.Groups[1].ValueSpan, CultureInfo.InvariantCulture) == number
            ? (line.Start + found.Length, _text[line.Start + found.Groups[2].Index]) : null;
    }

    [GeneratedRegex(@"^[(\[#]?([0-9]{1,2}) ?([).:\]–—-]+) *(?=\p{L}|[¼½¾⅛⅜⅝⅞]|[0-9]/[0-9])")]
    private static partial Regex ItemNumber();

    // the counts that an item ends with, in brackets or behind a colon, a dash or "counts": the first, the last, and how many they are
    private (int First, int Last, int Many)? CountsOfItem(TextLine item)
    {
        Match found = CountsAtEnd().Match(_text[item.Start..item.End]);
        int start = item.Start + found.Groups[1].Index;
        int end = start + found.Groups[1].Length;
        return found.Success && CountLabel.Read(_text, start, end) is { Places.Count: <= 16 } label && label.End >= end
            ? (FirstNumber(label), LastNumber(label), label.Places.Count) : null;
    }

    [GeneratedRegex(@"(?:[(\[]\s*(?:on )?(?:counts?|cts?|beats?)?\s*|[:=–—-]\s+(?:counts?|cts?|beats?)?\s*|\b(?:counts?|cts?|beats?)\s+)"
        + @"([0-9][0-9&,a+ –-]*)\s*[)\]]?\s*(?:[(\[]?[0-9]{1,2}:[0-9][0-9][)\]]?)?\W*$", RegexOptions.IgnoreCase)]
    private static partial Regex CountsAtEnd();

    /// <summary>
    /// "(1/2) walk R, L" above "(3/4) ...": two counts that look like a fraction, where they are those that come next and the line below goes on from them.
    /// </summary>
    private CountLabel? PairInStrokes(TextLine line, int index)
    {
        Match found = Pair().Match(_text[line.Start..line.End]);
        int danced = _section is { } section && _tag is null ? section.Length.Value.Floor + (section.Offset ?? 0) : 0;
        if (!found.Success || (found.Groups[1].Success ? 1 : 3) != danced + 1)
        {
            return null;
        }

        int next = index + 1;
        while (next < _lines.Count && _lines[next].Trimmed(_text) is var empty && empty.Start == empty.End)
        {
            next++;
        }

        ReadOnlySpan<char> below = next < _lines.Count ? _text.AsSpan(_lines[next].Trimmed(_text).Start).TrimStart("([ ") : [];
        return below.Length > 0 && below[0] - '0' == danced + 3 && !(below.Length > 1 && char.IsAsciiDigit(below[1]))
            ? CountLabel.Told(danced + 1, danced + 2, line.Start, line.Start + found.Length) : null;
    }

    [GeneratedRegex(@"^[(\[]?(?:(1)/2|(3)/4)(?![0-9/])[)\]]?[:.)]?\s+(?!(?:turn|pivot|spin|unwind|hinge|paddle|monterey|l|r|left|right|lf|rf|to|over|circle)"
        + @"\b)",
        RegexOptions.IgnoreCase)]
    private static partial Regex Pair();

    /// <summary>
    /// "On 1 you step your right foot out to the side, on 2 the left crosses behind it, and on 3 ...": counts that are told in front of what is danced on
    /// them, within sentences. False where the line is none.
    /// </summary>
    private bool ReadCountsTold(TextLine line, int index)
    {
        List<(CountLabel Label, int Start, int Words)> told = [];
        foreach (ValueMatch found in CountTold().EnumerateMatches(_text.AsSpan(line.Start, line.End - line.Start)))
        {
            int start = line.Start + found.Index;
            int end = start + found.Length;
            CountLabel? label = LabelTold(found.Length, end);
            if (label is null)
            {
                continue;
            }

            bool first = told.Count == 0;
            if (first ? start > line.Start && !_text.AsSpan(line.Start, start - line.Start).Trim(" ,.:;-–—•*").IsEmpty
                : FirstNumber(label) != LastNumber(told[^1].Label) + 1)
            {
                // "turn on 2 walls": a number that does not go on from the one before is no count
                return false;
            }

            told.Add((label, start, end));
        }

        // one count alone may be anything, and "on 1-2: ..." is a label like others
        bool single = told.Count == 1 && (CountLabel.Read(_text, line.Start, line.End) is not null
            || (told[0].Label.Places.Count == 1 && _section is not { Lines.Count: > 0 }));
        if (told.Count == 0 || single
            || !FollowsOn(told[0].Label) || SentenceReader.LooksLikeSentence(WallFaced().Replace(_text[line.Start..line.End], " "))
            || !TermReader.Read(_text, line.Start, line.End, _state.Lexicon).Exists(t => t.Kind is TermKind.Move or TermKind.Dir))
        {
            return false;
        }

        if (_section is null || BeginsAnew(told[0].Label, index))
        {
            OpenNext("", new TextLine(line.Number, line.Start, line.Start));
        }

        for (int i = 0; i < told.Count; i++)
        {
            int end = i + 1 < told.Count ? told[i + 1].Start : line.End;
            while (end > told[i].Words && (char.IsWhiteSpace(_text[end - 1]) || _text[end - 1] is ',' or ';' or '.' or '!' or '-' or '–' or '—'))
            {
                end--;
            }

            int words = told[i].Words;
            while (words < end && (char.IsWhiteSpace(_text[words]) || _text[words] is ',' or ':' or '-' or '–'))
            {
                words++;
            }

            ReadRun(new TextLine(line.Number, words, end), told[i].Label, words);
        }

        return true;
    }

    // the label that words up to a place end with: "on 3&4", "on counts 5 and 6", "on the third count"
    private CountLabel? LabelTold(int length, int end)
    {
        Match numbers = NumbersAtEnd().Match(_text[(end - length)..end]);
        int start = end - length + numbers.Groups["first"].Index;
        string first = numbers.Groups["first"].Value;
        if (NumberInWords(first) is int said)
        {
            return CountLabel.Told(said, said, start, end);
        }

        if (numbers.Groups["last"] is { Success: true, ValueSpan: var until })
        {
            // "on counts 5 and 6": those two, and no quick one between them; "on counts 1 to 4": all of them
            int from = int.Parse(first, CultureInfo.InvariantCulture);
            int last = int.Parse(until, CultureInfo.InvariantCulture);
            bool follows = numbers.Groups["to"].Success ? last > from && last - from < MostTold : last == from + 1;
            return follows ? CountLabel.Told(from, last, start, end) : null;
        }

        return CountLabel.Read(_text, start, numbers.Groups["first"].Index + numbers.Groups["first"].Length + end - length);
    }

    // more counts than these are told by their lines
    private const int MostTold = 16;

    [GeneratedRegex(@"(?:(?:counts|beats)\s+(?<first>[0-9]{1,2})\s+(?:and|(?<to>to|till|until|through|thru))\s+(?<last>[0-9]{1,2})"
        + @"|(?<first>[0-9][0-9&–-]*|[a-z]+)(?:\s+(?:count|beat)|\))?)\s*$",
        RegexOptions.IgnoreCase)]
    private static partial Regex NumbersAtEnd();

    // "on 1 you", ", and on 2 the", "then on count three,": a number with what is danced on it behind it, and no wall
    [GeneratedRegex(@"(?:^|(?<=[,.;:!–—-]\s?|\s))(?:(?:and|then|now|next|so|finally|lastly),?\s+)*on\s+(?:(?:the\s+)?(?:(?:counts?|beats?)\s+)?"
        + @"(?:(?<=counts\s+|beats\s+)[0-9]{1,2}\s+(?:and|to|till|until|through|thru)\s+[0-9]{1,2}"
        + @"|[0-9]{1,2}(?:(?:-|–|&)[0-9]{1,2}|&)*|one|two|three|four|five|six|seven|eight)\b(?!:[0-9])"
        + @"(?!\s*(?:o['’]?clock|walls?|counts?|beats?|feet|foot|legs?|heels?|toes?)\b)"
        + @"|the\s+(?:first|second|third|fourth|fifth|sixth|seventh|eighth)\s+(?:(?:count|beat)\b|(?=(?:you|we|the|your|it|close|cross|touch|hold|kick)\b)))"
        + @"|(?:^|(?<=[,.;:!–—-]\s))(?:(?:and|then|now|next|so|finally|lastly),?\s+)*(?:for|over|during|in)\s+(?:the\s+)?"
        + @"(?:(?:counts?|beats?)\s+(?:[0-9]{1,2}\s+(?:and|to|till|until|through|thru)\s+[0-9]{1,2}|[0-9]{1,2}(?:(?:-|–|&)[0-9]{1,2}|&)*)"
        + @"|[0-9]{1,2}(?:(?:-|–|&)[0-9]{1,2})+&?"
        + @"|(?:first|second|third|fourth|next|last)\s+(?:bar|measure)\s+\([0-9]{1,2}(?:-|–)[0-9]{1,2}\))(?![0-9:/])(?!\s*(?:counts?|beats?|walls?)\b)",
        RegexOptions.IgnoreCase)]
    private static partial Regex CountTold();

    // a wall that is looked at, and no wall of the dance
    [GeneratedRegex(@"\bfac(?:e|es|ing)\s+(?:to\s+)?(?:the\s+|your\s+)?(?:back|front|rear|side|home|left|right|left-hand|right-hand|new|starting|[0-9]{1,2}(?::[0-9]{2}"
        + @"|\s+o['’]?clock))(?:\s+side)?\s+wall\b", RegexOptions.IgnoreCase)]
    private static partial Regex WallFaced();

    private static int? NumberInWords(ReadOnlySpan<char> word)
    {
        ReadOnlySpan<string> words = ["one", "two", "three", "four", "five", "six", "seven", "eight", "first", "second", "third", "fourth", "fifth", "sixth",
            "seventh", "eighth"];
        for (int i = 0; i < words.Length; i++)
        {
            if (word.Equals(words[i], StringComparison.OrdinalIgnoreCase))
            {
                return (i % 8) + 1;
            }
        }

        return null;
    }
}
