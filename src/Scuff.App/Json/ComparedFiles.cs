using System.Text.Json.Serialization;
using Scuff.Analysis.Compare;
using Scuff.App.Files;
using Scuff.Sheets;
using Scuff.Sheets.Languages;

namespace Scuff.App.Json;

/// <summary>What <c>compare --json</c> says. The names are fixed: scripts depend on them.</summary>
internal sealed record ComparedFiles
{
    /// <summary>The earlier version as named.</summary>
    public required string Before { get; init; }

    /// <summary>The later version as named.</summary>
    public required string After { get; init; }

    /// <summary>Why they could not be read; absent when they were.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Error { get; init; }

    /// <summary>Whether both dance and print the same; their words may differ.</summary>
    public bool Same { get; init; }

    /// <summary>The changes in the order of the later version.</summary>
    public required IReadOnlyList<ComparedChange> Changes { get; init; }

    /// <summary>Two versions that were read.</summary>
    public static ComparedFiles Of(DanceInput before, DanceInput after, DanceComparison comparison) => new()
    {
        Before = before.Name,
        After = after.Name,
        Same = comparison.IsSame,
        Changes = [.. comparison.Changes.Zip(ChangeWords.Of(comparison, SheetLanguage.English), ComparedChange.Of)],
    };

    /// <summary>Two versions of which at least one could not be read.</summary>
    public static ComparedFiles Unreadable(DanceInput before, DanceInput after) => new()
    {
        Before = before.Name,
        After = after.Name,
        Error = before.Trouble ?? after.Trouble,
        Changes = [],
    };
}
