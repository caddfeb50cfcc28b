using System.Text.RegularExpressions;
using Scuff.Dances;
using Scuff.Prose.Reading.Sentences;
using Scuff.Prose.Words;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

// What stands before the title and under the last count of a sheet that came as a mail or was copied from a page.
internal sealed partial class TextReaderRun
{
    // so many lines with words are looked at for the title that a line stands before
    private const int LinesToTitle = 8;

    /// <summary>"hi all!! dance for tomorrow = FISHBOX SHUFFLE": where what follows the greeting begins; null where no title does.</summary>
    private TextLine? TitleBehindGreeting(TextLine line)
    {
        foreach (ValueMatch greeting in Greeting().EnumerateMatches(_text.AsSpan(line.Start, line.End - line.Start)))
        {
            TextLine rest = (line with { Start = line.Start + greeting.Length }).Trimmed(_text);
            return rest.Start < rest.End && _heading.IsField(rest) ? rest : null;
        }

        return null;
    }

    [GeneratedRegex(@"^(?:hello|hi|hiya|dear|hey|ahoy|howdy|good (?:morning|evening|afternoon))(?: (?:all|everyone|everybody|folks|ladies|dancers"
        + @"|friends|there|team|girls|boys|guys|gang|crew|class|lovelies|lads|my|you|peeps|both|and|&|gents))*"
        + @"(?: again)?[\s!,.:;–-]+", RegexOptions.IgnoreCase)]
    private static partial Regex Greeting();

    /// <summary>A line that is no title wherever one comes after it: the bar of a page, a sentence of a letter, what the paper is called.</summary>
    private bool IsBeforeTheTitle(TextLine line)
    {
        string words = _text[line.Start..line.End];
        bool goesOn = _notes is [.., { Kind: "remark" }] && words.Length < 60 && (SignsOff().IsMatch(words)
            || (char.IsLower(words[0]) && words[^1] is '!' or '.' or ',' or ':' or ')'));
        return goesOn || HeadingFacts.IsNameOfSheet(words) || StampOfChat().IsMatch(words) || GreetsByName().IsMatch(words) || (!_heading.IsField(line)
            && (IsMenu(words) || IsOfCorrespondence().IsMatch(words) || IsProse(words)));
    }

    // "Hi Jean, here it is!", "Dear Peg - the sheet you wanted": a greeting, and small letters behind it
    [GeneratedRegex(@"^(?i:hello|hi|hiya|dear|hey|howdy|good (?:morning|evening|afternoon))\b(?: (?:\p{Lu}[\p{L}'’.]*|(?i:and|&|all|everyone|everybody"
        + @"|girls|folks)))*\s?[,!–—:-]+ \p{Ll}")]
    private static partial Regex GreetsByName();

    // "[12:31, 4/5/2021] Jean: here's the dance", "04/05/2021, 12:31 - Jean: ..."
    [GeneratedRegex(@"^\W?\d{1,4}[:./-]\d{1,2}[^\p{L}]*(?:[ap]m)?\W+[\p{L} .+\d]{1,30}:")]
    private static partial Regex StampOfChat();

    // "Love, Peg xx", "Cheers Breda"
    [GeneratedRegex(@"^(?:lots of love|love|cheers|thanks|best wishes|best|kind regards|regards|bye|hugs|x{1,4})\b", RegexOptions.IgnoreCase)]
    private static partial Regex SignsOff();

    // "Home | Classes | Step Sheets | Contact", "Home » Dances » K"
    private static bool IsMenu(string words)
    {
        int bars = words.Count(c => c is '|' or '»' or '›' or '•' or '>');
        return bars >= 2 && !words.Any(char.IsAsciiDigit) && !words.Contains('=', StringComparison.Ordinal) && !words.Contains(':', StringComparison.Ordinal)
            && words.Split(['|', '»', '›', '•', '>']).All(c => c.Trim().Length is > 0 and < 24) && SiteWords().IsMatch(words);
    }

