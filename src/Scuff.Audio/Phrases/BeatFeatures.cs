using Scuff.Audio.Signals;

namespace Scuff.Audio.Phrases;

/// <summary>What each beat sounds like: which pitches, which colour. Made for asking whether two stretches are the same music.</summary>
internal sealed class BeatFeatures
{
    private const int Semitones = 12;

    // The lowest band of the harmony spectrum that is used: G2.
    private const double LowestHertz = 92.4986;

    private const double HighestHertz = 1900;

    private BeatFeatures(float[][] chroma, float[][] pitches, float[][] colour, float[] drums)
    {
        Chroma = chroma;
        Pitches = pitches;
        Colour = colour;
        Drums = drums;
    }

    /// <summary>Strength of each of the twelve pitch classes against their mean, length 1: [beats][12].</summary>
    public float[][] Chroma { get; }

    /// <summary>The same for each semitone by itself: [beats][semitones].</summary>
    public float[][] Pitches { get; }

    /// <summary>The bands of the spectrum against the song's mean, length 1: [beats][bands].</summary>
    public float[][] Colour { get; }

    /// <summary>How much rises in the high bands from frame to frame, as drums make it: [beats].</summary>
    public float[] Drums { get; }

    /// <summary>Hears the beats of a piece of sound; a beat lasts to the next, the last as long as the one before it.</summary>
    public static BeatFeatures Of(MonoAudio audio, Spectrogram spectrum, double[] beats)
    {
        Spectrogram harmony = Spectrogram.Of(audio, Hearing.GainOf(audio), 4096, Hearing.Rate / 10, LowestHertz, HighestHertz);
        int n = beats.Length;
        float[][] chroma = new float[n][];
        float[][] pitches = new float[n][];
        float[][] colour = new float[n][];
        float[] drums = new float[n];
        for (int i = 0; i < n; i++)
        {
            double end = i + 1 < n ? beats[i + 1] : beats[i] + (n > 1 ? beats[i] - beats[i - 1] : 0.5);
            pitches[i] = Mean(harmony, beats[i], end);
            chroma[i] = new float[Semitones];
            for (int b = 0; b < pitches[i].Length; b++)
            {
                chroma[i][b % Semitones] += pitches[i][b];
            }

            colour[i] = Mean(spectrum, beats[i], end);
            drums[i] = RiseOf(spectrum, beats[i], end);
            Centre(pitches[i]);
            Centre(chroma[i]);
        }

        if (n > 0)
        {
            float[] mean = new float[spectrum.Bands];
            foreach (float[] c in colour)
            {
                for (int b = 0; b < mean.Length; b++)
                {
                    mean[b] += c[b] / n;
                }
            }

            foreach (float[] c in colour)
            {
                for (int b = 0; b < mean.Length; b++)
                {
                    c[b] -= mean[b];
                }

                Shorten(c);
            }
        }

        return new BeatFeatures(chroma, pitches, colour, drums);
    }

    /// <summary>The cosine of two rows of features.</summary>
    public static float Cosine(float[] a, float[] b, int shift = 0)
    {
        float sum = 0;
        for (int i = 0; i < a.Length; i++)
        {
            int k = i + shift;
            if (k >= 0 && k < b.Length)
            {
                sum += a[i] * b[k];
            }
        }

        return sum;
    }

    /// <summary>The cosine of two chromas, the second moved up by semitones.</summary>
    public static float Turned(float[] a, float[] b, int up)
    {
        float sum = 0;
        for (int i = 0; i < Semitones; i++)
        {
            sum += a[i] * b[(i + up + Semitones) % Semitones];
        }

        return sum;
    }

    private static float[] Mean(Spectrogram spectrum, double start, double end)
    {
        int first = Math.Clamp((int)Math.Round(start * spectrum.FramesPerSecond), 0, spectrum.Frames - 1);
        int last = Math.Clamp((int)Math.Round(end * spectrum.FramesPerSecond), first + 1, spectrum.Frames);
        float[] mean = new float[spectrum.Bands];
        for (int f = first; f < last; f++)
        {
            ReadOnlySpan<float> frame = spectrum[f];
            for (int b = 0; b < mean.Length; b++)
            {
                mean[b] += frame[b] / (last - first);
            }
        }

        return mean;
    }

    private static float RiseOf(Spectrogram spectrum, double start, double end)
    {
        int first = Math.Clamp((int)Math.Round(start * spectrum.FramesPerSecond), 1, spectrum.Frames - 1);
        int last = Math.Clamp((int)Math.Round(end * spectrum.FramesPerSecond), first, spectrum.Frames);
        float sum = 0;
        for (int f = first; f < last; f++)
        {
            for (int b = spectrum.Bands / 2; b < spectrum.Bands; b++)
            {
                sum += Math.Max(0, spectrum[f][b] - spectrum[f - 1][b]);
            }
        }

        return sum / Math.Max(1, last - first);
    }

    private static void Centre(float[] row)
    {
        float mean = row.Average();
        for (int i = 0; i < row.Length; i++)
        {
            row[i] -= mean;
        }

        Shorten(row);
    }

    private static void Shorten(float[] row)
    {
        float sum = 0;
        foreach (float v in row)
        {
            sum += v * v;
        }

        float length = MathF.Sqrt(sum);
        for (int i = 0; length > 1e-6f && i < row.Length; i++)
        {
            row[i] /= length;
        }
    }
}
