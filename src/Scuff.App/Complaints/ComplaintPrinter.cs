using Scuff.Diagnostics;

namespace Scuff.App.Complaints;

/// <summary>
/// Prints complaints for a teacher: place, the line as she wrote it with the faulty words underlined, the sentence,
/// why it matters on the floor, and what would mend it.
/// </summary>
internal sealed class ComplaintPrinter(TextWriter writer, Paint paint, int width)
{
    private const string Indent = "  ";

    /// <summary>Prints all complaints about one text, in the order of their places.</summary>
    /// <param name="name">The file as a person says it.</param>
    /// <param name="text">Its text.</param>
    /// <param name="report">The complaints.</param>
    public void Print(string name, string text, Report report)
    {
        if (report.Complaints.Count == 0)
        {
            return;
        }

        TextLines lines = new(text);
        HashSet<string> explained = new(StringComparer.Ordinal);
        foreach (Diagnostic complaint in report.Complaints)
        {
            Print(name, lines, complaint, explained.Add(complaint.Rule.Id));
            writer.WriteLine();
        }
    }

    private void Print(string name, TextLines lines, Diagnostic complaint, bool withReason)
    {
        (int line, int column, int length) = lines.FirstLineOf(complaint.Span);
        string count = complaint.Count is { Length: > 0 } label ? $", count {label}" : "";
        writer.WriteLine(
            paint.Of(Tone.Name, $"{Plain.Line(name)}:{line}:{column}") + Indent
            + paint.Of(ToneOf(complaint.Severity), SeverityWords.Of(complaint.Severity))
            + paint.Of(Tone.Soft, $" {complaint.Rule.Id}{Plain.Line(count)}"));

        string number = line.ToString(System.Globalization.CultureInfo.InvariantCulture);
        string margin = new(' ', number.Length);
        Excerpt excerpt = Excerpt.Of(lines.WordsOf(line), column, length, Math.Max(20, width - number.Length - 5));
        writer.WriteLine($"{Indent}{paint.Of(Tone.Soft, number + " |")} {excerpt.Words}");
        writer.WriteLine(
            $"{Indent}{paint.Of(Tone.Soft, margin + " |")} {new string(' ', excerpt.Start)}"
            + paint.Of(ToneOf(complaint.Severity), new string('^', excerpt.Length)));

        Paragraph("", complaint.Message);
        foreach (RelatedPlace related in complaint.Related)
        {
            Paragraph("", $"Line {lines.PlaceOf(related.Span.Start).Line}: {related.Words}");
        }

        if (withReason && complaint.Rule.Reason.Length > 0)
        {
            Paragraph("Why: ", complaint.Rule.Reason);
        }

        for (int i = 0; i < complaint.Fixes.Count; i++)
        {
            Fix fix = complaint.Fixes[i];
            Paragraph(i == 0 ? "Mend: " : "or: ", fix.Title + (fix.IsSafe ? " (--fix does it)" : ""));
        }
    }

    private void Paragraph(string lead, string words)
    {
        bool isFirst = true;
        foreach (string line in Wrapping.Wrap(lead + Plain.Line(words), width - Indent.Length))
        {
            writer.WriteLine(Indent + (isFirst && lead.Length > 0 ? paint.Of(Tone.Soft, lead) + line[lead.Length..] : line));
            isFirst = false;
        }
    }

    private static Tone ToneOf(Severity severity) => severity switch
    {
        Severity.Error => Tone.Bad,
        Severity.Question or Severity.Warning => Tone.Open,
        _ => Tone.Soft,
    };
}
