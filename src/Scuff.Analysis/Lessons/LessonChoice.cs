namespace Scuff.Analysis.Lessons;

/// <summary>One way to do a step.</summary>
/// <param name="Times">How often it is danced; zero where it is left out.</param>
/// <param name="Units">How long that takes, in units of <see cref="LessonLimits.Unit"/>.</param>
/// <param name="Value">What it is worth; more is better.</param>
internal sealed record LessonChoice(int Times, int Units, long Value);
