namespace Scuff.Audio.Ears;

/// <summary>
/// What the <see cref="Ear"/> hears, fifty times a second, as logits: 0 is even odds, 3 is twenty to one. Each [steps].
/// </summary>
/// <param name="Beat">A beat is here.</param>
/// <param name="One">The first beat of a bar is here.</param>
/// <param name="Eight">Count 1 of an eight is here.</param>
/// <param name="Start">A section begins here.</param>
/// <param name="Stopped">Everybody has stopped for a moment.</param>
internal sealed record Activations(float[] Beat, float[] One, float[] Eight, float[] Start, float[] Stopped)
{
    /// <summary>Steps a second; step i stands for the time of frames 2i and 2i + 1 together.</summary>
    public const double StepsPerSecond = Signals.Hearing.FramesPerSecond / 2;

    /// <summary>The time of a step in seconds.</summary>
    public static double SecondsOf(double step) => ((2 * step) + 0.5) / Signals.Hearing.FramesPerSecond;

    /// <summary>The step, not rounded, of a time in seconds.</summary>
    public static double StepOf(double seconds) => ((seconds * Signals.Hearing.FramesPerSecond) - 0.5) / 2;
}
