using Scuff.Music;
using Scuff.Music.Corrections;

namespace Tests.Music.Corrections;

public sealed class TrackCorrectionsTests
{
    private const double Period = 0.5;

    // 8 + 40 beats from 1.0 s
    private static readonly TrackMap Heard = Maps.Steady(1, Period, 16, 32);

    public static TheoryData<Correction> All =>
    [
        new Correction.TapAlong([3, 3.5, 4, 4.5]),
        new Correction.TapAlong([]),
        new Correction.TapAlong([7]),
        new Correction.TapAlong([double.NaN, double.PositiveInfinity, -3]),
        new Correction.TapAlong([1, 1, 1, 1]),
        new Correction.TapAlong([1, 2, 3], 9, 4),
        new Correction.ChangeBeat(BeatLevel.Half),
        new Correction.ChangeBeat(BeatLevel.Double, 2, 8),
        new Correction.ChangeBeat(BeatLevel.OffBeat, 500, 900),
        new Correction.ShiftOne(3),
        new Correction.ShiftOne(-100, 4),
        new Correction.SetMeter(Meter.Three),
        new Correction.SetMeter(new Meter(4, IsCompound: true)),
        new Correction.MoveBoundary(9, 11),
        new Correction.MoveBoundary(double.NaN, 11),
        new Correction.AddBoundary(1e9),
        new Correction.RemoveBoundary(9),
        new Correction.RemoveBoundary(1),
        new Correction.NameSection(0, "Q", null),
        new Correction.SetSwing(2),
        new Correction.SetSwing(double.NaN),
        new Correction.SetFirstCount(7),
        new Correction.Unknown("{\"kind\": \"later\"}"),
    ];

    [Theory]
    [MemberData(nameof(All))]
    public void Whatever_is_said_of_whatever_map_leaves_a_map_that_hangs_together(Correction correction)
    {
        foreach (TrackMap map in (TrackMap[])[Heard, new TrackMap { Seconds = 30 }, Maps.Steady(0, 0.4, 1), Maps.Steady(2, 0.7, 5, 9, 2), Heard with { Sections = [] }])
        {
            foreach (Correction then in All.Select(row => row.Data))
            {
                TrackMap said = TrackCorrections.None.And(correction).And(then).ApplyTo(map);

                Assert.All(said.Beats.Zip(said.Beats.Skip(1)), p => Assert.True(p.First.Seconds < p.Second.Seconds));
                Assert.InRange(said.FirstCount.Value, -1, Math.Max(said.Beats.Count - 1, -1));
                Assert.All(said.Sections, s => Assert.InRange(s.FirstBeat + s.Beats, 1, said.Beats.Count));
                Assert.All(said.Sections.Zip(said.Sections.Skip(1)), p => Assert.Equal(p.First.FirstBeat + p.First.Beats, p.Second.FirstBeat));
            }
        }
    }

    [Fact]
    public void Nothing_said_changes_nothing()
    {
        Assert.Same(Heard, TrackCorrections.None.ApplyTo(Heard));
        TrackCorrections one = TrackCorrections.None.And(new Correction.SetSwing(2));
        Assert.Equal(TrackCorrections.None, one.WithoutLast());
        Assert.Equal(Heard with { Swing = Estimate<double>.Said(2) }, one.ApplyTo(Heard));
    }

    [Fact]
    public void Taps_give_period_and_phase_and_slips_do_not_count()
    {
        Random slips = new(7);
        List<double> taps = [.. Enumerable.Range(0, 16).Select(i => 4.2 + (i * 0.48) + ((slips.NextDouble() - 0.5) * 0.03))];
        taps[6] += 0.2;
        taps.RemoveAt(10);
        taps.Add(taps[3] + 0.05);

        TrackMap said = Said(new TrackMap { Seconds = 40, Remark = "No beat was found." }, new Correction.TapAlong([.. taps]));

        Assert.InRange(said.Tempo.Value, 60 / 0.4815, 60 / 0.4785);
        Assert.Equal(1, said.Tempo.Confidence);
        TrackBeat one = said.Beats.MinBy(b => Math.Abs(b.Seconds - 4.2))!;
        Assert.InRange(one.Seconds, 4.18, 4.22);
        Assert.Equal(1, one.Count);
        Assert.True(said.Beats[0].Seconds < 0.48 && said.Beats[said.Beats.Count - 1].Seconds > 39.4);
        Assert.Equal("", said.Remark);
        Assert.Single(said.Sections);
    }

