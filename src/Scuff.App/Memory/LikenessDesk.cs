using Scuff.Analysis.Likeness;
using Scuff.Repertoire;

namespace Scuff.App.Memory;

/// <summary>What a class knows of a new dance already, by <see cref="DanceLikeness"/>, in words.</summary>
internal sealed class LikenessDesk : ILikenessDesk
{
    /// <summary>From here on two dances are nearly the same, in percent (ours).</summary>
    public const int NearlySame = 75;

    // two million pairs, a second or two
    private const int MostCompared = 2_000;

    // more than this nobody reads before a lesson
    private const int MostSentences = 6;

    /// <summary>
    /// Groups of dances that are nearly the same by their feet though not quite, the larger likeness first; a dance is in one group at most. Very large clubs are
    /// not looked through: there are too many pairs.
    /// </summary>
    /// <param name="rows">The dances.</param>
    public static IReadOnlyList<IReadOnlyList<DanceRow>> NearlySameGroups(IReadOnlyList<DanceRow> rows)
    {
        (DanceRow Row, FeetPrint Print)[] prints = [.. rows.Where(r => r.Facts.Feet.Length > 0).Select(r => (r, FeetPrint.Read(r.Facts.Feet)))];
        if (prints.Length > MostCompared)
        {
            return [];
        }

        List<(int One, int Other, int Percent)>[] found = new List<(int One, int Other, int Percent)>[prints.Length];
        Parallel.For(0, prints.Length, i =>
        {
            found[i] = [];
            for (int j = i + 1; j < prints.Length; j++)
            {
                if (prints[i].Row.Facts.Fingerprint != prints[j].Row.Facts.Fingerprint
                    && DanceLikeness.AtMost(prints[i].Print, prints[j].Print) >= NearlySame
                    && DanceLikeness.Between(prints[i].Print, prints[j].Print).Percent is >= NearlySame and var percent)
                {
                    found[i].Add((i, j, percent));
                }
            }
        });
        List<List<int>> groups = [];
        foreach ((int one, int other, _) in found.SelectMany(f => f).OrderByDescending(f => f.Percent))
        {
            List<int>? ofOne = groups.Find(g => g.Contains(one));
            List<int>? ofOther = groups.Find(g => g.Contains(other));
            if (ofOne is null && ofOther is null)
            {
                groups.Add([one, other]);
            }
            else if (ofOther is null)
            {
                ofOne!.Add(other);
            }
            else if (ofOne is null)
            {
                ofOther.Add(one);
            }
        }

        return [.. groups.Select(g => (IReadOnlyList<DanceRow>)[.. g.Select(i => prints[i].Row)])];
    }

    /// <inheritdoc/>
    public IReadOnlyList<string> KnownAlready(Club club, string danceId, IReadOnlyList<string> knownIds)
    {
        Dictionary<string, DanceRow> rows = club.Dances.Every().ToDictionary(r => r.Id, StringComparer.Ordinal);
        if (!rows.TryGetValue(danceId, out DanceRow? taught) || taught.Facts.Feet.Length == 0)
        {
            return [];
        }

        FeetPrint print = FeetPrint.Read(taught.Facts.Feet);
        List<(DanceRow Row, DanceLikeness Likeness)> compared =
        [
            .. knownIds.Distinct(StringComparer.Ordinal)
                .Where(id => id != danceId && rows.TryGetValue(id, out DanceRow? row) && row.Facts.Feet.Length > 0)
                .Select(id => (rows[id], DanceLikeness.Between(print, FeetPrint.Read(rows[id].Facts.Feet)))),
        ];
        List<string> sentences =
        [
            .. compared.Where(c => c.Likeness.Percent >= NearlySame).OrderByDescending(c => c.Likeness.Percent)
                .Select(c => $"It is nearly the same as “{c.Row.Facts.Title}”{(c.Likeness.IsMirrored ? " in the other foot" : "")}, which they know: take care that the two are not mixed up."),
        ];
        foreach (FeetSection section in print.Sections)
        {
            (DanceRow Row, SharedSection Shared)? best = null;
            foreach ((DanceRow row, DanceLikeness likeness) in compared)
            {
                if (likeness.Shared.FirstOrDefault(s => s.Section == section.Name) is { } shared && shared.Percent > (best?.Shared.Percent ?? 0))
                {
                    best = (row, shared);
                }
            }

            if (best is { } found)
            {
                sentences.Add(
                    $"They know section {section.Name} already{(found.Shared.Percent == 100 ? "" : ", nearly,")} from section {found.Shared.OtherSection} of “{found.Row.Facts.Title}”{(found.Shared.IsMirrored ? ", in the other foot" : "")}.");
            }
        }

        return [.. sentences.Take(MostSentences)];
    }
}
