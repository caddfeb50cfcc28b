using System.Globalization;
using System.Text.RegularExpressions;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose.Reading.Sentences;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

// Lines of counts: their labels, and the runs of counts within one line.
internal sealed partial class TextReaderRun
{
    /// <summary>A count line; one physical line may hold several runs of counts one after the other.</summary>
    private void ReadCounts(TextLine line, CountLabel label)
    {
        if (_section is null)
        {
            OpenSection("", null, new TextLine(line.Number, line.Start, line.Start));
        }

        TextLine? option = OptionAtEnd(line, label);
        if (option is TextLine easier)
        {
            TextLine rest = new(line.Number, easier.End, line.End);
            ReadCounts((line with { End = easier.Start }).Trimmed(_text), label);
            ReadOption(new TextLine(line.Number, easier.Start, easier.End).Trimmed(_text));
            ClaimIn(rest.Start, rest.End);
            return;
        }

        TextLine? told = BreakAtEnd(line, label);
        if (told is TextLine cut)
        {
            line = line with { End = cut.Start };
            line = line.Trimmed(_text);
            if (line.End <= label.End)
            {
                // "7&  *Restart wall 5*": no steps stand before it, and the counts are asked about as those that hold nothing
                _sentences.Add(new PendingSentence(cut, _tracks.Count - 1, null));
                return;
            }
        }

        if (IsEightOfItsOwn(label))
        {
            OpenNext("", new TextLine(line.Number, line.Start, line.Start));
        }

        foreach ((CountLabel run, int start, int end) in Runs(line, label))
        {
            if (start > line.Start && run.Places[0].Place == Counts.Zero && FirstNumber(run) == 1
                && _section is { Lines.Count: > 0, Offset: null or 0, Claimed: null } && _tag is null)
            {
                // two eights in a paragraph
                OpenNext("", new TextLine(line.Number, start, start));
            }

            ReadRun(new TextLine(line.Number, start, end), run);
        }

        if (told is TextLine sentence)
        {
            Counts danced = _sectionsLength + (_tag is null ? _section?.Length ?? Counts.Zero : Counts.Zero);
            _sentences.Add(new PendingSentence(sentence, TrackHere, danced > Counts.Zero && TrackHere < 0 ? danced : null));
        }
    }

    /// <summary>"12 walk R, L", "34 step R, pivot 1/2 L": two counts without a gap, where they are those that come next.</summary>
    private CountLabel? InTwos(CountLabel? label)
    {
        if (label is not { Places: [{ Number: > 11 and < 79 and int both, Place.IsWhole: true }] } || both % 10 != (both / 10) + 1)
        {
            return label;
        }

        int danced = _section is { } section ? section.Length.Value.Floor + (section.Offset ?? 0) : 0;
        int first = both / 10;
        bool begins = _section is null or { Lines.Count: 0 } && both != _sectionsLength.Value.Floor + 1;
        bool comesNext = (first == (danced % 8) + 1 && both != danced + 1 && (danced < 8 || first == 1)) || begins;
        return comesNext ? label.InTwos() : label;
    }

    // "3-4 turn 1/2 L stepping R back, turn 1/2 L stepping L forward. Option: walk R, L": up to the next cell of a table
    private TextLine? OptionAtEnd(TextLine line, CountLabel label)
    {
        ReadOnlySpan<char> words = _text.AsSpan(label.End, line.End - label.End);
        if (!words.Contains("option", StringComparison.OrdinalIgnoreCase) && !words.Contains("alternative", StringComparison.OrdinalIgnoreCase))
        {
            return null;
        }

        Match found = Option().Match(_text[label.End..line.End]);
        if (!found.Success || found.Index < 4)
        {
            return null;
        }

        int start = label.End + found.Groups[found.Groups[1].Success ? 1 : 2].Index;
        int end = _text.AsSpan(start, line.End - start).IndexOfAny(Edges) is >= 0 and int edge ? start + edge : line.End;
        bool bracketed = _text[start - 1] == '(' && _text.LastIndexOf(')', end - 1, end - start) is > 0;
        return new TextLine(line.Number, start, bracketed ? _text.LastIndexOf(')', end - 1, end - start) : end);
    }

