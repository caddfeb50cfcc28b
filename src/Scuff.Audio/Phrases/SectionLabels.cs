namespace Scuff.Audio.Phrases;

/// <summary>Gives sections of the same music the same letter, by how alike they are beat for beat.</summary>
internal static class SectionLabels
{
    // Weights of a logistic regression over pairs of sections of made songs (216 songs of other seeds than any that is scored; docs/performance.md), rounded.
    private const double ChromaWeight = 2.75;

    private const double PitchWeight = 3.5;

    private const double ColourWeight = 3.4;

    private const double LengthWeight = 1;

    private const double BeatsWeight = 0.75;

    private const double Threshold = 10;

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
    public static string[] Find(int[] starts, int beats, BeatFeatures features)
    {
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

        int LengthOf(int section) => (section + 1 < n ? starts[section + 1] : beats) - starts[section];

        double Likeness(int a, int b)
        {
            int length = Math.Min(Compared, Math.Min(LengthOf(a), LengthOf(b)));
            if (length < 4)
            {
                return 0;
            }

            double best = double.NegativeInfinity;
            double raised = 0;
            for (int up = -2; up <= 2; up++)
            {
                double chroma = 0;
                double pitch = 0;
                for (int i = 0; i < length; i++)
                {
                    int x = starts[a] + i;
                    int y = starts[b] + i;
                    chroma += BeatFeatures.Turned(features.Chroma[x], features.Chroma[y], up);
                    pitch += BeatFeatures.Cosine(features.Pitches[x], features.Pitches[y], up);
                }

                double all = (((ChromaWeight * chroma) + (PitchWeight * pitch)) / length) - (up == 0 ? 0 : RaisedOnly);
                if (all > best)
                {
                    (best, raised) = (all, up == 0 ? 0 : RaisedOnly + Raised);
                }
            }

            double colour = 0;
            for (int i = 0; i < length; i++)
            {
                colour += BeatFeatures.Cosine(features.Colour[starts[a] + i], features.Colour[starts[b] + i]);
            }

            double ratio = (double)Math.Min(LengthOf(a), LengthOf(b)) / Math.Max(LengthOf(a), LengthOf(b));
            double logit = best + raised + (ColourWeight * colour / length) + (LengthWeight * ratio) + (BeatsWeight * Math.Log(length)) - Threshold;
            return 1 / (1 + Math.Exp(-logit));
        }
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
