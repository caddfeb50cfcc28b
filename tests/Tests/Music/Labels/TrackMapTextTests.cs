using Scuff.Music;
using Scuff.Music.Labels;

namespace Tests.Music.Labels;

public sealed class TrackMapTextTests
{
    [Fact]
    public void A_map_is_written_by_hand()
    {
        MapReading reading = TrackMapText.Read("""
            # from the record sleeve
            title: Harbour Lights Out, live
            artist: The Demo Band
            tempo 112, first beat 0.35, 4/4, swing 2:1
            intro 32, A 32 verse, A 36 second verse
            sections B 32 C 16
            stop 41.5 to 43.6, length 2:20
            """);

        Assert.Empty(reading.Troubles);
        TrackMap map = reading.Map!;
        Assert.Equal(("Harbour Lights Out, live", "The Demo Band", 140), (map.Title, map.Artist, map.Seconds));
        Assert.Equal(148, map.Beats.Count);
        Assert.Equal(0.35 + (32 * 60 / 112.0), map.Beats[32].Seconds, 6);
        Assert.Equal(
            [("I", "intro", 0), ("A", "verse", 32), ("A", "second verse", 64), ("B", "", 100), ("C", "", 132)],
            map.Sections.Select(s => (s.Label, s.Name, s.FirstBeat)));
        Assert.Equal(Estimate<int>.Said(32), map.FirstCount);
        Assert.Equal(Estimate<double>.Said(2), map.Swing);
        Assert.Equal([new OddEight(96, 4, 8)], OddEight.In(map));
        Assert.Equal([new TrackBreak(41.5, 43.6, true, 1)], map.Breaks);
    }

    [Fact]
    public void Tempo_and_length_are_enough()
    {
        TrackMap map = TrackMapText.Read("tempo 120\nlength 1:00").Map!;

        Assert.Equal(121, map.Beats.Count);
        Assert.Empty(map.Sections);
        Assert.Equal(1, map.Beats[0].Count);
    }

    [Theory]
    [InlineData("", 0, "tempo is missing")]
    [InlineData("tempo 112", 0, "how long")]
    [InlineData("tempo fast\nA 32", 1, "not fast")]
    [InlineData("tempo 112\n\nA thirty", 3, "\"A thirty\" is not understood")]
    [InlineData("tempo 112\nA 32\nmeter 7/8", 3, "not 7/8")]
    [InlineData("tempo 112\nsections A B 32", 2, "not A B")]
    [InlineData("tempo 112, A 32, stop 9 to 4", 1, "not 9 to 4")]
    [InlineData("tempo 112, A 24000, B 24000", 0, "how long")]
    public void What_is_not_understood_is_told_with_its_line(string text, int line, string words)
    {
        MapReading reading = TrackMapText.Read(text);

        Assert.Null(reading.Map);
        TextTrouble trouble = Assert.Single(reading.Troubles);
        Assert.Equal(line, trouble.Line);
        Assert.Contains(words, trouble.Sentence, StringComparison.Ordinal);
    }
}
