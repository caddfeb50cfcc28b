namespace Scuff.Repertoire;

/// <summary>An evening with its programme: a social, or the plan of one class. Equal by value.</summary>
public sealed record ClubEvening
{
    /// <summary>Its name within the club; empty for one that is not kept yet.</summary>
    public string Id { get; init; } = "";

    /// <summary>What she calls it.</summary>
    public required string Title { get; init; }

    /// <summary>The day.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>When it begins, by the clock of the place.</summary>
    public TimeOnly Starts { get; init; } = new(19, 30);

    /// <summary>How long it lasts, in minutes.</summary>
    public int Minutes { get; init; } = 180;

    /// <summary>Where; empty when she does not say.</summary>
    public string Place { get; init; } = "";

    /// <summary>The class whose session it plans; null for a social.</summary>
    public string? ClassId { get; init; }

    /// <summary>Her wishes and the programme, as the program writes them. The club keeps it and does not look into it.</summary>
    public string Plan { get; init; } = "";

    /// <summary>How often it changed, from 1; names the state that a save began with. 0 for one that is not kept yet.</summary>
    public int Revision { get; init; }
}
