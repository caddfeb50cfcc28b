using System.Globalization;
using System.Text.RegularExpressions;
using Scuff.Dances;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Prose.Reading.Sentences;

/// <summary>Reads what is danced differently just before a restart or a tag.</summary>
/// <param name="state">What is known of the text.</param>
/// <param name="dance">The dance the sentence is about.</param>
/// <param name="weightAt">Where the weight is before a place of a part.</param>
internal sealed partial class ChangedCountsReader(ReaderState state, Dance dance, Func<int, Counts, Weight> weightAt)
{
    [GeneratedRegex(@"\b(?:(?:carry|carries|carrying|go|goes|going|dance|keep) on|continu(?:e|es|ing)|resume|resuming|proceed|proceeding|start|begin) $",
        RegexOptions.IgnoreCase)]
    private static partial Regex GoesOnBefore();

    /// <summary>Where in a sentence the words on changed counts begin, or -1.</summary>
    public static int ChangeStart(string words)
    {
        int best = -1;
        foreach (string mark in (ReadOnlySpan<string>)["with count", "with step change", "step change", "change count", "replace count",
            "replacing count", "changing count", "with counts", "instead of", "replace the", "replace step", "replace last", "changing the last",
            "change the last", "but on count", "on count", "but count", "change step", "changed:", "dancing count"])
        {
            int at = words.IndexOf(mark, StringComparison.OrdinalIgnoreCase);
            if (at > 4 && words.AsSpan(at - 4, 4).Equals("and ", StringComparison.OrdinalIgnoreCase) && mark.StartsWith("with count", StringComparison.Ordinal)
                && (words.AsSpan(0, at - 4).EndsWith("to ", StringComparison.OrdinalIgnoreCase)
                || words.AsSpan(0, at - 4).EndsWith("til ", StringComparison.OrdinalIgnoreCase)
                || words.AsSpan(0, at - 4).EndsWith("till ", StringComparison.OrdinalIgnoreCase)
                || words.AsSpan(0, at - 4).EndsWith("until ", StringComparison.OrdinalIgnoreCase)))
            {
                // "dance to and with count 16": as far as it goes, nothing changes
                continue;
            }

            if (at > 0 && mark.StartsWith("with count", StringComparison.Ordinal) && GoesOnBefore().IsMatch(words.AsSpan(0, at)))
            {
                // "then carry on with count 17": where it goes on
                continue;
            }

            if (at > 0 && (best < 0 || at < best))
            {
                best = at;
            }
        }

        if (best < 0 && ReplacesCounts().Match(words) is { Success: true, Index: > 0 } replaced)
        {
            // "replace 7-8 of section 2 with ..."
            best = replaced.Index;
        }

        if (best > 0 && words.AsSpan(best).StartsWith("instead of", StringComparison.OrdinalIgnoreCase)
            || (best > 0 && words.AsSpan(best).StartsWith("on count", StringComparison.OrdinalIgnoreCase)))
        {
            // "..., touch instead of step on count 16": the change begins after the comma before it
            int comma = words.LastIndexOfAny([',', ';', ':', '('], best);
            best = comma > 0 ? comma + 1 : best;
        }

        return best;
    }

    [GeneratedRegex(@"\b(?:replace|replacing|change|changing|swap|substitute) (?:the )?\d", RegexOptions.IgnoreCase)]
    private static partial Regex ReplacesCounts();

    /// <summary>Where the words on changed counts end: before "then restart", or at the end of the sentence.</summary>
    public static int ChangeEnd(string words, int start)
    {
        foreach (string mark in (ReadOnlySpan<string>)[", then restart", " then restart", " and restart", ", restart", ", then start again",
            " then start again", " and start again", ", then begin again", " and begin again", " then begin again", " then the dance begins again",
            " then start over", " and start over", ", start again", ", begin again", ", start over"])
        {
            int at = words.LastIndexOf(mark, StringComparison.OrdinalIgnoreCase);
            if (at > start)
            {
                return at;
            }
        }

        return words.Length;
    }

    /// <summary>The first and the last count that a change names, or null.</summary>
    /// <param name="words">The words of the change.</param>
    public static (int First, int Last)? CountsOf(string words)
    {
        Match told = NamedCounts().Match(words) is { Success: true } named ? named : LabelledCounts().Match(words);
        if (!told.Success)
        {
            return null;
        }

        int first = int.Parse(told.Groups[1].ValueSpan, CultureInfo.InvariantCulture);
        return (first, told.Groups[2].Success ? int.Parse(told.Groups[2].ValueSpan, CultureInfo.InvariantCulture) : first);
    }

    [GeneratedRegex(@"\bcounts? (\d{1,2})(?: ?(?:[-–&]|and|to) ?(\d{1,2})\b)?", RegexOptions.IgnoreCase)]
    private static partial Regex NamedCounts();

