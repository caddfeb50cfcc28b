namespace Scuff.App.Programmes;

/// <summary>The night itself, kept at every tick.</summary>
internal sealed record EveningNight
{
    /// <summary>When it really began; the planned seconds count from the beginning of the evening, not from here.</summary>
    public required DateTimeOffset BegunAt { get; init; }

    /// <summary>What is over, in order: danced, skipped, taught, rested.</summary>
    public IReadOnlyList<EveningDone> Done { get; set; } = [];

    /// <summary>When it has to end, in minutes from the beginning of the evening; null for the length of the evening.</summary>
    public int? EndMinute { get; set; }

    /// <summary>When she closed it; null while it goes on.</summary>
    public DateTimeOffset? EndedAt { get; set; }
}
