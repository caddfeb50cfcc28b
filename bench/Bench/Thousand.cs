using System.Diagnostics;
using System.Globalization;
using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Prose;

namespace Bench;

/// <summary>Where the time of checking many different dances goes, in the order of a first run and of later ones.</summary>
internal static class Thousand
{
    private const int Rounds = 5;

    /// <summary>Reads and checks each dance of a folder, round after round; milliseconds a dance.</summary>
    public static void Measure(TextWriter output, string folder)
    {
        string[] texts = [.. Directory.EnumerateFiles(folder, "*.dance").Order(StringComparer.Ordinal).Select(File.ReadAllText)];
        output.WriteLine("round    read   check  compiled  methods  collected bytes");
        for (int round = 1; round <= Rounds; round++)
        {
            TimeSpan compiling = JitInfo();
            long methods = System.Runtime.JitInfo.GetCompiledMethodCount();
            int collected = GC.CollectionCount(0);
            long bytes = GC.GetTotalAllocatedBytes();
            long reading = 0;
            long checking = 0;
            foreach (string text in texts)
            {
                long start = Stopwatch.GetTimestamp();
                Draft draft = DanceReader.Read(text);
                long read = Stopwatch.GetTimestamp();
                _ = DanceAnalysis.Of(draft).Report.Complaints.Count;
                reading += read - start;
                checking += Stopwatch.GetTimestamp() - read;
            }

            double Each(long ticks) => ticks * 1e3 / Stopwatch.Frequency / texts.Length;
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{round,5} {Each(reading),7:F3} {Each(checking),7:F3} {(JitInfo() - compiling).TotalMilliseconds / texts.Length,9:F3} "
                + $"{System.Runtime.JitInfo.GetCompiledMethodCount() - methods,8} {GC.CollectionCount(0) - collected,10} {(GC.GetTotalAllocatedBytes() - bytes) / texts.Length,9}"));
        }
    }

    private static TimeSpan JitInfo() => System.Runtime.JitInfo.GetCompilationTime();
}
