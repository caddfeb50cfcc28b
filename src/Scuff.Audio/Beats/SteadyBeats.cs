using Scuff.Audio.Signals;

namespace Scuff.Audio.Beats;

/// <summary>
/// The row of beats that keeps one level and one side of the beat all through. The ears may go over to the off-beat for a stretch, or count three
/// beats as two, and be sure of it; music for dancing does neither. So a row that moves by half a beat, or goes on at half, double, 2/3 or 3/2 of its tempo,
/// is searched for again in the way that the whole song speaks for. Common practice, no source.
/// </summary>
internal static class SteadyBeats
{
    // A stretch as long as this shows its own tempo; shorter ones are strays that do no harm.
    private const int FewestInStretch = 8;

    // The usual length around a beat is the middle one of so many on either side.
    private const int Around = 16;

    // A beat this much longer or shorter than those around it is on its way elsewhere.
    private const double Moving = 0.02;

    // A move that adds up to half a beat, give or take.
    private const double LeastHalf = 0.35;

    private const double MostHalf = 0.65;

    // Before and after a move the tempo is the same within this part.
    private const double SameTempo = 0.06;

    // Where nothing is heard for this many beats somebody holds a note, and the beat may well come back in the middle of one.
    private const double Pause = 1.4;

    // Surely no beat.
    private const float Nothing = -2;

    // Within this part of a simple ratio a tempo is the other tempo counted otherwise.
    private const double SameLevel = 0.06;

    // How far a tempo may stray over a song whose level is known.
    private const double Stray = 1.22;

    // What every second left without beats costs where the level is known: more than elsewhere, since there is music that the ears took otherwise.
    private const double PerSecondLeft = 4;

    // A row that keeps its side keeps its tempo too: so much beyond what it had is room enough.
    private const double Room = 1.1;

    private static readonly double[] Levels = [0.5, 2.0 / 3, 1.5, 2];

    /// <summary>The best row of beats of one level and side, in seconds; empty where nothing was heard.</summary>
    /// <param name="heard">The beat logits, [steps].</param>
    /// <param name="first">The music begins here, in seconds.</param>
    /// <param name="last">The music ends here, in seconds.</param>
    public static BeatRow Find(float[] heard, double first, double last)
    {
        float[] evidence = BeatPath.Evidence(heard);
        BeatRow row = OfOneLevel(BeatPath.Search(evidence, first, last), evidence, first, last);
        return OfOneSide(row, evidence, first, last);
    }

    private static BeatRow OfOneLevel(BeatRow row, float[] evidence, double first, double last)
    {
        double[] usual = Usual(LengthsOf(row.Seconds));
        if (usual.Length < 2 * FewestInStretch)
        {
            return row;
        }

        // the level that most of the song keeps, and the others
        double main = usual.MaxBy(l => usual.Sum(o => IsSame(o, l, SameLevel) ? o : 0));
        double[] levels = [.. Levels.Select(r => main * r).Where(l => usual.Count(u => IsSame(u, l, SameLevel)) >= FewestInStretch)];
        return levels.Length == 0
            ? row
            : levels.Append(main).Select(l => BeatPath.Search(evidence, first, last, l / Stray, l * Stray, PerSecondLeft)).MaxBy(r => r.Score)!;
    }

