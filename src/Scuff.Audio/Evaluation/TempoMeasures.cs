namespace Scuff.Audio.Evaluation;

/// <summary>
/// Accuracy 1 and 2 of a tempo (Gouyon, Klapuri, Dixon, Alonso, Tzanetakis, Uhle and Cano, "An experimental comparison of audio
/// tempo induction algorithms", 2006). Beats a minute; without an answer both are false.
/// </summary>
public static class TempoMeasures
{
    private const double Share = 0.04;

    /// <summary>Within 4 % of the true tempo.</summary>
    public static bool Accuracy1(double truth, double? answer) => IsNear(truth, answer);

    /// <summary>Within 4 % of a third, a half, once, twice or three times the true tempo.</summary>
    public static bool Accuracy2(double truth, double? answer)
        => IsNear(truth, answer) || IsNear(2 * truth, answer) || IsNear(3 * truth, answer) || IsNear(truth / 2, answer) || IsNear(truth / 3, answer);

    private static bool IsNear(double truth, double? answer)
        => answer is double given && double.IsFinite(given) && given > 0 && Math.Abs(given - truth) <= (Share * truth) + 1e-9;
}
