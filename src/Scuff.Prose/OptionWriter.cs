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
        if (lines.Count == 0 || WordsOf(draft, option) is not { } words)
        {
            return default;
        }

        WrittenLine last = lines[^1];
        int end = last.Notes.Select(note => note.Span.End).Concat(last.Options.Select(o => o.Span.End)).Append(last.Span.End).Max();
        int stop = draft.Text.AsSpan(end).IndexOfAny('\r', '\n') is >= 0 and var rest ? end + rest : draft.Text.Length;
        string lineBreak = draft.Text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        string label = CountWriter.Label([.. option.Places.Select(place => place + OffsetOf(draft.Text, lines[0]))]);
        string name = option.Name.Length > 0 ? $" \"{option.Name}\"" : "";
        return [new TextEdit(new TextSpan(stop, 0), $"{lineBreak}{Indent}option {label}{name}: {words}")];
    }

    /// <summary>Words for moves on their places that are read back as those moves: by the figures' names, or else action by action; null for none.</summary>
    /// <param name="draft">The text that they are for: its own moves and its rhythm have a say.</param>
    /// <param name="moves">The moves.</param>
    /// <param name="places">The places of their counts.</param>
    /// <param name="before">Where the weight is before them.</param>
    public static string? WordsOf(Draft draft, ValueList<WrittenMove> moves, ValueList<Counts> places, Weight before)
    {
        Lexicon lexicon = Lexicon.Default.With(draft.Dance.OwnMoves);
        bool isWaltz = draft.Dance.BeatsPerBar == 3;
        foreach (bool byName in (ReadOnlySpan<bool>)[true, false])
        {
            string words = string.Join(", ", moves.Select(move => byName ? Phrasing.Describe(move) : Phrasing.Describe(move with { Definition = null })));
            if (ReadsAs(words, moves, places, before, lexicon, isWaltz))
            {
                return words;
            }
        }

        return null;
    }

    private static string? WordsOf(Draft draft, DanceEdit.AddOption option)
    {
        Weight before = draft.Dance.Start;
        foreach (Section section in SectionsUpTo(draft.Dance, option.Section))
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

        return WordsOf(draft, option.Moves, option.Places, before);
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

    private static bool ReadsAs(string words, ValueList<WrittenMove> moves, ValueList<Counts> places, Weight before, Lexicon lexicon, bool isWaltz)
    {
        ReaderState state = new(words, lexicon) { Weight = before, IsWaltz = isWaltz };
        LabelPlace[] labels =
        [
            .. places.Select((place, i) => new LabelPlace(
                CountGrid.LabelOf(place),
                place.Value.Floor + 1,
                place,
                i > 0 && place.IsWhole && places[i - 1].IsWhole && places[i - 1] + Counts.One == place)),
        ];
        LineContent content = new LineReader(state).Read(labels, 0, words.Length, 1, "");
        List<WrittenStep> meant = [.. moves.SelectMany(move => move.Steps)];
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