    [GeneratedRegex(@"(?:[.;(,]|\s[-–—/|])\s*((?:an |or )?(?:easy |easier )?(?:option(?:al)?|alternative|alternatively)\s?[:–—-])"
        + @"|\s((?:easy|easier) option\s?:)", RegexOptions.IgnoreCase)]
    private static partial Regex Option();

    // "8& recover R, step L to side     ## RESTART WALL 3": what stands behind the steps, apart from them
    private TextLine? BreakAtEnd(TextLine line, CountLabel label)
    {
        ReadOnlySpan<char> words = _text.AsSpan(label.End, line.End - label.End);
        if (!words.Contains("restart", StringComparison.OrdinalIgnoreCase) && !words.Contains("tag", StringComparison.OrdinalIgnoreCase))
        {
            return null;
        }

        Match found = EndBreak().Match(_text[label.End..line.End]);
        if (!found.Success || !SentenceReader.HasWord(found.Value, "wall") || found.Value.AsSpan().IndexOfAnyInRange('0', '9') < 0)
        {
            return null;
        }

        return new TextLine(line.Number, label.End + found.Index, line.End);
    }

    [GeneratedRegex(@"(?:\s{3,}|\s*[*#=~<>]{1,3}\s*|\s+[(\[])"
        + @"(?:easy |\d |(?:on |in |during )?(?:the )?(?:walls? ?\d[^:*,;]{0,20}|\d(?:st|nd|rd|th) wall)[:,;]? (?:the )?)?"
        + @"(?:restart|tag)\b[^*]*[)\]*#=~<>]*$", RegexOptions.IgnoreCase)]
    private static partial Regex EndBreak();

    // "9-16 ..." after "1-8 ...", each eight in a line of its own
    private bool IsEightOfItsOwn(CountLabel label) => _tag is null && _section is { Claimed: null, Title: "", Lines: [.., var before] } section
        && label.Places.Count >= 8
        && FirstNumber(label) == section.Length.Value.Floor + (section.Offset ?? 0) + 1 && (FirstNumber(label) - 1) % 8 == 0
        && before.Counts.End - before.Counts.Start == Counts.FromWhole(8) && section.Length == Counts.FromWhole(8)
        && LastNumber(label) - FirstNumber(label) == 7;

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
            bool starts = (char.IsAsciiDigit(c) || c == '&' || c is '(' or '[') && i > label.End
                && (char.IsWhiteSpace(_text[i - 1]) || _text[i - 1] is ',' or ';' or '|' or '/' or '.' or ')' or ']' or ':');
            if (starts && _text[i - 1] == '/' && i >= 2 && char.IsAsciiDigit(_text[i - 2]))
            {
                continue;
            }

            if (!starts || (depth > 0 && c is not ('(' or '[')) || (char.IsAsciiDigit(c) && ClockWords.IsHour(_text, i, line.End, _state.Lexicon)))
            {
                continue;
            }

            if (CountLabel.Read(_text, i, line.End) is not CountLabel next || next.End >= line.End)
            {
                continue;
            }

            if (IsLoneAnd(next))
            {
                if (AndIsCount(label, i, next, line.End))
                {
                    runs.Add((label, start, BeforeBlanks(i, label.End)));
                    label = next;
                    start = i;
                    i = next.End - 1;
                    depth = 0;
                }

                continue;
            }

            bool fraction = StartsWithFraction(next.End, line.End);
            if (c is not ('(' or '[') && NextWordIsNoMove(next, line.End) && !(fraction && FirstNumber(next) == last + 1))
            {
                continue;
            }

            bool follows = FirstNumber(next) == last + 1
                || (next.Places[0].Place.IsWhole is false && next.Places.Count > 1 && FirstNumber(next) == last + 1);
            int named = NamedCount(i, label.End);
            int before = (named > 0 ? named : i) - 1;
            while (before > label.End && char.IsWhiteSpace(_text[before]))
            {
                before--;
            }

