namespace Scuff.Analysis.Likeness;

/// <summary>
/// How much two dances resemble each other by what the feet do. Two steps are the same when the same foot does the same the same way with the same turn for as
/// long; half the same when only the foot and what it does agree. Sections are compared by the best pairing of their steps in order, dances by the best pairing
/// of their sections in order (longest common subsequence, weighted: Needleman and Wunsch, J Mol Biol 48 (1970), without a price for gaps). Equal by value.
/// </summary>
/// <param name="Percent">From 0 to 100: the share of both dances' steps that have the same step in the other.</param>
/// <param name="IsMirrored">Whether the other dance was held against this one in the other foot.</param>
/// <param name="Shared">Sections that both have, each section of the one with its best in the other, in the order of the one.</param>
public sealed record DanceLikeness(int Percent, bool IsMirrored, ValueList<SharedSection> Shared)
{
    /// <summary>From here on a section counts as one that both have: a step or two differ in an eight (ours).</summary>
    public const int SharedFrom = 80;

    // weights of pairs of steps: whole, half
    private const int Whole = 2;
    private const int Half = 1;

    /// <summary>Compares two dances.</summary>
    public static DanceLikeness Between(FeetPrint one, FeetPrint other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        FeetSection[] plain = [.. other.Sections];
        FeetSection[] mirrored = [.. other.Sections.Select(s => s.Mirrored())];
        int[,] same = Table(one, plain);
        int[,] opposite = Table(one, mirrored);
        int plainly = Percentage(one, plain, same);
        int mirrorly = Percentage(one, mirrored, opposite);
        List<SharedSection> shared = [];
        for (int i = 0; i < one.Sections.Count; i++)
        {
            SharedSection? best = null;
            for (int j = 0; j < plain.Length; j++)
            {
                int a = Share(one.Sections[i], plain[j], same[i, j]);
                int b = Share(one.Sections[i], mirrored[j], opposite[i, j]);
                if (Math.Max(a, b) >= SharedFrom && Math.Max(a, b) > (best?.Percent ?? 0))
                {
                    best = new SharedSection(one.Sections[i].Name, plain[j].Name, Math.Max(a, b), b > a);
                }
            }

            if (best is not null)
            {
                shared.Add(best);
            }
        }

        return new DanceLikeness(Math.Max(plainly, mirrorly), mirrorly > plainly, shared.ToValueList());
    }

    /// <summary>
    /// No two dances are more alike than this, from 0 to 100: the most that could be paired if the order of the steps did not matter. Much cheaper than to compare
    /// them; for a first look through many.
    /// </summary>
    public static int AtMost(FeetPrint one, FeetPrint other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        int steps = one.Sections.Sum(s => s.Steps.Count) + other.Sections.Sum(s => s.Steps.Count);
        if (steps == 0)
        {
            return 0;
        }

        // what is alike but for its side counts as the same here: the other may be held against this one in the other foot
        Dictionary<(int, int, int), int> left = [];
        foreach (FeetStep step in one.Sections.SelectMany(s => s.Steps))
        {
            Change(left, (step.Kind, -1, -1), 1);
            Change(left, (step.Kind, step.Parts, Math.Abs(step.Eighths)), 1);
        }

        int pairs = 0;
        foreach (FeetStep step in other.Sections.SelectMany(s => s.Steps))
        {
            // half for what is done, the other half for how long and with what turn
            pairs += Take(left, (step.Kind, -1, -1)) + Take(left, (step.Kind, step.Parts, Math.Abs(step.Eighths)));
        }

        return 100 * pairs / steps;
    }

    private static void Change(Dictionary<(int, int, int), int> left, (int, int, int) key, int by) => left[key] = left.GetValueOrDefault(key) + by;

    private static int Take(Dictionary<(int, int, int), int> left, (int, int, int) key)
    {
        if (left.GetValueOrDefault(key) <= 0)
        {
            return 0;
        }

        Change(left, key, -1);
        return Half;
    }

    private static int Share(FeetSection one, FeetSection other, int pairs)
        => one.Steps.Count + other.Steps.Count == 0 ? 0 : 100 * pairs / (one.Steps.Count + other.Steps.Count);

    private static int[,] Table(FeetPrint one, FeetSection[] other)
    {
        int[,] pairs = new int[one.Sections.Count, other.Length];
        for (int i = 0; i < one.Sections.Count; i++)
        {
            for (int j = 0; j < other.Length; j++)
            {
                pairs[i, j] = Pairs(one.Sections[i].Steps.Span, other[j].Steps.Span);
            }
        }

        return pairs;
    }

    // The steps of both that have a partner, halves as halves.
    private static int Pairs(ReadOnlySpan<FeetStep> one, ReadOnlySpan<FeetStep> other)
    {
        int[] row = new int[other.Length + 1];
        foreach (FeetStep step in one)
        {
            int before = 0;
            for (int j = 0; j < other.Length; j++)
            {
                int pair = before + Weight(step, other[j]);
                before = row[j + 1];
                row[j + 1] = Math.Max(pair, Math.Max(row[j + 1], row[j]));
            }
        }

        return row[other.Length];
    }

    private static int Weight(FeetStep a, FeetStep b)
        => a.Kind != b.Kind || a.Foot != b.Foot ? 0 : a == b ? Whole : Half;

    private static int Percentage(FeetPrint one, FeetSection[] other, int[,] pairs)
    {
        int steps = one.Sections.Sum(s => s.Steps.Count) + other.Sum(s => s.Steps.Count);
        int[] row = new int[other.Length + 1];
        for (int i = 0; i < one.Sections.Count; i++)
        {
            int before = 0;
            for (int j = 0; j < other.Length; j++)
            {
                int pair = before + pairs[i, j];
                before = row[j + 1];
                row[j + 1] = Math.Max(pair, Math.Max(row[j + 1], row[j]));
            }
        }

        return steps == 0 ? 0 : 100 * row[other.Length] / steps;
    }
}
