using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>One place named by a count label.</summary>
/// <param name="Label">As printed: <c>3</c>, <c>3&amp;</c>.</param>
/// <param name="Number">The whole count it belongs to (0 for an &amp; before 1).</param>
/// <param name="Place">Exact place counted from zero, before any offset of running numbers.</param>
/// <param name="AfterDash">Whether it comes out of a range (1-4), so that an &amp; may lie unprinted before it.</param>
internal readonly record struct LabelPlace(string Label, int Number, Counts Place, bool AfterDash);
