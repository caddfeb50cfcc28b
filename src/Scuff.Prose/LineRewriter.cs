using Scuff.Dances;
using Scuff.Diagnostics;

namespace Scuff.Prose;

/// <summary>Writes changed count lines over those of a text. What hangs under a line that goes stays, save its options and calls.</summary>
public static class LineRewriter
{
    /// <summary>
    /// The replacements that turn the count lines of a text into those of a changed dance. Lines belong together by their number; a line
    /// that the changed dance lacks goes, and so does an option or a call. Where several count lines share a line of the text, it stays.
    /// </summary>
    /// <param name="draft">The text.</param>
    /// <param name="changed">The dance as it is to be.</param>
    /// <param name="spelled">Numbers of lines whose new moves are to be told action by action, where the names of figures are read otherwise.</param>
    public static ValueList<TextEdit> Edits(Draft draft, Dance changed, IReadOnlySet<int> spelled)
    {
        List<TextEdit> edits = [];
        Dictionary<int, WrittenLine> after = [];
        foreach (WrittenLine line in LinesOf(changed))
        {
            after.TryAdd(line.Number, line);
        }

        foreach (IGrouping<int, WrittenLine> lines in LinesOf(draft.Dance).Where(line => line.LabelSpan.Length > 0).GroupBy(line => line.Number))
        {
            // several count lines in one line of the text: she alone knows where one ends
            if (lines.Skip(1).Any())
            {
                continue;
            }

            WrittenLine line = lines.First();

            WrittenLine? now = after.GetValueOrDefault(line.Number);
            if (now is null)
            {
                edits.Add(WholeLine(draft.Text, line.LabelSpan.Start));
            }
            else if (now.Moves != line.Moves || now.Claims != line.Claims)
            {
                HashSet<WrittenMove> kept = new(line.Moves, ReferenceEqualityComparer.Instance);
                WrittenLine told = spelled.Contains(line.Number)
                    ? now with { Moves = now.Moves.Select(move => kept.Contains(move) ? move : move with { Definition = null }).ToValueList() }
                    : now;
                int end = EndOfLine(draft.Text, line.LabelSpan.Start);
                edits.Add(new TextEdit(TextSpan.FromBounds(line.LabelSpan.Start, end), DanceWriter.Line(told).TrimEnd()));
            }

            foreach (StepOption option in line.Options.Where(option => now is null || !now.Options.Any(o => ReferenceEquals(o, option))))
            {
                if (now is null || now.Options.Count < line.Options.Count)
                {
                    edits.Add(WholeLine(draft.Text, option.Span.Start));
                }
            }
        }

        HashSet<WrittenCall> calls = new(SectionsOf(changed).SelectMany(section => section.Calls), ReferenceEqualityComparer.Instance);
        edits.AddRange(SectionsOf(draft.Dance).SelectMany(section => section.Calls).Where(call => !calls.Contains(call))
            .Select(call => WholeLine(draft.Text, call.Span.Start)));
        return edits.ToValueList();
    }

    /// <summary>All count lines of a dance: of its sections, then of its tags.</summary>
    public static IEnumerable<WrittenLine> LinesOf(Dance dance) => SectionsOf(dance).SelectMany(section => section.Lines);

    private static IEnumerable<Section> SectionsOf(Dance dance) => dance.Sections.Concat(dance.Tags.Select(tag => tag.Body));

    private static int EndOfLine(string text, int at)
    {
        int stop = text.AsSpan(at).IndexOfAny('\r', '\n');
        return stop < 0 ? text.Length : at + stop;
    }

    // the line with its break
    private static TextEdit WholeLine(string text, int at)
    {
        int start = text.LastIndexOf('\n', Math.Max(0, at - 1)) + 1;
        int end = EndOfLine(text, at);
        end += end < text.Length && text[end] == '\r' ? 1 : 0;
        end += end < text.Length && text[end] == '\n' ? 1 : 0;
        return new TextEdit(TextSpan.FromBounds(start, end), "");
    }
}
