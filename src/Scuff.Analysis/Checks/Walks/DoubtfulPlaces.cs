using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks.Walks;

/// <summary>
/// Where the reader has an error or a question. Asked for every line by every walk, so finding a place costs the logarithm of the
/// number of complaints.
/// </summary>
internal sealed class DoubtfulPlaces
{
    private readonly List<int> _starts = [];

    // The furthest end of all complaints up to each one: they are in the order of their starts.
    private readonly List<int> _ends = [];

    /// <summary>The places of a report.</summary>
    public DoubtfulPlaces(Report report)
    {
        foreach (Diagnostic complaint in report.Complaints)
        {
            if (complaint.Severity >= Severity.Question)
            {
                int end = Math.Max(complaint.Span.End, complaint.Span.Start + 1);
                _starts.Add(complaint.Span.Start);
                _ends.Add(_ends.Count == 0 ? end : Math.Max(end, _ends[^1]));
            }
        }
    }

    /// <summary>Whether one of them shares a character with the span; a complaint of no length has the one it stands before.</summary>
    public bool Touch(TextSpan span)
    {
        int before = _starts.BinarySearch(span.End);
        before = before < 0 ? ~before : before;
        while (before > 0 && _starts[before - 1] >= span.End)
        {
            before--;
        }

        return before > 0 && _ends[before - 1] > span.Start;
    }
}
