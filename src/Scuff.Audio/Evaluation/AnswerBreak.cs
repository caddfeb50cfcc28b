namespace Scuff.Audio.Evaluation;

/// <summary>A break as somebody gives it.</summary>
/// <param name="Start">Seconds from the start of the sound.</param>
/// <param name="End">Seconds from the start of the sound.</param>
/// <param name="Kind"><c>stop</c>: everything stops; <c>drop</c>: a section without drums.</param>
public sealed record AnswerBreak(double Start, double End, string Kind = AnswerBreak.Stop)
{
    /// <summary>Everything stops.</summary>
    public const string Stop = "stop";

    /// <summary>A section without drums.</summary>
    public const string Drop = "drop";
}