            bool separated = _text[before] is ',' or ';' or '|' or '/' or '.' or ':' or ')' or ']';
            follows |= separated && FirstNumber(next) == 1 && last >= 8 && last % 4 == 0 && next.Places.Count > 1;
            // "1 R to side 2-3 L drag 4 L tap": where one line has several labels already, a bare number goes on with them
            bool many = next.Places.Count > 1 || ((label.Places.Count == 1 || runs.Count > 0 || GoesOnBehind(next, line.End) || !TellsSeveral(next, line.End))
                && CountsOn(i, next, line.End));
            // "5) step L forward 6) turn", "1/ R to side 2/ L beside R": marked as the count before it is
            many |= c is not ('(' or '[') && label.Places.Count == 1 && (_text[next.Span.End] is ')' or ':'
                || (_text[next.Span.End] == _text[label.Span.End] && _text[next.Span.End] is '/' or '°' or 'º' or '_' or ',' or '.' or '-' or '='));
            // "count 1 R to side count 2 L beside R"
            many |= named > 0 && NamedCount(first.Span.Start, line.Start) == line.Start;
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

    /// <summary>
    /// A line of counts together with the lines it goes on in: words wrapped to the next line, without counts of their own, which go on with the moves.
    /// </summary>
    /// <param name="line">The line, without blanks at its ends.</param>
    /// <param name="index">Its index; moved on to the last line that was taken.</param>
    private TextLine WithContinuations(TextLine line, ref int index)
    {
        if (CountLabel.Read(_text, line.Start, line.End) is not CountLabel label || label.End >= line.End)
        {
            return line;
        }

        int indented = line.Start - _lines[index].Start;
        while (index + 1 < _lines.Count)
        {
            TextLine next = _lines[index + 1].Trimmed(_text);
            if (next.Start == next.End || QuickCount(index + 1) is not null || !GoesOn(line, next, next.Start - _lines[index + 1].Start > indented + 1))
            {
                break;
            }

            line = line with { End = next.End };
            index++;
        }

        return line;
    }

    /// <summary>
    /// The label of a line that stands for a quick count between two others: "1 cross R over L", "a step L to side", "2 step R in place". An "a" that is
    /// not between two counts that follow each other is the article.
    /// </summary>
    private CountLabel? QuickCount(int index)
    {
        TextLine line = _lines[index].Trimmed(_text);
        if (CountLabel.ReadQuick(_text, line.Start, line.End) is not CountLabel quick)
        {
            return null;
        }

        return Neighbour(index, -1) is CountLabel before && Neighbour(index, 1) is CountLabel after
            && after.Places[0].Place.IsWhole && FirstNumber(after) == LastNumber(before) + 1 ? quick : null;
    }

    private CountLabel? Neighbour(int index, int way)
    {
        for (int i = index + way; i >= 0 && i < _lines.Count; i += way)
        {
            TextLine line = _lines[i].Trimmed(_text);
            if (line.Start < line.End)
            {
                return CountLabel.Read(_text, line.Start, line.End) is { } label && label.End < line.End ? label : null;
            }
        }

        return null;
    }

