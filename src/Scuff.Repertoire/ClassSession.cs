namespace Scuff.Repertoire;

/// <summary>One meeting of a class, planned or held. Equal by value.</summary>
public sealed record ClassSession
{
    /// <summary>Its name within the club; empty for one that is not kept yet.</summary>
    public string Id { get; init; } = "";

    /// <summary>The class.</summary>
    public required string ClassId { get; init; }

    /// <summary>The day.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>When it begins; null for the usual time of the class.</summary>
    public TimeOnly? Starts { get; init; }

    /// <summary>How long it lasts, in minutes; null for the usual time of the class.</summary>
    public int? Minutes { get; init; }

    /// <summary>Whether it was held; a planned one teaches nobody anything yet.</summary>
    public bool IsHeld { get; init; }

    /// <summary>How many were there; null when she does not say. No names are kept.</summary>
    public int? People { get; init; }

    /// <summary>How it went, in her words.</summary>
    public string HowItWent { get; init; } = "";

    /// <summary>What was danced, or is planned, in order.</summary>
    public ValueList<SessionItem> Items { get; init; }
}
