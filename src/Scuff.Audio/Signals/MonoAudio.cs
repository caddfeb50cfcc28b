namespace Scuff.Audio.Signals;

/// <summary>A piece of sound as one channel.</summary>
/// <param name="Samples">Samples from -1 to 1 (a clipped file may go beyond), in order of time. Not copied: do not write to them.</param>
/// <param name="Rate">Samples a second.</param>
public sealed record MonoAudio(float[] Samples, int Rate)
{
    /// <summary>Length in seconds; zero for no samples.</summary>
    public double Seconds => (double)Samples.Length / Rate;
}
