using Scuff.App.Complaints;
using Scuff.Diagnostics;

namespace Scuff.App.Json;

/// <summary>One complaint in JSON.</summary>
/// <param name="Id">Stable id of the rule.</param>
/// <param name="Severity">error, question, warning or hint.</param>
/// <param name="Line">One-based line.</param>
/// <param name="Column">One-based column, in UTF-16 units.</param>
/// <param name="Count">The count it is about, or null.</param>
/// <param name="Message">The sentence.</param>
/// <param name="Fixes">What would mend it, best first.</param>
internal sealed record Complaint(string Id, string Severity, int Line, int Column, string? Count, string Message, IReadOnlyList<string> Fixes)
{
    /// <summary>The complaint for JSON.</summary>
    public static Complaint Of(Diagnostic complaint, TextLines lines)
    {
        (int line, int column) = lines.PlaceOf(complaint.Span.Start);
        return new Complaint(
            complaint.Rule.Id,
            SeverityWords.Of(complaint.Severity),
            line,
            column,
            complaint.Count,
            complaint.Message,
            [.. complaint.Fixes.Select(f => f.Title)]);
    }
}
