using Scuff.Dances;

namespace Scuff.Analysis.Compare;

/// <summary>
/// What differs between two versions of a dance, in the order of the later one: the heading, the sections, tags, order of the parts,
/// breaks and ending, tracks, own moves, notes, and last what is only worded otherwise. Equal by value; no words, no formats.
/// </summary>
/// <param name="Changes">The changes; empty when the texts say the same in the same words.</param>
public sealed record DanceComparison(ValueList<DanceChange> Changes)
{
    // A mirror image is told as one only if it explains most of what differs.
    private const int MirrorMustExplain = 4;

    /// <summary>Whether nothing differs but words: both print and dance the same.</summary>
    public bool IsSame => Changes.All(c => c is DanceChange.WordsOnly);

    /// <summary>Compares two versions; never throws for what is in the texts.</summary>
    /// <param name="before">The earlier version.</param>
    /// <param name="after">The later version.</param>
    public static DanceComparison Of(DanceAnalysis before, DanceAnalysis after)
    {
        ComparisonRun plain = new(before, after);
        plain.Run();
        if (plain.Cost == 0)
        {
            return new DanceComparison(plain.Changes.ToValueList());
        }

        DanceAnalysis image = DanceAnalysis.Of(before.Draft with { Dance = DanceMirror.Mirror(before.Dance) });
        ComparisonRun mirrored = new(image, after);
        mirrored.Run();
        return mirrored.Cost * MirrorMustExplain <= plain.Cost
            ? new DanceComparison([new DanceChange.Mirrored(), .. mirrored.Changes.Where(c => c is not DanceChange.WordsOnly)])
            : new DanceComparison(plain.Changes.ToValueList());
    }
}
