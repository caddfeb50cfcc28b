using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;

namespace Scuff.Analysis.Fit;

/// <summary>What is true between two counts of a part, as far as an interruption there is concerned.</summary>
/// <param name="Weight">Where the weight is when the part is left there.</param>
/// <param name="Turn">How far the part has turned until there; null when unknown.</param>
/// <param name="Next">The foot that has to be free to go on from there; null when any will do.</param>
/// <param name="CutsCount">Whether leaving there cuts a figure between the labels of a count, which nobody can dance.</param>
/// <param name="CutsFigure">Whether leaving there cuts a figure of whole counts.</param>
/// <param name="Last">The action on the last count before, when it could be danced differently: a step that takes the weight, or a touch.</param>
internal sealed record LeavingPlace(Weight Weight, Turn? Turn, Foot? Next, bool CutsCount, bool CutsFigure, TimedStep? Last)
{
    /// <summary>Whether the dance may be left there at all: the weight is known, the floor faces a wall, and no count is cut.</summary>
    public bool MayLeave => Weight != Weight.Unknown && Turn is { } turn && Facing.FromEighths(turn.Eighths).IsWall && !CutsCount;

    /// <summary>Whether what needs a foot free can begin with the weight there.</summary>
    public static bool IsFree(Weight weight, Foot? foot) => foot is not { } needed || weight.StandingFoot() != needed;

    /// <summary>The first foot that actions need free before the weight moves; null when they need none.</summary>
    public static Foot? NeedOf(IEnumerable<StepAction> actions)
    {
        foreach (StepAction action in actions)
        {
            if (action.Foot.ToFoot() is { } foot && action.Traits.FootRule == FootRule.Free)
            {
                return foot;
            }

            if (action.Effect != WeightEffect.Keeps)
            {
                return null;
            }
        }

        return null;
    }
}
