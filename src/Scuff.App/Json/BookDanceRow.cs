using System.Text.Json.Serialization;

namespace Scuff.App.Json;

/// <summary>A dance as a class knows it, in JSON. What is not known is absent.</summary>
internal sealed record BookDanceRow
{
    /// <summary>The id of the dance.</summary>
    public required string Dance { get; init; }

    /// <summary>Its title.</summary>
    public required string Title { get; init; }

    /// <summary>How well it is known: <c>follows</c>, <c>start</c>, <c>cues</c>, <c>alone</c>.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Known { get; init; }

    /// <summary>The day of that mark.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Since { get; init; }

    /// <summary>The days on which it was danced, ascending.</summary>
    public required IReadOnlyList<string> Danced { get; init; }

    /// <summary>The day on which it was last taught or revised from a known version of its sheet.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? TaughtOn { get; init; }

    /// <summary>Whether the sheet is another now than on that day.</summary>
    public bool Newer { get; init; }

    /// <summary>Whether feet do something else now; absent when that is not known.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public bool? FeetChanged { get; init; }

    /// <summary>What changed since then, in sentences.</summary>
    public required IReadOnlyList<string> Changes { get; init; }
}
