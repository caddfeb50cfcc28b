using Scuff.Audio.Songs;

namespace Scuff.Audio.Mixing;

/// <summary>What a call track is made of.</summary>
public sealed record CallTrackPlan
{
    /// <summary>The calls, in order of time.</summary>
    public ValueList<CallTime> Calls { get; init; } = [];

    /// <summary>The clicks, in any order.</summary>
    public ValueList<ClickTime> Clicks { get; init; } = [];

    /// <summary>The music, already at its speed, beginning at 0 seconds of the call track; null for none.</summary>
    public StereoSound? Music { get; init; }

    /// <summary>Shortest length in seconds; music, calls and clicks make it longer where they last longer.</summary>
    public double Seconds { get; init; }
}