    [GeneratedRegex(@"\b(?:home|classes|step ?sheets?|dances|calendar|contact|about|news|events|login|log in|search|shop|menu|videos?|links|gallery|blog)\b",
        RegexOptions.IgnoreCase)]
    private static partial Regex SiteWords();

    // "On Tue, Ike Barrowman wrote:", "---------- Forwarded message ---------", "Begin forwarded message:"
    [GeneratedRegex(@"\b(?:wrote|writes|schrieb|schreef|a écrit)\s*:$|\b(?:forwarded|original) message\b|^\W*sent from my\b", RegexOptions.IgnoreCase)]
    private static partial Regex IsOfCorrespondence();

    // sentences, as no title has them: ended, of many words, and told by somebody to somebody
    private static bool IsProse(string words)
    {
        ReadOnlySpan<char> told = words.AsSpan().TrimEnd(" )\"”*:;-xX😊");
        if (words.Length < 30 || told.Length == 0 || !(told[^1] is '.' or '!' or '?' or ',' || words.Contains(". ", StringComparison.Ordinal)))
        {
            return false;
        }

        return words.Count(c => c == ' ') >= 6 && SpeaksToSomebody().Count(words) >= 2;
    }

    [GeneratedRegex(@"\b(?:i|i'm|i've|i'll|i’m|i’ve|me|my|we|we're|we've|us|our|you|your|you're|it's|it’s|it|here|please|thanks|thank|so|this|that|is"
        + @"|are|was|did|have|has"
        + @"|will|ask|asked|sheet|last|week|next)\b", RegexOptions.IgnoreCase)]
    private static partial Regex SpeaksToSomebody();

    /// <summary>Whether a line that may be the title comes before the counts.</summary>
    private bool TitleFollows(int index)
    {
        int seen = 0;
        for (int at = index + 1; at < _lines.Count && seen < LinesToTitle; at++)
        {
            TextLine next = _lines[at].Trimmed(_text);
            if (next.Start == next.End || IsRule(next))
            {
                continue;
            }

            seen++;
            if (LooksLikeBody(next) || (CountLabel.Read(_text, next.Start, next.End) is { Places.Count: > 1 } label && label.End < next.End))
            {
                return false;
            }

            string words = _text[next.Start..next.End];
            bool isTitle = words.Length < 120 && (WithoutMarks(next) is var bare && (char.IsLetter(_text[bare.Start])
                || _text[bare.Start] is '"' or '“' or '‘')) && !_heading.IsField(next)
                && KeyOfUnknown(words) is false && !IsBeforeTheTitle(next) && !IsOfALetter(words) && SectionHeading(words) is null
                && (!_heading.IsFacts(next) || IsTitleWithFacts(next));
            if (isTitle)
            {
                return true;
            }
        }

        return false;
    }

    // "Key: RF = right foot": a key that is not known is no title either
    private static bool KeyOfUnknown(string words) => words.IndexOf(':', StringComparison.Ordinal) is > 0 and < 20;

    // "Gannet Gossip   32 ct / 4 w / Improver"
    private bool IsTitleWithFacts(TextLine line) => HeadingFacts.TitleOf(_text, line) is var (title, end) && end < line.End && title.Length > 2;

    /// <summary>The words that stand alone under "Section 2", before its counts: its title.</summary>
    private bool TitlesOpenSection(TextLine line, int index) => _tag is null && _section is { Lines.Count: 0, Title: "", Notes.Count: 0 }
        && line.End - line.Start < 120 && !SentenceReader.LooksLikeSentence(_text.AsSpan(line.Start, line.End - line.Start))
        && CountLabel.Read(_text, line.Start, line.End) is null && !_heading.IsField(line)
        && NextCounts(index + 1) is (int first, _) && (first <= 1 || first == _sectionsLength.Value.Floor + 1)
        && TermReader.Read(_text, line.Start, line.End, _state.Lexicon).Exists(t => t.Kind is TermKind.Move or TermKind.Dir or TermKind.Foot or TermKind.Side);

