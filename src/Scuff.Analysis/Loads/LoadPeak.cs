using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Loads;

/// <summary>The most of something within so many counts, and where that begins.</summary>
/// <param name="Amount">How much.</param>
/// <param name="Counts">Within how many counts.</param>
/// <param name="At">The action with which it begins.</param>
public sealed record LoadPeak(Ratio Amount, Ratio Counts, TimedStep At);
