using Scuff.Dances;
using Scuff.Stance;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Lessons;

/// <summary>Finds where the pattern breaks on a track, in the order danced: once for each place that is written, with all its walls.</summary>
internal static class BreakFinder
{
    /// <summary>The breaks of the dance on a track (null for none).</summary>
    public static ValueList<LessonBreak> Of(DanceAnalysis analysis, Track? track)
    {
        Dance dance = analysis.Dance;
        Timeline timeline = analysis.TrackTimelines.FirstOrDefault(t => ReferenceEquals(t.Track, track))?.Timeline
            ?? analysis.TrackTimelines.FirstOrDefault(t => t.Track is null)?.Timeline
            ?? analysis.PlainTimeline;
        List<(int At, LessonBreak Break)> found = [];
        foreach (Interruption written in (IEnumerable<Interruption>)[.. dance.Interruptions, .. track?.Interruptions ?? default])
        {
            if (Of(dance, timeline, written) is { } taught)
            {
                found.Add((taught.Walls.Count > 0 ? taught.Walls[0] : int.MaxValue, taught));
            }
        }

        // the tags in the order of a phrased dance
        foreach (IGrouping<string, TimedStretch> tag in timeline.Stretches
            .Where(s => s.Plan is { Kind: StretchKind.Tag, Cause: null })
            .GroupBy(s => s.Plan.Name, StringComparer.OrdinalIgnoreCase))
        {
            TimedStretch first = tag.First();
            found.Add((first.Plan.Wall, new LessonBreak(
                dance.FindTag(tag.Key) is { IsBridge: true } ? LessonBreakKind.Bridge : LessonBreakKind.Tag,
                tag.Key,
                [.. tag.Select(s => s.Plan.Wall).Distinct()],
                LengthBefore(timeline, first),
                StartOf(timeline, first.Plan.Wall),
                first.Facing,
                first.Span.Length,
                ThenRestarts: false,
                IsChanged: false)
            {
                Body = dance.FindTag(tag.Key)?.Body,
            }));
        }

        return [.. found.OrderBy(f => f.At).Select(f => f.Break)];
    }

    private static LessonBreak? Of(Dance dance, Timeline timeline, Interruption written)
    {
        Counts length = (written.PartName.Length > 0 ? dance.FindPart(written.PartName) : dance.Parts.Count > 0 ? dance.Parts[0] : null)?.Length ?? Counts.Zero;
        Counts after = Counts.Min(written.AfterCounts ?? length, length);
        TimedStretch[] caused = [.. timeline.Stretches.Where(s => ReferenceEquals(s.Plan.Cause, written))];
        int wall = caused.Length > 0 ? caused[0].Plan.Wall : 0;
        TimedStretch[] here = [.. caused.Where(s => s.Plan.Wall == wall)];
        TimedStretch? cut = Array.FindLast(here, s => s.Plan.Kind == StretchKind.Wall);
        TimedStretch[] added = [.. here.Where(s => s.Plan.Kind != StretchKind.Wall)];
        bool cutsWall = written.Restarts && after < length;
        bool adds = written.Acts.Any(a => a is not (InterruptionAct.Restart or InterruptionAct.GoOn));
        if (!adds && !cutsWall && written.Changes.Count == 0)
        {
            return null;
        }

        InterruptionAct.PlayTag? play = written.Acts.OfType<InterruptionAct.PlayTag>().FirstOrDefault();
        Tag? tag = play is null ? null : dance.FindTag(play.Name);
        LessonBreakKind kind = !adds ? LessonBreakKind.Restart
            : tag is { IsBridge: true } || (!written.Restarts && after < length) ? LessonBreakKind.Bridge
            : written.Acts.All(a => a is InterruptionAct.Wait or InterruptionAct.Restart or InterruptionAct.GoOn) ? LessonBreakKind.Wait
            : LessonBreakKind.Tag;
        Counts extra = Counts.Zero;
        foreach (TimedStretch stretch in added)
        {
            extra += stretch.Span.Length;
        }

        return new LessonBreak(
            kind,
            tag?.Name ?? play?.Name ?? "",
            caused.Length > 0 ? [.. caused.Select(s => s.Plan.Wall).Distinct().Order()] : written.Walls,
            after,
            caused.Length > 0 ? StartOf(timeline, wall) : null,
            added.Length > 0 ? added[0].Facing : cut?.FacingAfter,
            extra,
            written.Restarts,
            written.Changes.Count > 0)
        {
            Written = written,
            Body = tag?.Body ?? written.Acts.OfType<InterruptionAct.Dance>().FirstOrDefault()?.Body,
        };
    }

    private static Facing? StartOf(Timeline timeline, int wall)
        => timeline.Stretches.FirstOrDefault(s => s.Plan.StartsWall && s.Plan.Wall == wall)?.Facing;

    // How much of its wall has been danced before a stretch.
    private static Counts LengthBefore(Timeline timeline, TimedStretch stretch)
    {
        Counts length = Counts.Zero;
        foreach (TimedStretch each in timeline.Stretches)
        {
            if (ReferenceEquals(each, stretch))
            {
                break;
            }

            length = each.Plan.Wall == stretch.Plan.Wall ? length + each.Span.Length : Counts.Zero;
        }

        return length;
    }
}
