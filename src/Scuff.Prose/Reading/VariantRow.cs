using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>A row of a variant.</summary>
/// <param name="Action">The action.</param>
/// <param name="At">Place relative to the figure's count 1.</param>
/// <param name="Stretches">Whether it may last over several labels.</param>
internal readonly record struct VariantRow(StepAction Action, Counts At, bool Stretches);