    private bool GoesOn(TextLine line, TextLine next, bool isIndented)
    {
        ReadOnlySpan<char> words = _text.AsSpan(next.Start, next.End - next.Start);
        int colon = words.IndexOf(':');
        bool clock = colon > 0 && colon + 1 < words.Length && char.IsAsciiDigit(words[colon - 1]) && char.IsAsciiDigit(words[colon + 1]);
        bool headed = colon is >= 0 and < 16 && !clock && !words[..colon].Contains(',');
        bool opens = StartsWithWord(words, "option") || StartsWithWord(words, "options") || StartsWithWord(words, "easier") || StartsWithWord(words, "harder")
            || StartsWithWord(words, "restart") || StartsWithWord(words, "tag") || StartsWithWord(words, "bridge") || StartsWithWord(words, "ending")
            || StartsWithWord(words, "sequence") || StartsWithWord(words, "part") || StartsWithWord(words, "track") || StartsWithWord(words, "repeat")
            || StartsWithWord(words, "start") || StartsWithWord(words, "begin") || StartsWithWord(words, "end");
        if (headed || opens || words[0] is '#' or '/' or '[' or '*' or '=' or '-' or '>' || _text[next.Start - 1] is '|' || (next.Start > 1
            && _text[next.Start - 2] is '|') || SectionHeading(words) is not null
            || SentenceReader.LooksLikeSentence(words))
        {
            return false;
        }

        CountLabel? own = CountLabel.Read(_text, next.Start, next.End);
        CountLabel? glued = own ?? GluedLabel(next);
        bool upToCounts = false;
        if (glued is not null)
        {
            (bool several, int reached, upToCounts) = RunsReach(line);
            bool linked = own is null || (StartsWithWord(words, "and") && own.Places.Count > 2);
            if (!linked || !(several || upToCounts) || FirstNumber(glued) != reached + 1)
            {
                return false;
            }

            // "1-2 cross, side 3&4 right sailor step 5-6 cross, side" and below it "and 7&8 behind, ...": one stretch of words
            return true;
        }

        upToCounts = RunsReach(line).UpToCounts;
        char last = _text[line.End - 1];
        string ending = _text[Math.Max(line.Start, line.End - 6)..line.End].ToLowerInvariant();
        bool open = last is ',' or '&' or '/' or '+' or '(' || ending.EndsWith(" and", StringComparison.Ordinal)
            || ending.EndsWith(" then", StringComparison.Ordinal)
            || ending.EndsWith(" with", StringComparison.Ordinal) || ending.EndsWith(" to", StringComparison.Ordinal)
            || ending.EndsWith(" the", StringComparison.Ordinal)
            || ending.EndsWith(" on", StringComparison.Ordinal) || upToCounts;
        if (!open && !isIndented && !char.IsLower(words[0]))
        {
            return false;
        }

        List<Term> terms = TermReader.Read(_text, next.Start, next.End, _state.Lexicon);
        int unknown = terms.Count(t => t.Kind == TermKind.Unknown);
        return terms.Exists(t => t.Kind is TermKind.Move or TermKind.Foot or TermKind.Side or TermKind.Turn or TermKind.Amount or TermKind.WeightOn)
            && (unknown == 0 || (open && unknown * 3 <= terms.Count));
    }

    /// <summary>
    /// Whether a line holds several runs of counts, up to which number they go, and whether the last of them ends the line with its moves on the next:
    /// "1&amp;2 behind, side, side 3&amp;4 behind, side, side 5-6".
    /// </summary>
    private (bool Several, int Reached, bool UpToCounts) RunsReach(TextLine line)
    {
        if (CountLabel.Read(_text, line.Start, line.End) is not CountLabel first)
        {
            return (false, 0, false);
        }

        List<(CountLabel Label, int Start, int End)> runs = Runs(line, first);
        int reached = LastNumber(runs[^1].Label);
        int start = line.End;
        while (start > line.Start && (char.IsAsciiDigit(_text[start - 1]) || _text[start - 1] is '&' or '-' or '–'))
        {
            start--;
        }

        bool ends = start > first.End + 1 && start < line.End && char.IsWhiteSpace(_text[start - 1])
            && CountLabel.Read(_text, start, line.End) is CountLabel hanging && hanging.End == line.End && hanging.Places.Count > 1
            && FirstNumber(hanging) == reached + 1;
        return ends ? (true, LastNumber(CountLabel.Read(_text, start, line.End)!), true) : (runs.Count > 1, reached, false);
    }

    private int BeforeBlanks(int at, int from)
    {
        int before = at - 1;
        while (before > from && char.IsWhiteSpace(_text[before]))
        {
            before--;
        }

        return before + 1 - (_text[before] is ',' or ';' or '|' or '/' or '.' ? 1 : 0);
    }

    private static bool IsLoneAnd(CountLabel label) => label.Places is [{ Number: 0, Place.IsWhole: false }];

    /// <summary>
    /// Whether an &amp; in a line in which each count stands by itself is a count too: "5 LF rock side &amp; RF recover 6 LF cross", "(2) cross L (&amp;)
    /// step R".
    /// </summary>
    private bool AndIsCount(CountLabel label, int at, CountLabel and, int end)
    {
        if (label.Places.Count != 1 || at <= label.End)
        {
            return false;
        }

        if (_text[at] is '(' or '[')
        {
            return true;
        }

        // a foot that acts follows, and words that act stand before
        return TermReader.Read(_text, and.End, end, _state.Lexicon) is [{ Kind: TermKind.Foot or TermKind.Side },
        {
            Kind: TermKind.Move or TermKind.Dir
            or TermKind.Part
        }, ..]
            or [{ Kind: TermKind.Move, Meaning.Verb: ActionKind.Step or ActionKind.Recover or ActionKind.Rock }, ..]
            && TermReader.Read(_text, label.End, at, _state.Lexicon).Exists(t => t.Kind is TermKind.Move or TermKind.Dir);
    }

