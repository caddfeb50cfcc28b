using System.Globalization;
using Scuff.Dances;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>
/// Reads the sentences about tags, bridges, restarts and endings in the many ways people write them:
/// "wall 4: after 16 restart, with count 8: touch R together", "Restart on wall 3 after 16 counts, touch instead of step on count 16",
/// "Tag 1 at the end of walls 2 and 4".
/// </summary>
internal sealed class SentenceReader(ReaderState state, Dance dance, Func<int, Counts, Weight> weightAt)
{
    private static readonly Dictionary<string, int> Ordinals = new(StringComparer.Ordinal)
    {
        ["first"] = 1,
        ["second"] = 2,
        ["third"] = 3,
        ["fourth"] = 4,
        ["fifth"] = 5,
        ["sixth"] = 6,
        ["seventh"] = 7,
        ["eighth"] = 8,
        ["ninth"] = 9,
        ["tenth"] = 10,
        ["one"] = 1,
        ["two"] = 2,
        ["three"] = 3,
        ["four"] = 4,
        ["five"] = 5,
        ["six"] = 6,
        ["seven"] = 7,
        ["eight"] = 8,
        ["nine"] = 9,
        ["ten"] = 10,
    };

    /// <summary>The dance's tags and those that sentences define.</summary>
    public List<Tag> Tags { get; } = [.. dance.Tags];

    /// <summary>Whether a line may be such a sentence at all.</summary>
    public static bool LooksLikeSentence(ReadOnlySpan<char> words) => Has(words, "wall") || Has(words, "restart") || Has(words, "tag") || Has(words, "bridge")
        || (Has(words, "part") && Has(words, "after"));

    /// <summary>The interruption a sentence tells; null when it is not understood (a question is asked then).</summary>
    public Interruption? Read(TextLine line)
    {
        string words = state.Text[line.Start..line.End];

        // the change of steps is cut off first: it is footwork
        int changeAt = ChangeStart(words);
        string head = changeAt < 0 ? words : words[..changeAt];
        List<WordToken> tokens = WordScanner.Scan(state.Text, line.Start, line.Start + head.Length);
        List<int> walls = WallsOf(tokens);
        Counts? after = AfterOf(tokens);
        List<InterruptionAct> acts = ActsOf(tokens);
        FacingClaim? claim = ClaimOf(tokens);

        // "tag after wall 2, 4 counts: sway R, L, R": the steps stand in the sentence
        TextLine? inlineSteps = InlineSteps(tokens, line, line.Start + head.Length);
        if (inlineSteps is TextLine steps && acts.OfType<InterruptionAct.PlayTag>().Any())
        {
            InterruptionAct.PlayTag play = acts.OfType<InterruptionAct.PlayTag>().First();
            string name = play.Name.Length > 0 ? play.Name : string.Create(CultureInfo.InvariantCulture, $"tag {Tags.Count + 1}");
            Tags.Add(InlineTag(name, steps, line, LengthOf(tokens)));
            acts[acts.IndexOf(play)] = play with { Name = name };
        }

        if (acts.Count == 0 || (walls.Count == 0 && !Has(words, "restart") && !Has(words, "tag") && !Has(words, "bridge")))
        {
            string kept = words.Length > 100 ? words[..100] + "..." : words;
            state.Add(ReadingRules.UnknownSentence.At(line.Span, ("words", kept)));
            return null;
        }

        string part = PartOf(tokens);
        int partIndex = Math.Max(0, dance.Parts.ToList().FindIndex(p => string.Equals(p.Name, part, StringComparison.OrdinalIgnoreCase)));
        ValueList<ChangedCounts> changes = changeAt < 0 ? default : ChangesOf(line, line.Start + changeAt, partIndex, after);
        return new Interruption
        {
            Walls = walls.ToValueList(),
            PartName = part,
            AfterCounts = after,
            Acts = acts.ToValueList(),
            Changes = changes,
            Claim = claim,
            Span = line.Span,
            Line = line.Number,
            Verbatim = words,
        };
    }

