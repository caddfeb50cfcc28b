using Scuff.Analysis.Planning;

namespace Scuff.App.Programmes;

/// <summary>A stretch of an evening.</summary>
internal sealed record EveningStretch
{
    /// <summary>What it is for.</summary>
    public required StretchKind Kind { get; init; }

    /// <summary>When it begins, in seconds from the beginning of the evening.</summary>
    public required int Start { get; init; }

    /// <summary>How long it is, in seconds.</summary>
    public required int Seconds { get; init; }

    /// <summary>The effort wished for at its beginning, in tenths of a MET; 0 for none.</summary>
    public int EffortAtStart { get; set; }

    /// <summary>The effort wished for at its end, in tenths of a MET; 0 for none.</summary>
    public int EffortAtEnd { get; set; }

    /// <summary>The dance that is taught in it; empty in any stretch but a lesson.</summary>
    public string DanceId { get; set; } = "";
}
