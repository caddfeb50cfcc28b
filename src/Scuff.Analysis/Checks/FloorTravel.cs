using Scuff.Analysis.Checks.Walks;
using Scuff.Analysis.Loads;
using Scuff.Diagnostics;
using Scuff.Timelines;

namespace Scuff.Analysis.Checks;

/// <summary>Dances that run out of the floor.</summary>
public sealed class FloorTravel : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "floor/travels",
        Severity.Hint,
        "The dance travels {metres} m {way} by {place}; half a dancer's place and four steps are {room} m.",
        "Everybody in a line travels alike, so the neighbours are no trouble: for those at the edge it is the wall, and the edge of a small stage. Bring some of the way back, or say on the sheet that it needs a big floor.",
        """
        Away

        section 1
        1-4  walk R, L, R, L
        5-8  walk R, L, R, L

        section 2
        1-4  walk back R, L, R, L
        5-8  walk back R, L, R, L
        """,
        """
        Away

        section 1
        1-4  walk R, L, R, L
        5-8  walk back R, L, R, L

        section 2
        1-4  walk R, L, R, L
        5-8  walk back R, L, R, L
        """,
        "trade rule R33");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        if (TooFar(context) is not { } reach)
        {
            yield break;
        }

        Timeline timeline = context.Dance.IsPhrased ? context.PlainTimeline : context.WallTimeline;
        yield return TheRule
            .At(
                reach.At.Written.Span,
                ("metres", Words.Tenths(reach.Metres)),
                ("way", Words.Of(reach.Way)),
                ("place", DancePlace.Of(reach.At, timeline).Words),
                ("room", Words.Tenths(FloorRoom.Of(reach.Way))))
            .OnCount(reach.At.CountLabel);
    }

    /// <summary>What gets too far, or null; nothing is known of a dance whose turns are not.</summary>
    internal static FloorReach? TooFar(CheckContext context)
        => context.FloorUse is { IsCertain: true, Farthest: { IsTooFar: true } reach } && context.NetTurn is not null && !context.IsDoubtful(reach.At.Written.Span)
            ? reach
            : null;
}