    /// <summary>The ending told by a line; what is not understood of it is kept in its words.</summary>
    public Ending ReadEnding(TextLine line)
    {
        string words = state.Text[line.Start..line.End];
        int colon = words.IndexOf(':', StringComparison.Ordinal);
        int start = line.Start + (colon < 0 ? 0 : colon + 1);
        List<WordToken> tokens = WordScanner.Scan(state.Text, start, line.End);
        int? wall = null;
        List<int> walls = WallsOf(tokens);
        if (walls.Count > 0)
        {
            wall = walls[0];
        }

        Counts? after = AfterOf(tokens);
        FacingClaim? claim = ClaimOf(tokens);
        int steps = state.Text.IndexOf(':', start, line.End - start);
        if (steps >= 0 && steps + 1 < line.End && char.IsAsciiDigit(state.Text[steps + 1]) && steps > start && char.IsAsciiDigit(state.Text[steps - 1]))
        {
            steps = state.Text.IndexOf(':', steps + 1, line.End - steps - 1);
        }

        Section? body = null;
        if (steps >= 0)
        {
            body = EndingBody(line, steps + 1, after);
        }
        else if (after is null && wall is null && colon >= 0)
        {
            body = EndingBody(line, start, null);
        }

        bool front = Has(words, "front") || Has(words, "12:00") || Has(words, "12 o");
        return new Ending
        {
            Wall = wall,
            AfterCounts = after,
            Body = body,
            Claim = claim,
            SaysFront = front,
            MoveWords = steps >= 0 && steps + 1 < line.End ? state.Text[(steps + 1)..line.End].Trim() : "",
            WallFacing = null,
            Span = line.Span,
            Line = line.Number,
            Verbatim = words,
        };
    }

    private static bool Has(ReadOnlySpan<char> words, string word) => words.Contains(word, StringComparison.OrdinalIgnoreCase);

    private static int ChangeStart(string words)
    {
        int best = -1;
        foreach (string mark in (ReadOnlySpan<string>)["with count", "with step change", "step change", "change count", "replace count", "replacing count", "changing count", "with counts", "instead of", "replace the", "replace step", "replace last", "changing the last", "change the last", "but on count", "on count", "but count", "change step", "changed:", "dancing count"])
        {
            int at = words.IndexOf(mark, StringComparison.OrdinalIgnoreCase);
            if (at > 0 && (best < 0 || at < best))
            {
                best = at;
            }
        }

        if (best > 0 && words.AsSpan(best).StartsWith("instead of", StringComparison.OrdinalIgnoreCase) || (best > 0 && words.AsSpan(best).StartsWith("on count", StringComparison.OrdinalIgnoreCase)))
        {
            // "..., touch instead of step on count 16": the change begins after the comma before it
            int comma = words.LastIndexOfAny([',', ';', ':', '('], best);
            best = comma > 0 ? comma + 1 : best;
        }

        return best;
    }

    private static List<int> WallsOf(List<WordToken> tokens)
    {
        List<int> walls = [];
        for (int i = 0; i < tokens.Count; i++)
        {
            string word = tokens[i].Text;
            if (word is not ("wall" or "walls" or "repetition" or "repetitions" or "rotation" or "time"))
            {
                continue;
            }

            // "3rd wall", "third wall", "wall 3", "walls 2, 4 and 6"
            if (i >= 2 && tokens[i - 1].Text is "st" or "nd" or "rd" or "th" && tokens[i - 2].Kind == WordTokenKind.Number)
            {
                walls.Add(tokens[i - 2].Value);
                continue;
            }

            if (i >= 1 && Ordinals.TryGetValue(tokens[i - 1].Text, out int ordinal) && tokens[i - 1].Text is not ("one" or "two"))
            {
                walls.Add(ordinal);
                continue;
            }

            int next = i + 1;
            while (next < tokens.Count)
            {
                WordToken token = tokens[next];
                bool number = token.Kind == WordTokenKind.Number || (Ordinals.ContainsKey(token.Text) && walls.Count == 0);
                if (number)
                {
                    bool isCount = next + 1 < tokens.Count && tokens[next + 1].Text.StartsWith("count", StringComparison.Ordinal) && walls.Count > 0;
                    if (isCount)
                    {
                        break;
                    }

                    int value = token.Kind == WordTokenKind.Number ? token.Value : Ordinals[token.Text];
                    if (value is > 0 and <= 1000 && !walls.Contains(value))
                    {
                        walls.Add(value);
                    }

                    next++;
                    continue;
                }

                if (token.Text is "," or "and" or "&" or "+" or "#" or "/" or "wall" or "walls" && next + 1 < tokens.Count && (tokens[next + 1].Kind == WordTokenKind.Number || tokens[next + 1].Text is "wall" or "walls" or "and" or "&"))
                {
                    next++;
                    continue;
                }

                break;
            }
        }

        return walls;
    }

