using System.Globalization;
using Scuff.Repertoire;

namespace Killed;

/// <summary>Where the things of each slot are in a club: their ids.</summary>
internal sealed class ClubMap
{
    /// <summary>Classes by slot.</summary>
    public Dictionary<int, string> Classes { get; private init; } = [];

    /// <summary>Dances by slot.</summary>
    public Dictionary<int, string> Dances { get; private init; } = [];

    /// <summary>Sessions by slot.</summary>
    public Dictionary<int, string> Sessions { get; private init; } = [];

    /// <summary>Evenings by slot.</summary>
    public Dictionary<int, string> Evenings { get; private init; } = [];

    /// <summary>People by slot.</summary>
    public Dictionary<int, string> People { get; private init; } = [];

    /// <summary>Reads them from what each thing is called.</summary>
    /// <exception cref="ArgumentException">Two things have one slot.</exception>
    public static ClubMap Read(Club club) => new()
    {
        Classes = club.Book.Classes(includeEnded: true).ToDictionary(c => SlotIn(c.Title), c => c.Id),
        Dances = club.Dances.Every().ToDictionary(d => SlotIn(d.Facts.Title), d => d.Id),
        Sessions = club.Book.Sessions(new SessionQuery { Take = int.MaxValue }).Sessions.ToDictionary(s => SlotIn(s.HowItWent), s => s.Id),
        Evenings = club.Evenings.List().ToDictionary(e => SlotIn(e.Title), e => e.Id),
        People = club.People.List().ToDictionary(p => SlotIn(p.Name), p => p.Id),
    };

    // the second word
    private static int SlotIn(string text) => int.Parse(text.Split(' ')[1], CultureInfo.InvariantCulture);
}
