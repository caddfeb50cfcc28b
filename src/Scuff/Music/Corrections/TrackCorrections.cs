namespace Scuff.Music.Corrections;

/// <summary>What a person has said about a track, in the order it was said: kept apart from what was heard, and stronger.</summary>
/// <param name="All">The corrections.</param>
public sealed record TrackCorrections(ValueList<Correction> All)
{
    /// <summary>Nothing was said.</summary>
    public static TrackCorrections None { get; } = new([]);

    /// <summary>These and one more.</summary>
    public TrackCorrections And(Correction correction) => new([.. All, correction]);

    /// <summary>All but the last: to take back.</summary>
    public TrackCorrections WithoutLast() => new([.. All.Take(All.Count - 1)]);

    /// <summary>
    /// What holds for the track: the map as heard, corrected one after the other. What does not apply to this map does nothing; never throws. What
    /// was said has confidence 1.
    /// </summary>
    /// <param name="map">What was heard.</param>
    public TrackMap ApplyTo(TrackMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        if (All.Count == 0)
        {
            return map;
        }

        CorrectionRun run = new(map);
        foreach (Correction correction in All)
        {
            run.Apply(correction);
        }

        return run.Result();
    }
}
