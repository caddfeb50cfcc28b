namespace Scuff.Audio.Songs;

/// <summary>
/// Tunes in phrases of four bars, made of rhythms of a bar that come back: question, the same again, another, a long note to close. A
/// phrase may begin with an upbeat before its bar, so that what is heard first is not the one.
/// </summary>
internal static class PhrasedMelodies
{
    private const int Phrase = 4;

    /// <summary>Composes a tune over chords.</summary>
    /// <param name="dice">Chance.</param>
    /// <param name="meter">Beats in a bar.</param>
    /// <param name="cells">Rhythms of a bar: lengths of notes in beats, a rest below zero.</param>
    /// <param name="upbeat">Beats before its bar that a phrase begins.</param>
    /// <param name="degrees">Degree of the scale for each bar.</param>
    /// <param name="lateDegrees">The same for the second half of each bar.</param>
    public static MelodyNote[] Compose(Dice dice, int meter, double[][] cells, double upbeat, IReadOnlyList<int> degrees, IReadOnlyList<int> lateDegrees)
    {
        double[][] chosen = [dice.Pick<double[]>(cells), dice.Pick<double[]>(cells), dice.Pick<double[]>(cells)];
        int[] order = dice.Pick<int[]>([0, 1, 0, 3], [0, 0, 1, 3], [0, 1, 2, 3], [0, 0, 0, 3], [0, 1, 0, 1], [0, 0, 0, 0]);
        int home = dice.Below(5);
        int drift = dice.Pick(-1, 1);
        List<MelodyNote> notes = [];
        for (int from = 0; from < degrees.Count; from += Phrase)
        {
            // as often as not a phrase is the first once more
            Dice turn = dice.Fork((from / Phrase % 2 == 0 || dice.Chance(0.5) ? 0 : from).ToString(System.Globalization.CultureInfo.InvariantCulture));
            int step = home + turn.Pick(0, 0, 2, 4);
            double steps = upbeat > 0.75 ? 0.5 : 0.25;
            for (double at = -upbeat; at < -0.01; at += upbeat <= 1 && steps == 0.5 && turn.Chance(0.4) ? 1 : steps)
            {
                step += drift;
                notes.Add(new(from, at, 0.4, step));
            }

            for (int bar = from; bar < Math.Min(from + Phrase, degrees.Count); bar++)
            {
                int which = order[bar - from];
                double[] cell = which == 3 ? [meter - Math.Max(upbeat, 0.5)] : chosen[which];
                double at = 0;
                foreach (double length in cell)
                {
                    // room for the next phrase's upbeat
                    bool isFree = bar < from + Phrase - 1 || at < meter - upbeat - 0.01;
                    if (length > 0 && isFree)
                    {
                        step = Math.Clamp(step + (turn.Chance(0.7) ? turn.Pick(-1, 1, drift) : turn.Pick(-4, -3, -2, 0, 2, 3, 4)), home - 4, home + 9);
                        int sung = at % 1 == 0 && length >= 0.5 ? Nearest(step, at < 2 ? degrees[bar] : lateDegrees[bar]) : step;
                        notes.Add(new(bar, at, length * 0.94, sung));
                    }

                    at += Math.Abs(length);
                }
            }
        }

        return [.. notes];
    }

    // the nearest step that is a tone of the triad on the degree
    private static int Nearest(int step, int degree)
    {
        int off = (((step - degree) % 7) + 7) % 7;
        return off switch { 1 => step - 1, 3 => step + 1, 5 => step - 1, 6 => step + 1, _ => step };
    }
}
