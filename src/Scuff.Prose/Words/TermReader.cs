using Scuff.Diagnostics;
using Scuff.Steps;

namespace Scuff.Prose.Words;

/// <summary>Puts meanings to the words of a line: the longest known phrase first, slips of the fingers mended.</summary>
internal static class TermReader
{
    private static readonly Meaning UnknownMeaning = new(TermKind.Unknown);
    private static readonly Meaning SeparatorMeaning = new(TermKind.Separator);
    private static readonly Meaning DashMeaning = new(TermKind.Dash);
    private static readonly Meaning OpenMeaning = new(TermKind.Open);
    private static readonly Meaning CloseMeaning = new(TermKind.Close);
    private static readonly Meaning FillerMeaning = new(TermKind.Filler);
    private static readonly Meaning AmpMeaning = new(TermKind.Amp);

    /// <summary>The terms of a stretch of text.</summary>
    public static List<Term> Read(string text, int start, int end, Lexicon lexicon, bool plain = false)
    {
        List<WordToken> tokens = Expand(text, WordScanner.Scan(text, start, end), lexicon);
        List<Term> terms = new(tokens.Count);
        bool clocks = tokens.Exists(t => t.Kind == WordTokenKind.Clock);
        int at = 0;
        while (at < tokens.Count)
        {
            WordToken token = tokens[at];
            if (token.Kind == WordTokenKind.Clock)
            {
                terms.Add(new Term(new Meaning(TermKind.Clock) { Value = token.Value }, token.Span, token.Text));
                at++;
                continue;
            }

            if (clocks && ClockWords.Arrival(tokens, at, lexicon) is int arriving)
            {
                // "so that you come to stand on 6 hour": only the clock tells something
                TextSpan said = TextSpan.FromBounds(token.Span.Start, tokens[at + arriving - 1].Span.End);
                terms.Add(new Term(FillerMeaning, said, text[said.Start..said.End]));
                at += arriving;
                continue;
            }

            if (WeightStays(tokens, at) is int staying)
            {
                TextSpan where = TextSpan.FromBounds(token.Span.Start, tokens[at + staying - 1].Span.End);
                terms.Add(new Term(new Meaning(TermKind.WeightOn), where, WordsOf(text, where)));
                at += staying;
                continue;
            }

            if (HowLong(tokens, at) is (int length, int counts))
            {
                TextSpan lasting = TextSpan.FromBounds(token.Span.Start, tokens[at + length - 1].Span.End);
                terms.Add(new Term(new Meaning(TermKind.Filler) { Value = counts }, lasting, WordsOf(text, lasting)));
                at += length;
                continue;
            }

            if (DoneAgain(tokens, at) is int done)
            {
                TextSpan again = TextSpan.FromBounds(token.Span.Start, tokens[at + done - 1].Span.End);
                terms.Add(new Term(new Meaning(TermKind.Repeat), again, WordsOf(text, again)));
                at += done;
                continue;
            }

            if (WeightEach(tokens, at) is int changing)
            {
                TextSpan changed = TextSpan.FromBounds(token.Span.Start, tokens[at + changing - 1].Span.End);
                terms.Add(new Term(new Meaning(TermKind.WeightTakes), changed, WordsOf(text, changed)));
                at += changing;
                continue;
            }

            if (WholeTold(tokens, at, terms) is int whole)
            {
                TextSpan sum = TextSpan.FromBounds(token.Span.Start, tokens[at + whole - 1].Span.End);
                terms.Add(new Term(FillerMeaning, sum, WordsOf(text, sum)));
                at += whole;
                continue;
            }

            if (AsStep(tokens, at, terms, lexicon) is int likewise)
            {
                TextSpan told = TextSpan.FromBounds(token.Span.Start, tokens[at + likewise - 1].Span.End);
                terms.Add(new Term(FillerMeaning, told, WordsOf(text, told)));
                at += likewise;
                continue;
            }

            if (NoWeight(tokens, at) is int refused)
            {
                TextSpan none = TextSpan.FromBounds(token.Span.Start, tokens[at + refused - 1].Span.End);
                terms.Add(new Term(new Meaning(TermKind.WeightNone), none, WordsOf(text, none)));
                at += refused;
                continue;
            }

            if (lexicon.Longest(tokens, at, plain) is (Meaning meaning, int used))
            {
                if (used > 1 && meaning.Kind == TermKind.Move && tokens[at + used - 1].Text == "in" && at + used < tokens.Count
                    && tokens[at + used].Text is "front" or "place" && lexicon.Word(token.Text) is Meaning alone)
                {
                    // "hitch right knee in front of left": no knee goes in
                    (meaning, used) = (alone, 1);
                }

                if (used > 1 && meaning is { Kind: TermKind.Move, Verb: null, NamesAmount: true }
                    && WithoutAmount(tokens, at, used, meaning, lexicon) is (Meaning bare, int fewer))
                {
                    // "sailor quarter right" is "sailor 1/4 right"
                    (meaning, used) = (bare, fewer);
                }

                // a number inside a figure's name is a name; a plain number is not
                TextSpan span = TextSpan.FromBounds(token.Span.Start, tokens[at + used - 1].Span.End);
                WordToken slip = tokens.GetRange(at, used).Find(t => t.IsCorrected);
                WordToken inside = meaning.Kind == TermKind.Move && used > 2
                    ? tokens.GetRange(at + 1, used - 2).Find(t => t.Text is "r" or "l" or "right" or "left" or "rf" or "lf" or "rt" or "lt")
                    : default;
                if (inside.Text is not null && inside.Span == tokens[at + 1].Span
                    && lexicon.Word(token.Text) is { Kind: TermKind.Amount, Value: < 8 } amount)
                {
                    // "quarter left chassé right": the side between belongs to the turn, so this is no name
                    terms.Add(new Term(amount, token.Span, token.Text));
                    at++;
                    continue;
                }

                if (used > 1 && meaning.Kind == TermKind.Move && terms.Count > 1 && terms[^1].Kind is TermKind.Side or TermKind.Foot
                    && terms[^2] is { Kind: TermKind.Move, Meaning: { Verb: not null } }
                    && (terms.Count == 2 || terms[^3].Kind is not (TermKind.Side or TermKind.Foot)
                    || (terms.Count > 3 && terms[^4].Kind is TermKind.Amount or TermKind.Turn))
                    && lexicon.Word(token.Text) is
                    {
                        Kind: TermKind.Dir, Side: null, Direction: Stance.Direction.Forward or Stance.Direction.Back
                        or Stance.Direction.Side
                    } way
                    && lexicon.Longest(tokens, at + 1, plain) is ({ Kind: TermKind.Move }, int rest) && rest == used - 1)
                {
                    // "stepping left back shuffle right forward": the place belongs to the step that has none yet
                    terms.Add(new Term(way, token.Span, token.Text));
                    at++;
                    continue;
                }

                if (used == 2 && meaning is { Kind: TermKind.Move, IsComposable: true } && terms.Count > 1 && terms[^1].Kind is TermKind.Side or TermKind.Foot
                    && terms[^2] is { Kind: TermKind.Move, Meaning: { Verb: null, Figures: [{ Rows.Count: > 2 }, ..] } } && at + 3 < tokens.Count
                    && IsFootWord(tokens[at + 2].Text) && lexicon.Word(tokens[at + 3].Text) is { Kind: TermKind.Dir }
                    && lexicon.Word(token.Text) is { Kind: TermKind.Dir, Side: null } onward)
                {
                    // "shuffle L back rock R back": the rock has a place of its own
                    terms.Add(new Term(onward, token.Span, token.Text));
                    at++;
                    continue;
                }

                if (used == 2 && meaning is { Kind: TermKind.Move, IsComposable: true } && token.Text is "heel" or "toe" && terms.Count > 1
                    && terms[^1].Kind is TermKind.Side or TermKind.Foot && terms[^2] is
                    {
                        Kind: TermKind.Move,
                        Meaning.Verb: ActionKind.Touch or ActionKind.Tap or ActionKind.Dig or ActionKind.Point
                    }
                    && lexicon.Word(token.Text) is { Kind: TermKind.Part } part)
                {
                    // "step right touch left heel forward": what touches, and no move after it
                    terms.Add(new Term(part, token.Span, token.Text));
                    at++;
                    continue;
                }

                if (used == 2 && meaning is { Kind: TermKind.Move, IsComposable: true } && terms.Count > 0
                    && (terms[^1] is { Kind: TermKind.Part, Meaning.Part: "heel" or "toe" } || (terms.Count > 1
                        && terms[^1].Kind is TermKind.Side or TermKind.Foot
                    && terms[^2] is { Kind: TermKind.Part, Meaning.Part: "heel" or "toe" }))
                    && tokens[at + 1].Text is "step" or "steps" && lexicon.Word(token.Text) is { Kind: TermKind.Dir } where)
                {
                    // "R heel forward step together": the place of the heel
                    terms.Add(new Term(where, token.Span, token.Text));
                    at++;
                    continue;
                }

                terms.Add(slip.IsCorrected
                    ? new Term(meaning, span, WordsOf(text, span), true) { SlipSpan = slip.Span, SlipWord = slip.Text }
                    : new Term(meaning, span, WordsOf(text, span)));
                if (inside.Text is not null && lexicon.Word(inside.Text) is Meaning foot)
                {
                    // "kick R ball change", "drop R heel"
                    terms.Add(new Term(foot, inside.Span, inside.Text));
                }

                at += used;
                continue;
            }

            at += ReadOther(text, tokens, at, lexicon, terms);
        }

        EverydayWords.Mark(terms);
        return terms;
    }

