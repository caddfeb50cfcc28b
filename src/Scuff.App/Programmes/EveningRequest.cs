namespace Scuff.App.Programmes;

/// <summary>A dance that was asked for.</summary>
internal sealed record EveningRequest
{
    /// <summary>The dance.</summary>
    public required string DanceId { get; init; }

    /// <summary>By how many; no names are kept.</summary>
    public int People { get; set; } = 1;
}
