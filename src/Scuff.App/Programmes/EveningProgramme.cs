using Scuff.Analysis.Planning;

namespace Scuff.App.Programmes;

/// <summary>A programme as it was made, with all that is needed to show it again without making it anew.</summary>
internal sealed record EveningProgramme
{
    /// <summary>The stretches of the whole evening in order.</summary>
    public required IReadOnlyList<EveningStretch> Stretches { get; init; }

    /// <summary>Its lines in order, lessons and rests among them. While a night goes on, only what is still to come.</summary>
    public required IReadOnlyList<EveningItem> Items { get; init; }

    /// <summary>What belongs to no single line.</summary>
    public IReadOnlyList<ProgrammeReason> Common { get; set; } = [];

    /// <summary>What was asked for or decided and is not in it.</summary>
    public IReadOnlyList<EveningMissed> Missed { get; set; } = [];

    /// <summary>What it is worth.</summary>
    public int Points { get; set; }

    /// <summary>What no programme that keeps to her decisions can exceed.</summary>
    public int Bound { get; set; }

    /// <summary>Whether her wishes have changed since it was made, so that it is to be made anew.</summary>
    public bool IsStale { get; set; }
}
