using Scuff.Stance;

namespace Scuff.Analysis.Checks.Walks;

/// <summary>One trouble with the weight.</summary>
/// <param name="Trouble">What it is.</param>
/// <param name="Step">The action at which it shows.</param>
/// <param name="Foot">The foot that would have to be free (for a hop: to stand).</param>
/// <param name="Giver">The action that put the weight where it is, or null at the start.</param>
/// <param name="Previous">The action by one foot just before, or null.</param>
internal sealed record WeightFinding(WeightTrouble Trouble, WalkedStep Step, Foot Foot, WalkedStep? Giver, WalkedStep? Previous)
{
    /// <summary>More gestures with the same fault just after it.</summary>
    public List<WalkedStep> Followers { get; } = [];
}
