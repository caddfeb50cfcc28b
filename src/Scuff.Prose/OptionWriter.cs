using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose.Reading;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose;

/// <summary>Writes options into the author's text, in words that are read as exactly what was meant.</summary>
internal static class OptionWriter
{
    private const string Indent = "      ";

    /// <summary>The replacements that write an option; empty when no words for it are read back the same, or its place is not in the text.</summary>
    public static ValueList<TextEdit> ToTextEdits(Draft draft, DanceEdit.AddOption option)
    {
        CountSpan counts = new(option.Places[0], option.Places[^1] + Counts.One);
        List<WrittenLine> lines = [.. option.Section.Lines.Where(line => line.LabelSpan.Length > 0
            && line.Places.Any(place => counts.Contains(place.Place)))];
        if (lines.Count == 0 || WordsOf(draft, option, OffsetOf(draft.Text, lines[0])) is not var (label, words))
        {
            return default;
        }

        WrittenLine last = lines[^1];
        int end = last.Notes.Select(note => note.Span.End).Concat(last.Options.Select(o => o.Span.End)).Append(last.Span.End).Max();
        int stop = draft.Text.AsSpan(end).IndexOfAny('\r', '\n') is >= 0 and var rest ? end + rest : draft.Text.Length;
        string lineBreak = draft.Text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        string name = option.Name.Length > 0 ? $" \"{option.Name}\"" : "";
        return [new TextEdit(new TextSpan(stop, 0), $"{lineBreak}{Indent}option {label}{name}: {words}")];
    }

    // By the figures' names or else action by action, on a range of counts or else count by count: the first that is read as what is meant.
    private static (string Label, string Words)? WordsOf(Draft draft, DanceEdit.AddOption option, Counts offset)
    {
        Lexicon lexicon = Lexicon.Default.With(draft.Dance.OwnMoves);
        Weight before = WeightBefore(draft.Dance, option);
        foreach (bool inRange in (ReadOnlySpan<bool>)[true, false])
        {
            foreach (bool byName in (ReadOnlySpan<bool>)[true, false])
            {
                string words = string.Join(", ", option.Moves.Select(move => Phrasing.Describe(byName ? move : move with { Definition = null })));
                ReaderState state = new(Label(option.Places, Counts.Zero, inRange) + " " + words, lexicon) { Weight = before, IsWaltz = draft.Dance.BeatsPerBar == 3 };
                if (ReadsAs(state, option))
                {
                    return (Label(option.Places, offset, inRange), words);
                }
            }
        }

        return null;
    }

    private static string Label(ValueList<Counts> places, Counts offset, bool inRange)
    {
        string label = CountWriter.Label([.. places.Select(place => place + offset)]);
        return inRange || !label.Contains('-', StringComparison.Ordinal)
            ? label
            : string.Concat(places.Select((place, i) =>
            {
                string one = CountWriter.Label([place + offset]);
                return i > 0 && place.IsWhole && places[i - 1].IsWhole ? "," + one : one;
            }));
    }

    private static Weight WeightBefore(Dance dance, DanceEdit.AddOption option)
    {
        Weight before = dance.Start;
        foreach (Section section in SectionsUpTo(dance, option.Section))
        {
            bool isLast = ReferenceEquals(section, option.Section);
            foreach (WrittenStep step in section.Steps)
            {
                if (isLast && step.Count.Place >= option.Places[0])
                {
                    break;
                }

                before = step.Action.WeightAfter(before);
            }
        }

        return before;
    }

    // a tag is read on its own, after whatever wall it follows
    private static IEnumerable<Section> SectionsUpTo(Dance dance, Section last)
    {
        foreach (Section section in dance.Sections.Concat(dance.Tags.Select(tag => tag.Body)))
        {
            yield return section;
            if (ReferenceEquals(section, last))
            {
                yield break;
            }
        }
    }

    private static bool ReadsAs(ReaderState state, DanceEdit.AddOption option)
    {
        if (CountLabel.Read(state.Text, 0, state.Text.Length) is not { } label || !label.Places.Select(place => place.Place).SequenceEqual(option.Places))
        {
            return false;
        }

        LineContent content = new LineReader(state).Read(label.Places, label.End, state.Text.Length, 1, "");
        List<WrittenStep> meant = [.. option.Moves.SelectMany(move => move.Steps)];
        List<WrittenStep> read = [.. content.Moves.SelectMany(move => move.Steps)];
        if (meant.Count != read.Count || state.Complaints.Exists(complaint => complaint.Severity >= Severity.Question))
        {
            return false;
        }

        for (int i = 0; i < meant.Count; i++)
        {
            StepAction a = meant[i].Action;
            StepAction b = read[i].Action;
            if (meant[i].Count.Place != read[i].Count.Place || a.Kind != b.Kind || a.Foot != b.Foot || a.Effect != b.Effect || a.Turn != b.Turn
                || a.Direction != b.Direction || read[i].With.Count > 0)
            {
                return false;
            }
        }

        return true;
    }

    // a sheet that counts on from section to section prints 9-16 where the section has 1-8
    private static Counts OffsetOf(string text, WrittenLine line)
    {
        string label = text.Substring(line.LabelSpan.Start, line.LabelSpan.Length);
        int start = label.AsSpan().IndexOfAnyInRange('0', '9');
        WrittenCount? first = line.Places.Count == 0 ? null : line.Places.FirstOrDefault(place => place.Place.IsWhole);
        int number = 0;
        for (int i = start; i >= 0 && i < label.Length && char.IsAsciiDigit(label[i]) && number < 10000; i++)
        {
            number = (number * 10) + label[i] - '0';
        }

        return start < 0 || first is not { } place ? Counts.Zero : Counts.FromWhole(number - 1) - place.Place;
    }
}
