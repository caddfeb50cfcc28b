using System.Globalization;
using System.Text.RegularExpressions;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Prose.Reading.Sentences;

/// <summary>
/// Reads the sentences about tags, bridges and restarts in the many ways people write them:
/// "wall 4: after 16 restart, with count 8: touch R together", "Restart on wall 3 after 16 counts, touch instead of step on count 16",
/// "Tag 1 at the end of walls 2 and 4".
/// </summary>
internal sealed partial class SentenceReader
{
    private readonly ReaderState _state;
    private readonly Dance _dance;
    private readonly SentenceSteps _steps;
    private readonly ChangedCountsReader _changed;
    private readonly EndingReader _ending;

    public SentenceReader(ReaderState state, Dance dance, Func<int, Counts, Weight> weightAt)
    {
        _state = state;
        _dance = dance;
        _steps = new SentenceSteps(state, dance, weightAt);
        _changed = new ChangedCountsReader(state, dance, weightAt);
        _ending = new EndingReader(state, dance, _steps);
        Tags = [.. dance.Tags];
    }

    // after how many counts the break is that was told last
    private Counts? _placeBefore;

    /// <summary>The dance's tags and those that sentences define.</summary>
    public List<Tag> Tags { get; }

    /// <summary>What is to be asked of a line that tells a tag and a restart without their place, unless another line tells it.</summary>
    public Dictionary<int, Diagnostic> PlaceDoubts { get; } = [];

    /// <summary>Whether a line may be such a sentence at all.</summary>
    public static bool LooksLikeSentence(ReadOnlySpan<char> words) => HasWord(words, "wall") || HasWord(words, "restart") || HasWord(words, "tag")
        || HasWord(words, "bridge") || HasWord(words, "repetition")
        || (HasWord(words, "part") && HasWord(words, "after")) || SentenceSlips.SaysRestart(words) || NamesWall(words);

    /// <summary>Whether a wall is named in words, by its number alone or by another word: "wall 3", "W3", "3rd round".</summary>
    /// <param name="words">The words.</param>
    public static bool NamesWall(ReadOnlySpan<char> words) => WallNamed().IsMatch(words);

    /// <summary>Whether a sentence says where, and not what: "once at the end of wall 3 (9:00), TWICE at the end of wall 6".</summary>
    /// <param name="words">The words.</param>
    public static bool TellsOnlyWalls(ReadOnlySpan<char> words) => OnlyWalls().IsMatch(words);

    [GeneratedRegex(@"^\W*(?:(?:it|this|is|danced|done|added|comes|happens|used|once|twice|one|two|three|times?|x ?\d|\dx|at|the|very|end|ends|of"
        + @"|after|walls?|and|also|both|only"
        + @"|facing|face|front|back|to|on|\d{1,2}(?:st|nd|rd|th)?|\d{1,2}:\d\d|o['’]?clock|first|second|third|fourth|fifth|sixth|seventh|eighth)\b\W*)+$",
        RegexOptions.IgnoreCase)]
    private static partial Regex OnlyWalls();

    [GeneratedRegex(@"\bwalls?\b|\beow\b|\bW ?\d{1,2}\b|\b(?:\d{1,2} ?(?:st|nd|rd|th)|first|second|third|fourth|fifth|sixth|seventh|eighth)"
        + @" (?:round|rotation|repetition|time (?:through|round|around))\b", RegexOptions.IgnoreCase)]
    private static partial Regex WallNamed();

    /// <summary>Whether words hold a word, alone or with an ending ("tags", "restarted"), and not within another ("stage", "cottage").</summary>
    /// <param name="words">The words.</param>
    /// <param name="word">A word in small letters.</param>
    public static bool HasWord(ReadOnlySpan<char> words, string word)
    {
        int at = words.IndexOf(word, StringComparison.OrdinalIgnoreCase);
        for (int from = 0; at >= 0; at = words[from..].IndexOf(word, StringComparison.OrdinalIgnoreCase))
        {
            if (from + at == 0 || !char.IsLetter(words[from + at - 1]))
            {
                return true;
            }

            from += at + word.Length;
        }

        return false;
    }

