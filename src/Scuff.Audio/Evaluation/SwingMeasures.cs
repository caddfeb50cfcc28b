namespace Scuff.Audio.Evaluation;

/// <summary>
/// How well the swing ratio was found: long half to short half, 1 for straight, 2 for the triplet. The limits are ours; a light
/// swing between them is neither class.
/// </summary>
public static class SwingMeasures
{
    private const double StraightUpTo = 1.15;
    private const double SwungFrom = 1.35;
    private const double AnsweredSwungFrom = 1.25;

    /// <summary>Whether straight and swung are told apart; null where the truth lies between them; false without an answer.</summary>
    public static bool? IsClassRight(double truth, double? answer)
        => truth is > StraightUpTo and < SwungFrom ? null
            : answer is double given && truth >= SwungFrom == given >= AnsweredSwungFrom;

    /// <summary>Absolute error of the ratio; null without an answer.</summary>
    public static double? Error(double truth, double? answer) => answer is double given ? Math.Abs(truth - given) : null;
}
