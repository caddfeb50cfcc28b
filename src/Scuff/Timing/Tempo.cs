namespace Scuff.Timing;

/// <summary>A steady tempo in beats a minute.</summary>
/// <param name="BeatsPerMinute">Beats a minute, exact as stated (for example 112 or 225/2); above zero.</param>
public readonly record struct Tempo(Ratio BeatsPerMinute)
{
    /// <summary>How long so many counts last at this tempo when each count takes one beat, in seconds as an exact fraction.</summary>
    /// <exception cref="DivideByZeroException">The tempo is zero.</exception>
    public Ratio SecondsOf(Counts counts) => counts.Value * 60 / BeatsPerMinute;
}
