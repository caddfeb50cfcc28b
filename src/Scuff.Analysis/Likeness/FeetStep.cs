using Scuff.Stance;

namespace Scuff.Analysis.Likeness;

/// <summary>One thing that a foot does. Equal by value.</summary>
/// <param name="Parts">How long until the next, in twelfths of a count.</param>
/// <param name="Kind">What, as a number of <see cref="Steps.ActionKind"/>.</param>
/// <param name="Foot">Which foot, as a number of <see cref="ActingFoot"/>.</param>
/// <param name="Direction">Which way, as a number of <see cref="Stance.Direction"/>.</param>
/// <param name="Eighths">Turn with it in eighths, right positive.</param>
public readonly record struct FeetStep(int Parts, int Kind, int Foot, int Direction, int Eighths)
{
    /// <summary>The same with left and right exchanged.</summary>
    internal FeetStep Mirrored() => this with
    {
        Foot = (int)((ActingFoot)Foot).Mirrored(),
        Direction = (int)((Direction)Direction).Mirrored((ActingFoot)Foot),
        Eighths = -Eighths,
    };
}
