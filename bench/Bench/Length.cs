using System.Text.RegularExpressions;
using BenchmarkDotNet.Attributes;
using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Prose;

namespace Bench;

/// <summary>Cost against length: ten times the lines may cost ten times the time, not more.</summary>
[Config(typeof(ShortInProcess))]
[MemoryDiagnoser]
public partial class Length
{
    private string _text = "";
    private Draft _draft = DanceReader.Read("");

    [Params(1_000, 10_000)]
    public int Lines { get; set; }

    /// <summary>Whether every third line of counts is in words that nobody understands.</summary>
    [Params(false, true)]
    public bool Doubtful { get; set; }

    [GlobalSetup]
    public void Write()
    {
        _text = Doubtful ? Texts.DoubtfulOfLines(Lines) : Texts.OfLines(Lines);
        _draft = DanceReader.Read(_text);
    }

    [Benchmark(Baseline = true)]
    public int Reference_words_by_regular_expression() => Word().Count(_text);

    [Benchmark]
    public Draft Read() => DanceReader.Read(_text);

    [Benchmark]
    public int Check()
    {
        DanceAnalysis analysis = DanceAnalysis.Of(_draft);
        return analysis.PlainTimeline.Steps.Count + analysis.Report.Complaints.Count;
    }

    [Benchmark]
    public string Tidy() => DanceWriter.Tidy(_draft);

    [GeneratedRegex(@"[\p{L}\p{N}]+|\S")]
    private static partial Regex Word();
}
