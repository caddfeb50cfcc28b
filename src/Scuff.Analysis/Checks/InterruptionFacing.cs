using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Timelines;

namespace Scuff.Analysis.Checks;

/// <summary>The facing printed for a tag or restart against the computed one.</summary>
public sealed class InterruptionFacing : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "interruption/facing-differs",
        Severity.Error,
        "The sheet prints {claimed} for this, but in wall {wall} the floor faces {computed} there.",
        "The wall at which a tag or restart comes is how dancers remember it. Computed from the turns of everything danced before, it is another.",
        """
        Where to

        section 1
        1-2  step R to side, touch L together
        3-4  turn 1/4 left step L forward, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        wall 2: after 4 restart (facing 9:00)
        """,
        """
        Where to

        section 1
        1-2  step R to side, touch L together
        3-4  turn 1/4 left step L forward, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        wall 2: after 4 restart (facing 6:00)
        """,
        "trade rule R20");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        HashSet<Interruption> told = [];
        foreach (TrackTimeline track in context.TrackTimelines)
        {
            ValueList<TimedStretch> stretches = track.Timeline.Stretches;
            for (int i = 0; i < stretches.Count; i++)
            {
                if (stretches[i].Plan.Cause is not { Claim: { } claim } cause || !BreakFloor.Begins(stretches, i, cause))
                {
                    continue;
                }

                List<Facing?> possible = [.. BreakFloor.Possible(stretches, i, cause)];
                if (possible.Count > 0 && !possible.Contains(null) && !possible.Contains(claim.Facing) && told.Add(cause))
                {
                    Facing computed = possible[0]!.Value;
                    yield return TheRule
                        .At(
                            claim.Span,
                            ("claimed", claim.Facing.ToString()),
                            ("wall", Words.Of(stretches[i].Plan.Wall)),
                            ("computed", computed.ToString()))
                        .WithFixes(new Fix("print " + computed.ToString(), new DanceEdit.SetFacing(claim, computed), IsSafe: true));
                }
            }
        }
    }
}
