using Scuff.App.Json;
using Scuff.Prose;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.App.Commands;

/// <summary>Entries of the catalogue as they are shown, danced as named by the right foot.</summary>
internal static class CatalogueEntry
{
    /// <summary>The entry with its weight worked out count by count.</summary>
    public static CatalogueStep Of(StepDefinition definition, StepCatalogue catalogue)
    {
        List<CatalogueRow> rows = [];
        Weight weight = definition.From switch
        {
            RelativeWeight.Same => Weight.Right,
            RelativeWeight.Other => Weight.Left,
            RelativeWeight.Both => Weight.Shared,
            _ => Weight.Unknown,
        };
        bool isSettled = weight != Weight.Unknown;
        foreach (PatternRow row in definition.Rows)
        {
            weight = row.Action.WeightAfter(weight);
            isSettled = isSettled || row.Action.Effect is not WeightEffect.Keeps;
            rows.Add(new CatalogueRow(
                row.Label,
                StanceWords.Of(row.Action.Foot),
                Phrasing.Describe(row.Action),
                isSettled ? StanceWords.Of(weight) : "unchanged"));
        }

        return new CatalogueStep
        {
            Id = definition.Id,
            Name = definition.Name,
            Aliases = definition.Aliases,
            Call = definition.Call,
            Level = definition.Level,
            Meter = definition.Meter,
            Counts = definition.Length.Value.ToDouble(),
            Rows = rows,
            WeightBefore = Side(definition.From),
            WeightAfter = Side(definition.To),
            TurnEighths = definition.TotalTurn.Eighths.ToDouble(),
            Conflict = definition.Conflict,
            Alternatives = [.. definition.Others.Select(o => o.Words)],
            Sources =
            [
                .. definition.Sources.Select(key => catalogue.Sources.TryGetValue(key, out StepSource? source)
                    ? new CatalogueSource(key, source.Title, source.Url)
                    : new CatalogueSource(key, key, "")),
            ],
        };
    }

    private static string Side(RelativeWeight weight) => weight switch
    {
        RelativeWeight.Same => "same",
        RelativeWeight.Other => "other",
        RelativeWeight.Both => "both",
        _ => "any",
    };
}