    /// <summary>The breaks a sentence tells, which may be none; null when it is not understood (a question is asked then).</summary>
    /// <param name="line">The line.</param>
    /// <param name="here">After how many counts of the dance it stands among the steps; null where it stands outside of them.</param>
    /// <param name="opensTag">Whether the counts of a tag stand under it: what it names of them is their title.</param>
    /// <param name="ofTag">The tag under whose heading it stands, or null.</param>
    /// <param name="ofRestarts">Whether it stands under a heading of restarts.</param>
    public List<Interruption>? Read(TextLine line, Counts? here, bool opensTag = false, string? ofTag = null, bool ofRestarts = false)
    {
        string words = _state.Text[line.Start..line.End];

        // the change of _steps is cut out first: it is footwork
        int changeAt = ChangedCountsReader.ChangeStart(words);
        int changeEnd = changeAt < 0 ? words.Length : ChangedCountsReader.ChangeEnd(words, changeAt);
        List<WordToken> tokens = WordScanner.Scan(_state.Text, line.Start, line.Start + (changeAt < 0 ? words.Length : changeAt));
        if (changeAt >= 0)
        {
            tokens.AddRange(WordScanner.Scan(_state.Text, line.Start + changeEnd, line.End));
        }

        MendSlips(tokens);
        MendTongues(tokens);
        ClockWords.Join(tokens, _state.Lexicon, bare: false);
        DropLegend(tokens);
        CallSections(tokens);

        // "tag after wall 2, 4 counts: sway R, L, R": the _steps stand in the sentence
        TextLine? inline = opensTag ? null : _steps.Inline(tokens, line, changeAt < 0 ? line.End : line.Start + changeAt);
        bool restartsAfter = inline is TextLine stop && (HasWord(_state.Text.AsSpan(stop.End, line.End - stop.End), "restart")
            || (stop.End < line.End && _state.Text[stop.End] == ')')
            || (tokens.FindLast(t => t.Span.End <= stop.Start).Text is "add" or "adding"));
        List<WordToken> told = inline is TextLine cut ? [.. tokens.Where(t => t.Span.End <= cut.Start || (restartsAfter && t.Span.Start >= cut.End))] : tokens;
        string part = PartOf(told);
        bool tagOnly = ofTag is not null && TellsOnlyWalls(words);
        List<SentencePart> breaks = SentenceScan.Of(new SentenceWords(told), _dance, part, at => TagName(told, at), tagOnly ? ofTag : null, _placeBefore);
        _placeBefore = breaks.FindLast(b => b.After is not null)?.After ?? _placeBefore;
        if (ofTag is not null && breaks is [{ Acts.Count: 0, Walls.Count: > 0, Denied: false }])
        {
            // "TAG", and under it "at the end of wall 2"
            breaks[0].Acts.Add(new InterruptionAct.PlayTag(ofTag));
        }


        foreach (SentencePart bare in breaks.Where(b => ofRestarts && b is { Acts.Count: 0, Walls.Count: > 0, Denied: false }))
        {
            // "RESTARTS", and under it "wall 3 - after 16 counts"
            bare.Acts.Add(new InterruptionAct.Restart());
        }

        if (inline is not null && !breaks.Exists(b => b.Acts.Exists(a => a is InterruptionAct.PlayTag)) && breaks[^1].Walls.Count > 0
            && told.Exists(t => t.Text is "add" or "extra" or "additional" or "adding") && !Has(words, "restart"))
        {
            // "at the end of wall 1 add four counts: sway R, L, R, L"
            breaks[^1].Acts.Add(new InterruptionAct.PlayTag(""));
            if (breaks[^1] is { SaysGoOn: true, After: not null, WholeWall: false })
            {
                // "after 16 counts add hip sways R, L, R, L, then continue with count 17"
                breaks[^1].Acts.Add(new InterruptionAct.GoOn());
            }

            breaks[^1].Unread.RemoveAll(t => new SentenceWords([t]).NumberAt(0) is not null || t.Text is "counts" or "count");
        }

        if (inline is TextLine inside && breaks.Find(b => b.Acts.Exists(a => a is InterruptionAct.PlayTag)) is SentencePart owner)
        {
            InterruptionAct.PlayTag play = owner.Acts.OfType<InterruptionAct.PlayTag>().First();
            string name = play.Name.Length > 0 ? play.Name : string.Create(CultureInfo.InvariantCulture, $"tag {Tags.Count + 1}");
            Tags.Add(_steps.InlineTag(name, inside, line, LengthOf(tokens)));
            owner.Acts[owner.Acts.IndexOf(play)] = play with { Name = name };
        }
        else if (inline is TextLine loose)
        {
            breaks[^1].Unread.AddRange(tokens.Where(t => t.Span.Start >= loose.Start && t.Kind == WordTokenKind.Word));
        }

        TakeHoldTags(breaks, tokens, line);
        if (breaks.TrueForAll(b => b.Denied && (b.Acts.Count == 0 || (b.Walls.Count == 0 && b.After is null))))
        {
            // "no tags, no restarts"
            return [];
        }

        if (here is Counts place && place < (LengthOf(part) ?? Counts.Zero))
        {
            // "restart here on wall 3", between two sections
            foreach (SentencePart open in breaks.Where(b => b.After is null && !b.WholeWall && b.Acts.Exists(a => a is InterruptionAct.Restart)))
            {
                open.After = place;
            }
        }

        if (breaks.TrueForAll(b => b.Acts.Count == 0 || b.Walls.Count == 0) && !Has(words, "restart") && !Has(words, "tag") && !Has(words, "bridge")
            && !tokens.Exists(t => t.Kind == WordTokenKind.Number))
        {
            // "every A begins and ends at the front wall": nothing happens; "every second wall you turn left instead" is no such thing
            bool changes = tokens.Exists(t => t.Text is "instead" or "leave" or "omit" or "skip" or "change" or "changes" or "opposite")
                || (Has(words, "every second") || Has(words, "every other"))
                || (tokens.Exists(t => t.Text is "section" or "part") && tokens.Exists(t => t.Text is "again" or "repeat" or "twice"));
            if (changes && !TalkWords.IsRemark(words, _state.Lexicon, outside: false))
            {
                _state.Add(ReadingRules.UnknownSentence.At(line.Span, ("words", words.Length > 100 ? words[..100] + "..." : words)));
                return null;
            }

            return [];
        }

        if (changeAt >= 0 && ChangedCountsReader.CountsOf(words[changeAt..changeEnd]) is (int firstChanged, int lastChanged)
            && breaks[^1].Acts.Exists(a => a is InterruptionAct.Restart))
        {
            if ((breaks[^1].After is null && !breaks[^1].WholeWall && firstChanged > 8) || breaks[^1].After == Counts.FromWhole(firstChanged - 1))
            {
                // "dance to count 15, replace count 16 with a touch and restart": the changed count is danced too
                breaks[^1].After = Counts.FromWhole(lastChanged);
            }
            else if (breaks[^1].After is Counts until && StartOfSection(until, part) is Counts section && until == section + Counts.FromWhole(firstChanged - 1))
            {
                // "dance to count 6 of section 2, then change counts 7&8"
                breaks[^1].After = section + Counts.FromWhole(lastChanged);
            }
        }

        bool understood = breaks.TrueForAll(b => b.Acts.Count > 0
            && (b.Walls.Count > 0 || Has(words, "restart") || Has(words, "tag") || Has(words, "bridge") || tokens.Exists(t => t.IsCorrected))
            && !(b.WholeWall && b.After is not null && b.After != LengthOf(part)));
        if (!understood)
        {
            string kept = words.Length > 100 ? words[..100] + "..." : words;
            _state.Add(ReadingRules.UnknownSentence.At(line.Span, ("words", kept)));
            return null;
        }

        bool described = !opensTag && Tags.Count == 1 && words.Contains('(');
        if (opensTag || described)
        {
            foreach (SentencePart one in breaks.Where(b => b.Unread.Count > 0 && (opensTag || TellsTag(b, tokens))))
            {
                List<Term> named = TermReader.Read(_state.Text, one.Unread[0].Span.Start, one.Unread[^1].Span.End, _state.Lexicon);
                if (named.TrueForAll(s => s.Kind is TermKind.Move or TermKind.Foot or TermKind.Side or TermKind.Dir or TermKind.Part or TermKind.Filler
                    or TermKind.Size))
                {
                    one.Unread.Clear();
                }
            }
        }

        if (breaks.Exists(b => b.After is null && !b.WholeWall && b.Walls.Count > 0 && b.Acts.Exists(a => a is InterruptionAct.Restart)
            && b.Acts.Exists(a => a is InterruptionAct.PlayTag)) && !Has(words, "end") && !Has(words, "after"))
        {
            PlaceDoubts[line.Number] = ReadingRules.PlaceMissing.At(line.Span, ("words", words.Length > 80 ? words[..80] + "..." : words));
        }

        WordToken[] unread = [.. breaks.SelectMany(b => b.Unread)];
        bool complete = breaks.TrueForAll(b => b.Walls.Count > 0 && (b.After is not null || b.WholeWall || !b.Acts.Exists(a => a is InterruptionAct.Restart)));
        if (unread.Length > 0 && complete && Array.TrueForAll(unread, IsTalk))
        {
            // "on wall 5 after 16 counts restart, my lovelies": wall, place and what is done are all told without it
            string talk = string.Join(' ', unread.Select(t => _state.Text.Substring(t.Span.Start, t.Span.Length)));
            _state.Add(ReadingRules.SentenceWordsPassedOver.At(line.Span, ("words", talk.Length > 80 ? talk[..80] + "..." : talk)));
        }
        else if (unread.Length > 0)
        {
            string loose = string.Join(' ', unread.Select(t => _state.Text.Substring(t.Span.Start, t.Span.Length)));
            _state.Add(ReadingRules.SentenceWordsUnread.At(line.Span, ("words", loose.Length > 80 ? loose[..80] + "..." : loose)));
        }

        return [.. breaks.Select((told, i) => new Interruption
        {
            Walls = told.Walls.ToValueList(),
            PartName = part,
            AfterCounts = told.After,
            Acts = InOrder(told.Acts).ToValueList(),
            Changes = changeAt >= 0 && i == breaks.Count - 1
                ? _changed.Read(line with { End = line.Start + changeEnd }, line.Start + changeAt, PartIndex(part), told.After) : default,
            Claim = told.Claim,
            Span = line.Span,
            Line = line.Number,
            Verbatim = words,
        })];
    }

