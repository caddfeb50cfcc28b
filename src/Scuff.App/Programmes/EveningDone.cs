namespace Scuff.App.Programmes;

/// <summary>A line of the programme that is over.</summary>
internal sealed record EveningDone
{
    /// <summary>The line as it was planned.</summary>
    public required EveningItem Item { get; init; }

    /// <summary>Whether it was left out. A dance that was left out does not come again this evening.</summary>
    public bool IsSkipped { get; set; }

    /// <summary>When it was ticked.</summary>
    public required DateTimeOffset At { get; init; }
}