    private Counts? AfterOf(List<WordToken> tokens)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            string word = tokens[i].Text;
            if (word is "after" or "at" or "first" or "dance" or "count" or "following" or "from" or "dancing" or "of" or "to")
            {
                int next = i + 1;
                bool section = false;
                bool counts = word is "count" or "after" or "first" or "dance" or "dancing";
                while (next < tokens.Count && tokens[next].Text is "count" or "counts" or "the" or "first" or "section" or "sections" or "step" or "steps" or "only" or "up" or "to" or "(" or "end" or "of" or "sec" or "s")
                {
                    section |= tokens[next].Text is "section" or "sections" or "sec" or "s";
                    counts |= tokens[next].Text is "count" or "counts" or "first";
                    next++;
                }

                if (next < tokens.Count && tokens[next].Kind == WordTokenKind.Number && tokens[next].Value is > 0 and <= 4000)
                {
                    int value = tokens[next].Value;
                    if (section)
                    {
                        Part? part = dance.Parts.Count > 0 ? dance.Parts[0] : null;
                        if (part is not null && value <= part.Sections.Count)
                        {
                            return part.StartOf(value);
                        }

                        continue;
                    }

                    bool wallBefore = i > 0 && tokens[i - 1].Text is "wall" or "walls";
                    bool countsAfter = next + 1 < tokens.Count && tokens[next + 1].Text.StartsWith("count", StringComparison.Ordinal);
                    bool wallWord = next > 0 && tokens[next - 1].Text is "wall" or "walls";
                    if ((counts || countsAfter) && !wallBefore && !wallWord && word is not ("of" or "to" or "at" or "from") || countsAfter && word is not "of")
                    {
                        // "3& counts"
                        Counts result = Counts.FromWhole(value);
                        if (next + 1 < tokens.Count && tokens[next + 1].Text == "&" && !tokens[next + 1].SpaceBefore)
                        {
                            result += Counts.Half;
                        }

                        return result;
                    }
                }
            }

