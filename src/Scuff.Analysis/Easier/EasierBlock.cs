using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Analysis.Easier;

/// <summary>One thing that may be danced instead: a figure of the catalogue on one foot, or one plain action.</summary>
/// <param name="Definition">The catalogue entry.</param>
/// <param name="Named">The foot it is named by.</param>
/// <param name="StatedTurn">A turn that its words state, or null.</param>
/// <param name="Rows">Its actions with their places from its first count.</param>
/// <param name="Length">Whole counts.</param>
/// <param name="Price">How far it is from the plainest, in the search's points.</param>
internal sealed record EasierBlock(
    StepDefinition Definition,
    Foot? Named,
    Turn? StatedTurn,
    ValueList<(Counts At, StepAction Action)> Rows,
    int Length,
    int Price)
{
    /// <summary>Whether nothing moves in it.</summary>
    public bool IsHold { get; } = Rows is [{ Action.Kind: ActionKind.Hold }];

    /// <summary>The turn of all its rows, in eighths; only blocks of whole eighths are made.</summary>
    public int Eighths { get; } = Rows.Sum(row => row.Action.Turn.Eighths.Numerator);

    /// <summary>Weight and turn after each of its counts from a weight, or null when its feet are not free.</summary>
    public (Weight Weight, int Eighths)[]? From(Weight weight)
    {
        (Weight Weight, int Eighths)[] after = new (Weight, int)[Length];
        int turned = 0;
        int next = 0;
        for (int count = 0; count < Length; count++)
        {
            while (next < Rows.Count && Rows[next].At < Counts.FromWhole(count + 1))
            {
                StepAction action = Rows[next].Action;
                if (!IsPossible(action, weight))
                {
                    return null;
                }

                weight = action.WeightAfter(weight);
                turned += action.Turn.Eighths.Numerator;
                next++;
            }

            after[count] = (weight, turned);
        }

        return after;
    }

    private static bool IsPossible(StepAction action, Weight weight) => action.Foot.ToFoot() is not { } foot || action.Traits.FootRule switch
    {
        FootRule.Free => weight.StandingFoot() != foot,
        FootRule.Standing => weight.StandingFoot() == foot,
        _ => true,
    };
}
