using Scuff.Audio.Signals;

namespace Scuff.Audio.Voices;

/// <summary>Cuts a recording of words to the words and evens its level.</summary>
internal static class VoiceTrim
{
    /// <summary>Level of speech where it sounds: root mean square against full scale. Peaks stay below full scale with it.</summary>
    public const double Level = 0.1;

    private const double BlockSeconds = 0.002;

    // the quietest sound of a word ("f", "th", "h") against its loudest, in power
    private const double Quietest = 6e-5;

    // sound is this much above what hisses in the pauses, in power
    private const double AboveHiss = 10;

    // in a recording full of hiss, softer sounds of the words than this cannot be told from it
    private const double InHiss = 0.01;

    // a click of the microphone is shorter than this many blocks
    private const int Lasting = 4;
    private const int Look = 6;
    private const double TailSeconds = 0.03;
    private const double FadeInSeconds = 0.001;
    private const double LoudestPeak = 0.95;

    // parts of a word this far below its loudest, in power, say nothing of how loud it is
    private const double Sounding = 0.01;
    private const double LongBlockSeconds = 0.02;

    /// <summary>The words alone, at the same rate; null where nothing sounds.</summary>
    public static MonoAudio? Of(MonoAudio recording)
    {
        float[] samples = recording.Samples;
        int block = Math.Max(1, (int)(BlockSeconds * recording.Rate));
        double[] power = Powers(WithoutRumble(samples, recording.Rate), block);
        double loudest = power.Length == 0 ? 0 : power.Max();
        if (!(loudest > 1e-8))
        {
            return null;
        }

        double[] sorted = [.. power.Order()];
        double least = Math.Max(Quietest * loudest, Math.Min(AboveHiss * sorted[sorted.Length / 10], InHiss * loudest));
        int first = Array.FindIndex(power, p => p > least);
        for (int b = first; b < power.Length; b++)
        {
            if (power[b] > least && power.AsSpan(b, Math.Min(Look, power.Length - b)).ToArray().Count(p => p > least) >= Lasting)
            {
                first = b;
                break;
            }
        }

        int last = Array.FindLastIndex(power, p => p > least);
        int from = first * block;
        int until = Math.Min(samples.Length, ((last + 1) * block) + (int)(TailSeconds * recording.Rate));
        float[] words = samples[from..until];
        double gain = Gain(words, recording.Rate);
        int fadeIn = Math.Max(1, (int)(FadeInSeconds * recording.Rate));
        int fadeOut = Math.Max(1, (int)(TailSeconds * recording.Rate));
        for (int i = 0; i < words.Length; i++)
        {
            double fade = Math.Min(1, Math.Min((i + 1.0) / fadeIn, (double)(words.Length - i) / fadeOut));
            words[i] = (float)(words[i] * gain * fade);
        }

        return new MonoAudio(words, recording.Rate);
    }

    private static double Gain(float[] words, int rate)
    {
        double[] power = Powers(words, Math.Max(1, (int)(LongBlockSeconds * rate)));
        if (power.Length == 0)
        {
            return 1;
        }

        double loudest = power.Max();
        double mean = power.Where(p => p >= Sounding * loudest).Average();
        double peak = words.Max(Math.Abs);
        return Math.Min(Level / Math.Sqrt(mean), LoudestPeak / peak);
    }

    private static double[] Powers(float[] samples, int block)
    {
        double[] power = new double[samples.Length / block];
        for (int b = 0; b < power.Length; b++)
        {
            double sum = 0;
            for (int i = b * block; i < (b + 1) * block; i++)
            {
                sum += samples[i] * samples[i];
            }

            power[b] = sum / block;
        }

        return power;
    }

    // What hums below 80 hertz is no voice.
    private static float[] WithoutRumble(float[] samples, int rate)
    {
        double keep = Math.Exp(-2 * Math.PI * 80 / rate);
        float[] clean = new float[samples.Length];
        double before = 0;
        double value = 0;
        for (int i = 0; i < samples.Length; i++)
        {
            value = keep * (value + samples[i] - before);
            before = samples[i];
            clean[i] = (float)value;
        }

        return clean;
    }
}
