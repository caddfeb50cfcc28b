using System.Text.Json.Serialization;
using Scuff.App.Book;
using Scuff.Repertoire;

namespace Scuff.App.Json;

/// <summary>A dance of a session in JSON.</summary>
internal sealed record BookItemRow
{
    /// <summary>What it was there for: <c>warm-up</c>, <c>revised</c>, <c>taught</c>, <c>requested</c>, <c>danced</c>, <c>cool-down</c>.</summary>
    public required string Role { get; init; }

    /// <summary>The id of the dance; absent when the club does not have it.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Dance { get; init; }

    /// <summary>Its title as it was then.</summary>
    public required string Title { get; init; }

    /// <summary>The revision of its text on that day.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? Revision { get; init; }

    /// <summary>Minutes planned or spent.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? Minutes { get; init; }

    /// <summary>Her words about it.</summary>
    public required string Note { get; init; }

    /// <summary>An item.</summary>
    public static BookItemRow Of(SessionItem item) => new()
    {
        Role = BookWords.Of(item.Role),
        Dance = item.DanceId,
        Title = item.Title,
        Revision = item.Revision,
        Minutes = item.Minutes,
        Note = item.Note,
    };
}
