namespace Scuff.Analysis.Memory;

/// <summary>
/// How what was learned is lost with time, after Hermann Ebbinghaus, Über das Gedächtnis (1885), section 29: b = 100 k / ((log t)^c + k), where t is minutes since
/// learning, counted from one minute before its end, log is to the base ten, k = 1.84 and c = 1.25. His b is a saving: the part of the first work that is spared
/// when the same is learned again. That is what a teacher wants to know, for the rest is the time that bringing it back takes.
/// </summary>
public static class ForgettingCurve
{
    private const double K = 1.84;
    private const double C = 1.25;

    /// <summary>The time after which half of the work is spared, in minutes: about 43.</summary>
    public static double HalfMinutes { get; } = Math.Pow(10, Math.Pow(K, 1 / C));

    /// <summary>The part of the work that is spared, from 1 down to 0.</summary>
    /// <param name="minutes">Minutes since learning; up to one minute all is there.</param>
    public static double Saving(double minutes) => minutes <= 1 ? 1 : K / (Math.Pow(Math.Log10(minutes), C) + K);
}
