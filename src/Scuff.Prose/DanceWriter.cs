using System.Globalization;
using System.Text;
using Scuff.Dances;
using Scuff.Prose.Reading;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose;

/// <summary>Writes a dance back as canonical text. Words that were not understood stay as they are.</summary>
public static class DanceWriter
{
    private const int LabelWidth = 6;
    private const int FacingColumn = 48;

    // How often sections that do not read back are left as they are before all is.
    private const int Attempts = 3;

    /// <summary>
    /// The text in canonical order and words. A line is rewritten only when reading the new words gives the same dance;
    /// otherwise it stays as she wrote it, and so does a section whose lines do so together (one of them counts on from the section before, say).
    /// Tidying twice changes nothing more.
    /// </summary>
    public static string Tidy(Draft draft)
    {
        string text = ReadingTheSame(draft);
        return ReadingTheSame(DanceReader.Read(text)) == text ? text : Compose(draft, _ => true);
    }

    private static string ReadingTheSame(Draft draft)
    {
        HashSet<int> left = [];
        for (int attempt = 0; attempt < Attempts; attempt++)
        {
            string text = Compose(draft, left.Contains);
            Draft again = DanceReader.Read(text);
            List<Section> sections = Bodies(draft);
            List<Section> read = Bodies(again);
            if (sections.Count != read.Count || !SameAround(draft.Dance, again.Dance))
            {
                break;
            }

            List<Section> changed = [.. sections.Where((s, i) => !s.Steps.Select(Meant).SequenceEqual(read[i].Steps.Select(Meant))
                || s.Lines.Sum(l => l.Options.Count) != read[i].Lines.Sum(l => l.Options.Count))];
            if (changed.Count == 0)
            {
                return text;
            }

            left.UnionWith(changed.SelectMany(s => s.Lines.Select(l => l.Number).Append(s.LineNumber)));
        }

        return Compose(draft, _ => true);
    }

    private static List<Section> Bodies(Draft draft) => [.. draft.Dance.Sections, .. draft.Dance.Tags.Select(t => t.Body)];

    private static (Counts Place, StepAction Action) Meant(WrittenStep step) => (step.Count.Place, step.Action);

    private static bool SameAround(Dance a, Dance b) => a.Title == b.Title && a.ClaimedCounts?.Value == b.ClaimedCounts?.Value
        && a.ClaimedWalls?.Value == b.ClaimedWalls?.Value
        && a.Interruptions.Select(i => (string.Join(',', i.Walls), i.AfterCounts, string.Join(' ', i.Acts)))
            .SequenceEqual(b.Interruptions.Select(i => (string.Join(',', i.Walls), i.AfterCounts, string.Join(' ', i.Acts))));