    // where the word "count" in front of a number begins, or 0
    private int NamedCount(int at, int from)
    {
        int end = at;
        while (end > from && _text[end - 1] == ' ')
        {
            end--;
        }

        foreach (string name in (ReadOnlySpan<string>)["count", "counts", "beat", "beats"])
        {
            int start = end - name.Length;
            if (start >= from && _text.AsSpan(start, name.Length).Equals(name, StringComparison.OrdinalIgnoreCase)
                && (start == 0 || !char.IsLetter(_text[start - 1])))
            {
                return start;
            }
        }

        return 0;
    }

    /// <summary>Whether a number in the middle of words is the next count, and not one of something: a foot, a turn or a move follows it.</summary>
    private bool CountsOn(int at, CountLabel next, int end)
    {
        int before = BeforeBlanks(at, 0);
        int start = before;
        while (start > 0 && char.IsLetter(_text[start - 1]))
        {
            start--;
        }

        string word = _text[start..before].ToLowerInvariant();
        bool ofOther = word is "on" or "count" or "counts" or "for" or "to" or "wall" or "and" or "section" or "steps" or "hold" or "of" or "from"
            || (word is "in" && !IsBehindFoot(start));
        return !ofOther && TermReader.Read(_text, next.End, end, _state.Lexicon) is [
        {
            Kind: TermKind.Foot or TermKind.Side or TermKind.Amount or TermKind.Turn or TermKind.Dir or TermKind.Part or TermKind.BothFeet or TermKind.Size
            or TermKind.Move
        }, ..];
    }

    // "RF in, LF in 4 clap": where a foot goes
    private bool IsBehindFoot(int at)
    {
        int end = BeforeBlanks(at, 0);
        int start = end;
        while (start > 0 && char.IsLetter(_text[start - 1]))
        {
            start--;
        }

        return _text.AsSpan(start, end - start) is "R" or "r" or "L" or "l" or "RF" or "rf" or "LF" or "lf" or "right" or "left" or "Right" or "Left" or "foot";
    }

    // "3 claps", "4 hip bumps", "2 sways right": how many there are; "3 hold", "4 clap" are counts
    private bool TellsSeveral(CountLabel next, int end)
    {
        int at = next.End;
        for (int word = 0; word < 2; word++)
        {
            int start = at;
            while (at < end && char.IsLetter(_text[at]))
            {
                at++;
            }

            ReadOnlySpan<char> told = _text.AsSpan(start, at - start);
            bool isPart = told is "heels" or "toes" or "hips" or "knees" or "hands" or "across" or "forwards" or "backwards";
            if (!isPart && told.Length > 3 && told[^1] is 's' or 'S' && told[^2] is not ('s' or 'S'))
            {
                return true;
            }

            while (at < end && _text[at] == ' ')
            {
                at++;
            }
        }

        return false;
    }

    // "5-6 sway left sway right 7 sway left 8 drag right": the count behind the next one is told in the same manner
    private bool GoesOnBehind(CountLabel next, int end)
    {
        for (int at = next.End + 2; at < end; at++)
        {
            if (char.IsAsciiDigit(_text[at]) && char.IsWhiteSpace(_text[at - 1]) && CountLabel.Read(_text, at, end) is { } behind)
            {
                return behind.End < end && FirstNumber(behind) == LastNumber(next) + 1 && !NextWordIsNoMove(behind, end) && CountsOn(at, behind, end);
            }
        }

        return false;
    }

    private bool StartsWithFraction(int at, int end)
    {
        ReadOnlySpan<char> rest = _text.AsSpan(at, end - at).TrimStart();
        return rest.Length > 0 && (rest[0] is '¼' or '½' or '¾' or '⅛' or '⅜' or '⅝' or '⅞');
    }