    // "replace the coaster cross with", and under it "15-16  rock right back, recover onto left"
    [GeneratedRegex(@"(?:\n|:|\b(?:with|to|by))\s*(\d{1,2}) ?(?:[-–&]|and|to) ?(\d{1,2})\b(?!/)", RegexOptions.IgnoreCase)]
    private static partial Regex LabelledCounts();

    // the lines of counts of a change, each with where its words end: "7 = 1/2 turn right and step R forward, 8 = step L together"
    private List<(CountLabel Label, int End)> Labelled(int start, int end)
    {
        List<(CountLabel Label, int End)> runs = [];
        for (int at = start; at < end - 2; at++)
        {
            bool parts = state.Text[at] is '\n' || (state.Text[at] is ':' or ',' or ';' or '.' && char.IsWhiteSpace(state.Text[at + 1]))
                || (at > start && state.Text[at] == ' ' && runs.Count == 0 && (state.Text.AsSpan(start, at - start).EndsWith(" with",
                    StringComparison.OrdinalIgnoreCase)
                    || state.Text.AsSpan(start, at - start).EndsWith(" to", StringComparison.OrdinalIgnoreCase)
                    || state.Text.AsSpan(start, at - start).EndsWith(" dance", StringComparison.OrdinalIgnoreCase)));
            int from = at + 1;
            while (state.Text[at] == '\n' && from < end && state.Text[from] is '>' or ' ' or '|')
            {
                // the mark of a quoted mail, the edge of a table
                from++;
            }

            if (!parts || (runs.Count == 0 && state.Text[at] is ',' or ';' or '.') || CountLabel.Read(state.Text, from, end) is not { } label
                || label.End >= end
                || (runs.Count > 0 && label.Places[0].Place <= runs[^1].Label.Places[^1].Place))
            {
                continue;
            }

            if (runs.Count > 0)
            {
                runs[^1] = (runs[^1].Label, at);
            }

            runs.Add((label, end));
            at = label.End - 1;
        }

        return runs;
    }

    // what is danced instead, where its counts stand before the words
    private ValueList<ChangedCounts> ReadLabelled(List<(CountLabel Label, int End)> runs, TextLine line, int partIndex, Counts cut)
    {
        Part part = dance.Parts[partIndex];
        (Counts start, Counts length) = SectionBefore(part, cut);
        int first = runs[0].Label.Places[0].Number;
        Counts lessened = Counts.FromWhole(first - 1) < length && start + Counts.FromWhole(first - 1) < cut ? Counts.Zero : start;
        Weight kept = state.Weight;
        Facing? facing = state.Facing;
        Counts from = runs[0].Label.Places[0].Place - lessened + start;
        state.Weight = weightAt(partIndex, from);
        List<WrittenMove> moves = [];
        Counts last = from;
        foreach ((CountLabel label, int end) in runs)
        {
            List<LabelPlace> places = label.Places.ConvertAll(p => p with
            {
                Number = p.Number - lessened.Value.Floor,
                Place = p.Place - lessened,
                Label = CountGrid.LabelOf(p.Place - lessened),
            });
            moves.AddRange(new LineReader(state).Read(places, label.End, end, line.Number, state.Text.Substring(label.Span.Start, label.Span.Length)).Moves);
            last = start + Counts.FromWhole(places.Max(p => p.Place).Value.Floor + 1);
        }

        state.Weight = kept;
        state.Facing = facing;
        return [new ChangedCounts(new CountSpan(from, last), moves.ToValueList())];
    }

    // the section that a place ends or lies in: where it begins, and how long it is
    private static (Counts Start, Counts Length) SectionBefore(Part part, Counts cut)
    {
        int index = 0;
        Counts start = Counts.Zero;
        while (index + 1 < part.Sections.Count && start + part.Sections[index].Length < cut)
        {
            start += part.Sections[index].Length;
            index++;
        }

        return (start, part.Sections.Count > 0 ? part.Sections[index].Length : Counts.Zero);
    }

    /// <summary>"with count 8: touch R together", "touch instead of step on count 16".</summary>
    public ValueList<ChangedCounts> Read(TextLine line, int start, int partIndex, Counts? after)
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
        if (dance.Parts.Count > partIndex && Labelled(start, line.End) is { Count: > 0 } runs)
        {
            return ReadLabelled(runs, line, partIndex, cut);
        }

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
        (Counts sectionStart, Counts length) = SectionBefore(part, cut);
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
        if (numberIndex >= 0 && numberIndex + 2 < tokens.Count && tokens[numberIndex + 1].Text is "-" or "&"
            && tokens[numberIndex + 2].Kind == WordTokenKind.Number && tokens[numberIndex + 2].Value - number.Value is > 0 and < 16)
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

        LineContent content = new LineReader(state).Read(places, moveStart, moveEnd, line.Number,
            string.Create(CultureInfo.InvariantCulture, $"{number.Value}"));
        state.Weight = kept;
        state.Facing = facing;
        Counts end = sectionStart + Counts.FromWhole(places.Max(p => p.Place).Value.Floor + 1);
        return [new ChangedCounts(new CountSpan(place, end), content.Moves)];
    }
}