    /// <summary>"Tag end of wall 2 (4 counts sways)": whether what is left stands in brackets and names nothing but what the tag consists of.</summary>
    private bool TellsTag(SentencePart one, List<WordToken> tokens)
    {
        int at = tokens.FindIndex(t => t.Span == one.Unread[0].Span);
        int open = at < 0 ? -1 : tokens.FindLastIndex(at, t => t.Text is "(");
        int close = open < 0 ? -1 : tokens.FindIndex(open, t => t.Text is ")");
        if (close < 0 || tokens[close].Span.Start < one.Unread[^1].Span.End || !one.Acts.Exists(a => a is InterruptionAct.PlayTag))
        {
            return false;
        }

        List<Term> named = TermReader.Read(_state.Text, one.Unread[0].Span.Start, one.Unread[^1].Span.End, _state.Lexicon);
        return named.TrueForAll(t => t.Kind is TermKind.Filler
            || (t.Kind is TermKind.Number && Tags[0].Body.Length == Counts.FromWhole(t.Meaning.Value)) || (t is { Kind: TermKind.Move, Meaning.Verb: { } kind }
            && Tags[0].Body.Steps.Any(s => s.Action.Kind == kind)));
    }

    /// <summary>The _ending told by a line; what is not understood of it is kept in its words.</summary>
    public Ending ReadEnding(TextLine line) => _ending.Read(line);