    private bool NextWordIsNoMove(CountLabel label, int end)
    {
        ReadOnlySpan<char> rest = _text.AsSpan(label.End, end - label.End).TrimStart();

        // "3-4 x L over R": a cross, since no range of counts says how often
        return rest.Length == 0 || StartsWithWord(rest, "times") || StartsWithWord(rest, "counts") || StartsWithWord(rest, "count")
            || (StartsWithWord(rest, "x") && label.Places.Count == 1) || rest[0] is ')' or ']' or '/' or '¼' or '½' or '¾' || StartsWithWord(rest, "o");
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

    /// <summary>
    /// Counts that stand after their moves: "walk R, L (1-2) shuffle R (3&amp;4)", "walk forward R, L   1-2". Each with the stretch of its words; empty
    /// where the line
    /// is not of that kind.
    /// </summary>
    private List<(CountLabel Label, int From, int To)> TrailingLabels(TextLine line)
    {
        List<(CountLabel, int, int)> runs = [];
        int from = line.Start;
        int told = 0;
        for (int i = line.Start; i < line.End; i++)
        {
            if (_text[i] is not ('(' or '[') || _text.IndexOf(_text[i] == '(' ? ')' : ']', i, line.End - i) is not (> 0 and int close))
            {
                continue;
            }

            if (CountLabel.Read(_text, i + 1, close) is { } label && label.End == close && (runs.Count == 0
                || FirstNumber(label) == told + 1 || (IsLoneAnd(label) && !IsLoneAnd(runs[^1].Item1)
                && _text.AsSpan(from, i - from).ContainsAnyInRange('a', 'z')))
                && i > from)
            {
                // "(7) left to side (&) right across left (8)": an & goes on with the count before it
                told = IsLoneAnd(label) ? told : LastNumber(label);
                runs.Add((label, from, i));
                from = close + 1;
                i = close;
            }
        }

        bool wholeLine = runs.Exists(r => r.Item1.Places.Count > 1) && (_text.AsSpan(from, line.End - from).Trim().IsEmpty
            || (TellsNoMove(from, line.End) && !SentenceReader.LooksLikeSentence(_text.AsSpan(line.Start, line.End - line.Start))));
        if (wholeLine)
        {
            return runs;
        }

        // "..., counts 1 to 8, no &s" tells no more than its counts
        int end = BeforeRemark(line with { End = BeforeClock(line) });
        int start = end;
        while (start > line.Start && (char.IsAsciiDigit(_text[start - 1]) || _text[start - 1] is '&' or '-' or '–' or ',' or '+'))
        {
            start--;
        }

        start = SpreadLabel(line.Start, start, end);

        int gap = _text.LastIndexOf("  ", end - 1, end - line.Start, StringComparison.Ordinal);
        if (gap > line.Start + 2 && gap + 2 < end && end - gap < 24 && CountLabel.Read(_text, gap + 2, end) is { Places.Count: > 1 } spread
            && spread.End == end)
        {
            start = gap + 2;
        }

        bool apart = start > line.Start + 2 && start < end && char.IsWhiteSpace(_text[start - 1]);
        if (!apart || CountLabel.Read(_text, start, end) is not { } last || last.End != end)
        {
            return [];
        }

        // where the line before has its counts behind, too, a repeat and a single count are told so
        bool goesOn = _section is { Lines: [.., var before] } && before.LabelSpan.Start > before.Span.Start + 2
            && Counts.FromWhole(FirstNumber(last) - 1 - (_section.Offset ?? 0)) == before.Counts.End;
        if (last.Places.Count < 2 && !goesOn)
        {
            return [];
        }

        // "Repeat 1-4     5-8": the counts that come next, and no others, are those of the line itself
        int stop = WithoutCountWord(line.Start, start);
        bool moves = TellsMoves(line with { End = stop }, start - stop > 1, goesOn)
            || (last.Places.Count > 1 && RepeatsOn(line.Start, start, FirstNumber(last)));
        return moves ? [(last, line.Start, EndOfWords(line.Start, stop, out _))] : [];
    }

    private bool RepeatsOn(int from, int to, int first)
    {
        if (_section is not { Lines.Count: > 0 } section || first != section.Length.Value.Floor + (section.Offset ?? 0) + 1)
        {
            return false;
        }

        List<Term> terms = TermReader.Read(_text, from, to, _state.Lexicon);
        return !terms.Exists(t => t.Kind is TermKind.Unknown) && (terms.Exists(t => t.Kind is TermKind.Repeat or TermKind.RepeatMirrored)
            || (to - from < 30 && TellsAgain().IsMatch(_text.AsSpan(from, to - from))));
    }

    /// <summary>Whether the words before counts at the end of a line are what is danced on them.</summary>
    /// <param name="words">The words.</param>
    /// <param name="parted">Whether more than a blank parts them from the counts.</param>
    /// <param name="goesOn">Whether the line before has its counts behind it, too, and these go on from there.</param>
    private bool TellsMoves(TextLine words, bool parted, bool goesOn)
    {
        List<Term> terms = TermReader.Read(_text, words.Start, words.End, _state.Lexicon);
        int unknown = terms.Count(t => t.Kind is TermKind.Unknown);
        int repeat = terms.FindIndex(t => t.Kind is TermKind.Repeat or TermKind.RepeatMirrored);
        int move = terms.FindIndex(t => t.Kind is TermKind.Move or TermKind.Dir or TermKind.Part);
        bool again = goesOn && (repeat >= 0 || TellsAgain().IsMatch(_text.AsSpan(words.Start, words.End - words.Start)));
        bool named = terms is [{ Kind: TermKind.Move, Meaning.Figures: [{ Rows.Count: > 1 }, ..] }];

        // "vine right with touch, repeat to the left, 1-8"; but "repeat 1-4" has no counts of its own
        bool repeats = repeat < 0 || goesOn || (parted && move >= 0 && move < repeat && repeat < terms.Count - 1);
        return (terms.Count > 1 || named || again) && (move >= 0 || again) && repeats && (unknown == 0 || (goesOn && unknown * 3 <= terms.Count));
    }

    [GeneratedRegex(@"\b(?:again|once more)\b", RegexOptions.IgnoreCase)]
    private static partial Regex TellsAgain();

    /// <summary>Where the counts at the end of a line begin, when blanks part them: "walk walk shuffle, 1-2 3&amp;4".</summary>
    private int SpreadLabel(int from, int start, int end)
    {
        foreach (string word in (ReadOnlySpan<string>)[" to ", " thru ", " through "])
        {
            if (start - from > word.Length + 3 && start < end && _text.AsSpan(start - word.Length, word.Length).Equals(word, StringComparison.OrdinalIgnoreCase)
                && char.IsAsciiDigit(_text[start - word.Length - 1]) && char.IsWhiteSpace(_text[start - word.Length - 2]))
            {
                return start - word.Length - 1;
            }
        }

        int spread = start;
        for (int at = start - 1; at > from && start < end && (char.IsAsciiDigit(_text[at]) || _text[at] is '&' or '-' or '–' or ',' or ' '); at--)
        {
            bool begins = char.IsAsciiDigit(_text[at]) && _text[at - 1] == ' ' && at > from + 3 && !char.IsLetterOrDigit(_text[at - 2]);
            spread = begins && CountLabel.Read(_text, at, end) is { } label && label.End == end ? at : spread;
        }

        return spread;
    }

    // "step R, touch L - counts 1-2", "on counts 1 to 8", "straight counts 1-8": the words before the numbers
    private int WithoutCountWord(int from, int at)
    {
        bool counts = false;
        int stop = at;
        while (at > from)
        {
            int end = at;
            while (end > from && (char.IsWhiteSpace(_text[end - 1]) || _text[end - 1] is ',' or '-' or '–' or '(' or '.' or ';' or '='))
            {
                end--;
            }

            int start = end;
            while (start > from && char.IsLetter(_text[start - 1]))
            {
                start--;
            }

            stop = end;
            string word = start == end ? "" : _text[start..end].ToLowerInvariant();
            bool next = word is "counts" or "count" or "cts" or "ct" or "beats"
                || (word is "straight" or "on" or "for" && (counts || end == at - 1)) || (word is "all" or "the" && counts);
            if (!next)
            {
                break;
            }

            counts |= word[0] is 'c' or 'b';
            at = start;
        }

        return stop;
    }

    [GeneratedRegex(@"[,;(]?\s*(?:no|without|with no)(?: any)? (?:&'?s?|ands?|syncopation|quick counts?)\s?[).]?$|,?\s*(?:all )?(?:straight|even)(?: counts)?$",
        RegexOptions.IgnoreCase)]
    private static partial Regex CountRemark();

    private int BeforeRemark(TextLine line)
    {
        int end = line.End;
        if (end - line.Start > 24 && _text[end - 1] is 's' or 'n' or 't' or '.' or ')' or '&' or 'd'
            && CountRemark().Match(_text, Math.Max(line.Start, end - 40), Math.Min(40, end - line.Start)) is { Success: true } remark)
        {
            end = remark.Index;
        }

        while (end > line.Start && char.IsWhiteSpace(_text[end - 1]))
        {
            end--;
        }

        return end;
    }

    // "step R forward, pivot 1/2 left     1-2  (3:00)": where the line ends without its clock
    private int BeforeClock(TextLine line)
    {
        int end = line.End;
        if (end - line.Start > 8 && _text[end - 1] is ')' or ']' && _text.LastIndexOfAny(['(', '['], end - 1, end - line.Start) is int open and > 0
            && end - open < 14 && TermReader.Read(_text, open, end, _state.Lexicon).Exists(t => t.Kind == TermKind.Clock))
        {
            end = open;
            while (end > line.Start && char.IsWhiteSpace(_text[end - 1]))
            {
                end--;
            }
        }

        return end;
    }

    /// <summary>Holds a clock that stands apart from the words against where the last line of the section ends.</summary>
    private void ClaimIn(int start, int end)
    {
        if (_section is { Lines.Count: > 0 } section
            && TermReader.Read(_text, start, end, _state.Lexicon).Find(t => t.Kind == TermKind.Clock) is { Meaning: { } meaning } clock)
        {
            WrittenLine last = section.Lines[^1];
            FacingClaim claim = new(Facing.FromEighths(meaning.Value), last.Places.Max(p => p.Place), clock.Span);
            section.Lines[^1] = last with { Claims = [.. last.Claims, claim] };
        }
    }

    private void ReadRun(TextLine line, CountLabel label, int? wordsStart = null)
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

        places = RunOver(line, label, places, section, out Counts? beyond);
        if (places.Count > 1 && wordsStart is null && CountsInBrackets(line with { Start = label.End }) is { } inside && inside.Count > places.Count
            && inside[0].Number == label.Places[0].Number && inside[^1].Place == label.Places[^1].Place)
        {
            // "1-4 rock R to side (1), recover (2), behind (3), side (&), cross (4)": the words know of a quick count, the label does not
            places = inside.ConvertAll(p => p with
            {
                Number = p.Number - offset,
                Place = p.Place - Counts.FromWhole(offset),
                Label = CountGrid.LabelOf(p.Place - Counts.FromWhole(offset)),
            });
        }

        ReadPlaces(line, places, wordsStart ?? label.End, _text.Substring(label.Span.Start, label.Span.Length), label.Span);
        if (beyond is Counts end)
        {
            CarryOver(section, end);
        }
    }

