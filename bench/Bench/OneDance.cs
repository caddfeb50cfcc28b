using System.Text.RegularExpressions;
using BenchmarkDotNet.Attributes;
using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Prose;

namespace Bench;

/// <summary>A 64-count dance from its text to everything that is computed from it. The reference only splits the same text into words.</summary>
[Config(typeof(ShortInProcess))]
[MemoryDiagnoser]
public partial class OneDance
{
    private readonly string _text = Texts.SixtyFourCounts;
    private readonly Draft _draft = DanceReader.Read(Texts.SixtyFourCounts);

    [Benchmark(Baseline = true)]
    public int Reference_words_by_regular_expression() => Word().Count(_text);

    [Benchmark]
    public Draft Read() => DanceReader.Read(_text);

    /// <summary>The promise: under 3 ms and 2 MB once warm.</summary>
    [Benchmark]
    public int Read_unroll_and_check()
    {
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(_text));
        return analysis.PlainTimeline.Steps.Count + analysis.TrackTimelines.Count + analysis.Report.Complaints.Count;
    }

    [Benchmark]
    public int Unroll_and_check_only()
    {
        DanceAnalysis analysis = DanceAnalysis.Of(_draft);
        return analysis.PlainTimeline.Steps.Count + analysis.TrackTimelines.Count + analysis.Report.Complaints.Count;
    }

    [Benchmark]
    public string Tidy() => DanceWriter.Tidy(_draft);

    [GeneratedRegex(@"[\p{L}\p{N}]+|\S")]
    private static partial Regex Word();
}
