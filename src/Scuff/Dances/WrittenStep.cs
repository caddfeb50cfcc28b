using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Dances;

/// <summary>One action on one count, as written. The count is a place within its section (or tag), from zero.</summary>
/// <param name="Count">The written count and its exact place.</param>
/// <param name="Duration">How long it lasts: up to the next action of the line, or to the end of its last count.</param>
/// <param name="Action">What is danced. The foot is known, except where words could not be read.</param>
/// <param name="Span">The words that caused it.</param>
/// <param name="Line">One-based line of the text.</param>
public sealed record WrittenStep(WrittenCount Count, Counts Duration, StepAction Action, TextSpan Span, int Line)
{
    /// <summary>A styling turn of the body that the next count undoes; no part of the facing.</summary>
    public Turn BodyAngle { get; init; }

    /// <summary>Claps, snaps and the like made with it, which take no count of their own.</summary>
    public ValueList<StepAction> With { get; init; }

    /// <summary>
    /// Her words for what arms, head or hands do here (<c>look left</c>, <c>slap hip</c>), of which the action says only that they
    /// do something; empty when they do nothing.
    /// </summary>
    public string Gesture { get; init; } = "";

    /// <summary>Whether she named the foot, or it follows from the figure; false when it is only the free foot by default.</summary>
    public bool FootIsNamed { get; init; }

    /// <summary>Whether she wrote "(weight on ...)" or a word that says it.</summary>
    public bool WeightIsStated { get; init; }
}
