namespace Scuff.Audio.Evaluation;

/// <summary>How well the sections of a song were found.</summary>
public static class SectionMeasures
{
    private const double Frame = 0.1;

    /// <summary>
    /// F of the inner boundaries within a tolerance (0.5 or 3 seconds): the hit rate of structure segmentation (Turnbull, Lanckriet,
    /// Pampalk and Goto, "A supervised approach for detecting boundaries in music", 2007). The start of the first section and the
    /// end of the last are not counted.
    /// </summary>
    public static double BoundaryF(IReadOnlyList<AnswerSection> truth, IReadOnlyList<AnswerSection> answer, double tolerance)
    {
        double[] inner = Inner(truth);
        double[] answered = Inner(answer);
        return Agreement.F(Agreement.Pairs(inner, answered, tolerance), inner.Length, answered.Length);
    }

    /// <summary>
    /// Pairwise F of the labels, in frames of 0.1 s over the length of the truth: of all pairs of frames with equal labels in one,
    /// how many have equal labels in the other (Levy and Sandler, "Structural segmentation of musical audio by constrained
    /// clustering", 2008). Frames without a label share one of their own. 0 if either has no section.
    /// </summary>
    public static double LabelF(IReadOnlyList<AnswerSection> truth, IReadOnlyList<AnswerSection> answer)
    {
        if (truth.Count == 0 || answer.Count == 0)
        {
            return 0;
        }

        double from = truth[0].Start;
        int frames = Math.Max(1, (int)Math.Round((truth[^1].End - from) / Frame, MidpointRounding.ToEven));
        (int[] a, int aLabels) = Frames(truth, from, frames);
        (int[] b, int bLabels) = Frames(answer, from, frames);
        double[] both = new double[aLabels * bLabels];
        double[] inTruth = new double[aLabels];
        double[] inAnswer = new double[bLabels];
        for (int i = 0; i < frames; i++)
        {
            both[(a[i] * bLabels) + b[i]]++;
            inTruth[a[i]]++;
            inAnswer[b[i]]++;
        }

        return Agreement.F(EqualPairs(both), EqualPairs(inTruth), EqualPairs(inAnswer));

        static double EqualPairs(double[] sizes) => sizes.Sum(n => n * (n - 1) / 2);
    }

    private static double[] Inner(IReadOnlyList<AnswerSection> sections)
        => [.. sections.Select(s => s.Start).Order().Skip(1).Select(s => Math.Round(s, 4)).Distinct()];

    private static (int[] Labels, int Count) Frames(IReadOnlyList<AnswerSection> sections, double from, int frames)
    {
        Dictionary<string, int> numbers = [];
        foreach (AnswerSection section in sections)
        {
            numbers.TryAdd(section.Label, numbers.Count);
        }

        int[] labels = new int[frames];
        Array.Fill(labels, numbers.Count);
        for (int i = 0; i < frames; i++)
        {
            double middle = from + ((i + 0.5) * Frame);
            foreach (AnswerSection section in sections)
            {
                if (middle >= section.Start && middle < section.End)
                {
                    labels[i] = numbers[section.Label];
                }
            }
        }

        return (labels, numbers.Count + 1);
    }
}
