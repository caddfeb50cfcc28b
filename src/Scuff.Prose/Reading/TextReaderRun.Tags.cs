using System.Globalization;
using System.Text.RegularExpressions;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

// Tags whose steps stand in the line that names them.
internal sealed partial class TextReaderRun
{
    // a tag is no longer than this
    private const int LongestTag = 32;

    /// <summary>
    /// "TAG: 1-2 sway R, sway L; 3-4 ...", "Tag 2 (4 counts): sway R, L, R, L", "Tag 1-4 rocking chair": the name of the tag, and where its steps stand; null
    /// where they do not stand in the line.
    /// </summary>
    private (string Name, TextLine Steps)? StepsOfTag(TextLine line, TagHeading tag, int index)
    {
        foreach (ValueMatch head in HeadOfTag().EnumerateMatches(_text.AsSpan(line.Start, line.End - line.Start)))
        {
            TextLine steps = (line with { Start = line.Start + head.Length }).Trimmed(_text);
            if (steps.Start >= steps.End || head.Length >= line.End - line.Start)
            {
                return null;
            }

            bool counted = CountLabel.Read(_text, steps.Start, steps.End) is CountLabel label && label.End < steps.End && FirstNumber(label) <= 1;
            List<Term> terms = TermReader.Read(_text, steps.Start, steps.End, _state.Lexicon);
            if (!counted && NextCounts(index + 1) is ( <= 1, _))
            {
                // "TAG - 4 COUNTS - ROCKING CHAIR", and under it what is danced
                return null;
            }

            bool danced = terms.Exists(t => t.Kind is TermKind.Move) && (counted || !terms.Exists(t => t.Kind is TermKind.Unknown or TermKind.Repeat));
            if (!danced || (!counted && _text[steps.Start - 1] is not (' ' or ':' or '-' or '–')))
            {
                return null;
            }

            string named = _text.Substring(line.Start, head.Length);
            string name = named.AsSpan().IndexOfAny('"', '“') > 0 ? tag.Name : tag.Name.Length > 0 && NumberOfTag().Match(named) is { Success: true } number
                ? number.Groups[1].Value : "";
            return (name, steps);
        }

        return null;
    }

    // "Tag", "Tag 2:", "Bridge (4 counts) -": up to the steps; a number with a dash or a sign behind it is a count
    [GeneratedRegex(@"^(?:tag|bridge)(?:\s*[""“][^""”]{1,24}[""”])?(?:\s*#?\d{1,2}(?=\s*(?:[:(]"
        + @"|[-–—=] )))?\s*(?:[-–—]\s*)?(?:[(\[]?\s*\d{1,2}[ -]?(?:counts?|cts?|beats?)\s*[)\]]?)?\s*(?:[:=–—-]\s*|(?=\d+ ?[-–&] ?\d))",
        RegexOptions.IgnoreCase)]
    private static partial Regex HeadOfTag();

    [GeneratedRegex(@"^(?:tag|bridge)\s*#?(\d{1,2})(?!\s*-?\s*(?:counts?|cts?|beats?|\d))", RegexOptions.IgnoreCase)]
    private static partial Regex NumberOfTag();

    private void ReadStepsOfTag(TextLine steps, Counts? claimed)
    {
        if (CountLabel.Read(_text, steps.Start, steps.End) is CountLabel label && label.End < steps.End)
        {
            ReadCounts(steps, label);
            return;
        }

        int length = claimed is Counts told && told.Value.Floor is > 0 and <= LongestTag ? told.Value.Floor : 0;
        if (length == 0)
        {
            // "Tag: sway R, L, R, L" lasts as long as its steps do
            int asked = _state.Complaints.Count;
            (Weight weight, Facing? facing) = (_state.Weight, _state.Facing);
            LineContent free = new LineReader(_state).ReadFree(steps.Start, steps.End, steps.Number, 1, 16);
            List<WrittenStep> made = [.. free.Moves.SelectMany(m => m.Steps)];
            length = made.Count > 0 ? made.Max(s => s.Count.Place).Value.Floor + 1 : 1;
            (_state.Weight, _state.Facing) = (weight, facing);
            _state.Complaints.RemoveRange(asked, _state.Complaints.Count - asked);
        }

        List<LabelPlace> places = [.. Enumerable.Range(1, length).Select(n
            => new LabelPlace(n.ToString(CultureInfo.InvariantCulture), n, Counts.FromWhole(n - 1), n > 1))];
        ReadPlaces(steps, places, steps.Start, string.Create(CultureInfo.InvariantCulture, $"1-{length}"), new TextSpan(steps.Start, 0));
    }
}
