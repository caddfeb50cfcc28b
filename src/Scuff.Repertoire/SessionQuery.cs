namespace Scuff.Repertoire;

/// <summary>Which sessions are looked for. As it stands it asks for all, the latest first.</summary>
public sealed record SessionQuery
{
    /// <summary>Only sessions of this class; null for those of all.</summary>
    public string? ClassId { get; init; }

    /// <summary>The first day; null for no limit.</summary>
    public DateOnly? From { get; init; }

    /// <summary>The last day; null for no limit.</summary>
    public DateOnly? To { get; init; }

    /// <summary>Only those that were held, or only those that were not; null for both.</summary>
    public bool? IsHeld { get; init; }

    /// <summary>How many of the latest are left out.</summary>
    public int Skip { get; init; }

    /// <summary>How many are given at most.</summary>
    public int Take { get; init; } = 50;
}
