namespace Scuff.Analysis.Lessons;

/// <summary>
/// Shares a time out to steps: of all ways to choose one length for each step that together fit, the one worth most, found exactly (a knapsack with one choice
/// of each group, by dynamic programming over the units of time; Kellerer, Pferschy and Pisinger, Knapsack Problems, 2004, chapter 11). Work and memory grow
/// with steps times units.
/// </summary>
internal static class LessonAllocator
{
    /// <summary>The index of the choice for each demand; of equal worth, the way that takes less time.</summary>
    /// <param name="demands">The steps.</param>
    /// <param name="units">The time there is.</param>
    /// <returns>Null when not even the shortest fit.</returns>
    public static ValueList<int>? Share(IReadOnlyList<LessonDemand> demands, int units)
    {
        if (units < 0)
        {
            return null;
        }

        long[] best = new long[units + 1];
        byte[][] taken = new byte[demands.Count][];
        for (int i = 0; i < demands.Count; i++)
        {
            taken[i] = new byte[units + 1];
            long[] next = new long[units + 1];
            Array.Fill(next, -1);
            ValueList<LessonChoice> choices = demands[i].Choices;
            for (int choice = 0; choice < choices.Count; choice++)
            {
                (int cost, long value) = (choices[choice].Units, choices[choice].Value);
                for (int used = cost; used <= units; used++)
                {
                    if (best[used - cost] >= 0 && best[used - cost] + value > next[used])
                    {
                        next[used] = best[used - cost] + value;
                        taken[i][used] = (byte)choice;
                    }
                }
            }

            best = next;
        }

        if (best[units] < 0)
        {
            return null;
        }

        int left = units;
        while (left > 0 && best[left - 1] == best[units])
        {
            left--;
        }

        int[] chosen = new int[demands.Count];
        for (int i = demands.Count - 1; i >= 0; i--)
        {
            chosen[i] = taken[i][left];
            left -= demands[i].Choices[chosen[i]].Units;
        }

        return chosen.ToValueList();
    }
}
