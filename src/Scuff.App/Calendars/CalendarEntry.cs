namespace Scuff.App.Calendars;

/// <summary>Something in a calendar, by the clock of the place, whatever the zone of whoever reads it. Equal by value.</summary>
internal sealed record CalendarEntry
{
    /// <summary>Tells it from every other in the world, for ever. The entry that takes the place of one day of a weekly one has the same.</summary>
    public required string Uid { get; init; }

    /// <summary>What it is called.</summary>
    public required string Title { get; init; }

    /// <summary>The day it is on; of a weekly one the first.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>When it begins; null for the whole day.</summary>
    public TimeOnly? Starts { get; init; }

    /// <summary>How long it lasts, in minutes; at least 1. Without meaning for a whole day.</summary>
    public int Minutes { get; init; } = 60;

    /// <summary>Where; empty when unknown.</summary>
    public string Place { get; init; } = "";

    /// <summary>What is to be said of it, in lines; empty for nothing.</summary>
    public string Words { get; init; } = "";

    /// <summary>Whether it comes again every week.</summary>
    public bool IsWeekly { get; init; }

    /// <summary>The last day on which a weekly one may come; null while it goes on.</summary>
    public DateOnly? Until { get; init; }

    /// <summary>The day of the weekly entry whose place it takes; null when it takes none.</summary>
    public DateOnly? InPlaceOf { get; init; }

    /// <summary>When that day's began, by the weekly entry; null when that is for whole days.</summary>
    public TimeOnly? InPlaceOfStart { get; init; }

    /// <summary>How often it was changed.</summary>
    public int Changes { get; init; }
}
