using Scuff.Repertoire.Storage;

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

    /// <summary>A title as it is compared: equal for two that differ only in case, accents or white space.</summary>
    public static string KeyOf(string title) => Folding.FoldLine(title);
}
