using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Dances;

/// <summary>A facing printed in brackets: a claim, to be verified.</summary>
/// <param name="Facing">What she says.</param>
/// <param name="At">After the action at this place of the section; the end of the line when she wrote it there.</param>
/// <param name="Span">Where she says it.</param>
public sealed record FacingClaim(Facing Facing, Counts At, TextSpan Span);
