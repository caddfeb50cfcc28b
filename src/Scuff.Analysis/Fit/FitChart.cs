using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Fit;

/// <summary>
/// A plan laid over its track, ready to draw: the music as rows that begin with its sections, four eights at most in each; over them what is danced.
/// Places are counts of the music.
/// </summary>
/// <param name="Rows">The rows.</param>
/// <param name="Spans">What is danced, in order, without gaps from the first count of music to the last.</param>
/// <param name="Eight">How many counts an eight has: 6 in a waltz.</param>
/// <param name="Ending">The count on which the ending begins; null when the dance is simply danced to the end.</param>
public sealed record FitChart(ValueList<FitChartRow> Rows, ValueList<FitChartSpan> Spans, int Eight, int? Ending)
{
    private const int EightsInRow = 4;

    /// <summary>Lays a plan over its track.</summary>
    public static FitChart Of(CountedMusic music, FitPlan plan)
    {
        ArgumentNullException.ThrowIfNull(music);
        ArgumentNullException.ThrowIfNull(plan);
        int eight = music.Map.Meter.Value.BeatsInEight;
        return new FitChart(RowsOf(music, eight), SpansOf(music, plan), eight, plan.Ending?.Begins);
    }

    private static ValueList<FitChartRow> RowsOf(CountedMusic music, int eight)
    {
        List<FitChartRow> rows = [];
        int from = 0;
        for (int i = 1; i <= music.Counts; i++)
        {
            bool isNew = i == music.Counts || music.BeginsSection(i);

            // the beats before the first section stand by themselves
            if (isNew || i - from == eight * EightsInRow)
            {
                rows.Add(new FitChartRow(from, i - from, music.SecondsOf(from), music.SectionOf(from), music.BeginsSection(from)));
                from = i;
            }
        }

        return rows.ToValueList();
    }

    private static ValueList<FitChartSpan> SpansOf(CountedMusic music, FitPlan plan)
    {
        List<FitChartSpan> spans = [];
        if (plan.Begins > 0)
        {
            spans.Add(new FitChartSpan(FitChartKind.Intro, 0, plan.Begins, 0, "", "", null, false));
        }

        foreach (TimedStretch stretch in plan.Timeline.Stretches.Where(s => s.Span.Length > Counts.Zero))
        {
            PlanStretch of = stretch.Plan;
            int from = plan.Begins + stretch.Span.Start.Value.Floor;
            int to = Math.Min(plan.Begins + stretch.Span.End.Value.Floor, music.Counts);
            FitChartKind kind = of.Kind switch
            {
                StretchKind.Wall => FitChartKind.Wall,
                StretchKind.Wait => FitChartKind.Hold,
                _ => FitChartKind.Tag,
            };
            string part = kind == FitChartKind.Wall ? of.Name : of.Cause?.PartName ?? "";
            string name = of.Kind == StretchKind.Tag ? of.Name : "";
            spans.Add(new FitChartSpan(kind, from, to, of.Wall, part, name, stretch.Facing, of.Kind == StretchKind.Wall && of.IsCutByRestart)
            {
                Starts = of.StartsWall,
            });
        }

        return spans.ToValueList();
    }
}
