using Scuff.Audio.Bars;
using Scuff.Audio.Phrases;
using Scuff.Music;

namespace Tests.Audio.Phrases;

/// <summary>Stops and sections are found where they were put.</summary>
public sealed class FinderTests
{
    [Fact]
    public void A_stop_lasts_from_its_last_hit_to_the_one_on_which_the_music_is_back()
    {
        double[] beats = MadeHearing.Beats(32);
        TrackBreak stop = Assert.Single(StopFinder.Find(beats, Counts(32), MadeHearing.At(beats, [], [], (12, 16))));
        Assert.Equal((beats[12], beats[16], true), (stop.Start, stop.End, stop.IsStop));
        Assert.InRange(stop.Confidence, 0.9, 1);
    }

    [Theory]
    [InlineData(15)]
    [InlineData(17)]
    public void A_stop_that_ends_a_beat_off_the_one_ends_on_it(int end)
    {
        double[] beats = MadeHearing.Beats(32);
        TrackBreak stop = Assert.Single(StopFinder.Find(beats, Counts(32), MadeHearing.At(beats, [], [], (12, end))));
        Assert.Equal(beats[16], stop.End);
    }

    [Fact]
    public void A_single_beat_without_sound_is_no_stop()
    {
        double[] beats = MadeHearing.Beats(32);
        Assert.Empty(StopFinder.Find(beats, Counts(32), MadeHearing.At(beats, [], [], (10, 11))));
        Assert.Empty(StopFinder.Find(beats, Counts(32), MadeHearing.At(beats, [], [])));
    }

    [Fact]
    public void Two_stops_are_two_in_order()
    {
        double[] beats = MadeHearing.Beats(64);
        TrackBreak[] stops = StopFinder.Find(beats, Counts(64), MadeHearing.At(beats, [], [], (12, 16), (44, 48)));
        Assert.Equal([beats[12], beats[44]], stops.Select(s => s.Start));
    }

    [Fact]
    public void Sections_begin_at_ones_where_a_start_was_heard()
        => Assert.Equal([0, 32, 64, 112], Sections(144, [0, 32, 64, 112]));

    [Fact]
    public void A_start_heard_beside_a_one_begins_no_section()
        => Assert.Equal([0, 32, 64], Sections(96, [0, 32, 45, 64]));

    [Fact]
    public void A_weak_start_after_two_bars_begins_no_section()
    {
        float[] start = Starts(96, [0, 32, 64]);
        start[72] = -0.5f;
        Assert.Equal([0, 32, 64], Beats(Find(new CountRow(Counts(96), 4, 0, start))));
    }

    [Fact]
    public void The_first_section_begins_at_the_first_one()
    {
        int[] counts = [7, 8, .. Counts(32)];
        Assert.Equal([2], Beats(Find(new CountRow(counts, 4, 0, Starts(34, [])))));
        Assert.Empty(Find(new CountRow([2, 3, 4], 4, 0, Starts(3, []))));
        Assert.Empty(Find(new CountRow([], 4, 0, [])));
    }

    [Fact]
    public void A_start_where_lengths_fit_is_surer_than_what_was_heard_of_it()
    {
        // -1.5 alone is a chance of less than one in five; that both sides then are eight bars long makes it likely
        float[] start = Starts(96, [0, 64]);
        start[32] = -1.5f;
        SectionStart[] found = Find(new CountRow(Counts(96), 4, 0, start));
        Assert.Equal([0, 32, 64], Beats(found));
        Assert.InRange(found[1].Confidence, 0.6, 0.95);
        Assert.InRange(found[2].Confidence, found[1].Confidence, 1);
    }

    [Fact]
    public void Half_a_verse_is_a_section_in_slow_music_and_none_in_fast()
    {
        // a faint start in the middle of each sixteen bars: of eleven seconds each it is half a verse, of twenty-three a verse
        float[] start = Starts(192, [0, 32, 96, 160]);
        start[64] = start[128] = -1.7f;
        CountRow counts = new(Counts(192), 4, 0, start);
        Assert.Equal([0, 32, 96, 160], Beats(SectionFinder.Find(counts, Every(0.34, 192))));
        Assert.Equal([0, 32, 64, 96, 128, 160], Beats(SectionFinder.Find(counts, Every(0.7, 192))));
    }

    [Fact]
    public void An_intro_may_be_short()
    {
        float[] start = Starts(96, [0, 16, 64]);
        start[16] = 0;
        Assert.Equal([0, 16, 64], Beats(SectionFinder.Find(new CountRow(Counts(96), 4, 0, start), Every(0.4, 96))));
    }

    // at two beats a second
    private static SectionStart[] Find(CountRow counts) => SectionFinder.Find(counts, Every(0.5, counts.Counts.Length));

    private static double[] Every(double seconds, int beats) => [.. Enumerable.Range(0, beats).Select(i => i * seconds)];

    private static int[] Sections(int beats, int[] starts) => Beats(Find(new CountRow(Counts(beats), 4, 0, Starts(beats, starts))));

    private static int[] Beats(SectionStart[] found) => [.. found.Select(f => f.Beat)];

    private static int[] Counts(int beats) => [.. Enumerable.Range(0, beats).Select(i => (i % 8) + 1)];

    private static float[] Starts(int beats, int[] at) => [.. Enumerable.Range(0, beats).Select(i => at.Contains(i) ? 3f : -4f)];
}
