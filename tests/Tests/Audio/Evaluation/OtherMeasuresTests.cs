using Scuff.Audio.Evaluation;

namespace Tests.Audio.Evaluation;

/// <summary>Tempo, sections, breaks and swing: cases worked out by hand.</summary>
public sealed class OtherMeasuresTests
{
    [Theory]
    [InlineData(120, true, true)]
    [InlineData(124.8, true, true)] // exactly 4 %
    [InlineData(124.9, false, false)]
    [InlineData(115.2, true, true)]
    [InlineData(115.1, false, false)]
    [InlineData(60, false, true)]
    [InlineData(240, false, true)]
    [InlineData(40, false, true)]
    [InlineData(360, false, true)]
    [InlineData(80, false, false)] // two thirds
    [InlineData(0, false, false)]
    [InlineData(-120, false, false)]
    [InlineData(double.NaN, false, false)]
    [InlineData(double.PositiveInfinity, false, false)]
    public void A_tempo_is_right_within_four_percent_of_itself_or_of_its_multiples(double answer, bool first, bool second)
    {
        Assert.Equal(first, TempoMeasures.Accuracy1(120, answer));
        Assert.Equal(second, TempoMeasures.Accuracy2(120, answer));
    }

    [Fact]
    public void No_tempo_is_no_right_one()
    {
        Assert.False(TempoMeasures.Accuracy1(120, null));
        Assert.False(TempoMeasures.Accuracy2(120, null));
    }

    [Theory]
    [InlineData(10.4, 20.0, 0.5, 1)]
    [InlineData(10.6, 20.0, 0.5, 0.5)]
    [InlineData(12.9, 17.1, 3, 1)]
    [InlineData(13.1, 16.9, 3, 0)]
    public void A_boundary_is_found_within_the_tolerance(double first, double second, double tolerance, double expected)
        => Assert.Equal(expected, SectionMeasures.BoundaryF(Sections(0, 10, 20, 30), Sections(1, first, second, 28), tolerance), 12);

    [Fact]
    public void A_boundary_too_many_costs_precision_and_one_missing_costs_recall()
    {
        // two of three, two of two
        Assert.Equal(0.8, SectionMeasures.BoundaryF(Sections(0, 10, 20, 30), Sections(0, 10, 15, 20, 30), 0.5), 12);

        // one of one, one of two
        Assert.Equal(2.0 / 3, SectionMeasures.BoundaryF(Sections(0, 10, 20, 30), Sections(0, 10, 30), 0.5), 12);
        Assert.Equal(0, SectionMeasures.BoundaryF(Sections(0, 10, 20, 30), Sections(0, 30), 0.5));
        Assert.Equal(1, SectionMeasures.BoundaryF(Sections(0, 30), Sections(0, 30), 0.5));
    }

    [Fact]
    public void Labels_agree_whatever_they_are_called()
        => Assert.Equal(1, SectionMeasures.LabelF([new(0, 1, "A"), new(1, 2, "B")], [new(0, 1, "x"), new(1, 2, "y")]), 12);

    [Fact]
    public void Labels_are_counted_in_pairs_of_frames()
    {
        AnswerSection[] truth = [new(0, 1, "A"), new(1, 2, "B")];

        // ten frames each: 45 + 45 pairs in truth, 190 in one label for all
        Assert.Equal(2 * (90.0 / 190) / (1 + (90.0 / 190)), SectionMeasures.LabelF(truth, [new(0, 2, "x")]), 12);

        // A B A told as three: pairs 190 + 45 in truth, 3 * 45 in answer, 135 in both
        Assert.Equal(
            2 * (135.0 / 235) / (1 + (135.0 / 235)),
            SectionMeasures.LabelF([new(0, 1, "A"), new(1, 2, "B"), new(2, 3, "A")], [new(0, 1, "x"), new(1, 2, "y"), new(2, 3, "z")]),
            12);

        // what has no label counts as one label of its own: here the second half, and all is right
        Assert.Equal(1, SectionMeasures.LabelF(truth, [new(0, 1, "x")]), 12);
        Assert.Equal(0, SectionMeasures.LabelF(truth, []));
        Assert.Equal(0, SectionMeasures.LabelF([], truth));
    }

    [Theory]
    [InlineData(10, 12, 1)] // the same
    [InlineData(11, 12, 1)] // half of it
    [InlineData(11.1, 12, 0)]
    [InlineData(10, 14, 1)] // twice of it
    [InlineData(10, 14.1, 0)]
    [InlineData(12, 14, 0)]
    public void A_break_is_found_where_half_of_both_together_is_common(double start, double end, int hits)
        => Assert.Equal(new BreakTally(hits, 1, 1), BreakTally.Of([new(10, 12)], [new(start, end)]));

    [Fact]
    public void Breaks_add_up_over_songs()
    {
        BreakTally sum = BreakTally.Of([new(1, 2), new(5, 6)], [new(1, 2)]) + BreakTally.Of([], [new(3, 4)]);
        Assert.Equal(new BreakTally(1, 2, 2), sum);
        Assert.Equal(0.5, sum.F, 12);
        Assert.Equal(1, default(BreakTally).F);
    }

    [Theory]
    [InlineData(1.0, 1.24, true)]
    [InlineData(1.0, 1.25, false)]
    [InlineData(1.15, 1.0, true)]
    [InlineData(1.16, 1.0, null)]
    [InlineData(1.34, 2.0, null)]
    [InlineData(1.35, 1.25, true)]
    [InlineData(2.0, 1.24, false)]
    public void Straight_is_told_from_swung_and_what_lies_between_is_neither(double truth, double answer, bool? right)
    {
        Assert.Equal(right, SwingMeasures.IsClassRight(truth, answer));
        Assert.Equal(Math.Abs(truth - answer), SwingMeasures.Error(truth, answer));
    }

    [Fact]
    public void No_swing_is_no_right_one()
    {
        Assert.False(SwingMeasures.IsClassRight(2, null));
        Assert.Null(SwingMeasures.IsClassRight(1.2, null));
        Assert.Null(SwingMeasures.Error(2, null));
    }

    private static AnswerSection[] Sections(params double[] at)
        => [.. at.Zip(at.Skip(1), (a, b) => new AnswerSection(a, b, $"{a}"))];
}
