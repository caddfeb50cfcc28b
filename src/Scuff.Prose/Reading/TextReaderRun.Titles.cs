using System.Text.RegularExpressions;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose.Reading.Sentences;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

// Sections that nothing but their counts tells apart: a title in a manner of the writer's own, or an empty line.
internal sealed partial class TextReaderRun
{
    // the index of the line after the last one that held counts
    private int _afterCounts;

    // a name that stands in a line of its own, and the foot that it says begins
    private (string Name, Foot Foot, TextSpan Span)? _nameAbove;

    /// <summary>
    /// Opens a section for a line of words under which the counts begin anew ("II. ROCKS AND SHUFFLES", "Set 3", "Eight 2: vine left"); false when it is none.
    /// </summary>
    private bool ReadTitleOfSection(TextLine line, int index)
    {
        if (_tag is not null && _section is { Lines.Count: 0 })
        {
            return false;
        }

        int under = index + 1;
        if (BareNumber().IsMatch(_text.AsSpan(line.Start, line.End - line.Start)) && under < _lines.Count && NextCounts(under) is null)
        {
            // "Set 2", under it "Walks and shuffle", and then the counts
            under++;
        }

        if (NextCounts(under) is not (int first, bool gap))
        {
            return false;
        }

        int danced = _section is { } section ? section.Length.Value.Floor + (section.Offset ?? 0) : _sectionsLength.Value.Floor;
        string words = _text[line.Start..line.End];
        bool looksSo = IsNumbered(words) is not null || IsShouted(words);

        // "Rocking chair" over 5-8 is a name in the middle of a section, where the counts run on
        bool wholeEights = (first - 1) % (_state.IsWaltz ? 6 : 8) == 0;
        bool begins = first <= 1 || (first == danced + 1 && first > 4 && (wholeEights || looksSo));
        bool waits = _section is { Lines.Count: 0, Title: "" };
        bool hasRoom = _section is null || _section.Lines.Count > 0 || waits;
        if (!begins || !hasRoom || words.Length > 120 || (first > 1 && _section is null && _sections.Count == 0))
        {
            return false;
        }

        bool isFirst = _section is null && _sections.Count == 0;
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

    /// <summary>
    /// "Vaudevilles R &amp; L" over the counts that dance them, "Rocking chair" between two lines: names without counts where the counts go on without a gap,
    /// so that nothing is danced on them; false where it is no such line.
    /// </summary>
    private bool ReadNamesOfSteps(TextLine line, int index)
    {
        if (_section is not { } section || line.End - line.Start > 120 || NextCounts(index + 1) is not (int first, _))
        {
            return false;
        }

        int danced = section.Length.Value.Floor + (section.Offset ?? 0);
        bool goesOn = first == danced + 1 || (section.Lines.Count == 0 && (first <= 1 || first == _sectionsLength.Value.Floor + 1));
        if (!goesOn)
        {
            return false;
        }

        List<Term> terms = TermReader.Read(_text, line.Start, line.End, _state.Lexicon);
        if (terms.Exists(t => t.Kind is TermKind.Unknown or TermKind.Repeat or TermKind.RepeatMirrored or TermKind.Number or TermKind.WeightOn
            or TermKind.WeightNone or TermKind.WeightTakes or TermKind.WeightBoth))
        {
            return false;
        }

        List<Clause> named = ClauseBuilder.Build(terms).FindAll(c => c.HasContent && !c.IsAmp);
        bool isName = named.Exists(c => c is { IsFigure: true } && c.Head!.Figures.Any(f => f.Rows.Count > 1))
            || (named.Count > 2 && named.TrueForAll(c => c.Feet.Count == 0));
        if (!isName)
        {
            return false;
        }

        string words = _text[line.Start..line.End];
        if (section is { Lines.Count: 0, Title.Length: 0 })
        {
            section.Title = TitleOf(words);
        }
        else
        {
            AddNote(new Note("note", words, line.Span));
        }

        _nameAbove = named is [{ Feet: [{ } side], TimesStated: false } one] && one.Head!.Figures.All(f => f.NamedBy == NamedBy.FirstFoot)
            ? (words, side.Foot, line.Span) : null;
        return true;
    }

    /// <summary>Asks where the counts under a name begin with the other foot than it says: "Coaster step R" over "L back, R together, L forward".</summary>
    private void HoldAgainstName(ValueList<WrittenMove> moves)
    {
        if (_nameAbove is not (string name, Foot foot, TextSpan span))
        {
            return;
        }

        _nameAbove = null;
        if (moves.SelectMany(m => m.Steps).Select(s => s.Action.Foot.ToFoot()).FirstOrDefault(f => f is not null) is Foot begins && begins != foot)
        {
            _state.Add(ReadingRules.FigureFootDiffers.At(span, ("name", name)));
        }
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

    [GeneratedRegex(@"^\W*(?:set|eight|block|phrase|step block|section|part|8) ?#?\d{1,2}\W*$", RegexOptions.IgnoreCase)]
    private static partial Regex BareNumber();

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
                gap |= !IsJoined(at);
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

            if (CountsBehind(line, out _) is { Count: > 0 } behind)
            {
                return (FirstNumber(behind[0].Label), gap);
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
        if (!dotted || label.Places[0].Number != _sections.Count + (_section is null ? 0 : 1) + 1 || NextCounts(index + 1) is not (int first, _)
            || (first != 1 && (first <= label.Places[0].Number || first != _sectionsLength.Value.Floor + (_section?.Length ?? Counts.Zero).Value.Floor + 1)))
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

        if (_text[line.Start] == '8' && BareNumber().IsMatch(_text.AsSpan(line.Start, line.End - line.Start)) && ReadTitleOfSection(line, index))
        {
            // "8 #2:"
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

    /// <summary>
    /// A section whose name and counts stand in one line ("A) 1-2 step R to side; 3&amp;4 ...", "Set 2: 1-4 vine right, touch"), or that is all of an eight
    /// without any counts ("1st 8: R side, together, R shuffle forward, ...").
    /// </summary>
    private bool ReadNumberedCounts(TextLine line, int index)
    {
        if (line.End - line.Start < 8 || _tag is not null || !(char.IsLetterOrDigit(_text[line.Start]) || _text[line.Start] is '(' or '['))
        {
            return false;
        }

        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start);
        int named = -1;
        foreach (ValueMatch name in NameOfEight().EnumerateMatches(words))
        {
            named = name.Length;
        }

        if (named < 0 || named >= words.Length || GluedLabel(line) is not null)
        {
            return false;
        }

        TextLine rest = (line with { Start = line.Start + named }).Trimmed(_text);
        if (rest.Start >= rest.End)
        {
            return false;
        }

        if (CountLabel.Read(_text, rest.Start, rest.End) is CountLabel label && label.End < rest.End)
        {
            bool begins = FirstNumber(label) <= 1 || FirstNumber(label) == _sectionsLength.Value.Floor + (_section?.Length ?? Counts.Zero).Value.Floor + 1;
            if (!begins || IsRangeHeading(rest, label, index) is not null || FollowedByOneOf(label, index))
            {
                return false;
            }

            OpenNext("", line);
            ReadCounts(rest, label);
            return true;
        }

        if (TellsCounts() || !TermReader.Read(_text, rest.Start, rest.End, _state.Lexicon).Exists(t => t.Kind is TermKind.Move or TermKind.Dir))
        {
            return false;
        }

        OpenNext("", line);
        List<LabelPlace> places = [.. Enumerable.Range(1, 8).Select(n
            => new LabelPlace(n.ToString(System.Globalization.CultureInfo.InvariantCulture), n, Counts.FromWhole(n - 1), n > 1))];
        ReadPlaces(line, places, rest.Start, "1-8", new Diagnostics.TextSpan(line.Start, 0));
        return true;
    }

    // "A)", "II.", "Set 3:", "1st 8:", "First eight -", "Eight 2:"
    [GeneratedRegex(@"^(?:[A-L]\)|[A-L][.:] (?=\d)|\d{1,2}[.)] +(?=(?:\d{1,2}|&) ?[-–&])|[IVX]{1,4}[.):]|\(?(?:\d{1,2}(?:st|nd|rd|th)|first|second"
        + @"|third|fourth|fifth|sixth|seventh|eighth|last)"
        + @" (?:8|eight|set|set of 8|set of eight|section|block|phrase|part)\)?(?: counts?)?\s*[:.)–-]|(?:set|eight|block|phrase|part|section"
            + @"|8) ?#?\d{1,2}\s*[:.)–-])\s*",
        RegexOptions.IgnoreCase)]
    private static partial Regex NameOfEight();

    // whether the counts of a heading ("A) 1-8 vines") are danced once more by the line under it
    private bool FollowedByOneOf(CountLabel label, int index) => label.Places.Count >= 6 && NextCounts(index + 1) is (int first, false)
        && first <= label.Places[0].Number;

    // whether any line of the sheet has counts of its own, so that a line of moves without them is a title
    private bool TellsCounts() => _tellsCounts ??= _lines.Exists(l => l.Trimmed(_text) is var line && line.Start < line.End
        && !NameOfEight().IsMatch(_text.AsSpan(line.Start, line.End - line.Start)) && !SentenceReader.LooksLikeSentence(_text.AsSpan(line.Start,
            line.End - line.Start))
        && ((CountLabel.Read(_text, line.Start, line.End) is { } label && label.End < line.End && !_heading.IsFacts(line)) || TrailingLabels(line).Count > 0
            || CountsInBrackets(line) is not null || GluedLabel(line) is not null));

    private bool? _tellsCounts;
}