    /// <summary>Words of such sentences with a slip in them, read as they are meant and pointed out.</summary>
    // Whether a word that nothing is read from can be talk: it is no number, nothing that is danced, and nothing that limits or excepts, with a slip in it or
    // without.
    private bool IsTalk(WordToken token) => token.Kind == WordTokenKind.Word && token.Text.Length > 2 && new SentenceWords([token]).NumberAt(0) is null
        && !Limits.Contains(token.Text) && !Limits.Any(l => l.Length > 3 && Slips.Of(l).Contains(token.Text))
        && TermReader.Read(_state.Text, token.Span.Start, token.Span.End,
        _state.Lexicon).TrueForAll(t => t.Kind is TermKind.Unknown or TermKind.Filler or TermKind.Style or TermKind.Size
            || t is { Kind: TermKind.Dir, Meaning: { Side: null, Direction: Direction.Out or Direction.In or Direction.Up or Direction.Down } });

    // what may say that something else is danced, or elsewhere
    private static readonly HashSet<string> Limits = new(StringComparer.OrdinalIgnoreCase)
    {
        "all", "alternate", "alternately", "another", "any", "both", "each", "every", "few", "only", "some", "apart", "before", "between", "different",
            "double", "either", "else", "even", "except", "excepting", "half", "halfway", "if",
        "instead", "later", "less", "minus", "missing", "more", "never", "none", "not", "odd", "omit", "opposite", "optional", "other", "others", "otherwise",
            "plus",
        "previous", "quarter", "reverse", "same", "skip", "than", "third", "triple", "unless", "unlike", "until", "without", "leave", "ignore", "hold", "wait",
            "pause", "slow",
        "change", "replace", "swap", "middle", "chorus", "verse", "again", "twice", "thrice", "last", "first", "second", "forward", "back", "left", "right",
            "foot", "weight",
    };

