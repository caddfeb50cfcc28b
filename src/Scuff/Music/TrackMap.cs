namespace Scuff.Music;

/// <summary>What a dancer needs to know of a track: every beat, the ones, the eights, the phrases, the breaks.</summary>
public sealed record TrackMap
{
    /// <summary>The title of the track; empty where the file does not say.</summary>
    public string Title { get; init; } = "";

    /// <summary>Who plays it; empty where the file does not say.</summary>
    public string Artist { get; init; } = "";

    /// <summary>Length of the sound in seconds.</summary>
    public double Seconds { get; init; }

    /// <summary>The beats, rising in time; none where nothing that could be danced to was heard.</summary>
    public ValueList<TrackBeat> Beats { get; init; } = [];

    /// <summary>Beats a minute over the track, without a slowing end; half and double as alternatives. Zero without beats.</summary>
    public Estimate<double> Tempo { get; init; } = new(0, 0);

    /// <summary>How the beats fall into bars.</summary>
    public Estimate<Meter> Meter { get; init; } = new(Music.Meter.Four, 0);

    /// <summary>How much longer the first half of a divided beat is than the second: 1 is straight, 2 the triplet swing.</summary>
    public Estimate<double> Swing { get; init; } = new(1, 0);

    /// <summary>Sections in order; each ends where the next begins.</summary>
    public ValueList<TrackSection> Sections { get; init; } = [];

    /// <summary>Stops and thin places in order.</summary>
    public ValueList<TrackBreak> Breaks { get; init; } = [];

    /// <summary>The beat on which a dance would likely start, an index into <see cref="Beats"/>; -1 without beats.</summary>
    public Estimate<int> FirstCount { get; init; } = new(-1, 0);

    /// <summary>How loud the track is, for drawing.</summary>
    public LoudnessCurve Loudness { get; init; } = LoudnessCurve.None;

    /// <summary>What a person should know before trusting this, a sentence; empty when there is nothing to say.</summary>
    public string Remark { get; init; } = "";
}
