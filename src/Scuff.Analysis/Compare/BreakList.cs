using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Analysis.Compare;

/// <summary>Breaks of the pattern one wall at a time, so that each can be looked for in the other version.</summary>
internal static class BreakList
{
    /// <summary>The breaks wall by wall, in the order in which the floor meets them, freed from their places in the text.</summary>
    public static List<WallBreak> Of(
        Dance dance,
        ValueList<Interruption> interruptions,
        Func<string, string> tagName,
        Func<string, string> partName) =>
    [
        .. interruptions
            .SelectMany(i => i.Walls.Distinct().Select(w => new WallBreak(OneWall(dance, i, w, tagName, partName), i)))
            .OrderBy(i => i.Bare.PartName, StringComparer.Ordinal)
            .ThenBy(i => i.Bare.Walls[0])
            .ThenBy(i => i.Bare.AfterCounts ?? Counts.FromWhole(int.MaxValue / 4)),
    ];

    /// <summary>
    /// Which break became which, in the order of the later version: what is done elsewhere in the same wall, otherwise at the same place, the
    /// same in another wall, and only then what came or went.
    /// </summary>
    public static IEnumerable<BreakPair> Compare(List<WallBreak> was, List<WallBreak> becomes)
    {
        List<WallBreak> old = [.. was];
        WallBreak?[] partner = new WallBreak?[becomes.Count];
        Pair((o, n) => o == n);
        Pair((o, n) => SameWall(o, n) && o.Acts == n.Acts && o.Changes == n.Changes);
        Pair((o, n) => SameWall(o, n) && o.AfterCounts == n.AfterCounts);
        Pair((o, n) => SameWall(o, n) && o.Restarts == n.Restarts);
        Pair((o, n) => o.PartName == n.PartName && o.AfterCounts == n.AfterCounts && o.Acts == n.Acts && o.Changes == n.Changes);

        return becomes.Select((n, i) => new BreakPair(partner[i], n))
            .Concat(old.Select(o => new BreakPair(o, null)))
            .OrderBy(p => (p.After ?? p.Before)!.Bare.PartName, StringComparer.Ordinal)
            .ThenBy(p => (p.After ?? p.Before)!.Bare.Walls[0]);

        void Pair(Func<Interruption, Interruption, bool> fits)
        {
            for (int i = 0; i < becomes.Count; i++)
            {
                int found = partner[i] is not null ? -1 : old.FindIndex(o => fits(o.Bare, becomes[i].Bare));
                if (found >= 0)
                {
                    partner[i] = old[found];
                    old.RemoveAt(found);
                }
            }
        }

        static bool SameWall(Interruption a, Interruption b) => a.PartName == b.PartName && a.Walls == b.Walls;
    }

    private static Interruption OneWall(Dance dance, Interruption written, int wall, Func<string, string> tagName, Func<string, string> partName)
    {
        Part? part = written.PartName.Length > 0 ? dance.FindPart(written.PartName) : dance.Parts.Count == 1 ? dance.Parts[0] : null;

        // "after 32" of 32 and "at the end" are one place; nothing is left of the wall there to restart from or to go on with
        Counts? after = written.AfterCounts is { } counts && (part is null || counts < part.Length) ? counts : null;
        List<InterruptionAct> acts = [.. written.Acts.Select(a => Act(a, tagName, partName))];
        while (acts.Count > 1 && (acts[^1] is InterruptionAct.GoOn || (after is null && acts[^1] is InterruptionAct.Restart)))
        {
            acts.RemoveAt(acts.Count - 1);
        }

        return written with
        {
            Walls = [wall],
            PartName = partName(written.PartName),
            AfterCounts = after,
            Acts = acts.ToValueList(),
            Changes = written.Changes.Select(c => c with { Moves = Bare.Of(c.Moves) }).ToValueList(),
            Claim = null,
            Span = default,
            Line = 0,
            Verbatim = acts.Count == 0 ? Bare.Words(written.Verbatim) : "",
        };
    }

    private static InterruptionAct Act(InterruptionAct act, Func<string, string> tagName, Func<string, string> partName) => act switch
    {
        InterruptionAct.PlayTag play => play with { Name = tagName(play.Name) },
        InterruptionAct.Dance moves => new InterruptionAct.Dance(Bare.Of(moves.Body)),
        InterruptionAct.Quote quote => quote with { PartName = partName(quote.PartName) },
        _ => act,
    };
}
