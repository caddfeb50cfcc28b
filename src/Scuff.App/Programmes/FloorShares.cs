using Scuff.Analysis.Memory;
using Scuff.Dances;
using Scuff.Repertoire;

namespace Scuff.App.Programmes;

/// <summary>How much of a group can dance a dance, in percent. The figures are ours: they put dances in order, and no more.</summary>
internal static class FloorShares
{
    /// <summary>How much of a class dances what it has just been taught.</summary>
    public const int JustTaught = 60;

    /// <summary>By what the book says: how well the class knew it, and what is likely left.</summary>
    /// <param name="knowing">How well it was known; null when nobody marked it.</param>
    /// <param name="memory">What is left; null when they never danced it.</param>
    /// <param name="dance">The level of the dance.</param>
    /// <param name="group">The level of the class.</param>
    public static int Remembered(Knowing? knowing, DanceMemory? memory, Level dance, Level group)
    {
        if (memory is null && knowing is null)
        {
            // not theirs: what is easier than what they learn can be followed by some
            return dance < group ? 40 : dance == group ? 20 : 0;
        }

        int known = knowing switch
        {
            Knowing.Follows => 40,
            Knowing.KnowsTheStart => 60,
            Knowing.KnowsWithCues => 85,
            Knowing.KnowsAlone => 98,
            _ => 65,
        };

        // half of what is forgotten comes back from those beside one
        return (int)Math.Round(known * (0.5 + (0.5 * (memory?.Left ?? 1))));
    }

    /// <summary>By the level alone, of people whose dances nobody has noted.</summary>
    public static int ByLevel(Level dance, Level group) => (group - dance) switch
    {
        > 0 => 70,
        0 => 55,
        -1 => 20,
        _ => 0,
    };
}
