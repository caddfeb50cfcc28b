namespace Scuff.Music;

/// <summary>How the beats of a track fall into bars.</summary>
/// <param name="BeatsInBar">Beats a bar: 4 or 3. Six eighths felt in two are written as four such beats, two of their bars.</param>
/// <param name="IsCompound">Each beat falls into three, as in 6/8 felt in two.</param>
public sealed record Meter(int BeatsInBar, bool IsCompound = false)
{
    /// <summary>Four beats to the bar.</summary>
    public static Meter Four { get; } = new(4);

    /// <summary>Three beats to the bar: a waltz.</summary>
    public static Meter Three { get; } = new(3);

    /// <summary>Beats that dancers count to before they begin again: two bars of a waltz, else eight.</summary>
    public int BeatsInEight => BeatsInBar == 3 ? 6 : 8;
}