    // "32 counts, 4 walls, improver", "Intro 16 counts" under the last counts
    private bool AreFactsBelow(TextLine line) => line.End - line.Start < 120 && _tag is null
        && (char.IsAsciiDigit(_text[line.Start])
            ? CountLabel.Read(_text, line.Start, line.End) is not { Places.Count: > 1 } && (SentenceReader.HasWord(_text.AsSpan(line.Start,
                line.End - line.Start), "count")
                || SentenceReader.HasWord(_text.AsSpan(line.Start, line.End - line.Start), "wall"))
            : StartsWithWord(_text.AsSpan(line.Start, line.End - line.Start), "intro") || StartsWithWord(_text.AsSpan(line.Start, line.End - line.Start),
                "choreographed")
            || StartsWithWord(_text.AsSpan(line.Start, line.End - line.Start), "start"))
        && !HasCountsAfter(line) && _heading.IsFacts(line);

    // "Page 1 of 2", "Corn Dolly (continued)", "P.T.O."
    private bool IsPageMark(TextLine line)
    {
        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start);
        bool page = words.Length < 60 && (PageMark().IsMatch(words) || (_heading.Title.Length > 2
            && words.StartsWith(_heading.Title, StringComparison.OrdinalIgnoreCase)
            && PageMark().IsMatch(words[_heading.Title.Length..])));
        if (page)
        {
            _notes.Add(new Note("remark", words.ToString(), line.Span));
        }

