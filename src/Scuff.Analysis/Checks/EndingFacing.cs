using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;

namespace Scuff.Analysis.Checks;

/// <summary>An ending that does not face the front.</summary>
public sealed class EndingFacing : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "ending/facing",
        Severity.Warning,
        "The ending finishes facing {computed}{claimed}: {mend}.",
        "A floor that ends facing the front looks as if it knew the music. If another wall is meant, the sheet says so.",
        """
        Finish

        ending: wall 5, after 4 counts: turn 1/4 left step R forward, hold

        section 1
        1-2  step R to side, step L together
        3-4  step R to side, step L together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together
        """,
        """
        Finish

        ending: wall 5, after 4 counts: step R forward, hold

        section 1
        1-2  step R to side, step L together
        3-4  step R to side, step L together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together
        """,
        "trade rule R40");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        Dance dance = context.Dance;
        HashSet<Ending> told = [];
        foreach (Track? track in dance.Tracks.Select(track => (Track?)track).Append(null))
        {
            if ((track?.Ending ?? dance.Ending) is not { } ending
                || told.Contains(ending)
                || context.IsDoubtful(ending.Span)
                || !IsPlaced(context, ending, track)
                || Facing(context, ending, track) is not { } facing)
            {
                continue;
            }

            Facing meant = ending.Claim?.Facing ?? Scuff.Stance.Facing.Front;
            if (facing != meant && told.Add(ending))
            {
                Turn way = meant - facing;
                string claimed = ending.Claim is null ? "" : ", but the sheet prints " + meant.ToString();
                string mend = "a turn of " + Walks.Words.Of(way) + " more ends at " + meant.ToString()
                    + (ending.Claim is null ? ", or print " + facing.ToString() + " if it is meant" : "");
                Diagnostic complaint = TheRule.At(ending.Claim?.Span ?? ending.Span, ("computed", facing.ToString()), ("claimed", claimed), ("mend", mend));
                yield return ending.Claim is { } claim
                    ? complaint.WithFixes(new Fix("print " + facing.ToString(), new DanceEdit.SetFacing(claim, facing), IsSafe: true))
                    : complaint;
            }
        }
    }

    // a turn to the front ends there, whatever its amount;
    // without a wall, its facing or a track of known length nobody can tell which wall is the last; in a one-wall dance it does not matter
    private static bool IsPlaced(CheckContext context, Ending ending, Track? track)
        => ending is { Body: not null, SaysFront: false }
        && ending.Body.Steps.All(step => step.Action.Kind != ActionKind.Unknown)
        && (ending.Wall is not null || ending.WallFacing is not null || context.Walls == 1 || IsMeasured(track));

    private static bool IsMeasured(Track? track)
        => track is { Tempo: not null, LengthSeconds: not null } && (track.Intro is not null || track.IntroSeconds is not null);

    private static Facing? Facing(CheckContext context, Ending ending, Track? track)
    {
        Timeline timeline = Unroller.Unroll(context.Dance, PlanBuilder.ForTrack(context.Dance, track, withEnding: true));
        if (timeline.FacingAfter is not { } facing || timeline.Stretches.Count == 0)
        {
            return null;
        }

        // she may say herself where the ending's wall begins; then the plan's own wall does not matter
        return ending.WallFacing is { } stated && LastWallStart(timeline) is { } planned ? facing + (stated - planned) : facing;
    }

    private static Facing? LastWallStart(Timeline timeline)
        => timeline.Stretches.LastOrDefault(stretch => stretch.Plan.StartsWall)?.Facing;
}
