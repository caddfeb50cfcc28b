namespace Scuff.Audio.Evaluation;

/// <summary>Shares (0 to 1) of the beats that are right in phase and interval; see <see cref="BeatMeasures.Continuity"/>.</summary>
/// <param name="CorrectLevelLongest">CMLc: in the longest unbroken run, at the annotated level.</param>
/// <param name="CorrectLevelTotal">CMLt: in all runs, at the annotated level.</param>
/// <param name="AllowedLevelsLongest">AMLc: in the longest unbroken run, at the best of the allowed levels.</param>
/// <param name="AllowedLevelsTotal">AMLt: in all runs, at the best of the allowed levels.</param>
public readonly record struct Continuity(
    double CorrectLevelLongest, double CorrectLevelTotal, double AllowedLevelsLongest, double AllowedLevelsTotal);
