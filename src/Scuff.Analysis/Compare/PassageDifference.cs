using Scuff.Timing;

namespace Scuff.Analysis.Compare;

/// <summary>Where two passages differ: spans of counts, whole moves at a time.</summary>
/// <param name="Spans">The spans in both, in order.</param>
/// <param name="Cost">How many actions of both have no equal in the other: 0 when they are danced alike.</param>
internal sealed record PassageDifference(IReadOnlyList<(CountSpan Before, CountSpan After)> Spans, int Cost)
{
    // One action is put in the place of another more readily than one is left out and one put in elsewhere; and a gap
    // once open goes on cheaply, so that what is put in stays together.
    private const int Replaced = 4;
    private const int GapOpens = 3;
    private const int GapGoesOn = 2;

    // Actions of both, multiplied: above it (some hundred times a long dance) an exact alignment would keep her waiting.
    private const long MostCells = 4_000_000;

    /// <summary>Compares two passages.</summary>
    public static PassageDifference Of(Passage before, Passage after)
        => before.Length == after.Length || (long)before.Atoms.Count * after.Atoms.Count > MostCells
            ? InPlace(before, after)
            : Aligned(before, after);

    // As many counts as before: what stands on the same count is compared, as a dancer would.
    private static PassageDifference InPlace(Passage before, Passage after)
    {
        ILookup<Counts, Atom> old = before.Atoms.ToLookup(a => a.At);
        ILookup<Counts, Atom> now = after.Atoms.ToLookup(a => a.At);
        List<CountSpan> spans = [];
        int cost = 0;
        foreach (Counts place in old.Select(g => g.Key).Union(now.Select(g => g.Key)).Order())
        {
            List<Danced> was = [.. old[place].Select(a => a.Danced)];
            List<Danced> becomes = [.. now[place].Select(a => a.Danced)];
            if (!was.SequenceEqual(becomes))
            {
                cost += was.Count + becomes.Count;
                spans.Add(new CountSpan(place, old[place].Concat(now[place]).Max(a => a.At + a.Length)));
            }
        }

        if (cost == 0)
        {
            return before.Length == after.Length ? new PassageDifference([], 0) : Whole(before, after, 1);
        }

        if (cost == before.Atoms.Count + after.Atoms.Count && before.Length == after.Length)
        {
            return Whole(before, after, cost);
        }

        return new PassageDifference([.. Joined(Grown(spans, before, after), before, after).Select(s => (s, s))], cost);
    }

    private static PassageDifference Whole(Passage before, Passage after, int cost)
        => new([(All(before), All(after))], cost);

    private static CountSpan All(Passage passage)
    {
        Counts start = passage.Atoms.Count > 0 ? Counts.Min(passage.Atoms[0].At, Counts.Zero) : Counts.Zero;
        return new CountSpan(start, Counts.Max(start, passage.Length));
    }

    // A span that cuts a move of either version takes in the whole of it.
    private static List<CountSpan> Grown(List<CountSpan> spans, Passage before, Passage after)
    {
        List<Passage.Piece> moves = [.. before.Moves.Concat(after.Moves).Where(m => m.IsPlaced)];
        bool grows = true;
        while (grows)
        {
            grows = false;
            for (int i = 0; i < spans.Count; i++)
            {
                foreach (Passage.Piece move in moves.Where(m => m.Start < spans[i].End && spans[i].Start < m.End))
                {
                    CountSpan whole = new(Counts.Min(move.Start, spans[i].Start), Counts.Max(move.End, spans[i].End));
                    grows |= whole != spans[i];
                    spans[i] = whole;
                }
            }

            List<CountSpan> merged = [];
            foreach (CountSpan span in spans.OrderBy(s => s.Start))
            {
                if (merged.Count > 0 && span.Start < merged[^1].End)
                {
                    merged[^1] = new CountSpan(merged[^1].Start, Counts.Max(merged[^1].End, span.End));
                }
                else
                {
                    merged.Add(span);
                }
            }

            spans = merged;
        }

        return spans;
    }

    // Spans that touch are one, except where a line begins in both: a line is what she thinks of as one thing.
    private static List<CountSpan> Joined(List<CountSpan> spans, Passage before, Passage after)
    {
        List<CountSpan> joined = [];
        foreach (CountSpan span in spans)
        {
            if (joined.Count > 0 && span.Start == joined[^1].End && !(before.StartsLine(span.Start) && after.StartsLine(span.Start)))
            {
                joined[^1] = new CountSpan(joined[^1].Start, span.End);
            }
            else
            {
                joined.Add(span);
            }
        }

        return joined;
    }

