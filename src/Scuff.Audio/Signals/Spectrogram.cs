using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Scuff.Audio.Signals;

/// <summary>How loud each band of pitch is at each moment, on a logarithmic scale.</summary>
public sealed class Spectrogram
{
    // Loud enough that a quiet verse still moves, not so loud that its noise does (found by trial on made songs).
    private const float Compression = 1000;

    private Spectrogram(int bands, double framesPerSecond, float[] levels, float[] bandHertz)
    {
        Bands = bands;
        FramesPerSecond = framesPerSecond;
        Levels = levels;
        BandHertz = bandHertz;
    }

    /// <summary>How many bands a frame has.</summary>
    public int Bands { get; }

    /// <summary>Frames a second. Frame i stands for the time i / this, in the middle of its window.</summary>
    public double FramesPerSecond { get; }

    /// <summary>ln(1 + 1000 m), m the magnitude of a band with 1 for a full-scale sine: [frames × bands], not to be written to.</summary>
    public float[] Levels { get; }

    /// <summary>The middle of each band in hertz, rising.</summary>
    public float[] BandHertz { get; }

    /// <summary>How many frames there are.</summary>
    public int Frames => Levels.Length / Bands;

    /// <summary>The levels of one frame, [bands].</summary>
    public ReadOnlySpan<float> this[int frame] => Levels.AsSpan(frame * Bands, Bands);

    /// <summary>
    /// Hears a piece of sound in bands of a semitone, or of one bin of the spectrum where that is wider. The levels
    /// are those of the sound times <paramref name="gain"/>. Empty sound gives no frames.
    /// </summary>
    /// <param name="audio">The sound.</param>
    /// <param name="gain">What the samples are multiplied by.</param>
    /// <param name="window">Samples in a window, a power of two.</param>
    /// <param name="hop">Samples from frame to frame.</param>
    /// <param name="from">The lowest band begins here, hertz.</param>
    /// <param name="to">No band goes beyond this, hertz; also not beyond half the rate.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static Spectrogram Of(MonoAudio audio, float gain, int window, int hop, double from, double to)
    {
        ArgumentNullException.ThrowIfNull(audio);
        ArgumentOutOfRangeException.ThrowIfLessThan(hop, 1);
        LaneFft fft = new(window);
        Band[] bands = BandsOf(window, audio.Rate, from, to);
        int frames = audio.Samples.Length == 0 ? 0 : (audio.Samples.Length / hop) + 1;
        float[] levels = new float[frames * bands.Length];
        Vector256<float>[] magnitudes = new Vector256<float>[window / 2];
        Span<float> lanes = stackalloc float[LaneFft.Lanes];
        Vector256<float> scale = Vector256.Create(Compression * gain);
        for (int frame = 0; frame < frames; frame += LaneFft.Lanes)
        {
            fft.Magnitudes(audio.Samples, (frame * hop) - (window / 2), hop, magnitudes);
            int count = Math.Min(LaneFft.Lanes, frames - frame);
            for (int b = 0; b < bands.Length; b++)
            {
                Vector256<float> sum = Vector256<float>.Zero;
                float[] weights = bands[b].Weights;
                for (int i = 0; i < weights.Length; i++)
                {
                    sum += magnitudes[bands[b].First + i] * weights[i];
                }

                Vector256.Log((sum * scale) + Vector256<float>.One).CopyTo(lanes);
                for (int lane = 0; lane < count; lane++)
                {
                    levels[((frame + lane) * bands.Length) + b] = lanes[lane];
                }
            }
        }

        return new Spectrogram(bands.Length, (double)audio.Rate / hop, levels, [.. bands.Select(b => b.Hertz)]);
    }

    private static Band[] BandsOf(int window, int rate, double from, double to)
    {
        double binHertz = (double)rate / window;
        double top = Math.Min(to, (rate / 2.0) - binHertz);
        List<double> middles = [];
        double hertz = Math.Max(from, binHertz);
        while (hertz < top)
        {
            middles.Add(hertz);
            hertz = Math.Max(hertz * Math.Pow(2, 1 / 12.0), hertz + binHertz);
        }

        List<Band> bands = [];
        for (int i = 1; i + 1 < middles.Count; i++)
        {
            (double low, double middle, double high) = (middles[i - 1] / binHertz, middles[i] / binHertz, middles[i + 1] / binHertz);
            int first = (int)Math.Ceiling(low);
            int last = Math.Min((int)Math.Floor(high), (window / 2) - 1);
            float[] weights = new float[Math.Max(0, last - first + 1)];
            for (int k = 0; k < weights.Length; k++)
            {
                double bin = first + k;
                weights[k] = (float)Math.Max(0, bin <= middle ? (bin - low) / (middle - low) : (high - bin) / (high - middle));
            }

            bands.Add(new Band((float)middles[i], first, weights));
        }

        return [.. bands];
    }

    private sealed record Band(float Hertz, int First, float[] Weights);
}
