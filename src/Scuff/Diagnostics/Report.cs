namespace Scuff.Diagnostics;

/// <summary>All complaints about one text, in the order of their places; at one place the worst first.</summary>
public sealed record Report
{
    /// <summary>Makes a report; the complaints are put in order and repeats are dropped.</summary>
    public Report(IEnumerable<Diagnostic> complaints) => Complaints = complaints
        .Distinct()
        .OrderBy(d => d.Span.Start)
        .ThenByDescending(d => d.Severity)
        .ThenBy(d => d.Rule.Id, StringComparer.Ordinal)
        .ToValueList();

    /// <summary>A report without complaints.</summary>
    public static Report Empty { get; } = new([]);

    /// <summary>The complaints, ordered.</summary>
    public ValueList<Diagnostic> Complaints { get; }

    /// <summary>Whether nothing worse than a hint was found.</summary>
    public bool IsClean => Complaints.All(d => d.Severity == Severity.Hint);
}
