using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

/// <summary>One way to dance a clause: the rows, ready for the named foot.</summary>
internal sealed class Variant
{
    public required StepDefinition? Definition { get; init; }

    public required Foot? Named { get; init; }

    public required List<VariantRow> Rows { get; init; }

    public double Cost { get; set; }

    public bool FootNamed { get; init; }

    public Turn? StatedTurn { get; init; }

    public bool TurnDirectionMissing { get; set; }

    public bool TurnAmountMissing { get; set; }

    public bool WeightStated { get; init; }

    public bool Accompanies { get; init; }

    /// <summary>How many counts her words say it takes, or null.</summary>
    public int? Lasts { get; set; }

    /// <summary>The count that one of its rows is said to be on, or null.</summary>
    public int? SaidCount { get; set; }

    /// <summary>An action beside the move before, ahead of the rows; or null.</summary>
    public VariantRow? Beside { get; init; }

    public Direction Direction { get; init; }

    /// <summary>What makes it a reading of its own, in words, for questions.</summary>
    public string Words { get; set; } = "";
}
