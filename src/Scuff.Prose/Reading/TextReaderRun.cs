using System.Globalization;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose.Reading.Sentences;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>One reading of one text, from its title to its last line.</summary>
internal sealed class TextReaderRun
{
    private readonly string _text;
    private readonly ReaderState _state;
    private readonly List<TextLine> _lines;
    private readonly HeadingReader _heading;
    private readonly List<Part> _parts = [];
    private readonly List<Tag> _tags = [];
    private readonly List<Track> _tracks = [];
    private readonly List<Interruption> _interruptions = [];
    private readonly List<Scuff.Steps.StepDefinition> _ownMoves = [];
    private readonly List<Note> _notes = [];
    private readonly List<PendingSentence> _sentences = [];
    private readonly Dictionary<(int Part, Counts Place), Weight> _weightBefore = [];
    private readonly List<(TextLine Line, int Track)> _sequences = [];
    private PendingSentence? _ending;

    // the part, section or tag being read
    private string _partName = "";
    private TextSpan _partSpan;
    private Counts? _partClaim;
    private readonly List<Section> _sections = [];

    // counts of all of them, kept because it is asked for with every line
    private Counts _sectionsLength = Counts.Zero;
    private SectionBuilder? _section;
    private TagHeading? _tag;

    public TextReaderRun(string text, Lexicon lexicon)
    {
        _text = text;
        _state = new ReaderState(text, lexicon);
        _lines = TextLine.Of(text);
        _heading = new HeadingReader(_state);
    }

    /// <summary>A sentence on the pattern that is read once all sections are known.</summary>
    private sealed record PendingSentence(TextLine Line, int Track);

    private sealed record TagHeading(string Name, bool IsBridge, Counts? Length, TextSpan Span);

    private sealed class SectionBuilder(int number, string title, Counts? claimed, TextSpan span, int line)
    {
        public int Number { get; } = number;

        public string Title { get; set; } = title;

        public Counts? Claimed { get; } = claimed;

        public TextSpan Span { get; } = span;

        public int Line { get; } = line;

        public List<WrittenLine> Lines { get; } = [];

        public List<Note> Notes { get; } = [];

        /// <summary>What running numbers (9-16) are lessened by.</summary>
        public int? Offset { get; set; }

        public Counts Length
        {
            get
            {
                Counts last = Counts.Zero;
                foreach (WrittenLine written in Lines)
                {
                    last = Counts.Max(last, written.Counts.End);
                }

                return last;
            }
        }
    }

    public Draft Read()
    {
        for (int i = 0; i < _lines.Count; i++)
        {
            TextLine line = _lines[i].Trimmed(_text);
            if (line.Start == line.End)
            {
                continue;
            }

            ReadLine(line, i);
        }

        CloseAll();
        Dance dance = _heading.ToDance();
        dance = dance with
        {
            Parts = _parts.ToValueList(),
            Tags = _tags.ToValueList(),
            OwnMoves = _ownMoves.ToValueList(),
        };
        dance = ReadSequences(dance);
        dance = ReadSentences(dance);
        if (!dance.Sections.Any(s => s.Lines.Count > 0))
        {
            _state.Add(ReadingRules.NoSteps.At(new TextSpan(0, Math.Min(_text.Length, _heading.TitleLength))));
        }

        dance = dance with { Notes = _notes.ToValueList() };
        return new Draft(_text, dance, new Report(_state.Complaints));
    }

    private static bool StartsWithWord(ReadOnlySpan<char> line, string word)
        => line.StartsWith(word, StringComparison.OrdinalIgnoreCase) && (line.Length == word.Length || !char.IsLetter(line[word.Length]));

    private void ReadLine(TextLine line, int index)
    {
        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start);
        if (words.StartsWith("//") || words[0] == '#')
        {
            _notes.Add(new Note("comment", words.ToString(), line.Span));
            return;
        }

        if (!_heading.HasTitle && _section is null && _parts.Count == 0 && _tag is null && !LooksLikeBody(line))
        {
            if (_heading.ReadTitle(line))
            {
                return;
            }
        }

        if (_section is null && _sections.Count == 0 && _parts.Count == 0 && _tag is null && char.IsAsciiDigit(words[0]) && _heading.ReadFacts(line))
        {
            // "32 counts, 4 walls, improver"
            return;
        }

        if (ReadStructure(line, index))
        {
            return;
        }