    /// <summary>The words of a stretch with one blank between them, as phrases are compared, however they were spaced when typed or pasted.</summary>
    private static string WordsOf(string text, TextSpan span)
    {
        ReadOnlySpan<char> words = text.AsSpan(span.Start, span.Length);
        bool plain = true;
        for (int i = 0; i < words.Length && plain; i++)
        {
            plain = words[i] == ' ' ? i + 1 >= words.Length || !char.IsWhiteSpace(words[i + 1]) : !char.IsWhiteSpace(words[i]);
        }

        return plain ? words.ToString() : string.Join(' ', words.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }

    /// <summary>Short forms with a stroke: o/ for over, w/ for with, i/p for in place, g/vine.</summary>
    private static void JoinSlashed(List<WordToken> tokens)
    {
        for (int i = 0; i + 2 < tokens.Count; i++)
        {
            if (tokens[i].Text == "i" && tokens[i + 1].Text == "." && tokens[i + 2].Text == "e")
            {
                int used = i + 3 < tokens.Count && tokens[i + 3].Text == "." ? 4 : 3;
                tokens[i] = tokens[i] with { Text = "ie", Span = TextSpan.FromBounds(tokens[i].Span.Start, tokens[i + used - 1].Span.End) };
                tokens.RemoveRange(i + 1, used - 1);
            }
        }

        for (int i = 0; i + 1 < tokens.Count; i++)
        {
            if (tokens[i].Kind != WordTokenKind.Word || tokens[i].Text.Length > 1 || tokens[i + 1].Text != "/" || tokens[i + 1].SpaceBefore)
            {
                continue;
            }

            bool glued = i + 2 < tokens.Count && !tokens[i + 2].SpaceBefore && tokens[i + 2].Kind == WordTokenKind.Word;
            string? meant = (tokens[i].Text, glued ? tokens[i + 2].Text : "") switch
            {
                ("o", "") => "over",
                ("w", "o") => "without",
                ("w", _) => "with",
                ("b", "") => "behind",
                ("i", "p") => "inplace",
                ("g", "vine") or ("g", "v") => "grapevine",
                ("x", "o") => "cross",
                _ => null,
            };
            if (meant is null)
            {
                continue;
            }

            bool whole = glued && meant is "inplace" or "grapevine" or "without" or "cross";
            int used = whole ? 3 : 2;
            tokens[i] = tokens[i] with { Text = meant, Span = TextSpan.FromBounds(tokens[i].Span.Start, tokens[i + used - 1].Span.End) };
            tokens.RemoveRange(i + 1, used - 1);
        }
    }

    /// <summary>Puts the words in place of the short forms that stand for them.</summary>
    private static List<WordToken> Expand(string text, List<WordToken> tokens, Lexicon lexicon)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            // "OJ step back", where the text tells that OJ is the right foot; "V step" stays the name of a figure
            if (tokens[i].Kind == WordTokenKind.Word && lexicon.FootOf(tokens[i].Text) is string told
                && !(tokens[i].Text.Length == 1 && lexicon.Longest(tokens, i) is ({ Kind: TermKind.Move, Figures.Count: > 0 }, > 1)))
            {
                tokens[i] = tokens[i] with { Text = told };
            }
        }

