using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Sheets;

/// <summary>Tags, bridges, restarts and endings in words, with the facings that the danced timeline gives.</summary>
internal static class BreakWords
{
    /// <summary>Every interruption, wall by wall, in the order in which the floor meets them.</summary>
    /// <param name="dance">The dance.</param>
    /// <param name="interruptions">The interruptions to tell.</param>
    /// <param name="timeline">The dance as danced with them, or null; then no facing is told.</param>
    public static ValueList<SheetBreak> Of(Dance dance, ValueList<Interruption> interruptions, Timeline? timeline)
    {
        List<(int Wall, Counts Place, SheetBreak Words)> told = [];
        foreach (Interruption interruption in interruptions)
        {
            foreach (int wall in interruption.Walls.Distinct())
            {
                Meeting meeting = Meeting.Find(dance, interruption, wall, timeline);
                Counts place = interruption.AfterCounts ?? meeting.Length ?? Counts.FromWhole(int.MaxValue / 4);
                told.Add((meeting.Wall ?? wall, place, new SheetBreak(Where(interruption, wall, meeting), What(dance, interruption, meeting))));
            }
        }

        return told.OrderBy(t => t.Wall).ThenBy(t => t.Place).Select(t => t.Words).ToValueList();
    }

    /// <summary>The ending, with facings only where it is known which wall is the last.</summary>
    /// <param name="analysis">The dance.</param>
    /// <param name="ending">The ending as written.</param>
    /// <param name="track">The track it is for, or null.</param>
    public static SheetBreak Of(DanceAnalysis analysis, Ending ending, Track? track)
    {
        Finish finish = Finish.Find(analysis, ending, track);
        string where = (ending.Wall is { } wall ? $"Wall {wall}" : "Last wall")
            + (finish.Start is { } from ? $" (starts at {from})" : "")
            + (ending.AfterCounts is { } after ? $", after {SheetWords.Counts(after)}" : "")
            + (finish.Leave is { } facing && ending.AfterCounts is not null ? $", facing {facing}" : "");
        // a turn "to the front" has no amount of its own: her words say it best
        string what = ending.SaysFront && ending.MoveWords.Length > 0 ? ending.MoveWords
            : ending.Body is { Lines.Count: > 0 } moves ? SheetWords.Moves(moves) : ending.Verbatim;
        string end = ending.SaysFront ? "" : finish.End is { } at ? $", ending at {at}" : "";
        return new SheetBreak(where, what.TrimEnd('.', ' ') + end);
    }

    private static string Where(Interruption interruption, int wall, Meeting meeting)
    {
        string which = interruption.PartName.Length > 0
            ? $"Part {interruption.PartName}, {Ordinal(wall)} time"
            : $"Wall {wall}";
        string start = meeting.Start is { } from ? $" (starts at {from})" : "";
        bool isAtEnd = interruption.AfterCounts is null || interruption.AfterCounts == meeting.Length;
        string after = isAtEnd
            ? ", after its last count"
            : $", after {SheetWords.Counts(interruption.AfterCounts!.Value)}";
        string facing = meeting.Facing is { } at ? $", facing {at}" : "";
        return which + start + after + facing;
    }

    private static string What(Dance dance, Interruption interruption, Meeting meeting)
    {
        // extra counts inside a wall that then goes on are a bridge, whatever they are called where they are written
        bool isInside = !interruption.Restarts && interruption.AfterCounts is { } after && after < meeting.Length;
        List<string> acts = [.. interruption.Acts.Select(a => Act(dance, a, isInside))];
        string words = acts.Count == 0 ? interruption.Verbatim : string.Join(", then ", acts);
        foreach (ChangedCounts change in interruption.Changes)
        {
            words += $", with {ChangedLabel(change)} as {SheetWords.Moves(change.Moves)}";
        }

        return words;
    }

    // The replaced counts are counted through the part; the printed count is the one within its section.
    private static string ChangedLabel(ChangedCounts change)
    {
        List<string> labels = [.. change.Steps.Select(s => CountGrid.LabelOf(s.Count.Place))];
        return labels.Count switch
        {
            0 => "count " + SheetWords.Label(change.Replaces),
            1 => "count " + labels[0],
            _ => $"counts {labels[0]} to {labels[^1]}",
        };
    }

    private static string Act(Dance dance, InterruptionAct act, bool isInside) => act switch
    {
        InterruptionAct.PlayTag play => PlayTag(dance, play, isInside),
        InterruptionAct.Quote quote => (quote.PartName.Length > 0 ? $"part {quote.PartName} " : "")
            + $"section {quote.SectionNumber} {CountWord(quote.Counts)} {SheetWords.Label(quote.Counts)}",
        InterruptionAct.Wait wait => $"wait {SheetWords.Counts(wait.Length)}",
        InterruptionAct.Dance moves => SheetWords.Moves(moves.Body),
        InterruptionAct.Restart => "restart",
        InterruptionAct.GoOn => "go on",
        _ => throw new ArgumentOutOfRangeException(nameof(act)),
    };

