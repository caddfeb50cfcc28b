namespace Scuff.Audio.Signals;

/// <summary>How the analysis listens: one rate, one hop, one loudness.</summary>
public static class Hearing
{
    /// <summary>Samples a second that everything is brought to.</summary>
    public const int Rate = 22050;

    /// <summary>Samples from one frame to the next, a hundredth of a second.</summary>
    public const int Hop = 220;

    /// <summary>Frames a second of <see cref="Spectrum"/>.</summary>
    public const double FramesPerSecond = (double)Rate / Hop;

    private const int Window = 1024;

    // A quarter of a second is short enough to leave the silence before a song out of its loudness.
    private const int LoudnessBlock = Rate / 4;

    private const double UsualLevel = 0.12;

    /// <summary>The bands that beats are found in: a semitone wide from 43 Hz (or a bin, where wider) to 10 kHz.</summary>
    /// <param name="audio">The sound, at <see cref="Rate"/>.</param>
    public static Spectrogram Spectrum(MonoAudio audio)
    {
        ArgumentNullException.ThrowIfNull(audio);
        return Spectrogram.Of(audio, GainOf(audio), Window, Hop, 21, 10_000);
    }

    /// <summary>
    /// What brings the louder half of a piece of sound to the usual level, so that a quiet copy is heard like a loud one;
    /// 1 for silence.
    /// </summary>
    public static float GainOf(MonoAudio audio)
    {
        ArgumentNullException.ThrowIfNull(audio);
        List<double> powers = [];
        for (int start = 0; start < audio.Samples.Length; start += LoudnessBlock)
        {
            ReadOnlySpan<float> block = audio.Samples.AsSpan(start, Math.Min(LoudnessBlock, audio.Samples.Length - start));
            double sum = 0;
            foreach (float sample in block)
            {
                sum += (double)sample * sample;
            }

            powers.Add(sum / block.Length);
        }

        powers.Sort();
        double power = powers.Skip(powers.Count / 2).DefaultIfEmpty(0).Average();
        return power < 1e-12 ? 1 : (float)(UsualLevel / Math.Sqrt(power));
    }
}
