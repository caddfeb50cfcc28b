using System.Text.Json.Serialization;
using Scuff.App.Classes;
using Scuff.Repertoire;

namespace Scuff.App.Json;

/// <summary>A session in JSON. What is not said about it is absent. The names are fixed: scripts depend on them.</summary>
internal sealed record BookSessionRow
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>The id of the class.</summary>
    public required string Class { get; init; }

    /// <summary>The day: <c>2026-03-02</c>.</summary>
    public required string Date { get; init; }

    /// <summary>When it begins, where that is not the usual time: <c>19:30</c>.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Starts { get; init; }

    /// <summary>How long it lasts in minutes, where that is not as usual.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? Minutes { get; init; }

    /// <summary>Whether it was held; else it is planned.</summary>
    public required bool Held { get; init; }

    /// <summary>How many were there.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? People { get; init; }

    /// <summary>How it went, in her words.</summary>
    public required string HowItWent { get; init; }

    /// <summary>What was danced, or is planned, in order.</summary>
    public required IReadOnlyList<BookItemRow> Dances { get; init; }

    /// <summary>A session.</summary>
    public static BookSessionRow Of(ClassSession session) => new()
    {
        Id = session.Id,
        Class = session.ClassId,
        Date = DayWords.Plain(session.Date),
        Starts = session.Starts is { } at ? DayWords.Clock(at) : null,
        Minutes = session.Minutes,
        Held = session.IsHeld,
        People = session.People,
        HowItWent = session.HowItWent,
        Dances = [.. session.Items.Select(BookItemRow.Of)],
    };
}