        JoinSlashed(tokens);
        ClockWords.Join(tokens, lexicon);
        BorrowedWords.Mend(tokens);
        for (int i = tokens.Count - 1; i >= 0; i--)
        {
            if (tokens[i].Text == "no" && i > 0 && i + 1 < tokens.Count && IsFootWord(tokens[i + 1].Text)
                && tokens[i - 1].Text is "recover" or "rec" or "weight" or "wt" or "rock" or "replace" or "return")
            {
                // "recover no L": two fingers in the wrong order
                tokens[i] = tokens[i] with { Text = "on", IsCorrected = true };
                continue;
            }

            if (tokens[i] is { Kind: WordTokenKind.Word, Text: "x" } && (i == 0 || NumberAt(tokens, i - 1) is null) && NumberAt(tokens, i + 1) is null)
            {
                // "L coaster x", "kick ball x", "x shuffle": a cross, where it says no number of times
                tokens[i] = tokens[i] with { Text = "cross" };
                continue;
            }

            if (tokens[i].Text == "rib" && ((i + 1 < tokens.Count && tokens[i + 1].Text == "of")
                || (i > 0 && tokens[i - 1].Text is "lock" or "lk" or "lck" or "cross" or "x" or "crs" or "step" or "stp" or "hook" or "hk" or "rock" or "rk")))
            {
                // "lk RIB of L": the right in back, and not what the heart beats behind
                WordToken glued = tokens[i];
                tokens[i] = glued with { Text = "right", Span = new TextSpan(glued.Span.Start, 1) };
                tokens.Insert(i + 1, glued with { Text = "behind", Span = TextSpan.FromBounds(glued.Span.Start + 1, glued.Span.End), SpaceBefore = true });
                continue;
            }

            if (tokens[i].Text is "tl" or "tr" && ((i > 0 && tokens[i - 1].Kind == WordTokenKind.Fraction)
                || (i + 1 < tokens.Count && tokens[i + 1].Kind == WordTokenKind.Fraction)))
            {
                // "1/4 TL", "TR 1/2": turn left, turn right
                WordToken both = tokens[i];
                tokens[i] = both with { Text = "turn", Span = new TextSpan(both.Span.Start, 1) };
                tokens.Insert(i + 1, both with { Text = both.Text[1..], Span = new TextSpan(both.Span.Start + 1, 1), SpaceBefore = true });
                continue;
            }

            if (tokens[i].Text == "." && i > 0 && i + 1 < tokens.Count && tokens[i - 1].Text is "tog" or "opp" && !EndsSentences(text, tokens)
                && (char.IsLower(text[tokens[i + 1].Span.Start]) || tokens[i + 1].Text is "r" or "l" or "-"))
            {
                // "set R tog. with L", "side-tog.-side"
                tokens.RemoveAt(i);
                continue;
            }

            if (i + 1 < tokens.Count && IsTorn(tokens[i], tokens[i + 1], lexicon))
            {
                // "hol d", "to the rig ht": a blank within a word
                tokens[i] = tokens[i] with
                {
                    Text = tokens[i].Text + tokens[i + 1].Text,
                    Span = TextSpan.FromBounds(tokens[i].Span.Start, tokens[i + 1].Span.End),
                    IsCorrected = true
                };
                tokens.RemoveAt(i + 1);
                continue;
            }

            if (tokens[i] is { Kind: WordTokenKind.Word, Text: "n" } && JoinsWords(text, tokens, i))
            {
                // "rock L side n recover", "rock 'n' recover"
                tokens[i] = tokens[i] with { Text = "and" };
                continue;
            }

            if (tokens[i].Text == "t" && ((i > 0 && (tokens[i - 1].Kind == WordTokenKind.Fraction
                || tokens[i - 1].Text is "quarter" or "half" or "full" or "qtr" or "piv" or "pvt" or "pivot"))
                || (i + 1 < tokens.Count && tokens[i + 1].Kind == WordTokenKind.Fraction)))
            {
                // "1/4 T L", "1/2 piv T R", "T 1/4 R"
                tokens[i] = tokens[i] with { Text = "turn" };
                continue;
            }

            if (tokens[i] is { Kind: WordTokenKind.Fraction, Value: 2 or 4 or 8 } && i > 0 && i + 1 < tokens.Count && tokens[i - 1].Text == "waltz"
                && tokens[i + 1].Text is "turn" or "turns")
            {
                // "waltz 1/2 turn left": the name of a figure
                tokens[i] = tokens[i] with { Kind = WordTokenKind.Word, Text = tokens[i].Value switch { 2 => "quarter", 4 => "half", _ => "full" } };
                continue;
            }

            if (tokens[i].Text is "corner" or "diagonal" or "diag" && i > 1 && tokens[i - 1].Text is "back" or "rear" or "front"
                && tokens[i - 2].Text is "right" or "left" or "r" or "l" or "rt" or "lt")
            {
                // "to the right back corner": to the back right corner
                (tokens[i - 1], tokens[i - 2]) = (tokens[i - 1] with { Text = tokens[i - 2].Text }, tokens[i - 2] with { Text = tokens[i - 1].Text });
                continue;
            }

            if (tokens[i].Text is "corner" or "diagonal" or "diag" && i > 2 && tokens[i - 1].Text is "forward" or "fwd" or "forwards" or "fw" or "fd"
                && IsFootWord(tokens[i - 2].Text) && (tokens[i - 3].Text is "on" or "to" or "the" or "your" or "toward" or "towards" or "at" or "in" or "into"
                    || (i > 3 && tokens[i - 3].Text is "heel" or "toe" or "toes" && IsFootWord(tokens[i - 4].Text))))
            {
                // "heel on L fwd diagonal": on the forward left diagonal; the foot is told before
                (tokens[i - 1], tokens[i - 2]) = (tokens[i - 1] with { Text = tokens[i - 2].Text }, tokens[i - 2] with { Text = "forward" });
                continue;
            }

            if (tokens[i].Text == "above" && i > 0 && i + 1 < tokens.Count
                && IsFootWord(tokens[i + (tokens[i + 1].Text is "the" or "your" && i + 2 < tokens.Count ? 2 : 1)].Text))
            {
                // "cross R above the L"
                tokens[i] = tokens[i] with { Text = "over" };
                continue;
            }

            if ((tokens[i].Text == "by" && IsBeside(tokens, i))
                || (tokens[i].Text == "besides" && i > 0 && tokens[i - 1].Kind is WordTokenKind.Word && i + 1 < tokens.Count
                    && tokens[i + 1].Kind is WordTokenKind.Word))
            {
                tokens[i] = tokens[i] with { Text = "beside" };
                continue;
            }

            if (tokens[i].Text == "until" && i + 1 < tokens.Count
                && tokens[i + (tokens[i + 1].Text is "the" && i + 2 < tokens.Count ? 2 : 1)].Text is "r" or "l" or "right" or "left" or "rf" or "lf")
            {
                // "drag L until R": as far as the foot
                tokens[i] = tokens[i] with { Text = "to" };
                continue;
            }

            if (tokens[i].Text == "before" && i > 0 && tokens[i - 1].Text is "step" or "rock" or "touch" or "tip" or "point" or "kick" or "foot" or "rf" or "lf"
                && (i + 1 >= tokens.Count || tokens[i + 1].Text is "," or ";" or "." or ")" or "("))
            {
                // "LF step before, RF tip behind": in front and at the back, as other languages say it
                tokens[i] = tokens[i] with { Text = "forward" };
                for (int k = 0; k < tokens.Count; k++)
                {
                    bool bare = tokens[k].Text == "behind" && (k + 1 >= tokens.Count || tokens[k + 1].Text is "," or ";" or ".");
                    tokens[k] = bare ? tokens[k] with { Text = "back" } : tokens[k];
                }

                continue;
            }

            if (tokens[i].Text == "ft" && i > 0)
            {
                // "R ft": the foot; "point R ft", "tap ft of L": in front
                bool named = (tokens[i - 1].Text is "r" or "l" or "right" or "left" or "rt" or "lt" or "both"
                    && i + 1 < tokens.Count && tokens[i + 1].Kind == WordTokenKind.Word)
                    || tokens[i - 1].Text is "opp" or "opposite" or "other" or "same";
                tokens[i] = tokens[i] with { Text = named ? "foot" : "front" };
                continue;
            }

            if (tokens[i].Kind == WordTokenKind.Word && lexicon.SlipFor(tokens[i].Text) is string typed && StandsAsMove(tokens, i, lexicon))
            {
                // "L shuttle fwd", "tough R": a telephone knows other words
                tokens[i] = tokens[i] with { Text = typed, IsCorrected = true };
                continue;
            }

            if (tokens[i].Kind == WordTokenKind.Word && lexicon.StandsFor(tokens[i].Text) is IReadOnlyList<string> words)
            {
                WordToken token = tokens[i];
                tokens.RemoveAt(i);
                if (words[^1] == "of" && i < tokens.Count && tokens[i].Text == "of")
                {
                    // "XLIF of R"
                    tokens.RemoveAt(i);
                }

                for (int k = words.Count - 1; k >= 0; k--)
                {
                    tokens.Insert(i, token with { Text = words[k], SpaceBefore = k > 0 || token.SpaceBefore });
                }
            }
            else if (tokens[i].Kind == WordTokenKind.Word && !lexicon.KnowsWord(tokens[i].Text) && !IsFeet(tokens[i].Text)
                && tokens[i].Text.Length > 2)
            {
                WordToken token = tokens[i];
                if (token.Text[0] is 'r' or 'l' && lexicon.StandsFor(token.Text[1..]) is IReadOnlyList<string> glued)
                {
                    // "RTS": a foot stuck to a short form
                    tokens.RemoveAt(i);
                    for (int k = glued.Count - 1; k >= 0; k--)
                    {
                        tokens.Insert(i, token with { Text = glued[k], SpaceBefore = true });
                    }

                    tokens.Insert(i, token with { Text = token.Text[..1], Span = new TextSpan(token.Span.Start, 1) });
                }
                else if (token.Text is ['x', _, .., 'r' or 'l'] && lexicon.StandsFor(token.Text[..^1]) is IReadOnlyList<string> over)
                {
                    // "XLIFR": the foot it crosses stuck to the short form
                    tokens.RemoveAt(i);
                    TextSpan crossing = new(token.Span.Start, token.Span.Length - 1);
                    tokens.Insert(i, token with { Text = token.Text[^1..], Span = new TextSpan(token.Span.End - 1, 1), SpaceBefore = true });
                    for (int k = over.Count - 1; k >= 0; k--)
                    {
                        tokens.Insert(i, token with { Text = over[k], Span = crossing, SpaceBefore = k > 0 || token.SpaceBefore });
                    }
                }
                else if (FootAtEnd(text, token, lexicon) is (string head, string foot))
                {
                    int split = token.Span.End - 1;
                    tokens[i] = token with { Text = head, Span = TextSpan.FromBounds(token.Span.Start, split) };
                    tokens.Insert(i + 1, token with { Text = foot, Span = new TextSpan(split, 1), SpaceBefore = true });
                }
                else if (Split(token.Text, lexicon) is null && !(i > 0 && EverydayWords.IsTalkAfter(tokens[i - 1].Text, token.Text, lexicon))
                    && lexicon.Corrected(token.Text) is string corrected)
                {
                    tokens[i] = token with { Text = corrected, IsCorrected = true };
                }
            }
        }

