using System.Globalization;
using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Sheets.Languages;
using Scuff.Stance;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Sheets;

/// <summary>Tags, bridges, restarts and endings in words, with the facings that the danced timeline gives.</summary>
/// <param name="words">The language.</param>
internal sealed class BreakWords(Wording words)
{
    /// <summary>Every interruption, wall by wall, in the order in which the floor meets them.</summary>
    /// <param name="dance">The dance.</param>
    /// <param name="interruptions">The interruptions to tell.</param>
    /// <param name="timeline">The dance as danced with them, or null; then no facing is told.</param>
    /// <param name="track">The track on which the floor meets them, or null; then no place in the music is told.</param>
    public ValueList<SheetBreak> Of(Dance dance, ValueList<Interruption> interruptions, Timeline? timeline, Track? track)
    {
        List<(int Wall, Counts Place, SheetBreak Words)> told = [];
        foreach (Interruption interruption in interruptions)
        {
            foreach (int wall in interruption.Walls.Distinct())
            {
                Meeting meeting = Meeting.Find(dance, interruption, wall, timeline);
                Counts place = interruption.AfterCounts ?? meeting.Length ?? Counts.FromWhole(int.MaxValue / 4);
                told.Add((meeting.Wall ?? wall, place, new SheetBreak(Where(dance, interruption, wall, meeting, track), What(dance, interruption, meeting))));
            }
        }

        return told.OrderBy(t => t.Wall).ThenBy(t => t.Place).Select(t => t.Words).ToValueList();
    }

    /// <summary>The ending, with facings only where it is known which wall is the last.</summary>
    /// <param name="analysis">The dance.</param>
    /// <param name="ending">The ending as written.</param>
    /// <param name="track">The track it is for, or null.</param>
    public SheetBreak Of(DanceAnalysis analysis, Ending ending, Track? track)
    {
        Finish finish = Finish.Find(analysis, ending, track);
        string where = ending.Wall is { } wall ? words.Say("break.wall", ("number", Digits(wall))) : words["break.last-wall"];
        if (finish.Start is { } from)
        {
            where = words.Say("break.starts", ("where", where), ("facing", from.ToString()));
        }

        if (ending.AfterCounts is { } after)
        {
            where = words.Say("break.after", ("where", where), ("counts", words.Counts(after)));
            where = finish.Leave is { } facing ? words.Say("break.facing", ("where", where), ("facing", facing.ToString())) : where;
        }

        string what = words.MovesOf(ending);
        return new SheetBreak(where, !ending.SaysFront && finish.End is { } at ? words.Say("ending.at", ("act", what), ("facing", at.ToString())) : what);
    }

    private string Where(Dance dance, Interruption interruption, int wall, Meeting meeting, Track? track)
    {
        string where = interruption.PartName.Length > 0
            ? words.Say("break.part", ("name", interruption.PartName), ("ordinal", words.Ordinal(wall)))
            : words.Say("break.wall", ("number", Digits(wall)));
        if (meeting.Start is { } from)
        {
            where = words.Say("break.starts", ("where", where), ("facing", from.ToString()));
        }

        bool isAtEnd = interruption.AfterCounts is null || interruption.AfterCounts == meeting.Length;
        where = isAtEnd
            ? words.Say("break.at-end", ("where", where))
            : words.Say("break.after", ("where", where), ("counts", words.Counts(interruption.AfterCounts!.Value)));
        where = meeting.Facing is { } at ? words.Say("break.facing", ("where", where), ("facing", at.ToString())) : where;
        return meeting.At is { } danced && track is not null && TrackWords.TimeOf(dance, track, danced) is { } seconds
            ? words.Say("break.time", ("where", where), ("time", TrackWords.Clock(seconds)))
            : where;
    }

    private string What(Dance dance, Interruption interruption, Meeting meeting)
    {
        // extra counts inside a wall that then goes on are a bridge, whatever they are called where they are written
        bool isInside = !interruption.Restarts && interruption.AfterCounts is { } after && after < meeting.Length;
        string what = interruption.Acts.Count == 0 ? interruption.Verbatim : "";
        foreach (InterruptionAct act in interruption.Acts)
        {
            string next = Act(dance, act, isInside);
            what = what.Length == 0 ? next : words.Say("do.then", ("first", what), ("next", next));
        }

        foreach (ChangedCounts change in interruption.Changes)
        {
            what = words.Say("do.changed", ("act", what), ("counts", ChangedLabel(change)), ("moves", words.Moves.Describe(change.Moves)));
        }

        return what;
    }

