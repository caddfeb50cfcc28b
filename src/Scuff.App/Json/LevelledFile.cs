using System.Text.Json.Serialization;
using Scuff.Analysis;
using Scuff.Analysis.Levels;
using Scuff.App.Files;

namespace Scuff.App.Json;

/// <summary>What <c>level --json</c> says about one file. The names are fixed: scripts depend on them.</summary>
internal sealed record LevelledFile
{
    /// <summary>The file as named.</summary>
    public required string File { get; init; }

    /// <summary>Why it could not be read; absent when it was.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Error { get; init; }

    /// <summary>The level by the published definitions, or null.</summary>
    public string? Level { get; init; }

    /// <summary>The level that the heading states, or null.</summary>
    public string? Stated { get; init; }

    /// <summary>Whether all words could be read; if not, the dance may be harder.</summary>
    public bool IsComplete { get; init; }

    /// <summary>Everything that the easiest level does not allow, hardest first.</summary>
    public required IReadOnlyList<LevelReasonRow> Reasons { get; init; }

    /// <summary>What would bring it one level down, or empty.</summary>
    public string OneLevelDown { get; init; } = "";

    /// <summary>A file that was read.</summary>
    public static LevelledFile Of(DanceInput input, DanceAnalysis analysis)
    {
        ComputedLevel level = analysis.Level;
        return new LevelledFile
        {
            File = input.Name,
            Level = LevelPhrases.Name(level.Level),
            Stated = LevelWords.Of(analysis.Dance),
            IsComplete = level.IsComplete,
            Reasons = [.. level.Reasons.Select(LevelReasonRow.Of)],
            OneLevelDown = level.OneLevelDown,
        };
    }

    /// <summary>A file that could not be read.</summary>
    public static LevelledFile Unreadable(DanceInput input) => new() { File = input.Name, Error = input.Trouble, Reasons = [] };
}