            // "16 counts into wall 3", "restart after 16& counts"
            if (tokens[i].Kind == WordTokenKind.Number && i + 1 < tokens.Count && tokens[i + 1].Text is "counts" or "count" && i + 2 < tokens.Count && tokens[i + 2].Text is "into" or "in" or "of" or "then" or "and" or ",")
            {
                bool ofTag = i + 3 < tokens.Count && tokens[i + 2].Text != "," && tokens.Take(i).Any(t => t.Text is "tag" or "bridge" or "hold");
                if (!ofTag && tokens[i].Value is > 0 and <= 4000)
                {
                    return Counts.FromWhole(tokens[i].Value);
                }
            }
        }

        return null;
    }

    private static Counts? LengthOf(List<WordToken> tokens)
    {
        for (int i = 0; i + 1 < tokens.Count; i++)
        {
            if (tokens[i].Kind == WordTokenKind.Number && tokens[i + 1].Text is "counts" or "count" && tokens[i].Value is > 0 and < 1000)
            {
                return Counts.FromWhole(tokens[i].Value);
            }
        }

        return null;
    }

    private List<InterruptionAct> ActsOf(List<WordToken> tokens)
    {
        List<InterruptionAct> acts = [];
        for (int i = 0; i < tokens.Count; i++)
        {
            string word = tokens[i].Text;
            switch (word)
            {
                case "tag" or "tags" or "bridge":
                    (string name, int used) = TagName(tokens, i + 1);
                    int times = i + used + 1 < tokens.Count && tokens[i + used + 1].Text is "twice" or "x2" ? 2 : 1;
                    acts.Add(new InterruptionAct.PlayTag(name, times));
                    i += used;
                    break;
                case "restart" or "restarts" or "restarting" or "again" or "begin" or "start":
                    bool isStart = word is "start" or "begin" or "again" && !(i + 1 < tokens.Count && tokens[i + 1].Text is "again" or "over" or "the" or "dance" or "from");
                    if (!isStart && !acts.Exists(a => a is InterruptionAct.Restart))
                    {
                        acts.Add(new InterruptionAct.Restart());
                    }

                    break;
                case "continue" or "go" or "carry" or "resume":
                    acts.Add(new InterruptionAct.GoOn());
                    break;
                case "hold" or "wait" or "pause":
                    int number = i + 1;
                    while (number < tokens.Count && tokens[number].Text is "for" or "still")
                    {
                        number++;
                    }

                    if (number < tokens.Count && tokens[number].Kind == WordTokenKind.Number && tokens[number].Value is > 0 and < 1000)
                    {
                        acts.Add(new InterruptionAct.Wait(Counts.FromWhole(tokens[number].Value)));
                        i = number;
                    }

                    break;
                case "section" or "sections" when acts.Count > 0:
                    if (QuoteAt(tokens, i, out int end) is InterruptionAct.Quote quote)
                    {
                        acts.Add(quote);
                        i = end;
                    }

                    break;
            }
        }

        // "Restart: wall 3 ..." names it first; a restart always comes last, unless the tag is quoted after it
        int restart = acts.FindIndex(a => a is InterruptionAct.Restart);
        if (restart >= 0 && restart < acts.Count - 1)
        {
            InterruptionAct moved = acts[restart];
            acts.RemoveAt(restart);
            acts.Add(moved);
        }

        return acts;
    }

    private InterruptionAct.Quote? QuoteAt(List<WordToken> tokens, int at, out int end)
    {
        end = at;
        if (at + 1 >= tokens.Count || tokens[at + 1].Kind != WordTokenKind.Number)
        {
            return null;
        }

        int section = tokens[at + 1].Value;
        end = at + 1;
        Part? part = dance.Parts.Count > 0 ? dance.Parts[0] : null;
        if (part is null || section < 1 || section > part.Sections.Count)
        {
            return null;
        }

        int from = 1;
        int to = part.Sections[section - 1].Length.Value.Floor;
        int next = at + 2;
        while (next < tokens.Count && tokens[next].Text is "," or "counts" or "count" or "(")
        {
            next++;
        }

        if (next < tokens.Count && tokens[next].Kind == WordTokenKind.Number)
        {
            from = tokens[next].Value;
            to = from;
            end = next;
            if (next + 2 < tokens.Count && tokens[next + 1].Text is "-" or "to" && tokens[next + 2].Kind == WordTokenKind.Number)
            {
                to = tokens[next + 2].Value;
                end = next + 2;
            }
        }

        if (from < 1 || to < from || to > 1000)
        {
            return null;
        }

        return new InterruptionAct.Quote("", section, new CountSpan(Counts.FromWhole(from - 1), Counts.FromWhole(to)));
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
                return (state.Text[tokens[at].Span.End..tokens[close].Span.Start].Trim(), close - at + 1);
            }
        }

        if (at < tokens.Count && tokens[at].Kind is WordTokenKind.Word or WordTokenKind.Number)
        {
            string raw = state.Text.Substring(tokens[at].Span.Start, tokens[at].Span.Length);
            if (Tags.Exists(t => string.Equals(t.Name, raw, StringComparison.OrdinalIgnoreCase)))
            {
                return (raw, 1);
            }

            // "tag Lamps" with a name of several words
            foreach (Tag tag in Tags)
            {
                string rest = state.Text[tokens[at].Span.Start..];
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

            if (tokens[at].Kind == WordTokenKind.Number && !(at + 1 < tokens.Count && tokens[at + 1].Text.StartsWith("count", StringComparison.Ordinal)))
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
                string name = state.Text.Substring(tokens[i + 1].Span.Start, tokens[i + 1].Span.Length);
                if (dance.FindPart(name) is Part part)
                {
                    return part.Name;
                }
            }
        }

        return "";
    }

    private static FacingClaim? ClaimOf(List<WordToken> tokens)
    {
        for (int i = tokens.Count - 1; i >= 0; i--)
        {
            if (tokens[i].Kind == WordTokenKind.Clock)
            {
                // "wall 3 (starts facing 6:00)" speaks of the wall's start, which is no claim about the restart
                bool starts = tokens.Take(i).TakeLast(3).Any(t => t.Text.StartsWith("start", StringComparison.Ordinal) || t.Text.StartsWith("begin", StringComparison.Ordinal));
                if (!starts)
                {
                    return new FacingClaim(Facing.FromEighths(tokens[i].Value), Counts.Zero, tokens[i].Span);
                }
            }
        }

        return null;
    }

    private TextLine? InlineSteps(List<WordToken> tokens, TextLine line, int end)
    {
        // the last colon after which footwork stands
        for (int i = tokens.Count - 1; i >= 0; i--)
        {
            if (tokens[i].Text != ":")
            {
                continue;
            }

            int start = tokens[i].Span.End;
            if (start >= end)
            {
                return null;
            }

            List<Term> terms = TermReader.Read(state.Text, start, end, state.Lexicon);
            bool moves = terms.Exists(t => t.Kind == TermKind.Move) && terms.TrueForAll(t => !t.Text.StartsWith("tag", StringComparison.OrdinalIgnoreCase) && !t.Text.StartsWith("restart", StringComparison.OrdinalIgnoreCase) && !t.Text.StartsWith("wall", StringComparison.OrdinalIgnoreCase) && !t.Text.StartsWith("bridge", StringComparison.OrdinalIgnoreCase));
            return moves ? new TextLine(line.Number, start, end).Trimmed(state.Text) : null;
        }

        return null;
    }

    private Tag InlineTag(string name, TextLine steps, TextLine line, Counts? claimed)
    {
        Weight kept = state.Weight;
        Facing? facing = state.Facing;
        state.Weight = weightAt(dance.Parts.Count - 1, Counts.FromWhole(int.MaxValue / 2));
        state.InTag = true;
        LineReader reader = new(state);
        LineContent content;
        CountLabel? label = CountLabel.Read(state.Text, steps.Start, steps.End);
        string printed;
        IReadOnlyList<LabelPlace> places;
        if (label is not null)
        {
            places = label.Places;
            printed = state.Text.Substring(label.Span.Start, label.Span.Length);
            content = reader.Read(places, label.End, steps.End, line.Number, printed);
        }
        else if (claimed is Counts length && length.Value.Floor is > 0 and <= 64)
        {
            places = Enumerable.Range(1, length.Value.Floor).Select(n => new LabelPlace(n.ToString(CultureInfo.InvariantCulture), n, Counts.FromWhole(n - 1), n > 1)).ToList();
            printed = string.Create(CultureInfo.InvariantCulture, $"1-{length.Value.Floor}");
            content = reader.Read(places, steps.Start, steps.End, line.Number, printed);
        }
        else
        {
            content = reader.ReadFree(steps.Start, steps.End, line.Number, 1, 16);
            List<WrittenStep> made = content.Moves.SelectMany(m => m.Steps).ToList();
            places = made.Select(s => new LabelPlace(s.Count.Label, s.Count.Place.Value.Floor + 1, s.Count.Place, true)).ToList();
            printed = made.Count > 0 ? made[0].Count.Label + "-" + made[^1].Count.Label : "1";
        }

        state.Weight = kept;
        state.Facing = facing;
        state.InTag = false;
        return new Tag(name, false, claimed, BodyOf(content, places, printed, steps, name), line.Span);
    }

    private static Section BodyOf(LineContent content, IReadOnlyList<LabelPlace> places, string printed, TextLine line, string title)
    {
        Counts end = places.Count > 0 ? Counts.FromWhole(places.Max(p => p.Place).Value.Floor + 1) : Counts.Zero;
        Counts start = places.Count > 0 ? Counts.Min(Counts.Zero, places.Min(p => p.Place)) : Counts.Zero;
        WrittenLine written = new()
        {
            Label = printed,
            Counts = new CountSpan(Counts.Min(start, end), end),
            Moves = content.Moves,
            Claims = content.Claims,
            Span = line.Span,
            Places = places.Select(p => new WrittenCount(p.Label, p.Place)).ToValueList(),
            Number = line.Number,
        };
        return new Section { Number = 1, Title = title, Length = end, Lines = [written], Span = line.Span, LineNumber = line.Number };
    }

    private Section? EndingBody(TextLine line, int start, Counts? after)
    {
        TextLine steps = new TextLine(line.Number, start, line.End).Trimmed(state.Text);
        if (steps.Start >= steps.End)
        {
            return null;
        }

        int complaints = state.Complaints.Count;
        Weight kept = state.Weight;
        Facing? facing = state.Facing;
        state.Weight = after is Counts place ? weightAt(0, place) : Weight.Unknown;
        CountLabel? label = CountLabel.Read(state.Text, steps.Start, steps.End);
        LineReader reader = new(state);
        LineContent content;
        IReadOnlyList<LabelPlace> places;
        string printed;
        if (label is not null && label.End < steps.End)
        {
            places = label.Places;
            printed = state.Text.Substring(label.Span.Start, label.Span.Length);
            content = reader.Read(places, label.End, steps.End, line.Number, printed);
        }
        else
        {
            content = reader.ReadFree(steps.Start, steps.End, line.Number, 1, 16);
            List<WrittenStep> made = content.Moves.SelectMany(m => m.Steps).ToList();
            places = made.Select(s => new LabelPlace(s.Count.Label, s.Count.Place.Value.Floor + 1, s.Count.Place, true)).ToList();
            printed = made.Count > 1 ? made[0].Count.Label + "-" + made[^1].Count.Label : "1";
        }

        state.Weight = kept;
        state.Facing = facing;

        // a turn "to the front" says its amount by where it goes
        for (int i = state.Complaints.Count - 1; i >= complaints; i--)
        {
            if (state.Complaints[i].Rule.Id is "turn/direction-missing" or "turn/amount-missing" or "reading/unknown-words")
            {
                state.Complaints.RemoveAt(i);
            }
        }

        return BodyOf(content, places, printed, steps, "ending");
    }

    /// <summary>"with count 8: touch R together", "touch instead of step on count 16".</summary>
    private ValueList<ChangedCounts> ChangesOf(TextLine line, int start, int partIndex, Counts? after)
    {
        string words = state.Text[start..line.End];
        int? number = null;
        int moveStart = start;
        int moveEnd = line.End;
        List<WordToken> tokens = WordScanner.Scan(state.Text, start, line.End);
        int numberIndex = tokens.FindIndex(t => t.Kind == WordTokenKind.Number);
        int instead = words.IndexOf("instead", StringComparison.OrdinalIgnoreCase);
        if (numberIndex >= 0)
        {
            number = tokens[numberIndex].Value;
        }

        Counts cut = after ?? (dance.Parts.Count > partIndex ? dance.Parts[partIndex].Length : Counts.Zero);
        if (instead > 0)
        {
            // the new step stands before "instead of"
            moveEnd = start + instead;
            number ??= cut.Value.Floor;
        }
        else if (words.IndexOf(':', StringComparison.Ordinal) is > 0 and int colon)
        {
            moveStart = start + colon + 1;
        }
        else if (numberIndex >= 0)
        {
            moveStart = tokens[numberIndex].Span.End;
            int with = words.IndexOf(" with ", moveStart - start, StringComparison.OrdinalIgnoreCase);
            if (with > 0)
            {
                moveStart = start + with + 6;
            }
            else if (words.IndexOf(" to ", moveStart - start, StringComparison.OrdinalIgnoreCase) is > 0 and int to)
            {
                moveStart = start + to + 4;
            }
        }

        number ??= cut.Value.Floor;
        if (moveStart >= moveEnd || number.Value < 1 || dance.Parts.Count <= partIndex)
        {
            return default;
        }

        // numbers up to the section's length speak of the section that is cut; larger ones count the whole wall
        Part part = dance.Parts[partIndex];
        int sectionIndex = 0;
        Counts sectionStart = Counts.Zero;
        while (sectionIndex + 1 < part.Sections.Count && sectionStart + part.Sections[sectionIndex].Length < cut)
        {
            sectionStart += part.Sections[sectionIndex].Length;
            sectionIndex++;
        }

        Counts length = part.Sections.Count > 0 ? part.Sections[sectionIndex].Length : Counts.Zero;
        Counts place = Counts.FromWhole(number.Value - 1);
        if (place < length && sectionStart + place < cut)
        {
            place += sectionStart;
        }

        Weight kept = state.Weight;
        Facing? facing = state.Facing;
        state.Weight = weightAt(partIndex, place);
        List<LabelPlace> places = [];
        Counts inSection = place - sectionStart;
        places.Add(new LabelPlace(CountGrid.LabelOf(inSection), inSection.Value.Floor + 1, inSection, false));

        // a range: "with counts 7-8: ..."
        if (numberIndex >= 0 && numberIndex + 2 < tokens.Count && tokens[numberIndex + 1].Text is "-" or "&" && tokens[numberIndex + 2].Kind == WordTokenKind.Number && tokens[numberIndex + 2].Value - number.Value is > 0 and < 16)
        {
            if (tokens[numberIndex + 1].Text == "&")
            {
                Counts half = inSection + Counts.Half;
                places.Add(new LabelPlace(CountGrid.LabelOf(half), inSection.Value.Floor + 1, half, false));
            }

            for (int n = number.Value + 1; n <= tokens[numberIndex + 2].Value; n++)
            {
                Counts next = inSection + Counts.FromWhole(n - number.Value);
                places.Add(new LabelPlace(CountGrid.LabelOf(next), next.Value.Floor + 1, next, true));
            }
        }

        LineContent content = new LineReader(state).Read(places, moveStart, moveEnd, line.Number, string.Create(CultureInfo.InvariantCulture, $"{number.Value}"));
        state.Weight = kept;
        state.Facing = facing;
        Counts end = sectionStart + Counts.FromWhole(places.Max(p => p.Place).Value.Floor + 1);
        return [new ChangedCounts(new CountSpan(place, end), content.Moves)];
    }
}