        return tokens;
    }

    /// <summary>Whether an "n" between words is the "and" of those who type in short, and no letter of its own.</summary>
    private static bool JoinsWords(string text, List<WordToken> tokens, int at)
    {
        if (at + 1 >= tokens.Count)
        {
            return false;
        }

        // "n c basic" is the nightclub's
        WordToken next = tokens[at + 1];
        if (next.Text == "c")
        {
            return false;
        }

        bool capital = text[tokens[at].Span.Start] == 'N';
        bool follows = next.Kind is WordTokenKind.Word or WordTokenKind.Fraction || (next.Text == "'" && at + 2 < tokens.Count);
        return follows && (at == 0 || tokens[at - 1].Kind == WordTokenKind.Word || tokens[at - 1].Text is "'" or "," or ")")
            && (!capital || (next.Span.Length > 1 && char.IsUpper(text[next.Span.End - 1])));
    }

    /// <summary>
    /// "So that you have made one full turn", "which makes 3/4 in all" behind turns that make as much between them: how many tokens tell the sum once more,
    /// or null.
    /// </summary>
    private static int? WholeTold(List<WordToken> tokens, int at, List<Term> terms)
    {
        if (tokens[at].Text is not ("so" or "which" or "that" or "this" or "thus" or "thereby" or "having" or "making" or "completing" or "together"
            or "altogether"))
        {
            return null;
        }

        int end = at;
        int amount = 0;
        while (end < tokens.Count && (IsOfSum(tokens[end].Text) || AmountOf(tokens, end) > 0
            || (amount > 0 && (IsFootWord(tokens[end].Text) || tokens[end].Text is "to"))))
        {
            amount = AmountOf(tokens, end) is > 0 and int told ? told : amount;
            end++;
        }

        if (amount == 0 || end == at + 1 || (end < tokens.Count && tokens[end].Kind is not (WordTokenKind.Mark or WordTokenKind.Clock)))
        {
            return null;
        }

        int sum = 0;
        int parts = 0;
        for (int i = terms.Count - 1; i >= 0 && sum < amount; i--)
        {
            sum += terms[i].Kind == TermKind.Amount ? terms[i].Meaning.Value : 0;
            parts += terms[i].Kind == TermKind.Amount ? 1 : 0;
        }

        return sum == amount && parts > 1 ? end - at : null;
    }

    private static int AmountOf(List<WordToken> tokens, int at) => tokens[at].Kind == WordTokenKind.Fraction ? tokens[at].Value : tokens[at].Text switch
    {
        "full" or "whole" or "complete" or "360" => 8,
        "half" => 4,
        "quarters" when at > 0 && tokens[at - 1].Text is "three" or "3" => 6,
        _ => 0,
    };

    private static bool IsOfSum(string word) => word is "so" or "that" or "thats" or "which" or "this" or "thus" or "thereby" or "having" or "you" or "youve"
        or "we" or "weve" or "have" or "has" or "now" or "made" or "make" or "makes" or "making" or "completed" or "completing"
        or "turned" or "done" or "danced" or "gone" or "it" or "is" or "been" or "gives" or "giving" or "in" or "all"
        or "total" or "altogether" or "together" or "a" or "an" or "one" or "your" or "the" or "turn" or "circle" or "rotation" or "round" or "around" or "three" or "3" or "3/4" or "will" or "of";

    /// <summary>
    /// Whether a word stands where a move does, with a foot before it or a foot, a way or an amount of turn behind it, and not as talk does ("a tough R").
    /// </summary>
    private static bool StandsAsMove(List<WordToken> tokens, int at, Lexicon lexicon)
    {
        WordToken before = at > 0 ? tokens[at - 1] : default;
        bool talk = before.Text is "a" or "an" or "the" or "like" or "look" or "looking" or "feel" or "feeling" or "be" or "being" or "very" or "so" or "as"
            or "too" or "of" or "your" or "my" or "with" or "and" or "stay" or "act" or "some" or "for"
            || (at > 0 && before.Kind == WordTokenKind.Word && lexicon.Word(before.Text)?.Kind is TermKind.Style);
        if (talk)
        {
            return false;
        }

        if (before.Text is not null && IsFootWord(before.Text))
        {
            return true;
        }

        int next = at + 1;
        while (next < tokens.Count && tokens[next].Text is "the" or "your" or "to" or "on" or "with")
        {
            next++;
        }

        return next < tokens.Count && (IsFootWord(tokens[next].Text) || tokens[next].Kind is WordTokenKind.Fraction
            || (tokens[next].Kind == WordTokenKind.Word && lexicon.Word(tokens[next].Text)?.Kind is TermKind.Dir or TermKind.Amount));
    }

    /// <summary>"Touch R by L", "set the right foot down by the left": beside that foot.</summary>
    private static bool IsBeside(List<WordToken> tokens, int by)
    {
        int foot = by + 1;
        while (foot < tokens.Count && tokens[foot].Text is "the" or "your")
        {
            foot++;
        }

        return by > 0 && foot < tokens.Count && IsFootWord(tokens[foot].Text)
            && (foot + 1 >= tokens.Count || tokens[foot + 1].Text is not ("shoulder" or "side" or "hand" or "arm" or "elbow" or "hip" or "knee"))
            && tokens[by - 1].Kind is WordTokenKind.Word
            && tokens[by - 1].Text is not ("followed" or "turn" or "turning" or "turned" or "pivot" or "lead" or "led" or "leading" or "start" or "starting"
                or "begin"
                or "beginning" or "danced" or "done" or "made" or "reached" or "preceded" or "step" or "times" or "one" or "count" or "ending");
    }

    /// <summary>"Weight stays left", "weight again on LF", "weight should now be on the right": how many tokens before the foot, or null.</summary>
    private static int? WeightStays(List<WordToken> tokens, int at)
    {
        if (tokens[at].Text is not ("weight" or "wt" or "wgt"))
        {
            return null;
        }

        for (int i = at + 1; i < tokens.Count && i < at + 8; i++)
        {
            string word = tokens[i].Text;
            if (word is "r" or "l" or "right" or "left" or "rf" or "lf" or "rt" or "lt")
            {
                return i - at;
            }

            if (word is "follows" or "follow" || (word is "with" or "along" or "and" && tokens[at + 1].Text is "follows" or "follow"))
            {
                // "the weight follows with and finishes on LF"
                continue;
            }

            if (word is "centred" or "centered" or "central" or "even" or "evenly" or "shared" or "both" or "middle")
            {
                // the language file knows these
                return null;
            }

            if (word is not ("stays" or "stay" or "still" or "remains" or "remain" or "again" or "is" or "now" or "on" or "onto" or "to" or "the"
                or "your" or "at" or "in" or "ends" or "ending" or "end" or "finishing" or "finishes" or "finish"
                or "up" or "back" or "over" or "kept" or "being" or "firmly" or "mostly" or "all" or "should" or "be" or "must" or "staying"
                    or "will" or "more" or "become" or "becomes" or "becoming" or "remaining" or "always" or "then" or "lands" or "goes" or "comes"
                    or "ended" or "arrives" or "arriving" or "arrived" or "rests" or "resting" or "settles" or "settling" or "well" or "landing" or "ready"
                    or "there" or "fully" or "entirely" or "completely" or "transferring" or "transferred" or "shifting" or "shifted" or "changing" or "changed"
                    or "moving" or "going" or "coming" or "backwards" or "backward"))
            {
                return null;
            }
        }

        return null;
    }

    /// <summary>
    /// "For two", "over 2 counts", "in two counts", "over 2 and 3", "takes two counts": how many tokens, and how many counts; null where nothing of the kind stands.
    /// </summary>
    private static (int Tokens, int Counts)? HowLong(List<WordToken> tokens, int at)
    {
        bool takes = tokens[at].Text is "takes" or "taking" or "lasts" or "lasting";
        bool across = tokens[at].Text is "across" or "during" or "throughout" or "through";
        bool within = tokens[at].Text is "in";
        if (!takes && !across && !within && tokens[at].Text is not ("for" or "over"))
        {
            return null;
        }

        int end = at + 1;
        while (end < tokens.Count && tokens[end].Text is "the" or "next")
        {
            end++;
        }

        if (!takes && end + 3 < tokens.Count && tokens[end].Text is "counts" or "count" or "beats" && NumberAt(tokens, end + 1) is int begins
            && tokens[end + 2].Text is "-" or "–" or "and" or "&" or "to" && NumberAt(tokens, end + 3) is int ends && ends > begins && ends <= begins + 3)
        {
            // "over counts 2-3": the counts themselves, not how many
            return (end + 4 - at, ends - begins + 1);
        }

        if (NumberAt(tokens, end) is not (>= 1 and <= 4 and int first))
        {
            return null;
        }

        end++;
        int counts = first;
        bool range = end + 1 < tokens.Count && tokens[end].Text is "and" or "&" or "-" && NumberAt(tokens, end + 1) is int;
        if (range)
        {
            if (tokens[at].Text is not ("over" or "across") || NumberAt(tokens, end + 1) is not int last || last <= first || last > first + 3)
            {
                return null;
            }

            // the counts themselves, not how many
            counts = last - first + 1;
            end += 2;
        }

        bool said = end < tokens.Count && tokens[end].Text is "count" or "counts" or "beat" or "beats";
        end += said ? 1 : 0;
        bool stops = end >= tokens.Count || tokens[end].Kind == WordTokenKind.Mark;
        return counts > 1 && (said || range || (stops && !takes && !across && !within)) ? (end - at, counts) : null;
    }

    private static int? NumberAt(List<WordToken> tokens, int at) => at >= tokens.Count ? null
        : tokens[at].Kind == WordTokenKind.Number ? tokens[at].Value
        : tokens[at].Text switch { "one" => 1, "two" => 2, "three" => 3, "four" => 4, _ => null };

    /// <summary>"Do these four counts once more", "dance the last eight beats again": how many tokens say so, or null.</summary>
    private static int? DoneAgain(List<WordToken> tokens, int at)
    {
        if (tokens[at].Text is not ("do" or "dance" or "take" or "walk" or "run" or "go" or "these" or "those" or "that" or "the" or "all"))
        {
            return null;
        }

        bool counted = false;
        int end = at + 1;
        while (end < tokens.Count && end < at + 9 && tokens[end].Text is "these" or "those" or "the" or "that" or "last" or "first" or "previous" or "same"
            or "all" or "of" or "through" or "two" or "four" or "six" or "eight" or "2" or "4" or "6" or "8" or "counts" or "beats" or "steps" or "moves")
        {
            counted |= tokens[end].Text is "counts" or "beats" or "steps" or "moves";
            end++;
        }

        int said = end;
        while (end < tokens.Count && end < said + 3
            && tokens[end].Text is "again" or "once" or "more" or "one" or "time" or "over" or "another" or "a" or "second")
        {
            end++;
        }

        string words = string.Join(' ', tokens.GetRange(said, end - said).Select(t => t.Text));
        bool again = words is "again" or "once more" or "one more time" or "one time more" or "one time again" or "once again" or "over again"
            or "another time" or "a second time";
        return counted && again ? end - at : null;
    }

    /// <summary>"Every bump weight change", "weight changes with each bump", "changing weight each time": how many tokens, or null.</summary>
    private static int? WeightEach(List<WordToken> tokens, int at)
    {
        bool weight = false;
        bool changes = false;
        bool each = false;
        int end = at;
        while (end < tokens.Count && end < at + 8)
        {
            string word = tokens[end].Text;
            bool eachTime = word is "every" or "each" && end + 1 < tokens.Count
                && tokens[end + 1].Text is "bump" or "time" or "one" or "count" or "beat" or "hip" or "sway" or "move" or "push" or "side";
            if (!eachTime && word is not ("weight" or "wt" or "wgt" or "change" or "changes" or "changing" or "shift" or "shifts" or "shifting" or "transfer"
                or "transfers" or "transferring" or "with" or "on" or "at" or "has" or "is" or "a" or "the" or "your" or "for" or "there"))
            {
                break;
            }

            weight |= word is "weight" or "wt" or "wgt";
            changes |= word.StartsWith("chang", StringComparison.Ordinal) || word.StartsWith("shift", StringComparison.Ordinal)
                || word.StartsWith("transfer", StringComparison.Ordinal);
            each |= eachTime;
            end += eachTime ? 2 : 1;
        }

        return weight && changes && each ? end - at : null;
    }

    /// <summary>
    /// "Set the right down in front as a step forward", "put it back as a proper step": how many tokens say of a step that it is one, or null. The way is left
    /// where it is not told yet.
    /// </summary>
    private static int? AsStep(List<WordToken> tokens, int at, List<Term> terms, Lexicon lexicon)
    {
        if (tokens[at].Text is not "as" || at + 2 >= tokens.Count || tokens[at + 1].Text is not ("a" or "an" or "one" or "your" or "its"))
        {
            return null;
        }

        int end = at + 2;
        while (end < tokens.Count && tokens[end].Text is "full" or "proper" or "real" or "normal" or "ordinary" or "plain" or "whole" or "weighted" or "simple")
        {
            end++;
        }

        int from = terms.FindLastIndex(t => t.Kind is TermKind.Separator or TermKind.Then or TermKind.Join or TermKind.Amp) + 1;
        bool isStep = end < tokens.Count && tokens[end].Text is "step"
            && terms.FindIndex(from, t => t is { Kind: TermKind.Move, Meaning.Verb: ActionKind.Step }) >= 0;
        if (!isStep)
        {
            return null;
        }

        bool said = end + 1 < tokens.Count && lexicon.Longest(tokens, end + 1) is ({ Kind: TermKind.Dir } way, int used)
            && terms.FindIndex(from, t => t.Kind is TermKind.Dir && t.Meaning.Direction == way.Direction && t.Meaning.Side == way.Side) >= 0
            && used > 0;
        return end + 1 - at + (said ? lexicon.Longest(tokens, end + 1)!.Value.Tokens : 0);
    }

    /// <summary>"Without putting any weight on it", "do not transfer the weight", "no weight change": how many tokens, or null.</summary>
    private static int? NoWeight(List<WordToken> tokens, int at)
    {
        if (tokens[at].Text is not ("no" or "not" or "without" or "dont" or "never" or "doesnt"))
        {
            return null;
        }

        for (int i = at + 1; i < tokens.Count && i < at + 6; i++)
        {
            if (tokens[i].Kind != WordTokenKind.Word)
            {
                return null;
            }

            if (tokens[i].Text is "weight" or "wt")
            {
                int end = i + 1;
                while (end < tokens.Count && end < i + 4 && tokens[end].Text is "on" or "it" or "change" or "onto" or "to" or "yet" or "transfer"
                    or "the" or "at" or "this" or "time" or "that" or "down")
                {
                    end++;
                }

                if (end < tokens.Count && tokens[end - 1].Text is "on" or "onto" or "the"
                    && tokens[end].Text is "r" or "l" or "right" or "left" or "rf" or "lf")
                {
                    // "no weight on the right": the foot of the move it stands with
                    end++;
                }

                return end - at;
            }
        }

        return null;
    }

    /// <summary>Whether a stop parts the moves of a line ("L heel. tog. R heel. tog").</summary>
    private static bool EndsSentences(string text, List<WordToken> tokens)
    {
        for (int i = 1; i + 1 < tokens.Count; i++)
        {
            if (tokens[i].Text == "." && tokens[i - 1].Text is not ("tog" or "opp") && !IsShortForm(text, tokens, i))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether two words are the halves of one that a blank has slipped into, neither of them a word by itself.</summary>
    private static bool IsTorn(WordToken first, WordToken second, Lexicon lexicon)
        => first.Kind == WordTokenKind.Word && second is { Kind: WordTokenKind.Word, SpaceBefore: true, IsCorrected: false } && !first.IsCorrected
            && first.Text.Length + second.Text.Length is > 3 and < 12 && (first.Text.Length > 1 || second.Text.Length > 2)
            && IsScrap(second.Text, lexicon) && IsScrap(first.Text, lexicon) && lexicon.Word(first.Text + second.Text) is not null;

    private static bool IsScrap(string word, Lexicon lexicon) => !lexicon.KnowsWord(word) && lexicon.StandsFor(word) is null && !IsFeet(word)
        && lexicon.Word(word) is null;

    private static bool IsFootWord(string word) => word is "r" or "l" or "right" or "left" or "rf" or "lf" or "rt" or "lt";

    /// <summary>
    /// The name before the amount that a name ends with, where the way round follows ("sailor quarter right", "jazz box quarter turn L"), and how many
    /// tokens it
    /// takes; null for other names.
    /// </summary>
    private static (Meaning Meaning, int Tokens)? WithoutAmount(List<WordToken> tokens, int at, int used, Meaning whole, Lexicon lexicon)
    {
        int end = at + used;
        int amount = tokens[end - 1].Text is "turn" ? end - 2 : end - 1;
        // "shuffle half turn R" names the foot, as names in short do
        bool way = end < tokens.Count && tokens[end].Text is "right" or "left" && !(end + 1 < tokens.Count && IsFootWord(tokens[end + 1].Text));
        if (!way || amount <= at || tokens[amount].Text is not ("quarter" or "half"))
        {
            return null;
        }

        int eighths = tokens[amount].Text is "half" ? 4 : tokens[amount - 1].Text is "three" ? 6 : 2;
        if (!whole.Figures.All(f => f.TotalTurn.Amount == eighths))
        {
            // the half of "cha cha back half" is none of a turn, and a "hinge quarter" turns by two of them
            return null;
        }

        amount -= eighths == 6 ? 1 : 0;
        return amount > at && lexicon.Longest(tokens.GetRange(at, amount - at), 0) is ({ Kind: TermKind.Move } name, int taken) && taken == amount - at
            ? (name, taken) : null;
    }

    private static bool IsFeet(string word) => word.Length is >= 2 and <= 8 && word.All(c => c is 'r' or 'l');

    /// <summary>A foot stuck to the end of a word: "overL".</summary>
    private static (string Head, string Foot)? FootAtEnd(string text, WordToken token, Lexicon lexicon)
    {
        char last = text[token.Span.End - 1];
        string head = token.Text[..^1];
        if (head is "on" or "to" or "by" or "in")
        {
            return last is 'R' or 'L' && (head is "on" || char.IsLower(text[token.Span.End - 2])) ? (head, char.ToLowerInvariant(last).ToString()) : null;
        }

        return last is 'R' or 'L' && token.Span.Length > 2 && char.IsLower(text[token.Span.End - 2]) && lexicon.KnowsWord(head)
            ? (head, char.ToLowerInvariant(last).ToString())
            : null;
    }

    private static int ReadOther(string text, List<WordToken> tokens, int at, Lexicon lexicon, List<Term> terms)
    {
        WordToken token = tokens[at];
        switch (token.Kind)
        {
            case WordTokenKind.Fraction:
                terms.Add(new Term(new Meaning(TermKind.Amount) { Value = token.Value }, token.Span, token.Text));
                return 1;
            case WordTokenKind.Number when at + 1 < tokens.Count && tokens[at + 1].Text is "oclock" or "o'clock" or "h"
                && token.Value is >= 1 and <= 12:
                TextSpan clock = TextSpan.FromBounds(token.Span.Start, tokens[at + 1].Span.End);
                terms.Add(new Term(new Meaning(TermKind.Clock) { Value = token.Value % 12 * 2 / 3 }, clock, text[clock.Start..clock.End]));
                return 2;
            case WordTokenKind.Number when at + 2 < tokens.Count && tokens[at + 1].Text == "o" && tokens[at + 2].Text == "clock":
                TextSpan far = TextSpan.FromBounds(token.Span.Start, tokens[at + 2].Span.End);
                terms.Add(new Term(new Meaning(TermKind.Clock) { Value = token.Value % 12 * 2 / 3 }, far, text[far.Start..far.End]));
                return 3;
            case WordTokenKind.Number when token.Value is 45 or 90 or 135 or 180 or 270 or 360:
                // degrees, with or without the word: no dance counts so far within a line
                int signs = at + 1 < tokens.Count && tokens[at + 1].Text is "°" or "º" or "degree" or "degrees" or "deg" ? 2 : 1;
                TextSpan degrees = TextSpan.FromBounds(token.Span.Start, tokens[at + signs - 1].Span.End);
                terms.Add(new Term(new Meaning(TermKind.Amount) { Value = token.Value / 45 }, degrees, text[degrees.Start..degrees.End]));
                return signs;
            case WordTokenKind.Number:
                terms.Add(new Term(new Meaning(TermKind.Number) { Value = token.Value }, token.Span, token.Text));
                return 1;
            case WordTokenKind.Mark:
                terms.Add(new Term(MarkMeaning(text, tokens, at), token.Span, token.Text));
                return 1;
            default:
                return ReadWord(text, token, lexicon, terms);
        }
    }

    private static Meaning MarkMeaning(string text, List<WordToken> tokens, int at)
    {
        WordToken token = tokens[at];
        bool spaceAfter = at + 1 >= tokens.Count || tokens[at + 1].SpaceBefore;
        return token.Text switch
        {
            "," or ";" or ":" or "|" or ">" or "=" or "→" or "⇒" or "➔" or "►" => SeparatorMeaning,
            "." => spaceAfter && !IsShortForm(text, tokens, at) ? SeparatorMeaning : FillerMeaning,
            "/" => token.SpaceBefore || spaceAfter ? SeparatorMeaning : DashMeaning,
            "-" => token.SpaceBefore || spaceAfter ? SeparatorMeaning : DashMeaning,
            "(" => OpenMeaning,
            ")" => CloseMeaning,
            "&" or "+" => AmpMeaning,
            "°" or "\"" or "'" or "*" or "!" or "~" or "…" or "_" or "#" or "@" or "\\" or "•" or "·" => FillerMeaning,
            _ => UnknownMeaning,
        };
    }

    /// <summary>
    /// "Step diag. right fwd", "cross r. over l.": the stop belongs to a word cut short, and no sentence ends there; after a letter only where the next word is
    /// small, since "step R. Touch L" is two sentences, or where the small letter comes first ("r. KBC").
    /// </summary>
    private static bool IsShortForm(string text, List<WordToken> tokens, int at) => at > 0 && at + 1 < tokens.Count && !tokens[at].SpaceBefore
        && (tokens[at - 1].Text is "diag" or "fwd" or "bwd" or "bkwd" or "tog" or "beh" or "appr" or "approx" or "resp" or "opp" or "wt" or "incl" or "rt"
            or "lt" || (tokens[at - 1].Text is "r" or "l"
                && (tokens[at + 1].Kind is WordTokenKind.Fraction || char.IsLower(text[tokens[at + 1].Span.Start])
                || (at == 1 && text[tokens[0].Span.Start] is 'r' or 'l' && !IsFootWord(tokens[2].Text)))))
        && tokens[at + 1].Kind is WordTokenKind.Word or WordTokenKind.Fraction;

    private static int ReadWord(string text, WordToken token, Lexicon lexicon, List<Term> terms)
    {
        string word = token.Text;

        // RLR, LRL: feet in a row
        if (IsFeet(word))
        {
            for (int i = 0; i < word.Length; i++)
            {
                Meaning foot = new(TermKind.Side) { Side = word[i] == 'r' ? Stance.Foot.Right : Stance.Foot.Left };
                terms.Add(new Term(foot, new TextSpan(token.Span.Start + i, 1), word[i].ToString()));
            }

            return 1;
        }

        // a foot stuck to the word after it: "Rshuffle", "Lcoaster"; a word run together with the next
        if (Split(word, lexicon) is (string first, string second))
        {
            TextSpan head = new(token.Span.Start, Math.Min(first.Length, token.Span.Length));
            TextSpan tail = TextSpan.FromBounds(head.End, token.Span.End);
            terms.Add(new Term(lexicon.Word(first)!, head, first, true));
            terms.Add(new Term(lexicon.Word(second)!, tail, second, true));
            return 1;
        }

        bool manner = word.Length > 4 && word.EndsWith("ly", StringComparison.Ordinal);
        terms.Add(new Term(manner ? new Meaning(TermKind.Style) : UnknownMeaning, token.Span, text[token.Span.Start..token.Span.End]));
        return 1;
    }

    private static (string First, string Second)? Split(string word, Lexicon lexicon)
    {
        if (word.Length < 5)
        {
            return null;
        }

        for (int i = 1; i < word.Length - 2; i++)
        {
            string first = word[..i];
            string second = word[i..];
            bool firstIsFoot = i == 1 && first is "r" or "l";
            if ((firstIsFoot || i >= 4 || first is "rf" or "lf" or "toe") && second.Length >= 4 && lexicon.Word(first) is Meaning a
                && lexicon.Word(second) is Meaning b
                && a.Kind is TermKind.Move or TermKind.Side or TermKind.Foot or TermKind.Dir or TermKind.Turn or TermKind.Part or TermKind.Amount
                && (b.Kind is TermKind.Move or TermKind.Dir or TermKind.Side || (b.Kind is TermKind.Turn && a.Kind is TermKind.Amount)
                || (b.Kind is TermKind.Amount && a.Kind is TermKind.Turn or TermKind.Move)))
            {
                return (first, second);
            }
        }

        return null;
    }
}
