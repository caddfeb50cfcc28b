using Scuff.Music;

namespace Tests.Music;

/// <summary>Maps of tracks made by rule.</summary>
internal static class Maps
{
    /// <summary>A map with steady beats, counts that run on, and sections of the given lengths.</summary>
    /// <param name="first">When the first beat falls.</param>
    /// <param name="period">Seconds from beat to beat.</param>
    /// <param name="sections">Lengths of the sections in beats; their labels are A, B and so on.</param>
    public static TrackMap Steady(double first, double period, params int[] sections)
    {
        int beats = sections.Sum();
        List<TrackSection> row = [];
        int at = 0;
        foreach (int length in sections)
        {
            row.Add(new TrackSection(at, length, ((char)('A' + row.Count)).ToString(), "", 0.8));
            at += length;
        }

        double[] times = [.. Enumerable.Range(0, beats).Select(i => first + (i * period))];
        return new TrackMap
        {
            Seconds = times[^1] + (2 * period),
            Beats = CountRun.Lay(times, Meter.Four, row.Select(s => s.FirstBeat)),
            Tempo = new Estimate<double>(60 / period, 0.7),
            Meter = new Estimate<Meter>(Meter.Four, 0.9),
            Swing = new Estimate<double>(1, 0.6),
            Sections = [.. row],
            FirstCount = new Estimate<int>(0, 0.6),
        };
    }

    /// <summary>Whether beats lie where they should, to the millisecond.</summary>
    public static void AssertTimes(IEnumerable<double> expected, IEnumerable<double> found)
    {
        double[] e = [.. expected];
        double[] f = [.. found];
        Assert.Equal(e.Length, f.Length);
        Assert.All(e.Zip(f), p => Assert.InRange(p.Second - p.First, -0.001, 0.001));
    }
}
