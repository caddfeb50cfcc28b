namespace Scuff.Audio.Songs;

/// <summary>
/// Melodies made of a motif of two bars that comes back: repeated, moved, answered by a second one, with a breath at the end of
/// each phrase. Strong beats take tones of the chord, the rest moves by step.
/// </summary>
internal static class Melodies
{
    public static MelodyNote[] Compose(Dice dice, SongRecipe recipe, Band band, IReadOnlyList<int> degrees, IReadOnlyList<int> lateDegrees)
    {
        int meter = recipe.Meter;
        Motif[] motifs = [Motif.Draw(dice, recipe, band), Motif.Draw(dice, recipe, band), Motif.Draw(dice, recipe, band)];
        int[] order = dice.Pick<int[]>([0, 0, 0, 1], [0, 1, 0, 2], [0, 0, 1, 2], [0, 1, 0, 1], [0, 0, 1, 1]);
        List<MelodyNote> notes = [];
        int home = dice.Below(5);
        int step = home;
        for (int unit = 0; unit * 2 < degrees.Count; unit++)
        {
            Motif motif = motifs[order[unit % order.Length]];
            bool closes = unit % 4 == 3 || (unit * 2) + 2 >= degrees.Count;

            // a motif that comes back begins where it began before, unless it is moved
            step = unit % 2 == 0 ? home + dice.Pick(0, 0, 0, 1, 2) : Math.Clamp(step, home - 3, home + 5);
            for (int i = 0; i < motif.At.Length; i++)
            {
                double at = motif.At[i];
                int bar = (unit * 2) + (int)(at / meter);
                double next = i + 1 < motif.At.Length ? motif.At[i + 1] : (2 * meter) - 0.5;
                if (bar >= degrees.Count || (closes && at >= (1.5 * meter)))
                {
                    continue;
                }

                step = Math.Clamp(step + motif.Moves[i], home - 4, home + 7);
                bool isStrong = at % 1 == 0 && next - at >= 0.5;
                int sung = isStrong ? Nearest(step, at % meter < 2 ? degrees[bar] : lateDegrees[bar]) : step;
                double length = Math.Min(next - at, motif.IsShort ? 0.45 : 2.5);
                notes.Add(new(bar, at % meter, closes && i + 1 == motif.At.Length ? length + 0.5 : length * 0.94, sung));
            }
        }

        return [.. notes];
    }

    // the nearest step that is a tone of the triad on the degree
    private static int Nearest(int step, int degree)
    {
        for (int off = 0; off < 4; off++)
        {
            foreach (int candidate in (ReadOnlySpan<int>)[step - off, step + off])
            {
                if ((((candidate - degree) % 7) + 7) % 7 is 0 or 2 or 4)
                {
                    return candidate;
                }
            }
        }

        return step;
    }

    private sealed record Motif(double[] At, int[] Moves, bool IsShort)
    {
        public static Motif Draw(Dice dice, SongRecipe recipe, Band band)
        {
            double grid = recipe.Style == SongStyle.Jig ? 1.0 / 3
                : recipe.Tempo < 100 && recipe.Style is not (SongStyle.Waltz or SongStyle.TwoStep) && dice.Chance(0.4) ? 0.25
                : 0.5;
            double density = dice.Between(0.3, 0.75) * (grid < 0.4 ? 0.7 : 1) * (recipe.Tempo > 150 ? 0.75 : 1);
            int steps = (int)Math.Round(2 * recipe.Meter / grid);
            List<double> at = [];
            for (int i = 0; i < steps; i++)
            {
                double place = i * grid;
                double share = density * (place % 1 == 0 ? 1.25 - (0.6 * band.Syncopation) : place % 0.5 == 0 ? 0.5 + (0.9 * band.Syncopation) : 0.6 * band.Syncopation);
                if (dice.Chance(share))
                {
                    at.Add(place);
                }
            }

            if (at.Count == 0)
            {
                at.Add(0);
            }

            int drift = dice.Pick(-1, 1);
            return new(
                [.. at],
                [.. at.Select(_ => dice.Chance(0.2) ? 0 : dice.Chance(0.75) ? dice.Pick(-1, 1, drift) : dice.Pick(-3, -2, 2, 3))],
                dice.Chance(0.15));
        }
    }
}
