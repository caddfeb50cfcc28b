using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;

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
                || EndingFloor.FacingOf(dance, context.Walls, ending, track) is not { } facing)
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
}
