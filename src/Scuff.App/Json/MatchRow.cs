using Scuff.Analysis.Fit;
using Scuff.App.Fitting;

namespace Scuff.App.Json;

/// <summary>How well a track suits a dance: all points, the points of each kind, the interruptions of the kindest plan, and a sentence.</summary>
internal sealed record MatchRow(
    int Rank,
    string Dance,
    string Track,
    string Title,
    int? Points,
    int Tempo,
    int Meter,
    int Feel,
    int Length,
    int? Phrases,
    int Doubt,
    double CountsPerMinute,
    int? Interruptions,
    string Why)
{
    /// <summary>A match as a row.</summary>
    public static MatchRow Of(int rank, string dance, string track, TrackMatch match)
    {
        bool isFitted = match.Interruptions is not null;
        return new MatchRow(
            rank,
            dance,
            track,
            match.Map.Title,
            isFitted ? match.Points : null,
            match.Tempo,
            match.Meter,
            match.Feel,
            match.Length,
            isFitted ? match.Phrases : null,
            match.Doubt,
            match.CountsPerMinute,
            match.Interruptions,
            MatchWords.Why(match));
    }
}