    /// <summary>
    /// Words of other tongues: "dance to and with count 16" goes up to the end of that count; who breaks off stops, and breaks no step; "begin new" is anew.
    /// </summary>
    private static void MendTongues(List<WordToken> tokens)
    {
        for (int i = tokens.Count - 1; i > 0; i--)
        {
            string next = i + 1 < tokens.Count ? tokens[i + 1].Text : "";
            if (tokens[i].Text is "and" && next is "with" or "including" && tokens[i - 1].Text is "to" or "til" or "till" or "until")
            {
                tokens[i - 1] = tokens[i - 1] with { Text = "to" };
                tokens.RemoveRange(i, 2);
            }
            else if (tokens[i].Text is "new" && tokens[i - 1].Text is "begin" or "start" or "starts" or "begins")
            {
                tokens[i] = tokens[i] with { Text = "anew" };
            }
        }
    }

    private void MendSlips(List<WordToken> tokens)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            WordToken token = tokens[i];
            if (token.Kind != WordTokenKind.Word || token.Text.Length < 3 || SentenceWords.IsKnown(token.Text)
                || SentenceSlips.Of(token.Text) is not string meant
                || _state.Lexicon.KnowsWord(token.Text) || Tags.Exists(t => t.Name.Contains(token.Text, StringComparison.OrdinalIgnoreCase)))
            {
                continue;
            }

