using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>One action put on a place of the line, in a chain back to the first.</summary>
internal sealed record PlacedRow(PlacedRow? Previous, StepAction Action, string Label, Counts Place, int Clause, int MoveIndex, Variant? Variant,
    bool FootNamed, bool WeightStated, bool IsWith)
{
    /// <summary>The last place of the label that this row stretches over; -1 when it does not stretch.</summary>
    public int LastLabel { get; init; } = -1;

    /// <summary>Whether it takes more than one place.</summary>
    public bool IsStretched { get; init; }
}
