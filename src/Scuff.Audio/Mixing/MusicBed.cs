using Scuff.Audio.Songs;

namespace Scuff.Audio.Mixing;

/// <summary>Music under speech: brought to one loudness, and turned down smoothly while somebody speaks.</summary>
internal static class MusicBed
{
    // root mean square of the louder parts, against full scale: leaves the voice room above it
    private const double Level = 0.126;
    private const double LeastGain = 0.1;
    private const double MostGain = 4;
    private const double BlockSeconds = 0.4;

    // parts this far below the mean of the sounding ones, in power, say nothing of how loud the music is (gates of ITU-R BS.1770)
    private const double RelativeGate = 0.1;
    private const double AbsoluteGate = 1e-7;

    // turned down to this under speech: 11 decibels
    private const double Ducked = 0.28;
    private const double Fall = 0.12;
    private const double Rise = 0.35;

    // between two calls closer than this the music stays down
    private const double StayDown = 0.6;

    /// <summary>Adds the music.</summary>
    /// <param name="music">The music.</param>
    /// <param name="speech">When somebody speaks, in seconds, in order.</param>
    /// <param name="left">Takes the left channel.</param>
    /// <param name="right">Takes the right channel.</param>
    public static void AddTo(StereoSound music, IEnumerable<(double From, double Until)> speech, float[] left, float[] right)
    {
        int length = Math.Min(left.Length, music.Left.Length);
        double gain = Gain(music);
        int done = 0;
        foreach ((double from, double until) in Joined(speech))
        {
            int fallFrom = Place(from - Fall);
            int down = Place(from);
            int riseFrom = Place(until);
            int up = Place(until + Rise);
            Add(done, fallFrom, 1, 1);
            Add(fallFrom, down, 1, Ducked);
            Add(down, riseFrom, Ducked, Ducked);
            Add(riseFrom, up, Ducked, 1);
            done = Math.Max(done, up);
        }

        Add(done, length, 1, 1);

        int Place(double seconds) => (int)Math.Clamp(Math.Round(seconds * music.Rate), 0, length);

        void Add(int from, int until, double start, double end)
        {
            for (int i = from; i < until; i++)
            {
                double share = (double)(i - from) / (until - from);
                float g = (float)(gain * (start + ((end - start) * share * share * (3 - (2 * share)))));
                left[i] += music.Left[i] * g;
                right[i] += music.Right[i] * g;
            }
        }
    }

    // Speech that follows closely is one.
    private static List<(double From, double Until)> Joined(IEnumerable<(double From, double Until)> speech)
    {
        List<(double From, double Until)> joined = [];
        foreach ((double from, double until) in speech)
        {
            if (joined.Count > 0 && from - joined[^1].Until < StayDown)
            {
                joined[^1] = (joined[^1].From, Math.Max(joined[^1].Until, until));
            }
            else
            {
                joined.Add((from, until));
            }
        }

        return joined;
    }

    private static double Gain(StereoSound music)
    {
        int block = (int)(BlockSeconds * music.Rate);
        List<double> powers = [];
        for (int from = 0; from + block <= music.Left.Length; from += block)
        {
            double sum = 0;
            for (int i = from; i < from + block; i++)
            {
                sum += (music.Left[i] * music.Left[i]) + (music.Right[i] * music.Right[i]);
            }

            powers.Add(sum / (2 * block));
        }

        double[] sounding = [.. powers.Where(p => p > AbsoluteGate)];
        if (sounding.Length == 0)
        {
            return 1;
        }

        double gate = RelativeGate * sounding.Average();
        return Math.Clamp(Level / Math.Sqrt(sounding.Where(p => p > gate).Average()), LeastGain, MostGain);
    }
}
