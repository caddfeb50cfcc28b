using Scuff.Music;
using Scuff.Music.Labels;

namespace Tests.Music.Labels;

public sealed class LabelFileTests
{
    [Fact]
    public void A_track_survives_its_two_label_files()
    {
        TrackMap map = Maps.Steady(0.35, 0.5357, 32, 28, 32);
        map = map with { Sections = [map.Sections[0], map.Sections[1] with { Name = "verse two" }, map.Sections[2]] };

        TrackMap read = TrackLabels.ToMap(
            LabelFile.Read(LabelFile.Write(TrackLabels.BeatsOf(map))),
            LabelFile.Read(LabelFile.Write(TrackLabels.SectionsOf(map)))).Map!;

        Maps.AssertTimes(map.Beats.Select(b => b.Seconds), read.Beats.Select(b => b.Seconds));
        Assert.Equal(map.Beats.Select(b => (b.Count, b.BarPosition)), read.Beats.Select(b => (b.Count, b.BarPosition)));
        Assert.Equal(map.Sections.Select(s => (s.FirstBeat, s.Beats, s.Label, s.Name)), read.Sections.Select(s => (s.FirstBeat, s.Beats, s.Label, s.Name)));
        Assert.InRange(read.Tempo.Value, 111.9, 112.1);
    }

    [Fact]
    public void A_waltz_survives_as_well()
    {
        TrackMap map = TrackMapText.Read("tempo 96, 3/4, intro 24, A 48, B 51, A 48").Map!;

        TrackMap read = TrackLabels.ToMap(LabelFile.Read(LabelFile.Write(TrackLabels.BeatsOf(map))), LabelFile.Read(LabelFile.Write(TrackLabels.SectionsOf(map)))).Map!;

        Assert.Equal(Meter.Three, read.Meter.Value);
        Assert.Equal(map.Beats.Select(b => b.Count), read.Beats.Select(b => b.Count));
    }

    [Fact]
    public void What_editors_in_other_countries_write_is_read()
    {
        LabelReading read = LabelFile.Read("\uFEFFStart\tEnd\tName\r\n\r\n0,512000\t17,6\tI intro\r\n\\\t100,0\t200,0\r\n17.6\t34.7\tA\r\n34.7\t34.7\t\r\n");

        Assert.Empty(read.Troubles);
        Assert.Equal([new(0.512, 17.6, "I intro"), new(17.6, 34.7, "A"), new LabelLine(34.7, 34.7, "")], read.Lines);
    }

    [Fact]
    public void A_time_and_a_place_in_the_bar_are_points()
    {
        LabelReading read = LabelFile.Read("1.5\t1\n2.0\t2\n2.5\t3\n3.0\t1\n3.5\t2\n4.0\t3\n4.5\t1\n");
        TrackMap map = TrackLabels.ToMap(read, new LabelReading([], [])).Map!;

        Assert.Equal(Meter.Three, map.Meter.Value);
        Assert.Equal([1, 2, 3, 4, 5, 6, 1], map.Beats.Select(b => b.Count));
    }

    [Fact]
    public void Bare_times_are_beats_and_sections_give_the_counts()
    {
        string times = string.Concat(Enumerable.Range(0, 12).Select(i => FormattableString.Invariant($"{1 + (i * 0.5)}\n")));
        TrackMap map = TrackLabels.ToMap(LabelFile.Read(times), LabelFile.Read("2.01\t7\tA\n")).Map!;

        Assert.Equal([7, 8, 1, 2], map.Beats.Take(4).Select(b => b.Count));
        Assert.Equal(2, Assert.Single(map.Sections).FirstBeat);
    }

    [Theory]
    [InlineData("", 0, "no label")]
    [InlineData("1\t2\tA\nverse\t3\tB\n", 2, "\"verse\" is no time")]
    [InlineData("1\ttwo\tA\n", 1, "\"two\" is no time")]
    [InlineData("\n5\t2\tA\n", 2, "before it begins")]
    [InlineData("1\t2\tA\n-3\t4\tB\n", 2, "\"-3\" is no time")]
    [InlineData("1\t1e300\tA\n", 1, "is no time")]
    public void What_is_no_label_is_told_with_its_line(string text, int line, string words)
    {
        TextTrouble trouble = Assert.Single(LabelFile.Read(text).Troubles);

        Assert.Equal(line, trouble.Line);
        Assert.Contains(words, trouble.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_beats_in_one_place_are_told()
        => Assert.Contains("Two beats lie at 1.00", Assert.Single(TrackLabels.ToMap(LabelFile.Read("1\n1\n2\n"), new LabelReading([], [])).Troubles).ToString(), StringComparison.Ordinal);
}