            tokens[i] = token with { Text = meant, IsCorrected = true };
            if (!token.Text.StartsWith("rst", StringComparison.Ordinal))
            {
                string had = _state.Text.Substring(token.Span.Start, token.Span.Length);
                _state.Add(ReadingRules.Spelling.At(token.Span, ("word", had), ("meant", meant))
                    .WithFixes(new Fix($"write '{meant}'", new TextRemedy([new TextEdit(token.Span, meant)]), true)));
            }
        }
    }

    // "tag: at the end of wall 4 the band stops, hold for 3 counts": no tag of the sheet is meant, the hold is the tag
    private void TakeHoldTags(List<SentencePart> breaks, List<WordToken> tokens, TextLine line)
    {
        foreach (SentencePart one in breaks.Where(b => Tags.Count == 0 && b.WholeWall && b.Acts is [InterruptionAct.PlayTag, InterruptionAct.Wait]))
        {
            Counts length = ((InterruptionAct.Wait)one.Acts[1]).Length;
            WordToken hold = tokens.Find(t => t.Text is "hold" or "holds" or "holding");
            if (hold.Text is null || length.Value.Floor is < 1 or > 16)
            {
                continue;
            }

            string name = string.Create(CultureInfo.InvariantCulture, $"tag {Tags.Count + 1}");
            Tags.Add(_steps.HoldTag(name, length, hold.Span, line));
            one.Acts.Clear();
            one.Acts.Add(new InterruptionAct.PlayTag(name));
        }
    }

    // "(R) = Restarts: wall 2 ...": the mark whose meaning is told
    private static void DropLegend(List<WordToken> tokens)
    {
        int equals = tokens.FindIndex(t => t.Text == "=");
        if (equals is > 0 and < 5 && tokens.Take(equals).All(t => t.Kind == WordTokenKind.Mark || t.Text.Length == 1))
        {
            tokens.RemoveRange(0, equals + 1);
        }
    }

    // "do only part 1", "after the second eight": sections by the names that people have for them, where no part is called so
    private void CallSections(List<WordToken> tokens)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            bool named = tokens[i].Text is "part" or "parts" or "set" or "sets" or "block" or "blocks" or "phrase" or "eight" or "eights";
            if (!named)
            {
                continue;
            }

            bool numbered = i + 1 < tokens.Count && tokens[i + 1].Kind == WordTokenKind.Number && tokens[i].Text is not ("eight" or "eights" or "phrase")
                && _dance.FindPart(tokens[i + 1].Text) is null
                && !(i + 2 < tokens.Count && tokens[i + 2].Text is "count" or "counts" or "times" or "x");
            bool counted = i > 0 && tokens[i].Text is not ("part" or "parts" or "phrase" or "sets") && new SentenceWords(tokens).OrdinalAt(i - 1) is not null;
            if (counted && i + 2 < tokens.Count && tokens[i + 1].Text == "of" && (tokens[i + 2].Text == "eight" || tokens[i + 2].Value == 8))
            {
                // "the second set of 8"
                tokens.RemoveRange(i + 1, 2);
            }

            if (numbered || counted)
            {
                tokens[i] = tokens[i] with { Text = tokens[i].Text.EndsWith('s') ? "sections" : "section" };
            }
        }
    }

    private static bool Has(ReadOnlySpan<char> words, string word) => words.Contains(word, StringComparison.OrdinalIgnoreCase);

    private int PartIndex(string part) =>
        Math.Max(0, _dance.Parts.ToList().FindIndex(p => string.Equals(p.Name, part, StringComparison.OrdinalIgnoreCase)));

    // where the section begins in which a place lies
    private Counts? StartOfSection(Counts place, string part)
    {
        Counts start = Counts.Zero;
        foreach (Section section in _dance.Parts.Count > 0 ? _dance.Parts[PartIndex(part)].Sections : [])
        {
            if (place < start + section.Length)
            {
                return start;
            }

            start += section.Length;
        }

        return null;
    }

    private Counts? LengthOf(string part) => _dance.Parts.Count > 0 ? _dance.Parts[PartIndex(part)].Length : null;

    /// <summary>"Restart: wall 3 ..." names it first; a restart always comes last.</summary>
    private static List<InterruptionAct> InOrder(List<InterruptionAct> acts)
        => [.. acts.Where(a => a is not InterruptionAct.Restart), .. acts.Where(a => a is InterruptionAct.Restart)];

    private static Counts? LengthOf(List<WordToken> tokens)
    {
        for (int i = 0; i + 1 < tokens.Count; i++)
        {
            // "after 16 counts add ..." tells where, not how long
            if (tokens[i].Kind == WordTokenKind.Number && tokens[i + 1].Text is "counts" or "count" && tokens[i].Value is > 0 and < 1000
                && !(i > 0 && tokens[i - 1].Text is "after" or "first"))
            {
                return Counts.FromWhole(tokens[i].Value);
            }
        }

        return null;
    }

    private (string Name, int Used) TagName(List<WordToken> tokens, int at)
    {
        if (at < tokens.Count && tokens[at].Text is "\"" or "'")
        {
            int close = at + 1;
            while (close < tokens.Count && tokens[close].Text is not ("\"" or "'"))
            {
                close++;
            }

            if (close < tokens.Count)
            {
                return (_state.Text[tokens[at].Span.End..tokens[close].Span.Start].Trim(), close - at + 1);
            }
        }

        if (at < tokens.Count && tokens[at].Kind is WordTokenKind.Word or WordTokenKind.Number)
        {
            string raw = _state.Text.Substring(tokens[at].Span.Start, tokens[at].Span.Length);
            if (Tags.Exists(t => string.Equals(t.Name, raw, StringComparison.OrdinalIgnoreCase)))
            {
                return (raw, 1);
            }

            // "tag Lamps" with a name of several words
            foreach (Tag tag in Tags)
            {
                string rest = _state.Text[tokens[at].Span.Start..];
                if (tag.Name.Length > 0 && rest.StartsWith(tag.Name, StringComparison.OrdinalIgnoreCase))
                {
                    int used = 1;
                    while (at + used < tokens.Count && tokens[at + used].Span.Start < tokens[at].Span.Start + tag.Name.Length)
                    {
                        used++;
                    }

                    return (tag.Name, used);
                }
            }

            if (tokens[at].Kind == WordTokenKind.Number
                && !(at + 1 < tokens.Count && tokens[at + 1].Text.StartsWith("count", StringComparison.Ordinal)))
            {
                return (raw, 1);
            }
        }

        return ("", 0);
    }

    private string PartOf(List<WordToken> tokens)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Text == "part" && i + 1 < tokens.Count)
            {
                string name = _state.Text.Substring(tokens[i + 1].Span.Start, tokens[i + 1].Span.Length);
                if (_dance.FindPart(name) is Part part)
                {
                    return part.Name;
                }
            }
        }

        return "";
    }
}
