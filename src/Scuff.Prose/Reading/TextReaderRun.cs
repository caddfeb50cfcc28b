using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose.Reading.Sentences;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>One reading of one text, from its title to its last line.</summary>
internal sealed partial class TextReaderRun
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
    private readonly List<PendingSentence> _endings = [];

    // how long the heading says the parts are
    private readonly Dictionary<string, Counts> _partLengths = new(StringComparer.OrdinalIgnoreCase);

    // tags under whose counts stands "then restart the dance"
    private readonly List<string> _restartAfter = [];

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
        ReadFootLetters();
        JoinWhatBelongsTogether();
        PassOverItemNumbers();
    }

    /// <summary>A sentence on the pattern that is read once all sections are known.</summary>
    /// <param name="Line">The line.</param>
    /// <param name="Track">Which track it belongs to, or -1.</param>
    /// <param name="Here">After how many counts of its part it stands among the sections; null where it stands outside them.</param>
    /// <param name="OpensTag">Whether the counts of a tag stand under it, so that a figure it names is their title.</param>
    private sealed record PendingSentence(TextLine Line, int Track, Counts? Here = null, bool OpensTag = false)
    {
        /// <summary>Whether it stands under "RESTARTS", which it need not say again.</summary>
        public bool OfRestarts { get; init; }

        /// <summary>The tag under whose heading it stands, which it need not name again; null where it stands under none.</summary>
        public string? OfTag { get; init; }
    }

    // how many tracks were told before the first section
    private int _headTracks;

    // the track that a line under the steps speaks of; a track at the head of the sheet is the music of the whole dance
    private int TrackHere => _sectionsLength > Counts.Zero || _section is not null || _parts.Count > 0
        ? _tracks.Count > _headTracks ? _tracks.Count - 1 : -1
        : _tracks.Count - 1;

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

        public List<WrittenCall> Calls { get; } = [];

        /// <summary>How many counts were over when the counting began again at 1 within the section.</summary>
        public int Wrapped { get; set; }

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
            if (line.Start == line.End || IsRule(line))
            {
                RememberMark(line);
                continue;
            }

            int index = i;
            line = WithContinuations(line, ref i);
            TextLine first = line;
            line = Unwrapped(line, ref i);
            index = line == first ? index : i;
            int lines = _section?.Lines.Count ?? 0;
            ReadLine(line, index);
            if ((_section?.Lines.Count ?? 0) > lines)
            {
                _afterCounts = i + 1;
            }
        }

        CloseAll();
        TellUncounted();
        Dance dance = _heading.ToDance();
        dance = dance with
        {
            Parts = _parts.ToValueList(),
            Tags = _tags.ToValueList(),
            OwnMoves = _ownMoves.ToValueList(),
        };
        _sentences.InsertRange(0, _heading.OfPattern.Select(l => new PendingSentence(l, -1)));
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
        if (_section is null && _sections.Count == 0 && _parts.Count == 0 && _tag is null)
        {
            line = WithoutMarks(line);
        }

        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start);
        if (words.StartsWith("# WALL ") || words.StartsWith("# RESTART") || words.StartsWith("# TAG")
            || words.StartsWith("## WALL ") || words.StartsWith("## RESTART") || words.StartsWith("## TAG"))
        {
            // a mark before a sentence in capitals, as sheets have it, and no comment
            line = new TextLine(line.Number, line.Start + words.IndexOf(' '), line.End).Trimmed(_text);
            words = _text.AsSpan(line.Start, line.End - line.Start);
        }

        if (words[0] == '#' && IsMarkedUp() && !(words.Length > 1 && char.IsAsciiDigit(words[1])))
        {
            // "## Section 1: walks", as a chat or an editor marks headings
            TextLine heading = (line with { Start = line.Start + words.IndexOfAnyExcept('#') }).Trimmed(_text);
            if (words.IndexOfAnyExcept('#') > 0 && heading.Start < heading.End)
            {
                ReadLine(heading, index);
                return;
            }
        }

        if (words.Length > 8 && words[0] == '#' && words[^1] == '#' && words.ContainsAnyExcept('#'))
        {
            // "# Restart wall 3 #" is framed, and no comment
            TextLine framed = (line with
            {
                Start = line.Start + words.IndexOfAnyExcept('#'),
                End = line.Start + words.LastIndexOfAnyExcept('#') + 1
            }).Trimmed(_text);
            line = framed.Start < framed.End ? framed : line;
            words = _text.AsSpan(line.Start, line.End - line.Start);
        }

        if (words.StartsWith("//") || (words[0] == '#' && !(words.Length > 1 && char.IsAsciiDigit(words[1])) && !IsMarkedCount(line)))
        {
            _notes.Add(new Note("comment", words.ToString(), line.Span));
            return;
        }

        if (ReadColumns(line))
        {
            _notes.Add(new Note("columns", words.ToString(), line.Span));
            return;
        }

        if (!_heading.HasTitle && _section is null && _parts.Count == 0 && _tag is null && !LooksLikeBody(line))
        {
            if (TitleBehindGreeting(line) is TextLine named)
            {
                // "hi all!! dance for tomorrow = FISHBOX SHUFFLE"
                ReadAsRemark(line with { End = named.Start });
                line = named;
            }
            else if (IsOfALetter(words.ToString()) || (IsBeforeTheTitle(line) && TitleFollows(index)))
            {
                // "From: ...", "Hello all,": a mail begins before the dance does
                ReadAsRemark(line);
                return;
            }

            if (_heading.ReadTitle(line))
            {
                return;
            }
        }

        if (words.StartsWith(">>") && ReadTalk(line))
        {
            return;
        }

        if ((IsHeadOfSentence(words.ToString()) || IsHeadOfRestarts(words, index)) && (_section is not null || _sections.Count > 0))
        {
            _underRestarts = StartsWithWord(words, "restart") || StartsWithWord(words, "restarts");
            _notes.Add(new Note("sentence", words.ToString(), line.Span));
            return;
        }

        if (ReadClosing(line))
        {
            return;
        }

        bool atHead = _section is null && _sections.Count == 0 && _parts.Count == 0 && _tag is null && _tracks.Count == 0;
        if (atHead && char.IsLetter(words[0]) && (words.StartsWith("count", StringComparison.OrdinalIgnoreCase)
            || words.StartsWith("beat", StringComparison.OrdinalIgnoreCase)) && _heading.IsField(line) && _heading.ReadField(line))
        {
            // "Count: 32   Wall: 4" is no line of counts
            return;
        }

        if (atHead && !_heading.IsField(line) && CountsBehind(line, out _).Count == 0 && _heading.ReadFacts(line))
        {
            // "32 counts, 4 walls, improver"
            return;
        }

        if (atHead && HowManyBreaks().IsMatch(words))
        {
            // told with its wall or not at all: "1 restart, wall 3 after 16 counts", "2 tags"
            if (SentenceReader.NamesWall(words))
            {
                _sentences.Add(new PendingSentence(line, -1));
            }
            else
            {
                _heading.KeepBreaks(line);
            }

            return;
        }

        if (atHead && ReadLengthsOfParts(line))
        {
            return;
        }

        if (_section is { Lines.Count: > 0 } && (IsFactBelow(line) ? _heading.ReadField(line) : AreFactsBelow(line) && _heading.ReadFacts(line)))
        {
            return;
        }

        if (ReadStructure(line, index))
        {
            return;
        }

        if (ReadLetteredSection(line, index) || ReadNumberedCounts(line, index) || ReadCountsTold(line, index))
        {
            return;
        }

        if ((InTwos(CountLabel.Read(_text, line.Start, line.End)) ?? QuickCount(index) ?? PairInStrokes(line, index)) is CountLabel label
            && (_section is not null || _tag is not null || label.End < line.End || IsRangeHeading(line, label, index) is not null))
        {
            if (IsRangeHeading(line, label, index) is CountLabel first)
            {
                // under "[9-16] heel switches" the counts go on from 9, or begin anew
                OpenSection(TitleAfter(label, line), LengthOf(label), line);
                _section!.Offset = FirstNumber(first) >= label.Places[0].Number ? label.Places[0].Number - 1 : 0;
                return;
            }

            if (BeginsAnew(label, index))
            {
                OpenNext("", new TextLine(line.Number, line.Start, line.Start));
            }

            ReadCounts(line, label);
            return;
        }

        if (ReadHanging(line))
        {
            return;
        }

        if (_tag is not null && _section is { Lines.Count: 0 } && words.Length < 60 && !SentenceReader.LooksLikeSentence(words)
            && NextCounts(index + 1) is ( <= 1, _))
        {
            // "TAG: after wall 5", and what it is made of: "Jazz box 1/4 R"
            _section.Title = words.ToString();
            return;
        }

        if (TitlesOpenSection(line, index))
        {
            _section!.Title = words.ToString();
            return;
        }

        if (!SentenceReader.LooksLikeSentence(words) && !(_section is null && _heading.IsFacts(line)) && ReadTitleOfSection(line, index))
        {
            return;
        }

        bool tellsBreak = SentenceReader.LooksLikeSentence(words);
        if (!tellsBreak && (_heading.HasTitle || _section is not null) && ReadCountsBehind(line, index, 2))
        {
            return;
        }

        if (TrailingLabels(line) is { Count: > 0 } trailing && (_section is not null || FirstNumber(trailing[0].Label) == 1))
        {
            if (_section is null || BeginsAnew(trailing[0].Label, index))
            {
                OpenNext("", new TextLine(line.Number, line.Start, line.Start));
            }

            foreach ((CountLabel after, int from, int to) in trailing)
            {
                ReadRun(new TextLine(line.Number, from, to), after, from);
            }

            (CountLabel told, _, int ends) = trailing[^1];
            bool inBrackets = _text[ends] is '(';
            ReadTail(inBrackets ? _text.IndexOf(')', ends) + 1 : BeforeClock(line), line.End, _text.Substring(told.Span.Start, told.Span.Length));
            return;
        }

        if (!tellsBreak && (_heading.HasTitle || _section is not null) && ReadCountsElsewhere(line, index))
        {
            return;
        }

        if (!tellsBreak && GluedLabel(line) is CountLabel glued)
        {
            ReadGlued(line, glued);
            return;
        }

        if (_section is not null && CountsInBrackets(line) is List<LabelPlace> inside && IsDanced(line))
        {
            if (UpToCounts(line) is { Count: > 0 } stages)
            {
                // "left side, right near, left side, right touch near (4)": all counts up to the one at the end
                foreach ((int from, int to, int before, int upTo) in stages)
                {
                    ReadOpen(new TextLine(line.Number, from, to), before, upTo);
                }

                ReadTail(_text.LastIndexOf(')', line.End - 1) + 1, line.End, inside[0].Label);
                return;
            }

            ReadPlaces(line, inside, line.Start, string.Join(' ', inside.Select(p => p.Label)), new TextSpan(line.Start, 0));
            return;
        }

        bool inHeading = _section is null && _sections.Count == 0 && _parts.Count == 0 && _tracks.Count == 0 && _tags.Count == 0 && _tag is null;
        bool ofPattern = SentenceReader.LooksLikeSentence(words) && !_heading.IsField(line) && TellsABreak(words.ToString());
        if (inHeading && !ofPattern && _heading.ReadField(line))
        {
            return;
        }

        if (GoesOnAfterTag(words))
        {
            _notes.Add(new Note("sentence", words.ToString(), line.Span));
            return;
        }

        if (RestartsAfterTag(words))
        {
            _restartAfter.Add(_tag!.Name);
            _notes.Add(new Note("sentence", words.ToString(), line.Span));
            return;
        }

        if (SentenceReader.LooksLikeSentence(words))
        {
            Counts danced = _sectionsLength + (_tag is null ? _section?.Length ?? Counts.Zero : Counts.Zero);
            if (TalkWords.SpeaksOfBreak(words.ToString()) && ReadAsRemark(line))
            {
                return;
            }


            _sentences.Add(new PendingSentence(line, TrackHere, danced > Counts.Zero && TrackHere < 0 ? danced : null)
            {
                OfRestarts = _underRestarts,
                OfTag = _tag is not null && (_section is { Lines.Count: 0 } || SentenceReader.TellsOnlyWalls(words)) ? _tag.Name : null,
            });
            if (TagUnder(line, index) is TagHeading under)
            {
                _sentences[^1] = _sentences[^1] with { OpensTag = true };
                OpenTag(under, line);
            }

            return;
        }

        if (NextCountsAtEnd(line) is (CountLabel next, int wordsEnd))
        {
            ReadRun(line with { End = wordsEnd }, next, line.Start);
            return;
        }

        if (_heading.ReadField(line))
        {
            return;
        }

        if (IsMarkOfBreak(line))
        {
            _notes.Add(new Note("sentence", words.ToString(), line.Span));
            return;
        }

        if (ReadNamesOfSteps(line, index))
        {
            return;
        }

        if (ReadUncounted(line) || ReadRemark(line) || SaysTitleAgain(line) || IsPageMark(line))
        {
            return;
        }

        string kept = words.ToString();
        _notes.Add(new Note("unknown", kept, line.Span));
        _state.Add(ReadingRules.UnknownLine.At(line.Span, ("words", kept.Length > 80 ? kept[..80] + "..." : kept)));
    }

    // "#&3-4 close L, ...", "#(5-6) ...", "#- 1-2 ...": counts behind a mark, and no comment
    private bool IsMarkedCount(TextLine line) => line.End - line.Start > 2 && _text[line.Start + 1] is '&' or '(' or '[' or '-' or '–' or '•' or '*'
        && CountLabel.Read(_text, line.Start, line.End) is { Places: [{ Place.IsWhole: false }, ..] or { Count: > 1 } } label && label.End < line.End;

    /// <summary>Headings of sections, parts, tags, tracks, the sequence and moves of her own.</summary>
    private bool ReadStructure(TextLine line, int index)
    {
        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start);
        if (SectionHeading(words) is (int number, int used))
        {
            string rest = words[used..].Trim().TrimStart(":.-–—)").Trim().ToString();
            TextLine tail = new(line.Number, line.Start + used, line.End);
            tail = TrimMarks(tail);
            if (BehindRange(tail) is null && TitleAndLength(rest).Length is null && CountLabel.Read(_text, tail.Start, tail.End) is CountLabel label
                && label.End < tail.End && !IsSectionRange(tail, label, index))
            {
                OpenSection("", null, line);
                ReadCounts(tail, label);
                return true;
            }

            if (BehindRange(tail) is null && GluedLabel(tail) is CountLabel glued)
            {
                // "S4: ROCKING CHAIR, PIVOT 1-4 Rock R forward, ...": the heading and the first counts in one line
                OpenSection(TextBefore(tail, glued), null, line);
                ReadCounts(tail with { Start = glued.Span.Start }, glued);
                return true;
            }

            if (BehindRange(tail) is TextLine behind)
            {
                // "Section 1 (counts 1-8): 1-2 step R to side; 3&4 ..."
                OpenSection("", null, line);
                ReadCounts(behind, CountLabel.Read(_text, behind.Start, behind.End)!);
                return true;
            }

            (string title, Counts? claimed) = TitleAndLength(rest);
            OpenSection(title, claimed, line);
            return true;
        }

        if (StartsWithWord(words, "part") && !TellsOtherParts(words) && PartName(words) is (string part, int after))
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

        if (StartsWithWord(words, "ending") || StartsWithWord(words, "finish") || StartsWithWord(words, "to finish")
            || StartsWithWord(words, "to end") || (StartsWithWord(words, "end") && words.Length > 8 && words[3..].TrimStart()[0] is ':') || IsEnding(line))
        {
            _endings.Add(new PendingSentence(line, TrackHere));
            _heading.KeepEnding(line);
            return true;
        }

        if (TagHeadingOf(line) is TagHeading tag)
        {
            if (StepsOfTag(line, tag, index) is (string name, TextLine steps))
            {
                OpenTag(tag with { Name = name }, line);
                ReadStepsOfTag(steps, tag.Length);
                return true;
            }

            OpenTag(tag, line);
            return true;
        }

        return false;
    }

    // "Part A: 32 counts, Part B: 16 counts" tells how long they are, and begins none
    private static bool TellsOtherParts(ReadOnlySpan<char> words) => words[4..].Contains("part ", StringComparison.OrdinalIgnoreCase);

    private void OpenTag(TagHeading tag, TextLine line)
    {
        CloseAll();
        _tag = tag;
        _state.InTag = true;
        _section = new SectionBuilder(1, tag.Name, tag.Length, line.Span, line.Number);
    }
}
