using Scuff.Analysis;
using Scuff.Sheets;

namespace Scuff.App.Handouts;

/// <summary>An evening with everything that is needed to take it out in any form.</summary>
internal sealed record EveningOut
{
    /// <summary>The evening with its finished lines.</summary>
    public required EveningPaper Paper { get; init; }

    /// <summary>Tells this evening from every other in the world, and stays: <see cref="Calendars.ClubCalendar.UidOf"/>, as in the calendar of the whole club.</summary>
    public required string Uid { get; init; }

    /// <summary>How often the evening was changed, for calendars.</summary>
    public int Changes { get; init; }

    /// <summary>Its dances by their ids; those that are missing have no sheet.</summary>
    public IReadOnlyDictionary<string, DanceAnalysis> Dances { get; init; } = new Dictionary<string, DanceAnalysis>(StringComparer.Ordinal);

    /// <summary>Paper, print and language of what is printed.</summary>
    public SheetChoices Choices { get; init; } = SheetChoices.Usual;

    /// <summary>The full path of the sound file of a track by its id, or null when there is none.</summary>
    public Func<string, string?> AudioPathOf { get; init; } = _ => null;

    /// <summary>The present moment.</summary>
    public required DateTimeOffset Now { get; init; }
}