        if (CountLabel.Read(_text, line.Start, line.End) is CountLabel label && (_section is not null || _tag is not null || label.End < line.End))
        {
            if (IsBracketHeading(line, label, index))
            {
                OpenSection(_text[label.End..line.End].Trim(), LengthOf(label), line);
                _section!.Offset = label.Places[0].Number - 1;
                return;
            }

            ReadCounts(line, label);
            return;
        }

        if (ReadHanging(line))
        {
            return;
        }

        if (_section is not null && CountsInBrackets(line) is List<LabelPlace> inside)
        {
            ReadPlaces(line, inside, line.Start, string.Join(' ', inside.Select(p => p.Label)), new TextSpan(line.Start, 0));
            return;
        }

        bool inHeading = _section is null && _sections.Count == 0 && _parts.Count == 0 && _tracks.Count == 0 && _tags.Count == 0 && _tag is null;
        bool ofPattern = SentenceReader.LooksLikeSentence(words) && (words.Contains("wall ", StringComparison.OrdinalIgnoreCase) || words.Contains("walls ", StringComparison.OrdinalIgnoreCase)) && words.IndexOfAnyInRange('0', '9') >= 0
            && (StartsWithWord(words, "restart") || StartsWithWord(words, "tag") || StartsWithWord(words, "bridge") || StartsWithWord(words, "restarts") || StartsWithWord(words, "wall"));
        if (inHeading && !ofPattern && _heading.ReadField(line))
        {
            return;
        }

        if (SentenceReader.LooksLikeSentence(words))
        {
            _sentences.Add(new PendingSentence(line, _tracks.Count - 1));
            return;
        }

        if (_heading.ReadField(line))
        {
            return;
        }