    [Fact]
    public void Many_taps_follow_a_band_that_gets_faster()
    {
        double[] real = [.. Enumerable.Range(0, 80).Select(i => 2 + (i * 0.5) - (i * i * 0.0001))];
        Random slips = new(3);

        TrackMap said = Said(new TrackMap { Seconds = 45 }, new Correction.TapAlong([.. real.Select(t => t + ((slips.NextDouble() - 0.5) * 0.02))]));

        Assert.All(real, t => Assert.True(said.Beats.Any(b => Math.Abs(b.Seconds - t) < 0.015), $"no beat near {t}"));
    }

    [Fact]
    public void Taps_on_a_track_with_beats_move_them_and_the_rest_goes_on_as_the_music_does()
    {
        // beats that were found on the off-beat of a band that drifts
        double[] heard = [.. Enumerable.Range(0, 60).Select(i => 1 + (i * 0.5) + (0.002 * i * i / 10))];
        TrackMap map = Heard with { Beats = CountRun.Lay(heard, Meter.Four, [0]), Sections = [new TrackSection(0, 60, "A", "", 0.8)] };
        double[] real = [.. heard.Zip(heard.Skip(1), (a, b) => (a + b) / 2)];

        TrackMap said = Said(map, new Correction.TapAlong([.. real[8..20]]));

        Assert.All(real, t => Assert.True(said.Beats.Any(b => Math.Abs(b.Seconds - t) < 0.02), $"no beat near {t}"));
        Assert.InRange(said.Beats.Count, 58, 61);
    }

    [Fact]
    public void Taps_for_a_stretch_leave_the_rest_alone()
    {
        TrackMap said = Said(Heard, new Correction.TapAlong([6, 6.25, 6.5, 6.75, 7, 7.25, 7.5, 7.75, 8], 6, 8));

        Maps.AssertTimes(
            [.. Enumerable.Range(0, 10).Select(i => 1 + (i * 0.5)), .. Enumerable.Range(0, 9).Select(i => 6 + (i * 0.25)), .. Enumerable.Range(15, 33).Select(i => 1 + (i * 0.5))],
            said.Beats.Select(b => b.Seconds));
    }

    [Fact]
    public void Half_keeps_the_ones()
    {
        TrackMap said = Said(Maps.Steady(1, Period, 3, 32), new Correction.ChangeBeat(BeatLevel.Half));

        // the pickup of three beats puts most ones on odd places
        Maps.AssertTimes(Enumerable.Range(0, 17).Select(i => 1.5 + i), said.Beats.Select(b => b.Seconds));
        Assert.Equal(60, said.Tempo.Value, 3);
        Assert.Equal(1, said.Beats[1].Count);
    }

    [Fact]
    public void Double_and_half_again_is_what_it_was()
    {
        TrackMap said = TrackCorrections.None.And(new Correction.ChangeBeat(BeatLevel.Double)).And(new Correction.ChangeBeat(BeatLevel.Half)).ApplyTo(Heard);

        Assert.Equal(Heard.Beats, said.Beats);
        Assert.Equal(Heard.Sections, said.Sections);
        Assert.Equal(240, Said(Heard, new Correction.ChangeBeat(BeatLevel.Double)).Tempo.Value, 3);
    }

    [Fact]
    public void The_other_half_beat_takes_ones_and_sections_along()
    {
        TrackMap said = Said(Heard, new Correction.ChangeBeat(BeatLevel.OffBeat));

        Maps.AssertTimes(Heard.Beats.Select(b => b.Seconds + 0.25), said.Beats.Select(b => b.Seconds));
        Assert.Equal(Heard.Beats.Select(b => b.Count), said.Beats.Select(b => b.Count));
        Assert.Equal(Heard.Sections, said.Sections);
    }

    [Fact]
    public void The_one_is_shifted_with_what_begins_on_it()
    {
        TrackMap said = Said(Heard, new Correction.ShiftOne(2));

        Assert.Equal([7, 8, 1, 2], said.Beats.Take(4).Select(b => b.Count));
        Assert.Equal([2, 18], said.Sections.Select(s => s.FirstBeat));
        Assert.Equal(2, said.FirstCount.Value);
    }

