namespace Scuff.Audio.Evaluation;

/// <summary>All measures of one song. Shares from 0 to 1; null where the truth is not known or the answer says nothing.</summary>
public sealed record TrackScore
{
    /// <summary><see cref="BeatMeasures.F"/> of the beats.</summary>
    public double? BeatF { get; init; }

    /// <summary><see cref="BeatMeasures.CorrectedF"/> of the beats.</summary>
    public double? CorrectedF { get; init; }

    /// <summary><see cref="BeatMeasures.Cemgil"/> of the beats.</summary>
    public double? Cemgil { get; init; }

    /// <summary><see cref="BeatMeasures.Continuity"/> of the beats.</summary>
    public Continuity? Continuity { get; init; }

    /// <summary><see cref="BeatMeasures.F"/> of the downbeats.</summary>
    public double? DownbeatF { get; init; }

    /// <summary><see cref="TempoMeasures.Accuracy1"/>.</summary>
    public bool? TempoAccuracy1 { get; init; }

    /// <summary><see cref="TempoMeasures.Accuracy2"/>.</summary>
    public bool? TempoAccuracy2 { get; init; }

    /// <summary><see cref="BeatMeasures.F"/> of the count ones: is the eight right, through extra bars and half bars too (ours).</summary>
    public double? CountOneF { get; init; }

    /// <summary>
    /// Whether the first count 1 that is given is one: within 70 ms of a true count 1, and not later than the 64th beat. What is
    /// given before the first true one does not count (ours).
    /// </summary>
    public bool? IsFirstCountRight { get; init; }

    /// <summary><see cref="SectionMeasures.BoundaryF"/> within half a second.</summary>
    public double? BoundaryFHalfSecond { get; init; }

    /// <summary><see cref="SectionMeasures.BoundaryF"/> within three seconds.</summary>
    public double? BoundaryFThreeSeconds { get; init; }

    /// <summary><see cref="SectionMeasures.LabelF"/>.</summary>
    public double? LabelF { get; init; }

    /// <summary>Stop breaks; to be added up over songs.</summary>
    public BreakTally? Breaks { get; init; }

    /// <summary><see cref="SwingMeasures.IsClassRight"/>.</summary>
    public bool? IsSwingClassRight { get; init; }

    /// <summary><see cref="SwingMeasures.Error"/>.</summary>
    public double? SwingError { get; init; }

    /// <summary>Measures an answer against the truth.</summary>
    public static TrackScore Of(TrackTruth truth, TrackAnswer answer)
    {
        double[] beats = [.. truth.Beats.Order()];
        double[]? given = answer.Beats is { } b ? [.. b.Order()] : null;
        TrackScore score = new();
        if (given is not null)
        {
            score = score with
            {
                BeatF = BeatMeasures.F(beats, given),
                CorrectedF = BeatMeasures.CorrectedF(beats, given),
                Cemgil = BeatMeasures.Cemgil(beats, given),
                Continuity = BeatMeasures.Continuity(beats, given),
            };
        }

        if (truth.Checks.Downbeats && truth.Downbeats is { } downbeats && answer.Downbeats is { } givenDownbeats)
        {
            score = score with { DownbeatF = BeatMeasures.F([.. downbeats.Order()], [.. givenDownbeats.Order()]) };
        }

        if (answer.TempoBpm is { } tempo)
        {
            score = score with
            {
                TempoAccuracy1 = TempoMeasures.Accuracy1(truth.TempoBpm, tempo),
                TempoAccuracy2 = TempoMeasures.Accuracy2(truth.TempoBpm, tempo),
            };
        }

        if (truth.Checks.Counts && truth.CountCycle is int cycle && answer.HasCount)
        {
            ValueList<double> ones = truth.CountOnes;
            ValueList<double> givenOnes = answer.CountOnesOf(cycle);
            score = score with
            {
                CountOneF = BeatMeasures.F(ones.Span, givenOnes.Span),
                IsFirstCountRight = IsFirstRight(beats, ones, givenOnes),
            };
        }

        if (truth.Checks.Sections && truth.Sections is { } sections && answer.Sections is { } givenSections)
        {
            AnswerSection[] real = [.. sections.Select(s => s.AsAnswer)];
            AnswerSection[] said = [.. givenSections.OrderBy(s => s.Start)];
            score = score with
            {
                BoundaryFHalfSecond = SectionMeasures.BoundaryF(real, said, 0.5),
                BoundaryFThreeSeconds = SectionMeasures.BoundaryF(real, said, 3),
                LabelF = SectionMeasures.LabelF(real, said),
            };
        }

        if (truth.Checks.Sections && truth.Breaks is { } breaks && answer.Breaks is { } givenBreaks)
        {
            score = score with
            {
                Breaks = BreakTally.Of(
                    breaks.Where(x => x.Kind == AnswerBreak.Stop).Select(x => x.AsAnswer),
                    givenBreaks.Where(x => x.Kind == AnswerBreak.Stop)),
            };
        }

        if (truth.Checks.Swing && truth.SwingRatio is double ratio && answer.SwingRatio is { } swing)
        {
            score = score with
            {
                IsSwingClassRight = SwingMeasures.IsClassRight(ratio, swing),
                SwingError = SwingMeasures.Error(ratio, swing),
            };
        }

        return score;
    }

    private static bool IsFirstRight(double[] beats, ValueList<double> ones, ValueList<double> given)
    {
        const int lastBeat = 64;
        if (ones.Count == 0)
        {
            return false;
        }

        double[] after = [.. given.Where(x => x >= ones[0] - BeatMeasures.Tolerance).Take(1)];
        return after is [double first]
            && first <= beats[Math.Min(lastBeat, beats.Length - 1)]
            && ones.Any(x => Math.Abs(first - x) <= BeatMeasures.Tolerance);
    }
}
