namespace Scuff.App.Programmes;

/// <summary>A time in which the evening's dancing stops: a rest, or a lesson.</summary>
internal sealed record EveningStop
{
    /// <summary>Minutes from the beginning of the evening.</summary>
    public int AtMinute { get; set; }

    /// <summary>How long, in minutes.</summary>
    public int Minutes { get; set; } = 15;

    /// <summary>The dance that is taught; empty for a rest.</summary>
    public string DanceId { get; set; } = "";

    /// <summary>Whether it is a lesson. One of no dance yet is a lesson as well.</summary>
    public bool IsLesson { get; set; }
}