    private void ReadPlaces(TextLine line, List<LabelPlace> places, int wordsStart, string printed, TextSpan labelSpan)
    {
        SectionBuilder section = _section!;
        RememberWeight(places);
        TableRow row = RowOf(line, wordsStart);
        LineContent content = new LineReader(_state).Read(places, row.WordsStart, row.WordsEnd, line.Number, printed);
        places = content.Places is { } counted ? [.. counted] : places;
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
        HoldAgainstName(content.Moves);
        CheckRow(row, made, printed);
        _state.SectionLines.Add(section.Lines[^1]);
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
            else if (int.TryParse(inside, NumberStyles.None, CultureInfo.InvariantCulture, out int count) && count is > 0 and < 100
                && (number == 0 || count == number + 1))
            {
                number = count;
                places.Add(new LabelPlace(inside, count, Counts.FromWhole(count - 1), false));
            }
        }

        return number > 0 ? places : null;
    }

    // "Like (14)  2 comments" holds a number in brackets, and nothing that is danced
    private bool IsDanced(TextLine line) => TermReader.Read(_text, line.Start, line.End, _state.Lexicon).Exists(t => t.Kind is TermKind.Move or TermKind.Dir
        or TermKind.Foot or TermKind.Side or TermKind.Turn or TermKind.Amount);

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
}