        string kept = words.ToString();
        _notes.Add(new Note("unknown", kept, line.Span));
        _state.Add(ReadingRules.UnknownLine.At(line.Span, ("words", kept.Length > 80 ? kept[..80] + "..." : kept)));
    }

    private bool LooksLikeBody(TextLine line)
    {
        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start);
        if (CountLabel.Read(_text, line.Start, line.End) is { Places.Count: > 1 } label && label.End < line.End
            && TermReader.Read(_text, label.End, line.End, _state.Lexicon).Exists(t => t.Kind is TermKind.Move))
        {
            // a text without a title begins with its first counts
            return true;
        }

        if (SectionHeading(words) is (_, int used) && CountLabel.Read(_text, TrimMarks(line with { Start = line.Start + used }).Start, line.End) is CountLabel counts && counts.End < line.End)
        {
            // "S1: 1-2 walk R, L"
            return true;
        }

        return StartsWithWord(words, "section") && words.Length < 60 && words.IndexOfAnyInRange('0', '9') is > 0 and < 12;
    }

    private bool IsBracketHeading(TextLine line, CountLabel label, int index)
    {
        bool bracketed = _text[line.Start] is '[' or '(' && label.Places.Count >= 3 && label.Places.Skip(1).All(p => p.AfterDash);
        if (!bracketed)
        {
            return false;
        }

        for (int next = index + 1; next < _lines.Count; next++)
        {
            TextLine following = _lines[next].Trimmed(_text);
            if (following.Start == following.End)
            {
                continue;
            }

            return CountLabel.Read(_text, following.Start, following.End) is CountLabel inner
                && inner.Places.FirstOrDefault(p => p.Place.IsWhole, inner.Places[0]) is LabelPlace first && first.Number <= label.Places[0].Number + 1
                && inner.Places[^1].Number < label.Places[^1].Number;
        }

        return false;
    }

    private static Counts? LengthOf(CountLabel label) => Counts.FromWhole(label.Places[^1].Number - label.Places[0].Number + 1);

    /// <summary>Headings of sections, parts, tags, tracks, the sequence and moves of her own.</summary>
    private bool ReadStructure(TextLine line, int index)
    {
        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start);
        if (SectionHeading(words) is (int number, int used))
        {
            string rest = words[used..].Trim().TrimStart(":.-–—)").Trim().ToString();
            TextLine tail = new(line.Number, line.Start + used, line.End);
            tail = TrimMarks(tail);
            if (TitleAndLength(rest).Length is null && CountLabel.Read(_text, tail.Start, tail.End) is CountLabel label && label.End < tail.End && !IsSectionRange(tail, label, index))
            {
                OpenSection("", null, line);
                ReadCounts(tail, label);
                return true;
            }

            (string title, Counts? claimed) = TitleAndLength(rest);
            OpenSection(title, claimed, line);
            return true;
        }

        if (StartsWithWord(words, "part") && PartName(words) is (string part, int after))
        {
            OpenPart(part, TitleAndLength(words[after..].ToString()).Length, line);
            return true;
        }

        if (SequenceReader.StartOf(words) is int sequence)
        {
            _sequences.Add((line with { Start = line.Start + sequence }, _tracks.Count - 1));
            return true;
        }

        if (StartsWithWord(words, "move") && words.IndexOfAny('"', '“', ':') > 0)
        {
            return ReadOwnMove(line);
        }

        if (StartsWithWord(words, "track") && words.IndexOf(':') > 0)
        {
            CloseSection();
            _tracks.Add(TrackReader.Read(_state, line));
            return true;
        }

        if (StartsWithWord(words, "ending") || StartsWithWord(words, "finish") || StartsWithWord(words, "to finish") || StartsWithWord(words, "to end"))
        {
            _ending = new PendingSentence(line, _tracks.Count - 1);
            _heading.KeepEnding(line);
            return true;
        }

        if (TagHeadingOf(line) is TagHeading tag)
        {
            CloseAll();
            _tag = tag;
            _state.InTag = true;
            _section = new SectionBuilder(1, tag.Name, tag.Length, line.Span, line.Number);
            return true;
        }

        return false;
    }

    private bool IsSectionRange(TextLine tail, CountLabel label, int index)
    {
        // "S1 1-8 vine and touch": a range of a whole section followed by a title, the counts come on the next lines
        bool range = label.Places.Count >= 6 && label.Places.Skip(1).All(p => p.AfterDash);
        if (!range || index + 1 >= _lines.Count)
        {
            return false;
        }

        TextLine next = _lines[index + 1].Trimmed(_text);
        return CountLabel.Read(_text, next.Start, next.End) is CountLabel inner && inner.Places[^1].Number < label.Places[^1].Number;
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

    private static (int Number, int Used)? SectionHeading(ReadOnlySpan<char> words)
    {
        int at;
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
            int number = int.TryParse(words[start..at], NumberStyles.None, CultureInfo.InvariantCulture, out int value) ? Math.Clamp(value, 0, 9999) : 1;
            while (at < words.Length && words[at] is ']' or ')')
            {
                at++;
            }

            return (number, at);
        }

        foreach ((string word, int value) in ((string, int)[])[("one", 1), ("two", 2), ("three", 3), ("four", 4), ("five", 5), ("six", 6), ("seven", 7), ("eight", 8)])
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

            if (start < stop && int.TryParse(rest.AsSpan(start, stop - start), NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number is > 0 and < 1000)
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
        if (lower.Contains("wall", StringComparison.Ordinal) || lower.Contains("end of", StringComparison.Ordinal))
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

    private void OpenPart(string name, Counts? claimed, TextLine line)
    {
        CloseAll();
        _partName = name;
        _partSpan = line.Span;
        _partClaim = claimed;
        if (_parts.Any(p => string.Equals(p.Name, name, StringComparison.OrdinalIgnoreCase)))
        {
            _state.Add(ReadingRules.NameTwice.At(line.Span, ("name", name), ("things", "parts")));
        }
    }

    private void OpenSection(string title, Counts? claimed, TextLine line)
    {
        if (_tag is not null)
        {
            CloseAll();
        }

        CloseSection();
        _section = new SectionBuilder(_sections.Count + 1, title, claimed, line.Span, line.Number);
        _state.SectionLines.Clear();
        if (_sections.Count == 0 && _parts.Count == 0)
        {
            _state.Weight = _heading.Start;
            _state.IsWaltz = _heading.ToDance().BeatsPerBar == 3;
            _state.Facing = Facing.Front;
        }
    }

    private void CloseSection()
    {
        if (_section is null)
        {
            return;
        }

        Section made = new()
        {
            Number = _section.Number,
            Title = _section.Title,
            ClaimedLength = _section.Claimed,
            Length = _section.Length,
            Lines = _section.Lines.ToValueList(),
            Notes = _section.Notes.ToValueList(),
            Span = _section.Span,
            LineNumber = _section.Line,
        };
        if (_tag is not null)
        {
            _tags.Add(new Tag(_tag.Name, _tag.IsBridge, _tag.Length, made, _tag.Span));
            if (_tags.Count(t => string.Equals(t.Name, _tag.Name, StringComparison.OrdinalIgnoreCase)) > 1)
            {
                _state.Add(ReadingRules.NameTwice.At(_tag.Span, ("name", _tag.Name), ("things", "tags")));
            }

            _tag = null;
            _state.InTag = false;
            _section = null;
            _state.SectionLines.Clear();
            return;
        }

        _sections.Add(made);
        _sectionsLength += made.Length;
        _state.Sections.Add(made);
        _section = null;
        _state.SectionLines.Clear();
    }

    private void CloseAll()
    {
        CloseSection();
        if (_sections.Count > 0 || _partName.Length > 0)
        {
            _parts.Add(new Part(_partName, _sections.ToValueList(), _partSpan, _partClaim));
            _sections.Clear();
            _sectionsLength = Counts.Zero;
        }

        _partName = "";
        _partSpan = default;
        _partClaim = null;
    }

    /// <summary>A count line; one physical line may hold several runs of counts one after the other.</summary>
    private void ReadCounts(TextLine line, CountLabel label)
    {
        if (_section is null)
        {
            OpenSection("", null, new TextLine(line.Number, line.Start, line.Start));
        }

        foreach ((CountLabel run, int start, int end) in Runs(line, label))
        {
            ReadRun(new TextLine(line.Number, start, end), run);
        }
    }

    private List<(CountLabel Label, int Start, int End)> Runs(TextLine line, CountLabel first)
    {
        List<(CountLabel, int, int)> runs = [];
        CountLabel label = first;
        int start = line.Start;
        int last = LastNumber(first);
        int depth = 0;
        for (int i = first.End; i < line.End; i++)
        {
            char c = _text[i];
            depth += c is '(' or '[' ? 1 : c is ')' or ']' ? -1 : 0;
            bool starts = (char.IsAsciiDigit(c) || c == '&' || c is '(' or '[') && i > label.End && (char.IsWhiteSpace(_text[i - 1]) || _text[i - 1] is ',' or ';' or '|' or '/' or '.' or ')' or ']' or ':');
            if (starts && _text[i - 1] == '/' && i >= 2 && char.IsAsciiDigit(_text[i - 2]))
            {
                continue;
            }

            if (!starts || (depth > 0 && c is not ('(' or '[')))
            {
                continue;
            }

            if (CountLabel.Read(_text, i, line.End) is not CountLabel next || next.End >= line.End || (c is not ('(' or '[') && NextWordIsNoMove(next.End, line.End)))
            {
                continue;
            }

            bool follows = FirstNumber(next) == last + 1 || (next.Places[0].Place.IsWhole is false && next.Places.Count > 1 && FirstNumber(next) == last + 1);
            int before = i - 1;
            while (before > label.End && char.IsWhiteSpace(_text[before]))
            {
                before--;
            }

            bool separated = _text[before] is ',' or ';' or '|' or '/' or '.' or ':' or ')' or ']';
            bool many = next.Places.Count > 1;
            if (!follows || !(separated || many || c is '(' or '[') || (c is '(' or '[' && _text[line.Start] is not ('(' or '[')))
            {
                continue;
            }

            runs.Add((label, start, before + 1 - (_text[before] is ',' or ';' or '|' or '/' or '.' ? 1 : 0)));
            label = next;
            start = i;
            last = LastNumber(next);
            i = next.End - 1;
            depth = 0;
        }

        runs.Add((label, start, line.End));
        return runs;
    }

    private bool NextWordIsNoMove(int at, int end)
    {
        ReadOnlySpan<char> rest = _text.AsSpan(at, end - at).TrimStart();
        return rest.Length == 0 || StartsWithWord(rest, "times") || StartsWithWord(rest, "counts") || StartsWithWord(rest, "count") || StartsWithWord(rest, "x") || rest[0] is ')' or ']' or '/' or '¼' or '½' or '¾' || StartsWithWord(rest, "o");
    }

    private static int LastNumber(CountLabel label) => label.Places.Max(p => p.Number);

    private static int FirstNumber(CountLabel label)
    {
        foreach (LabelPlace place in label.Places)
        {
            if (place.Place.IsWhole)
            {
                return place.Number;
            }
        }

        return label.Places[0].Number + 1;
    }

    private void ReadRun(TextLine line, CountLabel label)
    {
        SectionBuilder section = _section!;
        section.Offset ??= OffsetFor(label);
        int offset = section.Offset.Value;
        List<LabelPlace> places = [];
        Counts? lastPlace = section.Lines.Count > 0 ? section.Lines[^1].Places.Count > 0 ? section.Lines[^1].Places.Max(p => p.Place) : null : null;
        for (int i = 0; i < label.Places.Count; i++)
        {
            LabelPlace place = label.Places[i];
            Counts moved = place.Place - Counts.FromWhole(offset);
            int number = place.Number - offset;
            if (label.Places.Count == 1 && !place.Place.IsWhole && place.Number == 0 && lastPlace is Counts before)
            {
                // a line of its own for an &: the & after the count before it
                number = before.Value.Floor + 1;
                moved = Counts.FromWhole(number - 1) + (moved - Counts.FromWhole(-1 - offset));
            }

            places.Add(place with { Number = number, Place = moved, Label = CountGrid.LabelOf(moved) });
        }

        ReadPlaces(line, places, label.End, _text.Substring(label.Span.Start, label.Span.Length), label.Span);
    }

    private void ReadPlaces(TextLine line, List<LabelPlace> places, int wordsStart, string printed, TextSpan labelSpan)
    {
        SectionBuilder section = _section!;
        RememberWeight(places);
        LineContent content = new LineReader(_state).Read(places, wordsStart, line.End, line.Number, printed);
        Counts start = places.Count > 0 ? Counts.Max(Counts.Zero, Counts.FromWhole(places.Min(p => p.Place).Value.Floor)) : Counts.Zero;
        if (places[0].Place < Counts.Zero)
        {
            start = places[0].Place;
        }

        Counts end = Counts.FromWhole(places.Max(p => p.Place).Value.Floor + 1);
        WrittenLine made = new()
        {
            Label = printed,
            Counts = new CountSpan(Counts.Min(start, end), end),
            Moves = content.Moves,
            Claims = content.Claims,
            Notes = content.Notes,
            LeavesWordsOut = content.LeavesWordsOut,
            Span = line.Span,
            LabelSpan = labelSpan,
            Places = places.Select(p => new WrittenCount(p.Label, p.Place)).ToValueList(),
            Number = line.Number,
        };
        section.Lines.Add(made);
        _state.SectionLines.Add(made);
    }

    /// <summary>"Step R to side (1), touch L together (2)": the counts stand in brackets after the moves.</summary>
    private List<LabelPlace>? CountsInBrackets(TextLine line)
    {
        List<LabelPlace> places = [];
        int number = 0;
        for (int i = line.Start; i + 2 < line.End; i++)
        {
            if (_text[i] != '(')
            {
                continue;
            }

            int close = _text.IndexOf(')', i, Math.Min(5, line.End - i));
            if (close < 0)
            {
                continue;
            }

            string inside = _text[(i + 1)..close].Trim();
            if (inside == "&" && number > 0)
            {
                Counts half = Counts.FromWhole(number - 1) + Counts.Half;
                places.Add(new LabelPlace(CountGrid.LabelOf(half), number, half, false));
            }
            else if (int.TryParse(inside, NumberStyles.None, CultureInfo.InvariantCulture, out int count) && count is > 0 and < 100 && (number == 0 || count == number + 1))
            {
                number = count;
                places.Add(new LabelPlace(inside, count, Counts.FromWhole(count - 1), false));
            }
        }

        return number > 0 ? places : null;
    }

    private int OffsetFor(CountLabel label)
    {
        int first = FirstNumber(label);
        if (first <= 1 || _tag is not null)
        {
            return 0;
        }

        int before = _sectionsLength.Value.Floor;
        return first - 1 == before ? before : first > 8 && (first - 1) % 8 == 0 ? first - 1 : 0;
    }

    private void RememberWeight(List<LabelPlace> places)
    {
        if (_tag is not null || places.Count == 0)
        {
            return;
        }

        Counts start = _sectionsLength;

        _weightBefore.TryAdd((_parts.Count, start + Counts.FromWhole(places[0].Place.Value.Floor)), _state.Weight);
    }

    /// <summary>Lines that hang on the line above: styling, arms, notes, options.</summary>
    private bool ReadHanging(TextLine line)
    {
        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start);
        foreach (string kind in (ReadOnlySpan<string>)["style", "styling", "arms", "arm", "hands", "note", "body", "hips", "head", "tip", "n.b.", "nb", "remark", "caution"])
        {
            if (StartsWithWord(words, kind) && words[kind.Length..].TrimStart() is { Length: > 0 } rest && rest[0] is ':' or '-' or '–')
            {
                string note = rest[1..].Trim().ToString();
                AddNote(new Note(kind switch { "styling" => "style", "arm" or "hands" => "arms", _ => kind }, note, line.Span));
                Abbreviations.Tell(_state, line.Span);
                return true;
            }
        }

        if (StartsWithWord(words, "option") || StartsWithWord(words, "options") || StartsWithWord(words, "opt") || (words.IndexOf("option", StringComparison.OrdinalIgnoreCase) is > 0 and < 16 && words.IndexOf(':') > 0))
        {
            return ReadOption(line);
        }

        return false;
    }

    private void AddNote(Note note)
    {
        if (_section is { Lines.Count: > 0 })
        {
            WrittenLine last = _section.Lines[^1];
            _section.Lines[^1] = last with { Notes = [.. last.Notes, note] };
        }
        else if (_section is not null)
        {
            _section.Notes.Add(note);
        }
        else
        {
            _notes.Add(note);
        }
    }

    private bool ReadOption(TextLine line)
    {
        if (_section is not { Lines.Count: > 0 })
        {
            return false;
        }

        // option 7&8 "easier": triple R in place
        int colon = _text.IndexOf(':', line.Start, line.End - line.Start);
        string head = colon < 0 ? _text[line.Start..line.End] : _text[line.Start..colon];
        string name = "option";
        int quote = head.IndexOfAny(['"', '“']);
        if (quote >= 0 && head.IndexOfAny(['"', '”'], quote + 1) is int close and > 0)
        {
            name = head[(quote + 1)..close];
        }
        else if (head.Contains("eas", StringComparison.OrdinalIgnoreCase))
        {
            name = "easier";
        }
        else if (head.Contains("hard", StringComparison.OrdinalIgnoreCase))
        {
            name = "harder";
        }

        int digit = head.AsSpan().IndexOfAnyInRange('0', '9');
        while (digit > 0 && head[digit - 1] is '&' or 'a')
        {
            digit--;
        }

        CountLabel? label = digit >= 0 ? CountLabel.Read(_text, line.Start + digit, colon < 0 ? line.End : colon + 1) : null;
        WrittenLine last = _section.Lines[^1];
        List<LabelPlace> places;
        string printed;
        int start;
        if (label is not null)
        {
            int offset = _section.Offset ?? 0;
            places = label.Places.Select(p => p with { Number = p.Number - offset, Place = p.Place - Counts.FromWhole(offset), Label = CountGrid.LabelOf(p.Place - Counts.FromWhole(offset)) }).ToList();
            printed = _text.Substring(label.Span.Start, label.Span.Length);
            start = colon >= 0 ? colon + 1 : label.End;
        }
        else
        {
            places = last.Places.Select((p, i) => new LabelPlace(p.Label, p.Place.Value.Floor + 1, p.Place, i > 0)).ToList();
            printed = last.Label;
            start = colon >= 0 ? colon + 1 : line.End;
        }

        if (start >= line.End || places.Count == 0)
        {
            AddNote(new Note("option", _text[line.Start..line.End], line.Span));
            return true;
        }

        Weight kept = _state.Weight;
        Facing? facing = _state.Facing;
        Counts from = Counts.FromWhole(places[0].Place.Value.Floor);
        _state.Weight = WeightBefore(_section.Lines, from) ?? kept;
        LineContent content = new LineReader(_state).Read(places, start, line.End, line.Number, printed);
        _state.Weight = kept;
        _state.Facing = facing;
        Counts end = Counts.FromWhole(places.Max(p => p.Place).Value.Floor + 1);
        StepOption option = new(name, new CountSpan(places[0].Place < from ? places[0].Place : from, end), content.Moves, line.Span, line.Number) { Label = printed };
        int owner = _section.Lines.FindLastIndex(l => l.Counts.Start <= from && l.Counts.End > from);
        owner = owner < 0 ? _section.Lines.Count - 1 : owner;
        _section.Lines[owner] = _section.Lines[owner] with { Options = [.. _section.Lines[owner].Options, option] };
        return true;
    }

    private Weight? WeightBefore(List<WrittenLine> lines, Counts place)
    {
        Counts start = _sectionsLength;

        if (_tag is null && _weightBefore.TryGetValue((_parts.Count, start + place), out Weight remembered))
        {
            return remembered;
        }

        Weight? weight = _tag is null && _weightBefore.TryGetValue((_parts.Count, start), out Weight atStart) ? atStart : null;
        foreach (WrittenStep step in lines.SelectMany(l => l.Steps))
        {
            if (step.Count.Place >= place)
            {
                break;
            }

            weight = step.Action.WeightAfter(weight ?? Weight.Unknown);
        }

        return weight;
    }

    /// <summary>move "lantern twist" 1&amp;2: step R to side, ...</summary>
    private bool ReadOwnMove(TextLine line)
    {
        int colon = _text.IndexOf(':', line.Start, line.End - line.Start);
        int open = _text.IndexOfAny(['"', '“'], line.Start, line.End - line.Start);
        if (colon < 0 || open < 0 || open > colon)
        {
            return false;
        }

        int close = _text.IndexOfAny(['"', '”'], open + 1, line.End - open - 1);
        if (close < 0 || close > colon || CountLabel.Read(_text, close + 1, colon + 1) is not CountLabel label)
        {
            return false;
        }

        string name = _text[(open + 1)..close].Trim();
        Weight kept = _state.Weight;
        Facing? facing = _state.Facing;
        _state.Weight = Weight.Left;
        LineContent content = new LineReader(_state).Read(label.Places, colon + 1, line.End, line.Number, _text.Substring(label.Span.Start, label.Span.Length));
        _state.Weight = kept;
        _state.Facing = facing;
        if (OwnMove.From(name, content.Moves) is Scuff.Steps.StepDefinition own)
        {
            _ownMoves.Add(own);
            _state.Lexicon = _state.Lexicon.With([own]);
        }

        _notes.Add(new Note("move", _text[line.Start..line.End], line.Span));
        return true;
    }

    /// <summary>The order of the parts is read once their names are known.</summary>
    private Dance ReadSequences(Dance dance)
    {
        foreach ((TextLine line, int track) in _sequences)
        {
            ValueList<SequenceItem> items = SequenceReader.Read(_state, line, dance).ToValueList();
            if (track >= 0)
            {
                _tracks[track] = _tracks[track] with { Sequence = items };
            }
            else
            {
                dance = dance with { Sequence = items };
            }
        }

        return dance;
    }

    private Dance ReadSentences(Dance dance)
    {
        SentenceReader reader = new(_state, dance, (part, place) => WeightAt(dance, part, place));
        List<Track> tracks = _tracks;
        foreach (PendingSentence sentence in _sentences)
        {
            List<Interruption>? made = reader.Read(sentence.Line);
            if (made is null)
            {
                string words = _text[sentence.Line.Start..sentence.Line.End];
                _notes.Add(new Note("sentence", words, sentence.Line.Span));
                continue;
            }

            if (sentence.Track >= 0)
            {
                tracks[sentence.Track] = tracks[sentence.Track] with { Interruptions = [.. tracks[sentence.Track].Interruptions, .. made] };
            }
            else
            {
                _interruptions.AddRange(made);
            }
        }

        dance = dance with
        {
            Tags = reader.Tags.ToValueList(),
            Interruptions = _interruptions.ToValueList(),
            Tracks = tracks.ToValueList(),
        };
        if (_ending is not null)
        {
            Ending ending = reader.ReadEnding(_ending.Line);
            if (_ending.Track >= 0)
            {
                tracks[_ending.Track] = tracks[_ending.Track] with { Ending = ending };
                dance = dance with { Tracks = tracks.ToValueList() };
            }
            else
            {
                dance = dance with { Ending = ending };
            }
        }

        return dance;
    }

    private Weight WeightAt(Dance dance, int partIndex, Counts place)
    {
        Weight weight = dance.Start;
        for (int p = 0; p <= partIndex && p < dance.Parts.Count; p++)
        {
            Counts start = Counts.Zero;
            foreach (Section section in dance.Parts[p].Sections)
            {
                foreach (WrittenStep step in section.Steps)
                {
                    if (p == partIndex && start + step.Count.Place >= place)
                    {
                        return weight;
                    }

                    weight = step.Action.WeightAfter(weight);
                }

                start += section.Length;
            }
        }

        return weight;
    }
}
