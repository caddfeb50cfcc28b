namespace Scuff.Analysis.Planning;

/// <summary>A stretch of a class or an evening. The stretches of a question follow each other without a gap. Equal by value.</summary>
public sealed record ProgrammeStretch
{
    /// <summary>What it is for.</summary>
    public required StretchKind Kind { get; init; }

    /// <summary>How long it is, in seconds. Dances must fit into it; a lesson or a rest fills it.</summary>
    public required int Seconds { get; init; }

    /// <summary>The effort wished for at its beginning, in tenths of a MET; 0 for none.</summary>
    public int EffortAtStart { get; init; }

    /// <summary>The effort wished for at its end, in tenths of a MET; between the two it goes straight.</summary>
    public int EffortAtEnd { get; init; }

    /// <summary>The dance that is taught in it; empty in any stretch but a lesson.</summary>
    public string DanceId { get; init; } = "";

    /// <summary>Whether the planner puts dances into it.</summary>
    public bool IsDanced => Kind is not (StretchKind.Lesson or StretchKind.Rest);
}
