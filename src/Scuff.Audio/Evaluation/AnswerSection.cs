namespace Scuff.Audio.Evaluation;

/// <summary>A section as somebody gives it.</summary>
/// <param name="Start">Seconds from the start of the sound.</param>
/// <param name="End">Seconds from the start of the sound.</param>
/// <param name="Label">Equal labels say: the same music.</param>
public sealed record AnswerSection(double Start, double End, string Label);
