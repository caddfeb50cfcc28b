using Scuff.Analysis.Fit;

namespace Scuff.App.Json;

/// <summary>The plan laid over its track, ready to draw; places are counts of the music.</summary>
internal sealed record FitChartRows(int Eight, int? Ending, IReadOnlyList<FitChartLine> Rows, IReadOnlyList<FitChartBand> Spans)
{
    /// <summary>A chart in rows.</summary>
    public static FitChartRows Of(FitChart chart) => new(
        chart.Eight,
        chart.Ending,
        [.. chart.Rows.Select(r => new FitChartLine(r.From, r.Counts, r.Seconds, r.Section, r.BeginsSection))],
        [
            .. chart.Spans.Select(s => new FitChartBand(
                s.Kind.ToString().ToLowerInvariant(), s.From, s.To, s.Wall, s.Part, s.Name, s.Facing?.ToString(), s.Starts, s.IsCut)),
        ]);
}
