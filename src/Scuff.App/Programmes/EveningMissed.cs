using Scuff.Analysis.Planning;

namespace Scuff.App.Programmes;

/// <summary>A wish that the programme does not meet, with the titles as they were when it was made.</summary>
internal sealed record EveningMissed
{
    /// <summary>The dance.</summary>
    public required string DanceId { get; init; }

    /// <summary>Its title; empty when the club has it no more.</summary>
    public string Title { get; set; } = "";

    /// <summary>Why not.</summary>
    public required ProgrammeMissedKind Kind { get; init; }

    /// <summary>The dance that stands in its way; empty for none.</summary>
    public string OtherId { get; set; } = "";

    /// <summary>The title of that one.</summary>
    public string OtherTitle { get; set; } = "";

    /// <summary>What the programme would lose by it; 0 when it cannot be at all or nobody knows.</summary>
    public int Points { get; set; }
}
