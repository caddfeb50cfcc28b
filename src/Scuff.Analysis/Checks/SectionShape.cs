using Scuff.Dances;

namespace Scuff.Analysis.Checks;

/// <summary>How long a section should be, shared by the checks that count.</summary>
internal static class SectionShape
{
    /// <summary>Counts of a section where nothing else is said: an eight, or two bars in 3/4 time.</summary>
    public static int Usual(Dance dance) => dance.BeatsPerBar == 3 ? 6 : 8;

    /// <summary>
    /// Counts missing at a section's end, from 1: up to the length its heading states; or up to eight where it stops within a bar
    /// and the stated total does not say that this is meant.
    /// </summary>
    public static IEnumerable<int> MissingTail(Dance dance, Part part, Section section)
    {
        int length = section.Length.Value.Floor;
        if (section.Lines.Count == 0)
        {
            return [];
        }

        if (section.ClaimedLength is { } claimed)
        {
            return Range(length + 1, claimed.Value.Floor);
        }

        int usual = Usual(dance);
        if (dance.BeatsPerBar == 3 || length >= usual)
        {
            return [];
        }

        bool stopsWithinABar = length % 4 != 0;
        if (Total(dance, part) is not { } total)
        {
            return stopsWithinABar ? Range(length + 1, usual) : [];
        }

        // the part adds up its sections, so it is asked only where its length matters
        int have = part.Length.Value.Floor;
        bool isMissing = total != have && (stopsWithinABar || total - have == usual - length);
        return isMissing ? Range(length + 1, usual) : [];
    }

    /// <summary>The stated length of the part: its heading's, or the dance's for an ordinary one.</summary>
    public static int? Total(Dance dance, Part part)
        => part.ClaimedLength?.Value.Floor ?? (dance.IsPhrased ? null : dance.ClaimedCounts?.Value);

    /// <summary>How many counts are missing at the ends of a part's sections.</summary>
    public static int MissingTails(Dance dance, Part part) => part.Sections.Sum(section => MissingTail(dance, part, section).Count());

    private static IEnumerable<int> Range(int from, int to) => Enumerable.Range(from, Math.Clamp(to - from + 1, 0, 64));
}
