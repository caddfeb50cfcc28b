namespace Scuff.Analysis.Memory;

/// <summary>What a class is likely to have left of a dance. Equal by value.</summary>
/// <param name="Left">The part of the work of teaching it that is spared when it is brought back, from 0 to 1.</param>
/// <param name="Days">Days since it was last danced.</param>
/// <param name="Due">How much it should be danced again, from 0 to 100: what is lost, of dances that are worth keeping and not yet gone.</param>
public sealed record DanceMemory(double Left, int Days, int Due)
{
    // Days after which half of the work is spared, by how well it was known: can follow, knows the start, knows it with cues, knows it alone. Ours, and meant to
    // be tried: people say of a new dance that it is gone after a week and comes back when it is revised (trade: teaching, 6), and that a dance known for long
    // is rusty after half a year. Ebbinghaus' own syllables were half gone in an hour; the form of the loss is his, its pace cannot be.
    private static readonly double[] HalfDays = [7, 7, 21, 56, 150];

    // Each further day on which it was danced makes the loss slower. That it does is in Ebbinghaus' section 34: series learned again day after day took ever less
    // work; by how much for dances is ours.
    private const double SlowerEachDay = 0.15;
    private const double MostSlower = 3;

    // A dance that is all but gone is taught again, not revised; until then what is lost most is most due.
    private const double Gone = 0.3;
    private const int SameWeek = 5;

    /// <summary>The level of knowing that is taken where nobody marked it, by the days on which it was danced: 1, 2 to 3, more (ours).</summary>
    /// <param name="days">On how many days it was danced.</param>
    public static int UsualKnowing(int days) => days switch { <= 1 => 1, <= 3 => 2, _ => 3 };

    /// <summary>What is left on a day; null when it was never danced before it.</summary>
    /// <param name="knowing">How well it was known last: 1 follows, 2 knows the start, 3 knows it with cues, 4 knows it alone; 0 when nobody marked it.</param>
    /// <param name="danced">The days on which it was danced, in any order.</param>
    /// <param name="today">The day.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such knowing.</exception>
    public static DanceMemory? Of(int knowing, IEnumerable<DateOnly> danced, DateOnly today)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(knowing);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(knowing, HalfDays.Length);
        DateOnly[] days = [.. danced.Where(d => d <= today).Distinct()];
        if (days.Length == 0)
        {
            return null;
        }

        int since = today.DayNumber - days.Max().DayNumber;
        int known = knowing == 0 ? UsualKnowing(days.Length) : knowing;
        double pace = HalfDays[known] * Math.Min(MostSlower, 1 + (SlowerEachDay * (days.Length - 1)));
        double left = ForgettingCurve.Saving(since / pace * ForgettingCurve.HalfMinutes);
        double lost = left >= Gone ? 1 - left : (1 - Gone) * left / Gone;
        return new DanceMemory(left, since, since <= SameWeek ? 0 : (int)Math.Round(100 * lost * (0.6 + (0.1 * known))));
    }
}
