using Scuff.Audio.Evaluation;

namespace Tests.Audio.Evaluation;

/// <summary>Cases worked out by hand, by the definitions named at the measures.</summary>
public sealed class BeatMeasuresTests
{
    // ten beats, half a second apart
    private static readonly double[] Truth = Row(10, 0.5);

    [Fact]
    public void The_same_beats_are_right_in_every_measure()
    {
        Assert.Equal(1, BeatMeasures.F(Truth, Truth));
        Assert.Equal(1, BeatMeasures.CorrectedF(Truth, Truth));
        Assert.Equal(1, BeatMeasures.Cemgil(Truth, Truth), 12);
        Assert.Equal(new Continuity(1, 1, 1, 1), BeatMeasures.Continuity(Truth, Truth));
    }

    [Theory]
    [InlineData(0.069, 1)]
    [InlineData(-0.069, 1)]
    [InlineData(0.07, 1)]
    [InlineData(0.071, 0)]
    [InlineData(-0.071, 0)]
    public void A_beat_is_right_up_to_seventy_milliseconds(double shift, double expected)
        => Assert.Equal(expected, BeatMeasures.F(Truth, Shifted(shift)), 12);

    [Fact]
    public void Off_beats_are_wrong_until_they_are_moved_and_an_allowed_level()
    {
        double[] off = Row(9, 0.5, 0.25);
        Assert.Equal(0, BeatMeasures.F(Truth, off));

        // their middles are beats 2 to 9: eight of eight, and eight of ten
        Assert.Equal(2 * 1 * 0.8 / 1.8, BeatMeasures.CorrectedF(Truth, off), 12);
        Assert.Equal(new Continuity(0, 0, 1, 1), BeatMeasures.Continuity(Truth, off));
    }

    [Fact]
    public void Twice_as_many_beats_are_half_precise_until_halved()
    {
        double[] twice = Row(19, 0.25);

        // ten of nineteen, and ten of ten
        Assert.Equal(2 * (10.0 / 19) / (1 + (10.0 / 19)), BeatMeasures.F(Truth, twice), 12);
        Assert.Equal(1, BeatMeasures.CorrectedF(Truth, twice));

        // every interval is half as long as the true one, so none is right at the annotated level
        Assert.Equal(new Continuity(0, 0, 1, 1), BeatMeasures.Continuity(Truth, twice));
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.5)]
    public void Half_as_many_beats_are_half_of_them_until_doubled(double start)
    {
        double[] half = Row(5, 1, start);
        Assert.Equal(2 * 0.5 / 1.5, BeatMeasures.F(Truth, half), 12);

        // doubled: nine of nine, nine of ten
        Assert.Equal(2 * 0.9 / 1.9, BeatMeasures.CorrectedF(Truth, half), 12);
        Assert.Equal(new Continuity(0, 0, 1, 1), BeatMeasures.Continuity(Truth, half));
    }

    [Fact]
    public void A_third_of_the_beats_is_no_allowed_level()
    {
        double[] third = Row(4, 1.5);
        Assert.Equal(2 * 0.4 / 1.4, BeatMeasures.F(Truth, third), 12);
        Assert.Equal(default, BeatMeasures.Continuity(Truth, third));
    }

    [Fact]
    public void Three_beats_for_one_are_no_allowed_level_either()
    {
        double[] triple = Row(28, 0.5 / 3);
        Assert.Equal(2 * (10.0 / 28) / (1 + (10.0 / 28)), BeatMeasures.F(Truth, triple), 12);
        Assert.Equal(default, BeatMeasures.Continuity(Truth, triple));
    }

    [Fact]
    public void No_beats_are_right_only_where_there_are_none()
    {
        Assert.Equal(1, BeatMeasures.F([], []));
        Assert.Equal(0, BeatMeasures.F(Truth, []));
        Assert.Equal(0, BeatMeasures.F([], Truth));
        Assert.Equal(0, BeatMeasures.CorrectedF(Truth, []));
        Assert.Equal(0, BeatMeasures.Cemgil(Truth, []));
        Assert.Equal(default, BeatMeasures.Continuity(Truth, []));
        Assert.Equal(default, BeatMeasures.Continuity([], Truth));
    }

    [Fact]
    public void One_beat_has_no_interval()
    {
        // one of one, one of ten
        Assert.Equal(2 * 0.1 / 1.1, BeatMeasures.F(Truth, [1.0]), 12);
        Assert.Equal(2 * 0.1 / 1.1, BeatMeasures.CorrectedF(Truth, [1.0]), 12);
        Assert.Equal(1.0 / 5.5, BeatMeasures.Cemgil(Truth, [1.0]), 9);
        Assert.Equal(default, BeatMeasures.Continuity(Truth, [1.0]));
        Assert.Equal(default, BeatMeasures.Continuity([1.0], Truth));
    }

    [Fact]
    public void A_beat_is_used_once()
    {
        // three answers beside one beat: one of three, one of one
        Assert.Equal(0.5, BeatMeasures.F([1.0], [0.95, 1.0, 1.05]), 12);

        // each of two answers finds a partner, though both are nearest to the first
        Assert.Equal(1, BeatMeasures.F([1.0, 1.1], [1.0, 1.04]), 12);
    }

    [Fact]
    public void Forty_milliseconds_are_worth_one_deviation_of_the_bell()
        => Assert.Equal(Math.Exp(-0.5), BeatMeasures.Cemgil(Truth, Shifted(0.04)), 9);

    [Fact]
    public void One_beat_too_early_breaks_the_run_and_the_beat_after_it()
    {
        // beat 6 of 10 comes 100 ms early: wrong phase; beat 7 then follows an interval of 0.6 s, a fifth too long
        double[] answer = Shifted(0);
        answer[5] -= 0.1;
        Assert.Equal(new Continuity(0.5, 0.8, 0.5, 0.8), BeatMeasures.Continuity(Truth, answer));
        Assert.Equal(0.9, BeatMeasures.F(Truth, answer), 12);
    }

    [Theory]
    [InlineData(0.08, 1)]
    [InlineData(0.09, 0)]
    public void A_phase_is_right_below_a_sixth_of_the_interval(double shift, double expected)
        => Assert.Equal(expected, BeatMeasures.Continuity(Truth, Shifted(shift)).CorrectLevelTotal); // 0.175 of 0.5 s are 87.5 ms

    private static double[] Row(int count, double step, double start = 0) => [.. Enumerable.Range(0, count).Select(i => start + (i * step))];

    private static double[] Shifted(double by) => [.. Truth.Select(t => t + by)];
}
