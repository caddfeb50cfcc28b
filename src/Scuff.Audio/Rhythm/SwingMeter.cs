using Scuff.Audio.Signals;
using Scuff.Music;

namespace Scuff.Audio.Rhythm;

/// <summary>
/// How the beat is divided: where, between two beats, the notes between them fall. The long half against the short is
/// the swing ratio, 2:1 for triplets.
/// </summary>
internal static class SwingMeter
{
    private const int Bins = 120;

    // A note between the beats lies from here to there in the beat, whatever the swing.
    private const double From = 0.44;

    private const double To = 0.72;

    // Notes that fall together are this far apart, in parts of a beat.
    private const double Spread = 0.022;

    // Sixteenths swing in music that is no faster than this, in seconds a beat (125 a minute). Common practice, no source; the shorter note of a swung
    // pair does not fall much below a tenth of a second (Friberg and Sundström, Music Perception 2002; from memory).
    private const double LeastBeatOfSixteenths = 0.48;

    // Where what lies between the beats rises less than this beside what falls on them, nothing is heard that could swing.
    private const double LeastHeard = 0.07 / 3;

    // Of its own height a rise begins at this part.
    private const float RisesFrom = 0.3f;

    /// <summary>
    /// The ratio over all beats, 1 with no confidence where next to nothing lies between them; and whether every beat falls into
    /// three, as in 6/8 felt in two: then there is a note on both thirds and none on the half.
    /// </summary>
    public static (Estimate<double> Ratio, bool IsCompound) Of(Spectrogram spectrum, double[] beats)
    {
        if (beats.Length < 8)
        {
            return (new Estimate<double>(1, 0), false);
        }

        double[] onsets = new double[Bins];
        foreach ((double seconds, double strength) in OnsetsOf(spectrum))
        {
            int beat = Array.BinarySearch(beats, seconds);
            beat = beat < 0 ? ~beat - 1 : beat;
            if (beat >= 0 && beat + 1 < beats.Length)
            {
                double place = (seconds - beats[beat]) / (beats[beat + 1] - beats[beat]);
                onsets[Math.Min(Bins - 1, (int)(place * Bins))] += strength;
            }
        }

        double[] smooth = Smoothed(onsets);

        // what falls on the beat shows how late onsets are read
        (double late, double onBeat) = PeakOf(smooth, -0.12, 0.12);
        (double place8, double strength8) = PeakOf(smooth, From + late, To + late);
        double floor = smooth.Order().ElementAt(Bins / 4);
        double eighth = RatioOf(place8 - late);
        double clear = onBeat > 0 ? (strength8 - floor) / onBeat : 0;
        if (clear < LeastHeard)
        {
            return (new Estimate<double>(1, Math.Clamp(clear * 3, 0, 1), [new Alternative<double>(eighth, Math.Clamp(clear * 3, 0, 1))]), false);
        }

        if (eighth > 1.15)
        {
            double first = PeakOf(smooth, 0.29 + late, 0.38 + late).Height - floor;
            double half = PeakOf(smooth, 0.48 + late, 0.52 + late).Height - floor;
            bool isCompound = first > 0.3 * (strength8 - floor) && first > 1.5 * half && first > 0.1 * onBeat && Math.Abs(eighth - 2) < 0.35;
            return (new Estimate<double>(eighth, Math.Clamp(clear * 3, 0, 1), [new Alternative<double>(1, Math.Clamp(1 - (clear * 3), 0, 1))]), isCompound);
        }

        // straight eighths: perhaps their halves swing
        double[] halves = new double[Bins];
        for (int i = 0; i < Bins; i++)
        {
            double at = (((double)i / Bins) - late + 1) % 1 * 2 % 1;
            halves[Math.Min(Bins - 1, (int)(at * Bins))] += onsets[i];
        }

        double[] folded = Smoothed(halves);
        (double place16, double strength16) = PeakOf(folded, 0.42, To);
        double on = PeakOf(folded, -0.1, 0.1).Height;
        double low = folded.Order().ElementAt(Bins / 4);
        double sixteenth = RatioOf(place16);
        double seen = on > 0 ? (strength16 - low) / on : 0;
        bool maySwing = (beats[^1] - beats[0]) / (beats.Length - 1) >= LeastBeatOfSixteenths;
        Estimate<double> ratio = maySwing && sixteenth > 1.22 && seen > 0.12
            ? new Estimate<double>(sixteenth, Math.Clamp(seen * 2, 0, 1), [new Alternative<double>(eighth, 0.3)])
            : new Estimate<double>(Math.Max(1, eighth), Math.Clamp(clear * 3, 0, 1));
        return (ratio, false);
    }

