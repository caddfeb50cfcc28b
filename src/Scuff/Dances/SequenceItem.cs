using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Dances;

/// <summary>One place in the order of a phrased dance.</summary>
/// <param name="Name">Part or tag name, as declared.</param>
/// <param name="IsTag">Whether it is a tag.</param>
/// <param name="Upto">Dance only so many counts of it, or null for all.</param>
/// <param name="Span">Where it is written.</param>
public sealed record SequenceItem(string Name, bool IsTag, Counts? Upto, TextSpan Span);
