using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Scuff.Analysis;
using Scuff.Analysis.Checks;
using Scuff.Analysis.Floor;
using Scuff.Dances;
using Scuff.Prose;
using Scuff.Sheets;
using Scuff.Sheets.Formats;

namespace Bench;

/// <summary>
/// What the benchmarks measure, in half a minute and as the best of several: for a look while working, and on a machine that has
/// other work to do, where the best is nearer to the truth than the mean.
/// </summary>
internal static partial class Quick
{
    private static readonly int[] Lengths = [1_000, 10_000, 40_000];

    /// <summary>Prints the tables.</summary>
    public static void Run(TextWriter output)
    {
        string text = Texts.SixtyFourCounts;
        Draft draft = DanceReader.Read(text);
        output.WriteLine("64 counts                       best ms     bytes");
        Print(output, "words by regular expression", 300, () => Word().Count(text));
        Print(output, "read", 300, () => DanceReader.Read(text));
        Print(output, "read, unroll, check", 300, () => Proved(DanceReader.Read(text)));
        Print(output, "unroll, check", 300, () => Proved(draft));
        Print(output, "tidy", 300, () => DanceWriter.Tidy(draft));
        Print(output, "sheet with feet", 300, () => SheetBuilder.Build(DanceAnalysis.Of(draft)));
        SheetModel sheet = SheetBuilder.Build(DanceAnalysis.Of(draft));
        foreach (ISheetFormat format in SheetFormats.All)
        {
            Print(output, "sheet as " + format.Name, 300, () => Drawn(sheet, format));
        }

        foreach (bool doubtful in (ReadOnlySpan<bool>)[false, true])
        {
            output.WriteLine();
            output.WriteLine(doubtful ? "lines, a third not understood   microseconds a line at 1,000, 10,000, 40,000 lines" : "lines                           microseconds a line at 1,000, 10,000, 40,000 lines");
            string[] texts = [.. Lengths.Select(l => doubtful ? Texts.DoubtfulOfLines(l) : Texts.OfLines(l))];
            Draft[] drafts = [.. texts.Select(DanceReader.Read)];
            Row(output, "words by regular expression", i => Word().Count(texts[i]));
            Row(output, "read", i => DanceReader.Read(texts[i]));
            Row(output, "unroll", i => DanceAnalysis.Of(drafts[i]).PlainTimeline);
            Row(output, "check", i => Proved(drafts[i]));
            Row(output, "tidy", i => DanceWriter.Tidy(drafts[i]));
            Row(output, "sheet", i => SheetBuilder.Build(DanceAnalysis.Of(drafts[i])));
            Row(output, "floor", i => FloorSimulator.Simulate(DanceAnalysis.Of(drafts[i]).WallTimeline, DancerSize.Default));
            foreach (ICheck check in AllChecks.Ordered)
            {
                Row(output, "  " + check.GetType().Name, i => check.Check(new CheckContext(DanceAnalysis.Of(drafts[i]))).Count(), onlyGrowing: true);
            }
        }
    }

    private static MemoryStream Drawn(SheetModel sheet, ISheetFormat format)
    {
        MemoryStream stream = new();
        format.Write(sheet, stream);
        return stream;
    }

    private static int Proved(Draft draft)
    {
        DanceAnalysis analysis = DanceAnalysis.Of(draft);
        return analysis.PlainTimeline.Steps.Count + analysis.TrackTimelines.Count + analysis.Report.Complaints.Count;
    }

    private static void Print(TextWriter output, string name, int times, Func<object> work)
    {
        double best = Best(times, work);
        long before = GC.GetAllocatedBytesForCurrentThread();
        GC.KeepAlive(work());
        long bytes = GC.GetAllocatedBytesForCurrentThread() - before;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name,-30} {best,8:F3} {bytes,9}"));
    }

    private static void Row(TextWriter output, string name, Func<int, object> work, bool onlyGrowing = false)
    {
        double[] each = [.. Lengths.Select((lines, i) => Best(Math.Max(3, 20_000 / lines), () => work(i)) * 1000 / lines)];
        if (!onlyGrowing || each[^1] > 2 * each[0] + 1)
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name,-30} {each[0],8:F2} {each[1],8:F2} {each[2],8:F2}"));
        }
    }

    private static double Best(int times, Func<object> work)
    {
        double best = double.MaxValue;
        for (int i = 0; i < times; i++)
        {
            long start = Stopwatch.GetTimestamp();
            GC.KeepAlive(work());
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        return best;
    }

    [GeneratedRegex(@"[\p{L}\p{N}]+|\S")]
    private static partial Regex Word();
}
