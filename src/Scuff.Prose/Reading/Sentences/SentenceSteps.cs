using System.Globalization;
using System.Text.RegularExpressions;
using Scuff.Diagnostics;
using Scuff.Dances;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Prose.Reading.Sentences;

/// <summary>Reads steps that stand within a sentence: of a tag, or of the ending.</summary>
/// <param name="state">What is known of the text.</param>
/// <param name="dance">The dance the sentence is about.</param>
/// <param name="weightAt">Where the weight is before a place of a part.</param>
internal sealed partial class SentenceSteps(ReaderState state, Dance dance, Func<int, Counts, Weight> weightAt)
{
    /// <summary>The stretch after the last colon, if footwork stands there.</summary>
    public TextLine? Inline(List<WordToken> tokens, TextLine line, int end)
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

            if (i + 1 < tokens.Count && tokens[i + 1].Text is "after")
            {
                // "wall 4: after 16 hold 2 counts" tells a place first
                return InBrackets(tokens, line, end);
            }

            for (int at = start + 4; at < end - 2; at++)
            {
                // "...: sway R, L, R, L. Then restart": the steps end with their sentence
                if (state.Text[at] is '.' or ';' && state.Text[at + 1] == ' ' && (SentenceReader.LooksLikeSentence(state.Text.AsSpan(at, end - at))
                    || StartsOver().IsMatch(state.Text.AsSpan(at + 2, end - at - 2))))
                {
                    end = at;
                }
            }