    // The replaced counts are counted through the part; the printed count is the one within its section.
    private string ChangedLabel(ChangedCounts change)
    {
        List<string> labels = [.. change.Steps.Select(s => CountGrid.LabelOf(s.Count.Place))];
        return labels.Count switch
        {
            0 => words.Say("count.at", ("label", SheetWords.Label(change.Replaces))),
            1 => words.Say("count.at", ("label", labels[0])),
            _ => words.Say("count.from-to", ("first", labels[0]), ("last", labels[^1])),
        };
    }

    private string Act(Dance dance, InterruptionAct act, bool isInside) => act switch
    {
        InterruptionAct.PlayTag play => PlayTag(dance, play, isInside),
        InterruptionAct.Quote quote => Quote(quote),
        InterruptionAct.Wait wait => words.Say("do.wait", ("counts", words.Counts(wait.Length))),
        InterruptionAct.Dance moves => words.MovesOf(moves.Body),
        InterruptionAct.Restart => words["do.restart"],
        InterruptionAct.GoOn => words["do.go-on"],
        _ => throw new ArgumentOutOfRangeException(nameof(act)),
    };

    private string Quote(InterruptionAct.Quote quote)
    {
        string counts = words.Say(quote.Counts.Length <= Counts.One ? "count.at" : "count.span", ("label", SheetWords.Label(quote.Counts)));
        string section = Digits(quote.SectionNumber);
        return quote.PartName.Length > 0
            ? words.Say("do.quote-part", ("part", quote.PartName), ("section", section), ("counts", counts))
            : words.Say("do.quote", ("section", section), ("counts", counts));
    }

    private string PlayTag(Dance dance, InterruptionAct.PlayTag play, bool isInside)
    {
        Tag? tag = dance.FindTag(play.Name);
        string kind = isInside || tag?.IsBridge == true ? "do.bridge" : "do.tag";
        string name = tag?.Name ?? play.Name;
        string act = name.Length > 0 ? words.Say(kind + "-named", ("name", name)) : words[kind];
        return play.Times switch
        {
            1 => act,
            2 => words.Say("do.twice", ("act", act)),
            _ => words.Say("do.times", ("act", act), ("number", Digits(play.Times))),
        };
    }

    private static string Digits(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>Where the floor meets an interruption.</summary>
    /// <param name="Wall">The danced wall, or null when the timeline never gets there.</param>
    /// <param name="Start">Facing at which that wall starts.</param>
    /// <param name="Facing">Facing at the break.</param>
    /// <param name="At">Counts danced up to there, from the first of the dance.</param>
    /// <param name="Length">Counts of the part it is in.</param>
    private sealed record Meeting(int? Wall, Facing? Start, Facing? Facing, Counts? At, Counts? Length)
    {
        public static Meeting Find(Dance dance, Interruption interruption, int wall, Timeline? timeline)
        {
            Part? part = interruption.PartName.Length > 0 ? dance.FindPart(interruption.PartName) : null;
            Counts? length = (part ?? (dance.Parts.Count == 1 ? dance.Parts[0] : null))?.Length;
            if (timeline is null || DancedWall(interruption, wall, timeline) is not { } danced)
            {
                return new Meeting(null, null, null, null, length);
            }

            List<TimedStretch> stretches = [.. timeline.Stretches.Where(s => s.Plan.Wall == danced)];
            if (stretches.Count == 0)
            {
                return new Meeting(null, null, null, null, length);
            }

            length = stretches[0].Plan.Sections.Aggregate(Counts.Zero, (sum, s) => sum + s.Length);
            Counts place = interruption.AfterCounts is { } after ? Counts.Min(after, length.Value) : length.Value;
            TimedStretch? before = stretches.LastOrDefault(s => s.Plan.Kind == StretchKind.Wall && s.Plan.Counts.End == place);
            TimedStretch? caused = before is null ? stretches.FirstOrDefault(s => ReferenceEquals(s.Plan.Cause, interruption)) : null;
            return new Meeting(danced, stretches[0].Facing, before?.FacingAfter ?? caused?.Facing, before?.Span.End ?? caused?.Span.Start, length);
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
