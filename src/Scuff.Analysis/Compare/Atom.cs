using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Analysis.Compare;

/// <summary>One action at one place: the smallest thing that can differ.</summary>
/// <param name="At">Its place, from the beginning of the passage.</param>
/// <param name="Length">Up to the next action, or to the end of the passage.</param>
/// <param name="Danced">What is danced; equal when it is danced alike, wherever it stands.</param>
/// <param name="Move">Index of its move in the passage.</param>
/// <param name="Step">Where it is written.</param>
internal sealed record Atom(Counts At, Counts Length, Danced Danced, int Move, WrittenStep Step);

/// <summary>What is danced at one moment.</summary>
/// <param name="Action">
/// The action, without the part of the foot that meets the floor unless she says it: a figure's name implies it, the same steps written
/// one by one do not, and no sheet tells the two apart.
/// </param>
/// <param name="BodyAngle">A styling turn of the body.</param>
/// <param name="With">What is made with it.</param>
/// <param name="Words">Her words, when they could not be read, or say what arms and head do (in capitals, as case tells nothing); else empty.</param>
internal sealed record Danced(StepAction Action, Turn BodyAngle, ValueList<StepAction> With, string Words);
