namespace Scuff.Audio.Evaluation;

/// <summary>Means over songs, one value a measure; null where no song has it.</summary>
/// <param name="Songs">How many songs.</param>
/// <param name="Values">In the order of <see cref="Columns"/>.</param>
public sealed record ScoreMeans(int Songs, ValueList<double?> Values)
{
    private static readonly (string Name, Func<TrackScore, double?> Of)[] Measures =
    [
        ("F", s => s.BeatF),
        ("Fix", s => s.CorrectedF),
        ("Cemgil", s => s.Cemgil),
        ("CMLc", s => s.Continuity?.CorrectLevelLongest),
        ("CMLt", s => s.Continuity?.CorrectLevelTotal),
        ("AMLc", s => s.Continuity?.AllowedLevelsLongest),
        ("AMLt", s => s.Continuity?.AllowedLevelsTotal),
        ("DbF", s => s.DownbeatF),
        ("Acc1", s => Share(s.TempoAccuracy1)),
        ("Acc2", s => Share(s.TempoAccuracy2)),
        ("Ph", s => s.CountOneF),
        ("St", s => Share(s.IsFirstCountRight)),
        ("B.5", s => s.BoundaryFHalfSecond),
        ("B3", s => s.BoundaryFThreeSeconds),
        ("PwF", s => s.LabelF),
        ("Sw", s => Share(s.IsSwingClassRight)),
        ("SwE", s => s.SwingError),
    ];

    /// <summary>Short names of the measures: those of the means, then <c>BrkF</c>, the stop breaks of all songs taken together.</summary>
    public static ValueList<string> Columns { get; } = [.. Measures.Select(m => m.Name), "BrkF"];

    /// <summary>The means over some songs.</summary>
    public static ScoreMeans Over(IReadOnlyCollection<TrackScore> scores)
    {
        BreakTally[] tallies = [.. scores.Where(s => s.Breaks is not null).Select(s => s.Breaks!.Value)];
        double? breaks = tallies.Length == 0 ? null : tallies.Aggregate((a, b) => a + b).F;
        return new(scores.Count, [.. Measures.Select(m => scores.Average(m.Of)), breaks]);
    }

    /// <summary>The mean of one measure, by its short name.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such measure.</exception>
    public double? Mean(string column)
    {
        int at = Columns.Span.IndexOf(column);
        ArgumentOutOfRangeException.ThrowIfNegative(at, nameof(column));
        return Values[at];
    }

    private static double? Share(bool? right) => right is bool known ? (known ? 1 : 0) : null;
}
