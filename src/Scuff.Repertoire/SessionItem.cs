namespace Scuff.Repertoire;

/// <summary>A dance within a session. Equal by value.</summary>
public sealed record SessionItem
{
    /// <summary>What it was there for.</summary>
    public required ItemRole Role { get; init; }

    /// <summary>The dance; null for one that the club does not have (a visitor's), or has no more.</summary>
    public string? DanceId { get; init; }

    /// <summary>Its title as it was then.</summary>
    public string Title { get; init; } = "";

    /// <summary>
    /// The version of its sheet that was taught: the revision of its text on that day (<see cref="DanceRow.Revision"/>). Null when the session is only
    /// planned, or nobody knows. The text of that revision is kept as a version as long as a session names it.
    /// </summary>
    public int? Revision { get; init; }

    /// <summary>Minutes planned or spent; null when she does not say.</summary>
    public int? Minutes { get; init; }

    /// <summary>Her words about it, such as where they got lost.</summary>
    public string Note { get; init; } = "";
}
