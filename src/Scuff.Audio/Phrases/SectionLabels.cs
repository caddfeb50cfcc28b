namespace Scuff.Audio.Phrases;

/// <summary>Gives sections of the same music the same letter, by how alike they are beat for beat.</summary>
internal static class SectionLabels
{
    /// <summary>What speaks for two sections being the same music, in the order of <see cref="Weights"/>; the last is always 1.</summary>
    public static IReadOnlyList<string> Clues { get; } = ["chroma", "pitch", "colour", "length", "beats", "bias"];

    /// <summary>
    /// A logistic regression over pairs of sections of made songs (486 songs of other seeds than any that is scored; <c>bench</c>, "weigh";
    /// docs/performance.md), rounded.
    /// </summary>
    public static IReadOnlyList<double> Weights { get; } = [3.7, 5.2, 2.9, 3.9, 1.1, -16];

    // What sounds alike only a semitone or two higher is likelier the same than it sounds: a last chorus.
    private const double Raised = 1.7;

    // But it must sound alike by so much more there than at the same height.
    private const double RaisedOnly = 0.45;

    // Below even odds: sections that were found apart and are alike at all are mostly the same (made songs of other seeds).
    private const double Same = 0.35;

    // Beats that are compared at most: the first four eights say what a section is.
    private const int Compared = 64;

    /// <summary>A letter for each section: A for the first, B for the first that differs, and so on.</summary>
    /// <param name="starts">The beats on which sections begin, rising.</param>
    /// <param name="beats">How many beats the track has.</param>
    /// <param name="features">What the beats sound like.</param>
    /// <param name="weights">What each of the <see cref="Clues"/> counts, or null for <see cref="Weights"/>.</param>
    public static string[] Find(int[] starts, int beats, BeatFeatures features, IReadOnlyList<double>? weights = null)
    {
        weights ??= Weights;
        int n = starts.Length;
        double[,] alike = new double[n, n];
        for (int a = 0; a < n; a++)
        {
            for (int b = a + 1; b < n; b++)
            {
                alike[a, b] = alike[b, a] = Likeness(a, b);
            }
        }

        List<int>[] groups = [.. Enumerable.Range(0, n).Select(i => new List<int> { i })];
        while (Alikest(groups, alike) is var (a, b, likeness) && likeness >= Same)
        {
            // the mean over both groups, from the means over each
            int all = groups[a].Count + groups[b].Count;
            for (int other = 0; other < n; other++)
            {
                alike[a, other] = alike[other, a] = ((groups[a].Count * alike[a, other]) + (groups[b].Count * alike[b, other])) / all;
            }

            groups[a].AddRange(groups[b]);
            groups[b].Clear();
        }

        string[] labels = new string[n];
        int letter = 0;
        foreach (List<int> group in groups.Where(g => g.Count > 0).OrderBy(g => g.Min()))
        {
            foreach (int section in group)
            {
                labels[section] = LetterOf(letter);
            }

            letter++;
        }

        return labels;

        double Likeness(int a, int b)
            => CluesOf(a, b, starts, beats, features, weights) is ({ } clues, double raised)
                ? 1 / (1 + Math.Exp(-(clues.Zip(weights, (c, w) => c * w).Sum() + raised)))
                : 0;
    }

    /// <summary>
    /// What speaks for two sections being the same, [clues], and what being heard at another height adds to it. No clues where one is too short to tell.
    /// </summary>
    /// <param name="a">One section.</param>
    /// <param name="b">The other.</param>
    /// <param name="starts">The beats on which sections begin, rising.</param>
    /// <param name="beats">How many beats the track has.</param>
    /// <param name="features">What the beats sound like.</param>
    /// <param name="weights">What each of the clues counts: they choose at which height the two are compared.</param>
    public static (double[]? Clues, double Raised) CluesOf(int a, int b, int[] starts, int beats, BeatFeatures features, IReadOnlyList<double> weights)
    {
        int length = Math.Min(Compared, Math.Min(LengthOf(a), LengthOf(b)));
        if (length < 4)
        {
            return (null, 0);
        }

        (double Chroma, double Pitch, double All) best = (0, 0, double.NegativeInfinity);
        double raised = 0;
        for (int up = -2; up <= 2; up++)
        {
            double chroma = 0;
            double pitch = 0;
            for (int i = 0; i < length; i++)
            {
                int x = starts[a] + i;
                int y = starts[b] + i;
                chroma += BeatFeatures.Turned(features.Chroma[x], features.Chroma[y], up) / length;
                pitch += BeatFeatures.Cosine(features.Pitches[x], features.Pitches[y], up) / length;
            }

            double all = (weights[0] * chroma) + (weights[1] * pitch) - (up == 0 ? 0 : RaisedOnly);
            if (all > best.All)
            {
                (best, raised) = ((chroma, pitch, all), up == 0 ? 0 : Raised);
            }
        }

        double colour = 0;
        for (int i = 0; i < length; i++)
        {
            colour += BeatFeatures.Cosine(features.Colour[starts[a] + i], features.Colour[starts[b] + i]) / length;
        }

        double ratio = (double)Math.Min(LengthOf(a), LengthOf(b)) / Math.Max(LengthOf(a), LengthOf(b));
        return ([best.Chroma, best.Pitch, colour, ratio, Math.Log(length), 1], raised);

        int LengthOf(int section) => (section + 1 < starts.Length ? starts[section + 1] : beats) - starts[section];
    }

    // The two groups that are most alike; a likeness below all where only one is left.
    private static (int A, int B, double Likeness) Alikest(List<int>[] groups, double[,] alike)
    {
        (int A, int B, double Likeness) best = (0, 0, double.NegativeInfinity);
        for (int a = 0; a < groups.Length; a++)
        {
            for (int b = a + 1; groups[a].Count > 0 && b < groups.Length; b++)
            {
                if (groups[b].Count > 0 && alike[a, b] > best.Likeness)
                {
                    best = (a, b, alike[a, b]);
                }
            }
        }

        return best;
    }

    private static string LetterOf(int index) => index < 26 ? ((char)('A' + index)).ToString() : $"{(char)('A' + (index % 26))}{index / 26}";
}
