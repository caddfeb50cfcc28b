using Scuff.Dances;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Analysis.Lessons;

/// <summary>
/// Cuts a part into chunks: never through a figure, in the usual lengths, at the ends of sections and lines rather than within them, and so
/// that each chunk is about as hard as the class takes in at once. The cheapest cutting is found exactly, by going through the places from the
/// front and keeping the best way to each; the work grows with the counts.
/// </summary>
internal static class ChunkCutter
{
    /// <summary>Cuts a part.</summary>
    /// <param name="part">The part.</param>
    /// <param name="start">Where it begins within one repetition.</param>
    /// <param name="moves">Its moves in order.</param>
    /// <param name="lengths">The usual lengths in counts.</param>
    /// <param name="target">Points of a chunk as the class takes it in.</param>
    /// <returns>The stretches in order; together they are the whole part.</returns>
    public static ValueList<CountSpan> Cut(Part part, Counts start, ValueList<LessonMove> moves, ValueList<int> lengths, int target)
    {
        int first = start.Value.Floor;
        int length = part.Length.Value.Floor;
        if (length <= 0)
        {
            return [];
        }

        int[] costs = CutCosts(part, first, length, moves);
        long[] points = PointsUpTo(first, length, moves);
        long[] best = new long[length + 1];
        int[] from = new int[length + 1];
        Array.Fill(best, long.MaxValue, 1, length);
        int before = 0;
        for (int end = 1; end <= length; end++)
        {
            if (costs[end] < 0)
            {
                continue;
            }

            // always at least the chunk from the last place where a cut is possible
            for (int begin = before; begin >= 0 && (begin == before || end - begin <= LessonLimits.LongestChunk); begin--)
            {
                if (costs[begin] < 0 || best[begin] == long.MaxValue)
                {
                    continue;
                }

                long off = points[end] - points[begin] - target;
                long cost = best[begin] + (off * off) + costs[end] + (lengths.Contains(end - begin) ? 0 : LessonLimits.OddLengthCost);
                if (cost < best[end])
                {
                    (best[end], from[end]) = (cost, begin);
                }
            }

            before = end;
        }

        List<CountSpan> spans = [];
        for (int end = length; end > 0; end = from[end])
        {
            spans.Add(new CountSpan(Counts.FromWhole(first + from[end]), Counts.FromWhole(first + end)));
        }

        spans.Reverse();
        return spans.ToValueList();
    }

    // What a cut costs at each count of the part; below zero where none is possible.
    private static int[] CutCosts(Part part, int first, int length, ValueList<LessonMove> moves)
    {
        int[] costs = new int[length + 1];
        Array.Fill(costs, LessonLimits.WithinSectionCost);
        costs[0] = 0;
        int sectionStart = 0;
        foreach (Section section in part.Sections)
        {
            foreach (WrittenLine line in section.Lines)
            {
                ForbidLine(costs, sectionStart, line);
            }

            sectionStart += section.Length.Value.Floor;
            costs[Math.Min(sectionStart, length)] = 0;
        }

        foreach (LessonMove move in moves)
        {
            for (int place = move.Head.Value.Floor + 1 - first; place < length && place + first < move.End.Value; place++)
            {
                costs[Math.Max(place, 0)] = -1;
            }

            // a recover or a pivot finishes what was begun before it
            int head = move.Head.Value.Floor - first;
            if (head > 0 && head < length && move.Move.Steps.Count > 0
                && move.Move.Steps[0].Action.Kind is ActionKind.Recover or ActionKind.Pivot or ActionKind.Unwind or ActionKind.Drop)
            {
                costs[head] = -1;
            }
        }

        costs[length] = 0;
        return costs;
    }

    // Short lines are one thing to the eye; a long one may be cut at every second count.
    private static void ForbidLine(int[] costs, int sectionStart, WrittenLine line)
    {
        int from = sectionStart + Math.Max(0, line.Counts.Start.Value.Floor + (line.Counts.Start.IsWhole ? 0 : 1));
        int to = sectionStart - (-line.Counts.End.Value).Floor;
        for (int place = from + 1; place < Math.Min(to, costs.Length - 1); place++)
        {
            costs[place] = to - from <= 4 || (place - from) % 2 != 0 ? -1 : LessonLimits.WithinSectionCost + LessonLimits.WithinLineCost;
        }
    }

    private static long[] PointsUpTo(int first, int length, ValueList<LessonMove> moves)
    {
        long[] at = new long[length + 1];
        foreach (LessonMove move in moves)
        {
            at[Math.Clamp(move.Head.Value.Floor - first, 0, length - 1) + 1] += move.Points;
        }

        for (int i = 1; i <= length; i++)
        {
            at[i] += at[i - 1] + LessonLimits.CountPoints;
        }

        return at;
    }
}
