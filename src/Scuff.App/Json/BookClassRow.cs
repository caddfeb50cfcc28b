using System.Text.Json.Serialization;
using Scuff.App.Classes;
using Scuff.Repertoire;

namespace Scuff.App.Json;

/// <summary>A class in JSON. What she does not say about it is absent. The names are fixed: scripts depend on them.</summary>
internal sealed record BookClassRow
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>What she calls it.</summary>
    public required string Title { get; init; }

    /// <summary>Its level in her words; empty when she does not say.</summary>
    public required string Level { get; init; }

    /// <summary>The day it meets: <c>monday</c>.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Day { get; init; }

    /// <summary>When it begins: <c>19:30</c>.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Starts { get; init; }

    /// <summary>How long it lasts, in minutes.</summary>
    public required int Minutes { get; init; }

    /// <summary>Where; empty when she does not say.</summary>
    public required string Place { get; init; }

    /// <summary>About how many come.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? People { get; init; }

    /// <summary>Her words about it.</summary>
    public required string Notes { get; init; }

    /// <summary>The day after which it does not meet any more: <c>2026-03-02</c>.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? EndedOn { get; init; }

    /// <summary>A class.</summary>
    public static BookClassRow Of(ClubClass held) => new()
    {
        Id = held.Id,
        Title = held.Title,
        Level = held.Level,
        Day = held.Weekday?.ToString().ToLowerInvariant(),
        Starts = held.Starts is { } at ? DayWords.Clock(at) : null,
        Minutes = held.Minutes,
        Place = held.Place,
        People = held.People,
        Notes = held.Notes,
        EndedOn = held.EndedOn is { } end ? DayWords.Plain(end) : null,
    };
}