            List<Term> terms = TermReader.Read(state.Text, start, end, state.Lexicon);
            // "break off after 16 counts" is no rock
            bool moves = (terms.Exists(t => t.Kind == TermKind.Move && !(t.Text.Equals("break", StringComparison.OrdinalIgnoreCase)
                && tokens.FindIndex(k => k.Span == t.Span) is > 0 and int broken && broken + 1 < tokens.Count
                && tokens[broken + 1].Text is "off" or "after" or "here" or "and" or "up"))
                || (terms.Exists(t => t.Kind == TermKind.Part)
                && terms.Exists(t => t.Kind is TermKind.Foot or TermKind.Side) && !terms.Exists(t => t.Kind is TermKind.Unknown or TermKind.Repeat)))
                && terms.TrueForAll(t => !t.Text.StartsWith("tag", StringComparison.OrdinalIgnoreCase)
                && !t.Text.StartsWith("restart", StringComparison.OrdinalIgnoreCase) && !t.Text.StartsWith("rst", StringComparison.OrdinalIgnoreCase)
                && !t.Text.StartsWith("wall", StringComparison.OrdinalIgnoreCase)
                && !t.Text.StartsWith("bridge", StringComparison.OrdinalIgnoreCase));
            return moves ? new TextLine(line.Number, start, end).Trimmed(state.Text) : InBrackets(tokens, line, end);
        }

        return InBrackets(tokens, line, end);
    }

    // "After that the dance begins again", "Then start over": the dance goes on, and no steps of the tag
    [GeneratedRegex(@"^(?:(?:then|after (?:that|this|it|the tag)|afterwards|and|now|you|we|it|just|continue|carry on|go on)[ ,]*)+(?:the dance |dance |to )*"
        + @"(?:start|begin|continue|carry|go|from|with)|^(?:start|begin|continue|carry on)\b[^,]*\b(?:again|over|top|beginning|usual|normal)",
        RegexOptions.IgnoreCase)]
    private static partial Regex StartsOver();

    /// <summary>A tag that is nothing but waiting: "at the end of wall 4 the band stops, hold for 3 counts".</summary>
    /// <param name="name">Its name.</param>
    /// <param name="counts">How long it is.</param>
    /// <param name="words">Where the sentence has the hold.</param>
    /// <param name="line">The sentence.</param>
    public Tag HoldTag(string name, Counts counts, TextSpan words, TextLine line)
    {
        Weight kept = state.Weight;
        Facing? facing = state.Facing;
        state.InTag = true;
        List<LabelPlace> places = Enumerable.Range(1, counts.Value.Floor).Select(n =>
            new LabelPlace(n.ToString(CultureInfo.InvariantCulture), n, Counts.FromWhole(n - 1), n > 1)).ToList();
        string printed = string.Create(CultureInfo.InvariantCulture, $"1-{counts.Value.Floor}");
        LineContent content = new LineReader(state).Read(places, words.Start, words.End, line.Number, printed);
        state.Weight = kept;
        state.Facing = facing;
        state.InTag = false;
        return new Tag(name, false, counts, BodyOf(content, places, printed, line, name), line.Span);
    }

    // "add the 4 count tag (sway R, L, R, L)", "tag after wall 4 - sway R, L, R, L"
    private TextLine? InBrackets(List<WordToken> tokens, TextLine line, int end)
    {
        int tag = tokens.FindIndex(t => t.Text is "tag" or "bridge");
        int extra = tokens.FindIndex(t => t.Text is "extra" or "additional" or "add");
        tag = tag < 0 ? extra : tag;
        for (int i = tag + 1; tag >= 0 && i < tokens.Count; i++)
        {
            bool dash = tokens[i].Text is "-" or "–" or "—" && tokens[i].SpaceBefore && !(tokens[i - 1].Kind == WordTokenKind.Number && i + 1 < tokens.Count
                && tokens[i + 1].Kind == WordTokenKind.Number);
            if (tokens[i].Text is not "(" && !dash)
            {
                continue;
            }

            int close = dash ? end : state.Text.IndexOf(')', tokens[i].Span.End);
            if (close < 0 || close > end)
            {
                return null;
            }

            List<Term> terms = TermReader.Read(state.Text, tokens[i].Span.End, close, state.Lexicon);
            // "four extra counts (side, touch, side, touch)": moves one after the other, though no foot is named
            bool listed = !dash && terms.Count(t => t.Kind is TermKind.Move or TermKind.Dir) > 1
                && terms.TrueForAll(t => t.Kind is TermKind.Move or TermKind.Dir or TermKind.Separator or TermKind.Join or TermKind.Filler);
            bool steps = terms.Exists(t => t.Kind == TermKind.Move) && (listed || terms.Exists(t => t.Kind is TermKind.Foot or TermKind.Side))
                && !terms.Exists(t => t.Kind is TermKind.Unknown or TermKind.Repeat)
                && !SentenceReader.LooksLikeSentence(state.Text.AsSpan(tokens[i].Span.End, close - tokens[i].Span.End));
            if (steps)
            {
                return new TextLine(line.Number, tokens[i].Span.End, close).Trimmed(state.Text);
            }
        }

        return Added(tokens, line, end);
    }

    // "after 16 counts add 2 hip sways, then carry on": what is added, up to where the dance goes on
    private TextLine? Added(List<WordToken> tokens, TextLine line, int end)
    {
        int add = tokens.FindIndex(t => t.Text is "add" or "adding");
        if (add < 0 || add + 1 >= tokens.Count)
        {
            return null;
        }

        int stop = add + 1;
        while (stop < tokens.Count && tokens[stop].Span.Start < end && tokens[stop].Text is not ("." or ";" or "then" or "before" or "(" or ")" or "at"
            or "after" or "during" or "wall" or "continue" or "carry" or "restart" or ":" or "-" or "–"))
        {
            stop++;
        }

        while (stop > add + 1 && tokens[stop - 1].Text is "," or "and")
        {
            stop--;
        }

        if (stop == add + 1)
        {
            return null;
        }

        List<Term> terms = TermReader.Read(state.Text, tokens[add + 1].Span.Start, tokens[stop - 1].Span.End, state.Lexicon);
        bool steps = terms.Exists(t => t.Kind is TermKind.Move) && terms.TrueForAll(t => t.Kind is TermKind.Move or TermKind.Dir or TermKind.Separator
            or TermKind.Join or TermKind.Filler or TermKind.Foot or TermKind.Side or TermKind.Number or TermKind.Times or TermKind.Part or TermKind.Size
            or TermKind.Amount or TermKind.BothFeet or TermKind.Amp);
        return steps ? new TextLine(line.Number, tokens[add + 1].Span.Start, tokens[stop - 1].Span.End) : null;
    }

    /// <summary>A tag whose steps stand in the sentence: "tag after wall 2, 4 counts: sway R, L, R, L".</summary>
    public Tag InlineTag(string name, TextLine steps, TextLine line, Counts? claimed)
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
        if (label is not null && Runs(label, steps) is { Count: > 1 } runs)
        {
            // "1-2 step R to side, touch L, 3-4 step L to side, touch R"
            List<WrittenLine> lines = [];
            foreach ((CountLabel run, int end) in runs)
            {
                printed = state.Text.Substring(run.Span.Start, run.Span.Length);
                content = reader.Read(run.Places, run.End, end, line.Number, printed);
                lines.AddRange(BodyOf(content, run.Places, printed, steps, name).Lines);
            }

            state.Weight = kept;
            state.Facing = facing;
            state.InTag = false;
            Section body = new()
            {
                Number = 1,
                Title = name,
                Length = lines[^1].Counts.End,
                Lines = lines.ToValueList(),
                Span = steps.Span,
                LineNumber = line.Number
            };
            return new Tag(name, false, claimed, body, line.Span);
        }

        if (label is not null)
        {
            places = label.Places;
            printed = state.Text.Substring(label.Span.Start, label.Span.Length);
            content = reader.Read(places, label.End, steps.End, line.Number, printed);
        }
        else if (claimed is Counts length && length.Value.Floor is > 0 and <= 64)
        {
            places = Enumerable.Range(1, length.Value.Floor).Select(n =>
                new LabelPlace(n.ToString(CultureInfo.InvariantCulture), n, Counts.FromWhole(n - 1), n > 1)).ToList();
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

    // the runs of counts of a sentence, each with where its words end
    private List<(CountLabel Label, int End)> Runs(CountLabel first, TextLine steps)
    {
        List<(CountLabel Label, int End)> runs = [(first, steps.End)];
        for (int at = first.End; at < steps.End - 2; at++)
        {
            if (state.Text[at] is ',' or ';' or '.' && state.Text[at + 1] == ' ' && CountLabel.Read(state.Text, at + 2, steps.End) is { } next
                && next.End < steps.End
                && next.Places[0].Place == Counts.FromWhole(runs[^1].Label.Places.Max(p => p.Place).Value.Floor + 1))
            {
                runs[^1] = (runs[^1].Label, at);
                runs.Add((next, steps.End));
                at = next.End - 1;
            }
        }

        return runs;
    }

    /// <summary>What is danced at the end, counted from the place where it leaves the dance.</summary>
    public Section? EndingBody(TextLine line, int start, Counts? after)
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
}
