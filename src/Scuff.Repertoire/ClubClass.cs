namespace Scuff.Repertoire;

/// <summary>A class: a group that meets on a day of the week. Equal by value.</summary>
public sealed record ClubClass
{
    /// <summary>Its name within the club: short, safe in an address, never given to another class; empty for one that is not kept yet.</summary>
    public string Id { get; init; } = "";

    /// <summary>What she calls it.</summary>
    public required string Title { get; init; }

    /// <summary>Its level in the words that are printed; empty when she does not say.</summary>
    public string Level { get; init; } = "";

    /// <summary>The day it meets; null when it has none.</summary>
    public DayOfWeek? Weekday { get; init; }

    /// <summary>When it begins, by the clock of the place; null when she does not say.</summary>
    public TimeOnly? Starts { get; init; }

    /// <summary>How long it lasts, in minutes.</summary>
    public int Minutes { get; init; } = 60;

    /// <summary>Where; empty when she does not say.</summary>
    public string Place { get; init; } = "";

    /// <summary>About how many come; null when she does not say.</summary>
    public int? People { get; init; }

    /// <summary>Her own words about it.</summary>
    public string Notes { get; init; } = "";

    /// <summary>The day after which it does not meet any more; null while it goes on.</summary>
    public DateOnly? EndedOn { get; init; }
}
