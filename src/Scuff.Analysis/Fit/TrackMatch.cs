using Scuff.Dances;
using Scuff.Music;

namespace Scuff.Analysis.Fit;

/// <summary>How well a track suits a dance, point by point; the fewer points, the better.</summary>
public sealed record TrackMatch
{
    /// <summary>The track.</summary>
    public required TrackMap Map { get; init; }

    /// <summary>The dance.</summary>
    public required Dance Dance { get; init; }

    /// <summary>All points together.</summary>
    public int Points => Tempo + Meter + Feel + Length + Phrases + Doubt;

    /// <summary>For a tempo other than the dance is danced at, or is usual for its rhythm.</summary>
    public required int Tempo { get; init; }

    /// <summary>For another meter.</summary>
    public required int Meter { get; init; }

    /// <summary>For straight music where the dance wants swing, or the other way round.</summary>
    public required int Feel { get; init; }

    /// <summary>For a track that is very short or very long.</summary>
    public required int Length { get; init; }

    /// <summary>For music that breaks the pattern: what the kindest plan pays.</summary>
    public required int Phrases { get; init; }

    /// <summary>For a map that is a guess.</summary>
    public required int Doubt { get; init; }

    /// <summary>Counts a minute at which the dance would be danced.</summary>
    public required double CountsPerMinute { get; init; }

    /// <summary>How far that is from the tempo the dance is danced at, as a share: 0.05 is a twentieth faster; 0 within what is usual.</summary>
    public required double TempoAway { get; init; }

    /// <summary>The kindest plan's interruptions; null when the track could not be fitted.</summary>
    public required int? Interruptions { get; init; }
}
