namespace Scuff.Repertoire;

/// <summary>What is known about a track besides its sound and its map.</summary>
public sealed record TrackFacts
{
    /// <summary>The title; empty when unknown.</summary>
    public string Title { get; init; } = "";

    /// <summary>The artist; empty when unknown.</summary>
    public string Artist { get; init; } = "";

    /// <summary>The length in seconds; null when unknown.</summary>
    public double? Seconds { get; init; }

    /// <summary>The tempo in beats a minute; null when unknown.</summary>
    public double? Tempo { get; init; }
}
