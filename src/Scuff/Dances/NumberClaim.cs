using Scuff.Diagnostics;

namespace Scuff.Dances;

/// <summary>A number the heading claims, to be verified.</summary>
/// <param name="Value">What she says.</param>
/// <param name="Span">Where.</param>
public sealed record NumberClaim(int Value, TextSpan Span);
