using Scuff.Repertoire;
using Scuff.Sheets;

namespace Scuff.App.Handouts;

/// <summary>What is taken out of the book of a club: its classes with their sessions, and its dances with what is known of them.</summary>
internal sealed record BookOut
{
    /// <summary>What the club is called, as the title of a calendar.</summary>
    public required string Name { get; init; }

    /// <summary>
    /// Tells this club from every other in the world, and stays: a part of the identities that calendars know entries by. Letters and digits. When it changes,
    /// a calendar that has taken the club in has everything twice.
    /// </summary>
    public required string ClubKey { get; init; }

    /// <summary>The classes, ended ones among them.</summary>
    public ValueList<ClubClass> Classes { get; init; }

    /// <summary>Their sessions, planned and held.</summary>
    public ValueList<ClassSession> Sessions { get; init; }

    /// <summary>How well they know what.</summary>
    public ValueList<KnownMark> Marks { get; init; }

    /// <summary>The evenings; those that plan a class are left to its sessions.</summary>
    public ValueList<ClubEvening> Evenings { get; init; }

    /// <summary>The programmes of evenings by the ids of these, as far as there are any.</summary>
    public IReadOnlyDictionary<string, EveningPaper> Programmes { get; init; } = new Dictionary<string, EveningPaper>(StringComparer.Ordinal);

    /// <summary>The dances, without those in the bin.</summary>
    public ValueList<DanceRow> Dances { get; init; }

    /// <summary>The present day, by the clock of the place.</summary>
    public required DateOnly Today { get; init; }

    /// <summary>The present moment.</summary>
    public required DateTimeOffset Now { get; init; }
}
