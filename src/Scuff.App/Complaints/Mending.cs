using Scuff.Analysis;
using Scuff.Diagnostics;
using Scuff.Prose;

namespace Scuff.App.Complaints;

/// <summary>Applies safe mends, one at a time, until there is nothing left that they better.</summary>
internal static class Mending
{
    /// <summary>Most mends in one text: far above what a text of any use needs, and a sure end.</summary>
    private const int MostRounds = 500;

    /// <summary>Mends a text.</summary>
    /// <returns>The dance after the mends and, in order, what was done: one sentence each.</returns>
    public static (DanceAnalysis Analysis, IReadOnlyList<string> Done) Apply(DanceAnalysis analysis)
    {
        List<string> done = [];
        for (int round = 0; round < MostRounds; round++)
        {
            DanceAnalysis? better = null;
            foreach (Diagnostic complaint in analysis.Report.Complaints)
            {
                Fix? fix = complaint.Fixes.FirstOrDefault(f => f.IsSafe);
                better = fix is null ? null : Try(analysis, fix);
                if (better is not null)
                {
                    int line = new TextLines(analysis.Draft.Text).PlaceOf(complaint.Span.Start).Line;
                    string count = complaint.Count is { Length: > 0 } label ? $", count {label}" : "";
                    done.Add($"line {line}{count}: {fix!.Title}");
                    break;
                }
            }

            if (better is null)
            {
                break;
            }

            analysis = better;
        }

        return (analysis, done);
    }

    // A mend counts only when it leaves fewer complaints: so mends cannot chase each other for ever, and none does harm.
    private static DanceAnalysis? Try(DanceAnalysis analysis, Fix fix)
    {
        string text = Replace(analysis.Draft.Text, EditWriter.ToTextEdits(analysis.Draft, fix.Remedy));
        if (text == analysis.Draft.Text)
        {
            return null;
        }

        DanceAnalysis after = DanceAnalysis.Of(DanceReader.Read(text), analysis.Namesakes, analysis.Maps);
        return Weigh(after.Report).CompareTo(Weigh(analysis.Report)) < 0 ? after : null;
    }

    private static (int Bad, int All) Weigh(Report report)
        => (report.Complaints.Count(d => d.Severity != Severity.Hint), report.Complaints.Count);

    private static string Replace(string text, ValueList<TextEdit> edits)
    {
        foreach (TextEdit edit in edits.OrderByDescending(e => e.Span.Start))
        {
            text = string.Concat(text.AsSpan(0, edit.Span.Start), edit.NewText, text.AsSpan(edit.Span.End));
        }

        return text;
    }
}