    [Fact]
    public void The_one_is_shifted_from_a_place_on()
    {
        // from beat 16 on, which is at 9.0
        TrackMap said = Said(Heard, new Correction.ShiftOne(-1, 8.9));

        Assert.Equal([1, 2, 3, 4, 5, 6, 7, 1, 2], said.Beats.Skip(8).Take(9).Select(b => b.Count));
        Assert.Equal([0, 15], said.Sections.Select(s => s.FirstBeat));
        Assert.Equal(new OddEight(8, 7, 8), Assert.Single(OddEight.In(said)));
    }

    [Fact]
    public void A_waltz_is_a_waltz_when_somebody_says_so()
    {
        TrackMap said = Said(Maps.Steady(0, Period, 16, 20), new Correction.SetMeter(Meter.Three));

        Assert.Equal(Estimate<Meter>.Said(Meter.Three), said.Meter);
        Assert.All(said.Sections, s => Assert.Equal(0, s.FirstBeat % 3));
        Assert.All(said.Beats.Select((b, i) => (b, i)), x => Assert.Equal((x.i % 3) + 1, x.b.BarPosition));
    }

    [Fact]
    public void A_boundary_moves_and_the_count_with_it()
    {
        // the second section begins at beat 16, 9.0 s; it should be beat 20, 11.0 s
        TrackMap said = Said(Heard, new Correction.MoveBoundary(8.8, 11.02));

        Assert.Equal([new TrackSection(0, 20, "A", "", 0.8), new TrackSection(20, 28, "B", "", 1)], said.Sections);
        Assert.Equal([1, 2, 3, 4, 1, 2], said.Beats.Skip(16).Take(6).Select(b => b.Count));
    }

    [Fact]
    public void A_boundary_is_added_with_a_letter_of_its_own_and_taken_away()
    {
        TrackMap added = Said(Heard, new Correction.AddBoundary(17));
        Assert.Equal([("A", 0), ("B", 16), ("C", 32)], added.Sections.Select(s => (s.Label, s.FirstBeat)));

        TrackMap removed = Said(Heard, new Correction.RemoveBoundary(9.4));
        Assert.Equal([new TrackSection(0, 48, "A", "", 0.8)], removed.Sections);
    }

    [Fact]
    public void A_boundary_near_one_that_was_heard_takes_its_place()
    {
        TrackMap said = Said(Heard, new Correction.AddBoundary(10));

        Assert.Equal([("A", 0), ("B", 18)], said.Sections.Select(s => (s.Label, s.FirstBeat)));
    }

    [Fact]
    public void A_section_gets_a_name_and_another_letter()
    {
        TrackMap said = TrackCorrections.None
            .And(new Correction.NameSection(9, null, "chorus"))
            .And(new Correction.NameSection(2, "V", null))
            .ApplyTo(Heard);

        Assert.Equal([("V", ""), ("B", "chorus")], said.Sections.Select(s => (s.Label, s.Name)));
        Assert.Equal(Heard.Beats, said.Beats);
    }

    [Fact]
    public void The_dance_starts_where_somebody_says()
    {
        TrackMap said = Said(Heard, new Correction.SetFirstCount(5.1));

        Assert.Equal(Estimate<int>.Said(8), said.FirstCount);
        Assert.Equal(1, said.Beats[8].Count);
    }

    [Fact]
    public void Corrections_survive_another_analysis()
    {
        // heard anew: the beats are a hair later, and the second section begins elsewhere
        TrackMap anew = Maps.Steady(1.02, Period, 20, 28);
        TrackCorrections said = TrackCorrections.None.And(new Correction.MoveBoundary(9, 11)).And(new Correction.NameSection(11, null, "chorus"));

        Assert.Equal(
            said.ApplyTo(Heard).Sections.Select(s => (s.FirstBeat, s.Name)),
            said.ApplyTo(anew).Sections.Select(s => (s.FirstBeat, s.Name)));
    }

    private static TrackMap Said(TrackMap map, Correction correction) => TrackCorrections.None.And(correction).ApplyTo(map);
}
