using Scuff.Dances;

namespace Scuff.Analysis.Compare;

/// <summary>Which section of the later version is which of the earlier, by what the feet do in them.</summary>
internal sealed class SectionPairing
{
    // Sections that share less than two fifths of their actions are no longer taken for the same.
    private const int MostDifference = 60;

    // A section found elsewhere must be nearly as it was, or any section of common steps would have "moved".
    private const int MostWhenMoved = 25;

    // Actions of both versions, multiplied. Above it sections are paired by their numbers alone: no dance is so long, but a text may be.
    private const long MostCells = 20_000_000;

    private readonly Passage[] _old;
    private readonly Passage[] _new;
    private readonly Section[] _oldSections;
    private readonly Section[] _newSections;
    private readonly PassageDifference?[,] _known;

    public SectionPairing(IReadOnlyList<Section> before, IReadOnlyList<Section> after)
    {
        _oldSections = [.. before];
        _newSections = [.. after];
        _old = [.. before.Select(s => new Passage([s]))];
        _new = [.. after.Select(s => new Passage([s]))];
        bool isSmall = (1L + _old.Sum(p => p.Atoms.Count)) * (1L + _new.Sum(p => p.Atoms.Count)) <= MostCells;
        _known = isSmall ? new PassageDifference?[_old.Length, _new.Length] : new PassageDifference?[0, 0];
        Partner = new int?[_new.Length];
        Moved = new bool[_new.Length];
        Align();
        FindMoved();
        PairRest();
    }

    /// <summary>For each section of the later version the index of the same one in the earlier, or null when it is new.</summary>
    public int?[] Partner { get; }

    /// <summary>Whether a section of the later version stands elsewhere in the order.</summary>
    public bool[] Moved { get; }

    /// <summary>A section of the earlier version.</summary>
    public Passage Old(int index) => _old[index];

    /// <summary>A section of the later version.</summary>
    public Passage New(int index) => _new[index];

    /// <summary>How two sections differ.</summary>
    public PassageDifference Difference(int old, int now)
    {
        if (_known.Length == 0)
        {
            return PassageDifference.Of(_old[old], _new[now]);
        }

        return _known[old, now] ??= PassageDifference.Of(_old[old], _new[now]);
    }

    private int Share(int old, int now) => (int)(100L * Difference(old, now).Cost / Math.Max(1, _old[old].Atoms.Count + _new[now].Atoms.Count));

    // Exact: the pairs in order that leave the fewest actions unequal; among equals those with the same heading.
    private void Align()
    {
        (int n, int m) = (_old.Length, _new.Length);
        if (_known.Length == 0)
        {
            for (int i = 0; i < Math.Min(n, m); i++)
            {
                Partner[i] = i;
            }

            return;
        }

        long[,] cost = new long[n + 1, m + 1];
        for (int i = n; i >= 0; i--)
        {
            for (int j = m; j >= 0; j--)
            {
                if (i == n && j == m)
                {
                    continue;
                }

                long drop = i < n ? cost[i + 1, j] + Alone(_old[i]) : long.MaxValue;
                long put = j < m ? cost[i, j + 1] + Alone(_new[j]) : long.MaxValue;
                long pair = i < n && j < m && Share(i, j) <= MostDifference ? cost[i + 1, j + 1] + Together(i, j) : long.MaxValue;
                cost[i, j] = Math.Min(pair, Math.Min(drop, put));
            }
        }

        (int x, int y) = (0, 0);
        while (x < n && y < m)
        {
            if (Share(x, y) <= MostDifference && cost[x, y] == cost[x + 1, y + 1] + Together(x, y))
            {
                Partner[y++] = x++;
            }
            else if (cost[x, y] == cost[x + 1, y] + Alone(_old[x]))
            {
                x++;
            }
            else
            {
                y++;
            }
        }
    }

    private long Together(int old, int now)
        => (2L * Difference(old, now).Cost)
            + (string.Equals(_oldSections[old].Title, _newSections[now].Title, StringComparison.OrdinalIgnoreCase) ? 0 : 1);

    private static long Alone(Passage passage) => 2L * Math.Max(1, passage.Atoms.Count);

    private void FindMoved()
    {
        if (_known.Length == 0)
        {
            return;
        }

        for (int j = 0; j < _new.Length; j++)
        {
            if (Partner[j] is not null || _new[j].Atoms.Count == 0)
            {
                continue;
            }

            int? best = null;
            for (int i = 0; i < _old.Length; i++)
            {
                if (!Partner.Contains(i) && Share(i, j) <= MostWhenMoved && (best is not { } known || Share(i, j) < Share(known, j)))
                {
                    best = i;
                }
            }

            Partner[j] = best;
            Moved[j] = best is not null;
        }
    }

    // What is left between two sections that stayed is the old place with other steps.
    private void PairRest()
    {
        int from = 0;
        int gap = 0;
        for (int j = 0; j <= _new.Length; j++)
        {
            if (j < _new.Length && (Partner[j] is null || Moved[j]))
            {
                continue;
            }

            int to = j < _new.Length ? Partner[j]!.Value : _old.Length;
            Queue<int> left = new(Enumerable.Range(from, Math.Max(0, to - from)).Where(i => !Partner.Contains(i)));
            for (int k = gap; k < j && left.Count > 0; k++)
            {
                if (Partner[k] is null)
                {
                    Partner[k] = left.Dequeue();
                }
            }

            (from, gap) = (to + 1, j + 1);
        }
    }
}
