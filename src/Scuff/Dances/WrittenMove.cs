using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Dances;

/// <summary>One move as she named it (a figure, or a single action), with the actions it stands for.</summary>
public sealed record WrittenMove
{
    /// <summary>The catalogue entry, or null for words that could not be read.</summary>
    public StepDefinition? Definition { get; init; }

    /// <summary>The foot the figure is named by (its S foot), or null when the mirror does not matter.</summary>
    public Foot? Named { get; init; }

    /// <summary>A stated turn, or none.</summary>
    public Turn? StatedTurn { get; init; }

    /// <summary>A stated direction, or <see cref="Direction.Unstated"/>.</summary>
    public Direction Direction { get; init; }

    /// <summary>The actions in order.</summary>
    public required ValueList<WrittenStep> Steps { get; init; }

    /// <summary>Its words.</summary>
    public required TextSpan Span { get; init; }

    /// <summary>The canonical English words of the move, or her own words when they could not be read.</summary>
    public required string Words { get; init; }

    /// <summary>
    /// The part of the foot that she says is stepped on, where it is another than the step's usual one; null when she says none. Of
    /// a figure its name says it.
    /// </summary>
    public Contact? SaidContact
        => Definition is { Rows: [var row] } && Steps is [{ Action: { Kind: ActionKind.Step, Contact: Contact.Ball or Contact.Heel or Contact.Toe } action }]
            && action.Contact != row.Action.Contact
            ? action.Contact
            : null;

    /// <summary>Whether it could not be read.</summary>
    public bool IsUnknown => Definition is null && Steps.Any(s => s.Action.Kind == ActionKind.Unknown);
}