    // More or fewer counts than before: the alignment of the two rows of actions that leaves the least over.
    private static PassageDifference Aligned(Passage before, Passage after)
    {
        (bool[] old, bool[] now) = Kept(before.Atoms, after.Atoms, out List<(int Old, int New)> pairs);
        if (pairs.Count > 0 && pairs[0] is (0, 0) && before.Atoms[0].At != after.Atoms[0].At)
        {
            pairs.RemoveAt(0);
            old[0] = now[0] = false;
        }

        int cost = old.Count(k => !k) + now.Count(k => !k);
        KeepWholeMoves(before, after, old, now, pairs);
        List<(CountSpan, CountSpan)> spans = [];
        (int i, int j) = (0, 0);
        Counts startOld = All(before).Start;
        Counts startNew = All(after).Start;
        foreach ((int nextOld, int nextNew) in pairs.Append((before.Atoms.Count, after.Atoms.Count)))
        {
            if (nextOld > i || nextNew > j)
            {
                Counts endOld = nextOld < before.Atoms.Count ? before.Atoms[nextOld].At : All(before).End;
                Counts endNew = nextNew < after.Atoms.Count ? after.Atoms[nextNew].At : All(after).End;
                spans.Add((new CountSpan(startOld, Counts.Max(startOld, endOld)), new CountSpan(startNew, Counts.Max(startNew, endNew))));
            }

            (i, j) = (nextOld + 1, nextNew + 1);
            startOld = nextOld < before.Atoms.Count ? before.Atoms[nextOld].At + before.Atoms[nextOld].Length : startOld;
            startNew = nextNew < after.Atoms.Count ? after.Atoms[nextNew].At + after.Atoms[nextNew].Length : startNew;
        }

        return spans.Count == 0 ? Whole(before, after, Math.Max(1, cost)) : new PassageDifference(spans, Math.Max(1, cost));
    }

    private static void KeepWholeMoves(Passage before, Passage after, bool[] old, bool[] now, List<(int Old, int New)> pairs)
    {
        bool shrinks = true;
        while (shrinks)
        {
            HashSet<int> brokenOld = [.. before.Atoms.Where((_, i) => !old[i]).Select(a => a.Move)];
            HashSet<int> brokenNew = [.. after.Atoms.Where((_, i) => !now[i]).Select(a => a.Move)];
            int kept = pairs.Count;
            pairs.RemoveAll(p => brokenOld.Contains(before.Atoms[p.Old].Move) || brokenNew.Contains(after.Atoms[p.New].Move));
            shrinks = pairs.Count < kept;
            Array.Clear(old);
            Array.Clear(now);
            foreach ((int o, int n) in pairs)
            {
                old[o] = now[n] = true;
            }
        }
    }

    // Needleman and Wunsch (1970) with the gaps of Gotoh (1982): exact.
    private static (bool[] Old, bool[] New) Kept(IReadOnlyList<Atom> old, IReadOnlyList<Atom> now, out List<(int Old, int New)> pairs)
    {
        (int n, int m) = (old.Count, now.Count);
        const int never = int.MaxValue / 4;
        int[,] both = new int[n + 1, m + 1];
        int[,] left = new int[n + 1, m + 1];
        int[,] put = new int[n + 1, m + 1];
        for (int i = 0; i <= n; i++)
        {
            for (int j = 0; j <= m; j++)
            {
                if (i == 0 && j == 0)
                {
                    (left[i, j], put[i, j]) = (never, never);
                    continue;
                }

                both[i, j] = i == 0 || j == 0 ? never : Best(both, left, put, i - 1, j - 1) + Difference(old[i - 1], now[j - 1]);
                left[i, j] = i == 0 ? never : Math.Min(left[i - 1, j] + GapGoesOn, Math.Min(both[i - 1, j], put[i - 1, j]) + GapOpens);
                put[i, j] = j == 0 ? never : Math.Min(put[i, j - 1] + GapGoesOn, Math.Min(both[i, j - 1], left[i, j - 1]) + GapOpens);
            }
        }

        bool[] keptOld = new bool[n];
        bool[] keptNew = new bool[m];
        pairs = [];
        (int x, int y) = (n, m);
        int state = Least(both[x, y], left[x, y], put[x, y]);
        while (x > 0 || y > 0)
        {
            switch (state)
            {
                case 0:
                    (x, y) = (x - 1, y - 1);
                    if (Difference(old[x], now[y]) == 0)
                    {
                        keptOld[x] = keptNew[y] = true;
                        pairs.Add((x, y));
                    }

                    state = Least(both[x, y], left[x, y], put[x, y]);
                    break;
                case 1:
                    x--;
                    state = Least(both[x, y] + GapOpens, left[x, y] + GapGoesOn, put[x, y] + GapOpens);
                    break;
                default:
                    y--;
                    state = Least(both[x, y] + GapOpens, left[x, y] + GapOpens, put[x, y] + GapGoesOn);
                    break;
            }
        }

        pairs.Reverse();
        return (keptOld, keptNew);
    }

    private static int Best(int[,] both, int[,] left, int[,] put, int i, int j) => Math.Min(both[i, j], Math.Min(left[i, j], put[i, j]));

    private static int Least(int both, int left, int put) => both <= left && both <= put ? 0 : left <= put ? 1 : 2;

    private static int Difference(Atom old, Atom now) => old.Danced == now.Danced && old.Length == now.Length ? 0 : Replaced;
}