    private static string Compose(Draft draft, Func<int, bool> isLeft)
    {
        Dictionary<int, List<WrittenLine>> byLine = [];
        HashSet<int> usual = [.. draft.Report.Complaints.Where(c => c.Rule == ReadingRules.UsualCounts).Select(c => c.Span.Start)];
        foreach (WrittenLine line in draft.Dance.Sections.Concat(draft.Dance.Tags.Select(t => t.Body)).SelectMany(s => s.Lines).Where(l =>
            l.LabelSpan.Length > 0 || usual.Contains(l.Span.Start)))
        {
            if (!byLine.TryGetValue(line.Number, out List<WrittenLine>? lines))
            {
                byLine.Add(line.Number, lines = []);
            }

            lines.Add(line);
        }

        Dictionary<int, Section> headings = [];
        foreach (Section section in draft.Dance.Sections)
        {
            headings.TryAdd(section.LineNumber, section);
        }

        List<TextLine> all = TextLine.Of(draft.Text);
        HashSet<int> asked = [.. draft.Report.Complaints.Where(c => c.Severity >= Diagnostics.Severity.Question
            || c.Rule == ReadingRules.FigureDetailDiffers).Select(c => LineOf(all, c.Span.Start))];
        Lexicon lexicon = Lexicon.Default.With(draft.Dance.OwnMoves);
        StringBuilder text = new(draft.Text.Length + 64);
        bool blank = false;
        int written = 0;
        foreach (TextLine raw in all)
        {
            if (raw.Start < written)
            {
                // the line above went on in this one
                continue;
            }

            TextLine line = raw.Trimmed(draft.Text);
            if (line.Start == line.End)
            {
                blank = text.Length > 0;
                continue;
            }

            if (blank)
            {
                text.Append('\n');
                blank = false;
            }

            if (byLine.TryGetValue(raw.Number, out List<WrittenLine>? lines) && !asked.Contains(raw.Number) && !isLeft(raw.Number))
            {
                written = WriteLines(text, draft, line, lines, lexicon, headings.GetValueOrDefault(raw.Number));
                continue;
            }

            string words = draft.Text[raw.Start..raw.End].TrimEnd();
            text.Append(headings.TryGetValue(raw.Number, out Section? heading) && !byLine.ContainsKey(raw.Number) && !isLeft(raw.Number)
                && Heading(draft.Text[line.Start..line.End], heading) is string canonical && LosesNothing(words, canonical) ? canonical
                : words).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>One line of moves with its counts and facings, without the line break.</summary>
    public static string Line(WrittenLine line)
    {
        StringBuilder words = new(CountWriter.Label([.. line.Places.Select(p => p.Place)]).PadRight(LabelWidth - 1));
        words.Append(' ');
        List<FacingClaim> claims = [.. line.Claims];
        bool first = true;
        foreach (WrittenMove move in line.Moves)
        {
            words.Append(first ? "" : ", ").Append(Phrasing.Describe(move));
            first = false;
            bool last = move == line.Moves[^1];
            foreach (FacingClaim claim in claims.ToList())
            {
                if (!last && move.Steps.Count > 0 && move.Steps[^1].Count.Place >= claim.At)
                {
                    words.Append(" [").Append(claim.Facing).Append(']');
                    claims.Remove(claim);
                }
            }
        }

        foreach (FacingClaim claim in claims)
        {
            while (words.Length < FacingColumn - 1)
            {
                words.Append(' ');
            }

            words.Append(" [").Append(claim.Facing).Append(']');
        }

        return words.ToString();
    }

    private static int LineOf(List<TextLine> lines, int offset)
    {
        int low = 0;
        int high = lines.Count - 1;
        while (low < high)
        {
            int middle = (low + high + 1) / 2;
            (low, high) = lines[middle].Start <= offset ? (middle, high) : (low, middle - 1);
        }

        return lines[low].Number;
    }

    /// <summary>Whether every word and number of a heading stands in its canonical form too.</summary>
    private static bool LosesNothing(string words, string canonical)
    {
        HashSet<string> kept = [.. WordScanner.Scan(canonical, 0, canonical.Length).Select(t => t.Text)];
        return WordScanner.Scan(words, 0, words.Length).TrueForAll(t => t.Kind == WordTokenKind.Mark || kept.Contains(t.Text)
            || t.Text is "section" or "sec" or "sect" or "s" or "count" or "counts" or "one" or "two" or "three" or "four" or "five" or "six"
                or "seven" or "eight");
    }

    private static string? Heading(string words, Section section)
    {
        if (!words.StartsWith('s') && !words.StartsWith('S') && !words.StartsWith('['))
        {
            return null;
        }

        string title = section.Title.Length > 0 ? ": " + section.Title : "";
        string length = section.ClaimedLength is Counts claimed && !words.StartsWith('[')
            ? string.Create(CultureInfo.InvariantCulture, $" ({claimed} counts)") : "";
        return string.Create(CultureInfo.InvariantCulture, $"section {section.Number}{title}{length}");
    }

    // where what was written ends in her text
    private static int WriteLines(StringBuilder text, Draft draft, TextLine line, List<WrittenLine> written, Lexicon lexicon, Section? heading)
    {
        StringBuilder made = new();
        if (heading is not null)
        {
            // "S1: 1-2 walk R, L": the heading gets a line of its own, if all its words are in it
            string before = draft.Text[line.Start..Math.Max(line.Start, written[0].LabelSpan.Start)];
            if (Heading(before, heading) is not string own || !LosesNothing(before, own))
            {
                text.Append(draft.Text[line.Start..line.End]).Append('\n');
                return line.End;
            }

            made.Append(own).Append('\n');
        }

        bool namesTag = heading is null && written[0].LabelSpan.Start > line.Start
            && draft.Dance.Tags.Any(t => t.Span.Start <= line.Start && t.Span.End >= line.End);
        if (namesTag)
        {
            // "TAG: 1-2 sway R, L": the steps alone would be none of the tag
            text.Append(draft.Text[line.Start..line.End]).Append('\n');
            return line.End;
        }

        int end = written.Max(w => Math.Max(w.Span.End, w.LabelSpan.End));
        if (end < line.End && draft.Text.AsSpan(end, line.End - end).IndexOfAnyInRange('A', 'z') >= 0 && written[^1].LabelSpan.Start < written[^1].Span.End)
        {
            // an option or a restart stands behind the steps
            text.Append(draft.Text[line.Start..line.End]).Append('\n');
            return line.End;
        }

        foreach (WrittenLine one in written)
        {
            string canonical = Line(one);
            if (one.LeavesWordsOut || !ReadsBack(one, canonical, lexicon))
            {
                text.Append(draft.Text[line.Start..line.End]).Append('\n');
                return line.End;
            }

            made.Append(canonical).Append('\n');

            // words that stay in the line need no note as well
            foreach (Note note in one.Notes.Where(n => n.Span.Start >= line.Start && n.Span.End <= Math.Max(end, line.End)
                && !one.Steps.Any(s => s.Gesture.Contains(n.Words, StringComparison.Ordinal))))
            {
                made.Append("      ").Append(note.Kind).Append(": ").Append(note.Words).Append('\n');
            }
        }

        text.Append(made);
        return Math.Max(end, line.End);
    }

    /// <summary>Whether the canonical words mean the same moves on the same counts.</summary>
    private static bool ReadsBack(WrittenLine line, string canonical, Lexicon lexicon)
    {
        foreach (WrittenMove move in line.Moves)
        {
            if (move.Steps.Any(s => s.Action.Kind == ActionKind.Unknown))
            {
                return false;
            }
        }

        foreach (Weight before in (ReadOnlySpan<Weight>)[Weight.Left, Weight.Right, Weight.Shared])
        {
            if (!CouldStart(line, before))
            {
                continue;
            }

            ReaderState state = new(canonical, lexicon) { Weight = before };
            CountLabel? label = CountLabel.Read(canonical, 0, canonical.Length);
            if (label is null || label.Places.Count != line.Places.Count)
            {
                return false;
            }

            LineContent content = new LineReader(state).Read([.. line.Places.Select((p, i) =>
                new LabelPlace(p.Label, p.Place.Value.Floor + 1, p.Place, label.Places[i].AfterDash))], label.End, canonical.Length, 1, line.Label);
            List<WrittenStep> old = [.. line.Steps];
            List<WrittenStep> read = [.. content.Moves.SelectMany(m => m.Steps)];
            if (!line.Moves.Select(m => m.SaidContact).SequenceEqual(content.Moves.Select(m => m.SaidContact)) || old.Count != read.Count
                || state.Complaints.Exists(c => c.Severity >= Diagnostics.Severity.Question))
            {
                return false;
            }

            for (int i = 0; i < old.Count; i++)
            {
                StepAction a = old[i].Action;
                StepAction b = read[i].Action;
                if (old[i].Count.Place != read[i].Count.Place || a.Kind != b.Kind || a.Foot != b.Foot || a.Effect != b.Effect || a.Turn != b.Turn
                    || a.Direction != b.Direction || old[i].With != read[i].With || old[i].Gesture != read[i].Gesture)
                {
                    return false;
                }
            }

            return true;
        }

        return false;
    }

    private static bool CouldStart(WrittenLine line, Weight before)
    {
        foreach (WrittenStep step in line.Steps)
        {
            if (step.Action.Foot.ToFoot() is Foot foot)
            {
                return step.Action.Traits.FootRule switch
                {
                    FootRule.Free => before != foot.ToWeight(),
                    FootRule.Standing => before == foot.ToWeight(),
                    _ => true,
                };
            }
        }

        return true;
    }
}