    private static string PlayTag(Dance dance, InterruptionAct.PlayTag play, bool isInside)
    {
        Tag? tag = dance.FindTag(play.Name);
        string kind = isInside || tag?.IsBridge == true ? "bridge" : "tag";
        string name = tag?.Name ?? play.Name;
        string times = play.Times switch
        {
            1 => "",
            2 => " twice",
            _ => $" {play.Times} times",
        };
        return (name.Length > 0 ? $"{kind} “{name}”" : $"the {kind}") + times;
    }

    private static string CountWord(CountSpan span) => span.Length <= Counts.One ? "count" : "counts";

    private static string Ordinal(int number) => number switch
    {
        1 => "first",
        2 => "second",
        3 => "third",
        4 => "fourth",
        5 => "fifth",
        _ => number + (number % 10, number % 100) switch
        {
            (1, not 11) => "st",
            (2, not 12) => "nd",
            (3, not 13) => "rd",
            _ => "th",
        },
    };

    /// <summary>Where the floor meets an interruption.</summary>
    /// <param name="Wall">The danced wall, or null when the timeline never gets there.</param>
    /// <param name="Start">Facing at which that wall starts.</param>
    /// <param name="Facing">Facing at the break.</param>
    /// <param name="Length">Counts of the part it is in.</param>
    private sealed record Meeting(int? Wall, Facing? Start, Facing? Facing, Counts? Length)
    {
        public static Meeting Find(Dance dance, Interruption interruption, int wall, Timeline? timeline)
        {
            Part? part = interruption.PartName.Length > 0 ? dance.FindPart(interruption.PartName) : null;
            Counts? length = (part ?? (dance.Parts.Count == 1 ? dance.Parts[0] : null))?.Length;
            if (timeline is null || DancedWall(interruption, wall, timeline) is not { } danced)
            {
                return new Meeting(null, null, null, length);
            }

            List<TimedStretch> stretches = [.. timeline.Stretches.Where(s => s.Plan.Wall == danced)];
            if (stretches.Count == 0)
            {
                return new Meeting(null, null, null, length);
            }

            length = stretches[0].Plan.Sections.Aggregate(Counts.Zero, (sum, s) => sum + s.Length);
            Counts place = interruption.AfterCounts is { } after ? Counts.Min(after, length.Value) : length.Value;
            TimedStretch? before = stretches.LastOrDefault(s => s.Plan.Kind == StretchKind.Wall && s.Plan.Counts.End == place);
            Facing? facing = before is not null
                ? before.FacingAfter
                : stretches.FirstOrDefault(s => ReferenceEquals(s.Plan.Cause, interruption))?.Facing;
            return new Meeting(danced, stretches[0].Facing, facing, length);
        }

        // In a phrased dance "wall 2 of part B" is the second time that B begins.
        private static int? DancedWall(Interruption interruption, int wall, Timeline timeline) => interruption.PartName.Length == 0
            ? wall
            : timeline.Stretches
                .Where(s => s.Plan.StartsWall && string.Equals(s.Plan.Name, interruption.PartName, StringComparison.OrdinalIgnoreCase))
                .Select(s => (int?)s.Plan.Wall)
                .ElementAtOrDefault(wall - 1);
    }

    /// <summary>Where the floor faces in the ending.</summary>
    /// <param name="Start">As its wall starts.</param>
    /// <param name="Leave">As it leaves the dance.</param>
    /// <param name="End">At the very end.</param>
    private sealed record Finish(Facing? Start, Facing? Leave, Facing? End)
    {
        public static Finish Find(DanceAnalysis analysis, Ending ending, Track? track)
        {
            bool isPlaced = ending.Wall is not null
                || ending.WallFacing is not null
                || analysis.Walls == 1
                || analysis.Dance.IsPhrased
                || track is { Tempo: not null, LengthSeconds: not null };
            Timeline? timeline = isPlaced
                ? analysis.WithEnding(track)
                : null;
            if (timeline is not { Stretches.Count: > 0 }
                || timeline.Stretches.LastOrDefault(s => s.Plan.StartsWall)?.Facing is not { } planned)
            {
                return new Finish(ending.WallFacing, null, null);
            }

            // she may say herself where that wall starts; the rest turns with it
            Turn shift = ending.WallFacing is { } stated ? stated - planned : Turn.None;
            TimedStretch last = timeline.Stretches[timeline.Stretches.Count - 1];
            return last.Plan.Kind == StretchKind.Ending
                ? new Finish(planned + shift, last.Facing + shift, last.FacingAfter + shift)
                : new Finish(planned + shift, null, null);
        }
    }
}
