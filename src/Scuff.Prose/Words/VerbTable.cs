using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Words;

/// <summary>How a primitive is danced when a line says no more than its verb: taken from the catalogue's one-row entries.</summary>
internal sealed class VerbTable
{
    private readonly Dictionary<ActionKind, StepAction> _rows = [];
    private readonly Dictionary<ActionKind, StepDefinition> _definitions = [];

    private VerbTable()
    {
    }

    /// <summary>Gathers the one-row entries; an entry whose id is the primitive's word wins.</summary>
    public static VerbTable From(StepCatalogue catalogue)
    {
        VerbTable table = new();
        foreach (StepDefinition definition in catalogue.Definitions)
        {
            if (definition.Rows.Count != 1)
            {
                continue;
            }

            StepAction row = definition.Rows[0].Action;
            if (row.Kind == ActionKind.Stomp && row.Effect != WeightEffect.Takes)
            {
                continue;
            }

            bool exact = string.Equals(definition.Id, row.Traits.Word.Replace('-', '_'), StringComparison.Ordinal);
            if (exact || !table._rows.ContainsKey(row.Kind))
            {
                table._rows[row.Kind] = row with { Turn = Turn.None };
                table._definitions[row.Kind] = definition;
            }
        }

        return table;
    }

    /// <summary>The one-row entry of a primitive, or null.</summary>
    public StepDefinition? Definition(ActionKind kind) => _definitions.GetValueOrDefault(kind);

    /// <summary>The primitive as the right foot dances it when nothing more is said.</summary>
    public StepAction Usual(ActionKind kind) => _rows.TryGetValue(kind, out StepAction? row)
        ? row
        : new StepAction(kind, ActingFoot.Right, Direction.Unstated, kind is ActionKind.Kick or ActionKind.Hitch ? Contact.Air
            : Contact.Ball, WeightEffect.Keeps);
}
