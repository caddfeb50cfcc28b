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

            if (at > 0 && (best < 0 || at < best))
            {
                best = at;
            }
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

    /// <summary>Where the words on changed counts end: before "then restart", or at the end of the sentence.</summary>
    public static int ChangeEnd(string words, int start)
    {
        foreach (string mark in (ReadOnlySpan<string>)[", then restart", " then restart", " and restart", ", restart", ", then start again",
            " then start again", " and start again", ", then begin again", " and begin again"])
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
        Match told = NamedCounts().Match(words);
        if (!told.Success)
        {
            return null;
        }

        int first = int.Parse(told.Groups[1].ValueSpan, CultureInfo.InvariantCulture);
        return (first, told.Groups[2].Success ? int.Parse(told.Groups[2].ValueSpan, CultureInfo.InvariantCulture) : first);
    }

    [GeneratedRegex(@"\bcounts? (\d{1,2})(?: ?(?:[-–&]|and|to) ?(\d{1,2})\b)?", RegexOptions.IgnoreCase)]
    private static partial Regex NamedCounts();

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
