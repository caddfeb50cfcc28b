using System.Diagnostics;
using System.Globalization;
using Killed;

namespace Bench;

/// <summary>Kills a program that writes to a club thousands of times and tells what was left; see <see cref="KillTrials"/>.</summary>
internal static class Kills
{
    private const string OlderForm = "tests/Tests/Repertoire/Storage/Forms/First.sql";
    private const int Each = 50;

    /// <summary>Does it and prints the table; a line for every fault.</summary>
    /// <param name="output">Where the table goes.</param>
    /// <param name="kills">How often.</param>
    /// <param name="program">The program that is killed, compiled ahead of time so that it starts sooner; null for the one that was built beside this one.</param>
    /// <returns>Whether nothing was lost, halfway or unsound.</returns>
    public static bool Run(TextWriter output, int kills, string? program)
    {
        long start = Stopwatch.GetTimestamp();
        string older = File.ReadAllText(OlderForm);
        List<KillReport> reports = [];
        int[] seeds = [.. Enumerable.Range(1, (kills + Each - 1) / Each)];
        Parallel.ForEach(seeds, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, seed =>
        {
            DirectoryInfo place = Directory.CreateTempSubdirectory("scuff-kills-");
            try
            {
                KillReport report = new KillTrials(place.FullName, seed, older, program).Run(Math.Min(Each, kills - ((seed - 1) * Each)));
                lock (reports)
                {
                    reports.Add(report);
                    foreach (string fault in report.Faults)
                    {
                        output.WriteLine(Line($"seed {seed}: {fault}"));
                    }

                    output.WriteLine(Line($"{reports.Sum(r => r.Kills)} kills after {Stopwatch.GetElapsedTime(start).TotalSeconds:F0} s, {reports.Sum(r => r.Faults.Count)} faults"));
                    output.Flush();
                }
            }
            finally
            {
                place.Delete(recursive: true);
            }
        });
        output.WriteLine();
        output.WriteLine(Line($"{reports.Sum(r => r.Kills)} kills in {Stopwatch.GetElapsedTime(start).TotalSeconds:F0} s; {reports.Sum(r => r.Told)} writes told as done before them, all there"));
        output.WriteLine("cut short     nothing of it there   all of it there");
        foreach (var kind in reports.SelectMany(r => r.InFlight).GroupBy(k => k.Key).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            output.WriteLine(Line($"{kind.Key,-12} {kind.Sum(k => k.Value.Nothing),21} {kind.Sum(k => k.Value.Whole),17}"));
        }

        int faults = reports.Sum(r => r.Faults.Count);
        output.WriteLine(Line($"{faults} faults"));
        return faults == 0;
    }

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