        return page;
    }

    [GeneratedRegex(@"^\W*(?:pages?|p\.?|pg\.?)\s*\d+(?:\s*(?:of|/|-)\s*\d+)?\W*$|^\W*(?:\(?continued|cont(?:'d|d|\.)?|p\.? ?t\.? ?o\.?|over|turn over"
        + @"|please turn over)(?: overleaf| over| on next page)?\W*$"
        + @"|^\W*\d+ (?:of|/) \d+\W*$", RegexOptions.IgnoreCase)]
    private static partial Regex PageMark();

    /// <summary>"Number of walls: 4" under the last counts.</summary>
    private bool IsFactBelow(TextLine line)
    {
        int colon = _text.IndexOf(':', line.Start, line.End - line.Start);
        if (colon <= line.Start || colon - line.Start >= LongestKey || !char.IsLetter(_text[line.Start]))
        {
            return false;
        }

        // "Count: 31-32 stomp R, L" is danced
        string? key = HeadingReader.KeyOf(_text.AsSpan(line.Start, colon - line.Start).TrimEnd());
        bool bare = key is not ("counts" or "walls") || !_text.AsSpan(colon + 1, line.End - colon - 1).Trim().ContainsAnyExceptInRange('0', '9');
        return bare && key is "counts" or "walls" or "level" or "intro" or "music" or "by" or "bpm" && !HasCountsAfter(line)
            && !SentenceReader.HasWord(_text.AsSpan(colon, line.End - colon), "restart") && !SentenceReader.HasWord(_text.AsSpan(colon, line.End - colon),
                "tag");
    }

    // "Then start wall 5.", "Now carry on with wall 3 as usual", under the counts of a tag that is danced when its wall is over
    private bool GoesOnAfterTag(ReadOnlySpan<char> words) => _tag is not null && _section is { Lines.Count: > 0 } && words.Length < 80
        && !words.Contains("restart", StringComparison.OrdinalIgnoreCase) && OnWithTheDance().IsMatch(words);

    [GeneratedRegex(@"^\W*(?:and |then |now |so )*(?:start|begin|continue|carry on|go on|go|dance|on|keep going|back)\b(?: (?:with|into|to|the|dance"
        + @"|on|from|dancing|again))*"
        + @" (?:the )?(?:(?:next|new) wall|wall (?:\d{1,2}|\p{L}{3,6})|\d(?:rd|th|nd) wall|\p{L}{4,7} wall)"
        + @"(?: (?:from|the|top|beginning|start|as|usual|normal|normally|again|on|facing|at|\d{1,2}:\d\d|\d{1,2} ?o['’]?clock))*\W*$",
        RegexOptions.IgnoreCase)]
    private static partial Regex OnWithTheDance();

    /// <summary>"(R)" or "**" among the counts: the mark that a sentence elsewhere begins with, which tells what it means.</summary>
    private bool IsMarkOfBreak(TextLine line)
    {
        string mark = _text[line.Start..line.End];
        bool marks = mark.Length <= LongestMark && _section is { Lines.Count: > 0 } && _lines.Exists(l => l.Trimmed(_text) is var other
            && other.End - other.Start > mark.Length + 8
            && other.Start != line.Start && _text.AsSpan(other.Start, other.End - other.Start) is var words && words.StartsWith(mark, StringComparison.Ordinal)
            && SentenceReader.LooksLikeSentence(words));
        if (marks)
        {
            RememberMark(line);
        }

        return marks;
    }

    private const int LongestMark = 6;

    // after how many counts a mark stands among them
    private readonly Dictionary<string, Counts> _marks = new(StringComparer.Ordinal);

    private void RememberMark(TextLine line)
    {
        if (line.End > line.Start && line.End - line.Start <= LongestMark && _tag is null && _section is { Lines.Count: > 0 } section)
        {
            _ = _marks.TryAdd(_text[line.Start..line.End], _sectionsLength + section.Length);
        }
    }

    /// <summary>"* Restart on wall 3", where a star stands among the counts: the sentence behind the mark, and the place of the mark.</summary>
    private PendingSentence Placed(PendingSentence sentence)
    {
        if (_marks.Count == 0)
        {
            return sentence;
        }

        ReadOnlySpan<char> words = _text.AsSpan(sentence.Line.Start, sentence.Line.End - sentence.Line.Start);
        foreach ((string mark, Counts place) in _marks)
        {
            if (words.StartsWith(mark, StringComparison.Ordinal) && words.Length > mark.Length + 4 && !char.IsLetterOrDigit(words[mark.Length])
                && words[mark.Length] != mark[^1])
            {
                TextLine rest = (sentence.Line with { Start = sentence.Line.Start + mark.Length }).Trimmed(_text);
                return sentence with { Line = rest, Here = place };
            }
        }

        return sentence;
    }

    // whether lines under a heading tell restarts without the word
    private bool _underRestarts;

    // "RESTARTS" in a line of its own, over "Wall 3 - after 16 counts"
    private bool IsHeadOfRestarts(ReadOnlySpan<char> words, int index)
    {
        if (words.Length > 14 || !(StartsWithWord(words, "restart") || StartsWithWord(words, "restarts")) || words.ContainsAny(' ', '*', '#'))
        {
            return false;
        }

        for (int at = index + 1; at < _lines.Count; at++)
        {
            TextLine next = _lines[at].Trimmed(_text);
            if (next.Start < next.End && !IsRule(next))
            {
                ReadOnlySpan<char> under = _text.AsSpan(next.Start, next.End - next.Start);
                return SentenceReader.NamesWall(under) && under.ContainsAnyInRange('0', '9');
            }
        }

        return false;
    }

    // '"Pilot Gig Race"' under "PILOT GIG RACE"
    private bool SaysTitleAgain(TextLine line)
    {
        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start).Trim(" \"“”*~'’.!");
        if (words.Length == 0 || !words.Equals(_heading.Title.AsSpan().Trim(" \"“”*~'’.!"), StringComparison.OrdinalIgnoreCase))
        {
            return false;
        }

        _notes.Add(new Note("remark", words.ToString(), line.Span));
        return true;
    }
}