    private static double RatioOf(double place) => Math.Clamp(place / (1 - place), 1, 3);

    // Rises in all bands together, at the tops of their peaks.
    private static IEnumerable<(double Seconds, double Strength)> OnsetsOf(Spectrogram spectrum)
    {
        int frames = spectrum.Frames;
        float[] rise = new float[frames];
        for (int f = 2; f < frames; f++)
        {
            ReadOnlySpan<float> now = spectrum[f];
            ReadOnlySpan<float> before = spectrum[f - 2];
            float sum = 0;
            for (int b = 0; b < now.Length; b++)
            {
                float widest = before[b];
                widest = b > 0 ? Math.Max(widest, before[b - 1]) : widest;
                widest = b + 1 < before.Length ? Math.Max(widest, before[b + 1]) : widest;
                sum += Math.Max(0, now[b] - widest);
            }

            rise[f] = sum;
        }

        for (int f = 1; f + 1 < frames; f++)
        {
            if (rise[f] > rise[f - 1] && rise[f] >= rise[f + 1] && rise[f] > 1)
            {
                // where the rise begins, not where it is steepest: a shaker swells for longer than a stick
                int start = f;
                float threshold = RisesFrom * rise[f];
                while (start > 1 && rise[start - 1] >= threshold && rise[start - 1] <= rise[start])
                {
                    start--;
                }

                float step = rise[start] - rise[start - 1];
                double top = start - 1 + (step > 0 ? Math.Clamp((threshold - rise[start - 1]) / step, 0, 1) : 1);
                yield return (top / spectrum.FramesPerSecond, rise[f]);
            }
        }
    }

    private static double[] Smoothed(double[] bins)
    {
        double[] smooth = new double[Bins];
        int reach = (int)(3 * Spread * Bins) + 1;
        for (int i = 0; i < Bins; i++)
        {
            for (int k = -reach; k <= reach; k++)
            {
                double distance = k / (Spread * Bins);
                smooth[i] += bins[(i + k + Bins) % Bins] * Math.Exp(-0.5 * distance * distance);
            }
        }

        return smooth;
    }

    private static (double Place, double Height) PeakOf(double[] bins, double from, double to)
    {
        int first = (int)Math.Round(from * Bins);
        int last = (int)Math.Round(to * Bins);
        int top = int.MinValue;
        for (int i = first; i <= last; i++)
        {
            double here = bins[(i + Bins) % Bins];
            bool isPeak = here >= bins[(i - 1 + Bins) % Bins] && here >= bins[(i + 1 + Bins) % Bins];
            top = isPeak && (top < first || here > bins[(top + Bins) % Bins]) ? i : top;
        }

        // a slope is no peak: what stands highest at the edge belongs to something outside
        if (top < first)
        {
            return ((from + to) / 2, 0);
        }

        double a = bins[(top - 1 + Bins) % Bins];
        double b = bins[(top + Bins) % Bins];
        double c = bins[(top + 1 + Bins) % Bins];
        double curve = a - (2 * b) + c;
        double place = top + 0.5 + (curve < 0 ? Math.Clamp(0.5 * (a - c) / curve, -0.5, 0.5) : 0);
        return (place / Bins, b);
    }
}
