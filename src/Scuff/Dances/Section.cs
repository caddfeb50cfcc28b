using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Dances;

/// <summary>A section: an eight (or six, or another length) that restarts its numbering at 1.</summary>
public sealed record Section
{
    /// <summary>Number in its part, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>Its heading, or an empty text.</summary>
    public string Title { get; init; } = "";

    /// <summary>The length stated in its heading, or null.</summary>
    public Counts? ClaimedLength { get; init; }

    /// <summary>Its length: up to the end of its last whole count.</summary>
    public required Counts Length { get; init; }

    /// <summary>Its lines.</summary>
    public required ValueList<WrittenLine> Lines { get; init; }

    /// <summary>Notes that belong to the whole section.</summary>
    public ValueList<Note> Notes { get; init; }

    /// <summary>What she wants called for it and in it.</summary>
    public ValueList<WrittenCall> Calls { get; init; }

    /// <summary>Its heading in the text.</summary>
    public required TextSpan Span { get; init; }

    /// <summary>One-based line of its heading.</summary>
    public int LineNumber { get; init; }

    /// <summary>All actions in the order written.</summary>
    public IEnumerable<WrittenStep> Steps => Lines.SelectMany(l => l.Steps);
}
