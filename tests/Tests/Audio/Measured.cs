namespace Tests.Audio;

/// <summary>Measures where something sounds, knowing nothing of how it was put there.</summary>
internal static class Measured
{
    /// <summary>How much later than expected a known sound is found, in seconds: where the track is most alike to it.</summary>
    /// <param name="track">One channel of the track.</param>
    /// <param name="rate">Samples a second.</param>
    /// <param name="sound">What is looked for.</param>
    /// <param name="expected">Where it should begin, in seconds.</param>
    /// <param name="within">How far around it is looked, in seconds.</param>
    public static double Lag(float[] track, int rate, float[] sound, double expected, double within = 0.02)
    {
        int middle = (int)Math.Round(expected * rate);
        int reach = (int)(within * rate);
        double most = double.NegativeInfinity;
        int best = 0;
        for (int lag = -reach; lag <= reach; lag++)
        {
            double alike = 0;
            double power = 1e-9;

            // every third sample tells where waves meet
            for (int i = Math.Max(0, -(middle + lag)); i < sound.Length && middle + lag + i < track.Length; i += 3)
            {
                float there = track[middle + lag + i];
                alike += sound[i] * there;
                power += there * there;
            }

            if (alike / Math.Sqrt(power) > most)
            {
                most = alike / Math.Sqrt(power);
                best = lag;
            }
        }

        return (double)best / rate;
    }

    /// <summary>Where sound begins out of silence: the first sample above a share of the loudest that follows within a tenth of a second, in seconds.</summary>
    /// <param name="track">One channel of the track.</param>
    /// <param name="rate">Samples a second.</param>
    /// <param name="from">Where silence is, in seconds.</param>
    /// <param name="until">Where to look no further, in seconds.</param>
    /// <param name="share">The share.</param>
    public static double Onset(float[] track, int rate, double from, double until, float share)
    {
        int first = Math.Max(0, (int)(from * rate));
        int last = Math.Min(track.Length, (int)(until * rate));
        float loudest = track.AsSpan(first, last - first).ToArray().Max(Math.Abs);
        int at = first;
        while (at < last && Math.Abs(track[at]) < share * loudest)
        {
            at++;
        }

        return (double)at / rate;
    }

    /// <summary>Level of a tone of a pitch within some samples: its amplitude under a Hann window.</summary>
    public static double Amplitude(ReadOnlySpan<float> samples, int rate, double hertz)
    {
        double re = 0;
        double im = 0;
        double sum = 0;
        for (int i = 0; i < samples.Length; i++)
        {
            double window = 0.5 - (0.5 * Math.Cos(2 * Math.PI * i / samples.Length));
            (double s, double c) = Math.SinCos(2 * Math.PI * hertz * i / rate);
            re += window * samples[i] * c;
            im += window * samples[i] * s;
            sum += window;
        }

        return 2 * Math.Sqrt((re * re) + (im * im)) / sum;
    }

    /// <summary>How far a tone is off its pitch, in cents, looked for a third of a tone around.</summary>
    public static double Cents(ReadOnlySpan<float> samples, int rate, double hertz)
    {
        double best = 0;
        double most = 0;
        for (double cents = -66; cents <= 66; cents++)
        {
            double level = Amplitude(samples, rate, hertz * Math.Pow(2, cents / 1200));
            (best, most) = level > most ? (cents, level) : (best, most);
        }

        return best;
    }

    /// <summary>Root mean square of some samples.</summary>
    public static double Rms(ReadOnlySpan<float> samples)
    {
        double sum = 0;
        foreach (float sample in samples)
        {
            sum += sample * sample;
        }

        return Math.Sqrt(sum / samples.Length);
    }
}
