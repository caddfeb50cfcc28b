using Scuff.Steps;
using Scuff.Timelines;

namespace Scuff.Analysis.Fit;

/// <summary>A stop of the music over a count of the dance.</summary>
/// <param name="Wall">The wall, from 1.</param>
/// <param name="Part">The part of a phrased dance, or empty.</param>
/// <param name="Section">The section of the dance, from 1; 0 in a tag.</param>
/// <param name="Count">The count as printed.</param>
/// <param name="At">The count of the music.</param>
/// <param name="Seconds">When it is.</param>
/// <param name="Counts">For so many counts the music stops.</param>
/// <param name="Danced">What is danced on the first count of it.</param>
/// <param name="Meets">Whether that meets the music: nothing moves, or a stomp or clap marks the hit.</param>
/// <param name="Suggested">What would meet it and change nothing else, or null when it is met already or nothing fits.</param>
/// <param name="Step">The written step that the suggestion stands for, or null.</param>
public sealed record FitAccent(
    int Wall,
    string Part,
    int Section,
    string Count,
    int At,
    double Seconds,
    int Counts,
    ValueList<TimedStep> Danced,
    bool Meets,
    StepAction? Suggested,
    TimedStep? Step);
