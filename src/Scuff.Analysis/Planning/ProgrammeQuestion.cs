namespace Scuff.Analysis.Planning;

/// <summary>What is asked of a planner: the time, the people, what may be danced, and what she has decided. Equal by value.</summary>
public sealed record ProgrammeQuestion
{
    /// <summary>The stretches in order.</summary>
    public required ValueList<ProgrammeStretch> Stretches { get; init; }

    /// <summary>Who is there.</summary>
    public ValueList<ProgrammeGroup> Groups { get; init; }

    /// <summary>What may be danced.</summary>
    public required ValueList<ProgrammeDance> Dances { get; init; }

    /// <summary>Dances that resemble each other; pairs that are not named do not.</summary>
    public ValueList<ProgrammeLikeness> Likenesses { get; init; }

    /// <summary>What she has decided.</summary>
    public ValueList<ProgrammePin> Pins { get; init; }

    /// <summary>What a good programme is.</summary>
    public ProgrammeRules Rules { get; init; } = ProgrammeRules.Usual;

    /// <summary>Ids of dances that were danced already this evening, in order: they and their songs do not come again.</summary>
    public ValueList<ProgrammeDone> Done { get; init; }

    /// <summary>The programme she has seen; what stays in it is worth a little. Null for none.</summary>
    public ValueList<ProgrammeItem> Seen { get; init; }

    /// <summary>Whether two dances may be danced at once to one song.</summary>
    public bool MaySplit { get; init; } = true;
}