    private static BeatRow OfOneSide(BeatRow row, float[] evidence, double first, double last)
    {
        double[] beats = row.Seconds;
        double[] lengths = LengthsOf(beats);
        double[] usual = Usual(lengths);
        (int From, int To)[] moves = [.. Moves(lengths, usual).Where(m => LongestPause(evidence, beats[m.From - 1], beats[m.To + 1]) < Pause * usual[m.From])];
        if (moves.Length == 0)
        {
            return row;
        }

        // each stretch for itself: its beats speak for its own side, what lies half a beat behind them for the other
        (int From, int To)[] stretches =
        [
            .. Enumerable.Range(0, moves.Length + 1).Select(k => (k == 0 ? 0 : moves[k - 1].To, k == moves.Length ? lengths.Length : moves[k].From)),
        ];
        double[] sides = [0, 0];
        for (int k = 0; k < stretches.Length; k++)
        {
            for (int i = stretches[k].From; i < stretches[k].To; i++)
            {
                sides[k % 2] += At(evidence, beats[i]);
                sides[1 - (k % 2)] += At(evidence, beats[i] + (lengths[i] / 2));
            }
        }

        // where the other side was taken the evidence is put half a beat later; on the way between two stretches nothing is known
        int strays = sides[0] >= sides[1] ? 1 : 0;
        float[] mended = [.. evidence];
        for (int k = 0; k < stretches.Length; k++)
        {
            (int from, int to) = stretches[k];
            int end = k == moves.Length ? FrameOf(last, evidence) : FrameOf(beats[to], evidence);
            int half = (int)Math.Round(usual[(from + to) / 2] / 2 * Hearing.FramesPerSecond);
            for (int t = k == 0 ? FrameOf(first, evidence) : FrameOf(beats[from], evidence); k % 2 == strays && t < end; t++)
            {
                mended[t] = t >= half ? evidence[t - half] : 0;
            }

            if (k < moves.Length)
            {
                mended.AsSpan(end, FrameOf(beats[moves[k].To], evidence) - end).Clear();
            }
        }

        return BeatPath.Search(mended, first, last, usual.Min() / Room, usual.Max() * Room);
    }

    // Where the row moves by half a beat and goes on at the tempo that it had: the first beat of the way and the first after it.
    private static IEnumerable<(int From, int To)> Moves(double[] lengths, double[] usual)
    {
        for (int i = 0; i < lengths.Length; i++)
        {
            int sign = Math.Sign(PartOff(i));
            if (Math.Abs(PartOff(i)) < Moving)
            {
                continue;
            }

            int from = i;
            double sum = 0;
            for (; i < lengths.Length && Math.Sign(PartOff(i)) == sign && Math.Abs(PartOff(i)) >= Moving; i++)
            {
                sum += PartOff(i);
            }

            if (Math.Abs(sum) is > LeastHalf and < MostHalf && from >= FewestInStretch && i + FewestInStretch <= lengths.Length
                && IsSame(Middle(lengths.AsSpan(from - FewestInStretch, FewestInStretch)), Middle(lengths.AsSpan(i, FewestInStretch)), SameTempo))
            {
                yield return (from, i);
            }
        }

        double PartOff(int at) => (lengths[at] / usual[at]) - 1;
    }

    // The longest while, in seconds, in which no beat is heard on either side.
    private static double LongestPause(float[] evidence, double from, double to)
    {
        int longest = 0;
        int now = 0;
        for (int t = FrameOf(from, evidence); t < FrameOf(to, evidence); t++)
        {
            now = evidence[t] < Nothing ? now + 1 : 0;
            longest = Math.Max(longest, now);
        }

        return longest / Hearing.FramesPerSecond;
    }

    private static double[] LengthsOf(double[] beats) => [.. beats.Zip(beats.Skip(1), (a, b) => b - a)];

    private static double[] Usual(double[] lengths)
    {
        double[] usual = new double[lengths.Length];
        for (int i = 0; i < lengths.Length; i++)
        {
            int from = Math.Max(0, i - Around);
            usual[i] = Middle(lengths.AsSpan(from, Math.Min(lengths.Length, i + Around + 1) - from));
        }

        return usual;
    }

    private static double Middle(ReadOnlySpan<double> values)
    {
        double[] sorted = values.ToArray();
        Array.Sort(sorted);
        return sorted[sorted.Length / 2];
    }

    private static bool IsSame(double a, double b, double part) => Math.Abs(a - b) < part * b;

    private static float At(float[] evidence, double seconds) => evidence[Math.Min(FrameOf(seconds, evidence), evidence.Length - 1)];

    private static int FrameOf(double seconds, float[] evidence) => Math.Clamp((int)Math.Round(seconds * Hearing.FramesPerSecond), 0, evidence.Length);
}
