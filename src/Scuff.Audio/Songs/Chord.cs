namespace Scuff.Audio.Songs;

/// <summary>A chord as semitones above C.</summary>
/// <param name="Root">The root, from 0 to 11.</param>
/// <param name="Tones">Semitones above the root, rising from 0.</param>
internal sealed record Chord(int Root, int[] Tones)
{
    private static readonly int[] Major = [0, 2, 4, 5, 7, 9, 11];
    private static readonly int[] Minor = [0, 2, 3, 5, 7, 8, 10];

    /// <summary>The chord on a degree of the scale.</summary>
    /// <param name="degree">From 0.</param>
    /// <param name="key">Semitones above C.</param>
    /// <param name="isMinor">Whether the key is minor.</param>
    /// <param name="colour">0 triads, 1 a seventh on the dominant, 2 sevenths on all, 3 blues sevenths, 4 power chords.</param>
    public static Chord On(int degree, int key, bool isMinor, int colour)
    {
        int[] scale = isMinor ? Minor : Major;
        int root = scale[degree];
        int Above(int steps) => ((scale[(degree + steps) % 7] - root) % 12 + 12) % 12;

        int third = Above(2);
        int fifth = Above(4);

        // the dominant of a minor key is major, as bands play it
        third = isMinor && degree == 4 ? 4 : third;
        int[] tones = colour switch
        {
            1 when degree == 4 => [0, third, fifth, 10],
            2 when degree != 6 => [0, third, fifth, isMinor && degree == 4 ? 10 : Above(6)],
            3 => [0, third, fifth, 10],
            4 => [0, fifth, 12],
            _ => [0, third, fifth],
        };
        return new((root + key) % 12, tones);
    }

    /// <summary>Semitones of a step of the scale above the tonic; steps may be negative or beyond the octave.</summary>
    public static int Scale(int step, bool isMinor)
    {
        int octave = (int)Math.Floor(step / 7.0);
        return (isMinor ? Minor : Major)[step - (7 * octave)] + (12 * octave);
    }

    /// <summary>Whether a pitch belongs to the chord.</summary>
    public bool Has(int pitch)
    {
        foreach (int tone in Tones)
        {
            if ((pitch - Root - tone) % 12 == 0)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The chord's tones near a pitch, closest voicing, rising.</summary>
    public int[] Near(int middle, int count)
    {
        int[] pitches = [.. Enumerable.Range(middle - 6, 13 + (12 * (count / 5))).Where(Has)];
        return [.. pitches.Take(count)];
    }
}
