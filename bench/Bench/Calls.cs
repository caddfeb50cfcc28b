using System.Diagnostics;
using System.Globalization;
using Scuff.Analysis;
using Scuff.Analysis.Calls;
using Scuff.Dances;
using Scuff.Prose;
using Scuff.Timelines;

namespace Bench;

/// <summary>How long it takes to write the calls of a whole track.</summary>
internal static class Calls
{
    private const int Rounds = 20;
    private const double TrackMinutes = 4;

    /// <summary>Writes the calls of every dance of a folder through a track of four minutes, every step called, at three tempi; prints milliseconds.</summary>
    public static void Speed(TextWriter writer, string folder)
    {
        (string Name, Dance Dance, DanceAnalysis Analysis)[] dances =
            [.. Directory.EnumerateFiles(folder, "*.dance").Order(StringComparer.Ordinal)
                .Select(f => (Path.GetFileNameWithoutExtension(f), DanceAnalysis.Of(DanceReader.Read(File.ReadAllText(f)))))
                .Select(d => (d.Item1, d.Item2.Dance, d.Item2))];
        foreach (int tempo in (ReadOnlySpan<int>)[90, 120, 180])
        {
            List<(double Calls, double Danced)> times = [];
            foreach ((_, Dance dance, _) in dances)
            {
                Plan plan = PlanBuilder.ForMusic(dance, new Track { Title = "x", Span = default, Line = 1 }, (int)(tempo * TrackMinutes));
                Timeline timeline = Unroller.Unroll(dance, plan);
                CountClock clock = CountClock.Even(tempo);
                CallOptions every = new() { HelpByWall = [CallHelp.EveryStep] };
                times.Add((Best(() => CallWriter.Write(dance, timeline, clock, every)), Best(() => Unroller.Unroll(dance, plan))));
            }

            writer.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{tempo} counts a minute: median {times.Select(t => t.Calls).Order().ElementAt(times.Count / 2):0.00} ms, slowest {times.Max(t => t.Calls):0.00} ms, "
                + $"{times.Sum(t => t.Calls) / times.Sum(t => t.Danced):0} times the unrolling of the same dances"));
        }
    }

    private static double Best(Action action)
    {
        double best = double.PositiveInfinity;
        for (int i = 0; i < Rounds; i++)
        {
            long before = Stopwatch.GetTimestamp();
            action();
            best = Math.Min(best, Stopwatch.GetElapsedTime(before).TotalMilliseconds);
        }

        return best;
    }
}
