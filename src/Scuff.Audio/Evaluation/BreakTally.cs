namespace Scuff.Audio.Evaluation;

/// <summary>Stop breaks counted over one song or many; tallies add up (ours). One song has too few breaks for a share of its own.</summary>
/// <param name="Hits">Breaks found.</param>
/// <param name="Truths">Breaks there are.</param>
/// <param name="Answers">Breaks given.</param>
public readonly record struct BreakTally(int Hits, int Truths, int Answers)
{
    /// <summary>Harmonic mean of precision and recall; 1 if there is nothing on either side.</summary>
    public double F => Agreement.F(Hits, Truths, Answers);

    public static BreakTally operator +(BreakTally a, BreakTally b) => new(a.Hits + b.Hits, a.Truths + b.Truths, a.Answers + b.Answers);

    /// <summary>A break is found if what both cover is at least half of what either covers; each answer is used once.</summary>
    public static BreakTally Of(IEnumerable<AnswerBreak> truth, IEnumerable<AnswerBreak> answer)
    {
        AnswerBreak[] truths = [.. truth];
        List<AnswerBreak> left = [.. answer];
        int answers = left.Count;
        int hits = 0;
        foreach (AnswerBreak real in truths)
        {
            int at = left.FindIndex(given =>
            {
                double common = Math.Min(real.End, given.End) - Math.Max(real.Start, given.Start);
                double either = Math.Max(real.End, given.End) - Math.Min(real.Start, given.Start);
                return common > 0 && common / either >= 0.5;
            });
            if (at >= 0)
            {
                hits++;
                left.RemoveAt(at);
            }
        }

        return new(hits, truths.Length, answers);
    }
}
