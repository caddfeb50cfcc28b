namespace Scuff.Music;

/// <summary>A value somebody heard and might be wrong about.</summary>
/// <typeparam name="T">What was estimated.</typeparam>
/// <param name="Value">The best answer.</param>
/// <param name="Confidence">From 0 (a guess) to 1 (certain, or said by a person).</param>
/// <param name="Alternatives">Other answers, the likelier first; without <paramref name="Value"/>.</param>
public sealed record Estimate<T>(T Value, double Confidence, ValueList<Alternative<T>> Alternatives)
{
    /// <summary>An estimate without another answer.</summary>
    public Estimate(T value, double confidence)
        : this(value, confidence, [])
    {
    }

    /// <summary>What a person has said: certain, and nothing else is offered.</summary>
    public static Estimate<T> Said(T value) => new(value, 1);
}
