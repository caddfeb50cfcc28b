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

    /// <summary>
    /// Gathers the one-row entries. Of several, the one whose id is the primitive's word wins, then one that is also called by that word
    /// ("bounce" is a bounce of the heels and not a rise, which only lifts them), then the first.
    /// </summary>
    public static VerbTable From(StepCatalogue catalogue)
    {
        VerbTable table = new();
        Dictionary<ActionKind, int> ranks = [];
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

            int rank = string.Equals(definition.Id, row.Traits.Word.Replace('-', '_'), StringComparison.Ordinal) ? 0
                : definition.Aliases.Contains(row.Traits.Word.Replace('-', ' ')) ? 1
                : 2;
            if (!ranks.TryGetValue(row.Kind, out int present) || rank < present || rank == 0)
            {
                ranks[row.Kind] = rank;
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
