namespace Scuff.App.Json;

/// <summary>An entry of the catalogue in JSON, right-named.</summary>
internal sealed record CatalogueStep
{
    /// <summary>Stable key.</summary>
    public required string Id { get; init; }

    /// <summary>Printed name.</summary>
    public required string Name { get; init; }

    /// <summary>Other names.</summary>
    public required IReadOnlyList<string> Aliases { get; init; }

    /// <summary>What a caller says.</summary>
    public required string Call { get; init; }

    /// <summary>Level at which it is usually met first.</summary>
    public required string Level { get; init; }

    /// <summary>Beats of the bar it is made for, or null for any.</summary>
    public int? Meter { get; init; }

    /// <summary>How many counts it takes.</summary>
    public required double Counts { get; init; }

    /// <summary>Its positions.</summary>
    public required IReadOnlyList<CatalogueRow> Rows { get; init; }

    /// <summary>Weight before: on the named foot (same), the other, both or any.</summary>
    public required string WeightBefore { get; init; }

    /// <summary>Weight after: on the named foot (same), the other, both or any (unchanged).</summary>
    public required string WeightAfter { get; init; }

    /// <summary>Its turn in eighths when it is named right, right positive.</summary>
    public required double TurnEighths { get; init; }

    /// <summary>Where sources disagree, or null.</summary>
    public string? Conflict { get; init; }

    /// <summary>What else the name may mean.</summary>
    public required IReadOnlyList<string> Alternatives { get; init; }

    /// <summary>Who defines it.</summary>
    public required IReadOnlyList<CatalogueSource> Sources { get; init; }
}
