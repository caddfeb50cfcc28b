using System.Text.Json.Serialization;
using Scuff.App.Explaining;
using Scuff.App.Files;
using Scuff.Timelines;

namespace Scuff.App.Json;

/// <summary>What <c>explain --json</c> says about one file. The names are fixed: scripts depend on them.</summary>
internal sealed record ExplainedFile
{
    /// <summary>The file as named.</summary>
    public required string File { get; init; }

    /// <summary>Why it could not be read or explained; absent when it was.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Error { get; init; }

    /// <summary>Every action in danced order.</summary>
    public required IReadOnlyList<DancedEvent> Events { get; init; }

    /// <summary>A dance as danced.</summary>
    /// <param name="input">The file.</param>
    /// <param name="timeline">The dance as danced.</param>
    /// <param name="wall">Only this wall; null for all.</param>
    public static ExplainedFile Of(DanceInput input, Timeline timeline, int? wall) => new()
    {
        File = input.Name,
        Events =
        [
            .. timeline.Steps
                .Where(s => wall is null || s.Wall == wall)
                .Select(s => new DancedEvent(
                    s.Wall,
                    DancedPlace.Of(s, timeline),
                    s.CountLabel,
                    StanceWords.Of(s.Action.Foot),
                    DancedWords.Of(s),
                    StanceWords.Of(s.WeightAfter),
                    s.FacingAfter?.ToString(),
                    s.Written.Line)),
        ],
    };

    /// <summary>A file that could not be read or explained.</summary>
    public static ExplainedFile Unreadable(DanceInput input, string trouble) => new() { File = input.Name, Error = trouble, Events = [] };
}
