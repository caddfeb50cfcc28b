using Scuff.Analysis.Fit;
using Scuff.Dances;
using Scuff.Music;
using Scuff.Music.Corrections;
using Scuff.Prose;
using Tests.House;

namespace Tests.Analysis.Fit;

/// <summary>What cannot be fitted is left out, and said.</summary>
public sealed class PoorFitsTests
{
    [Fact]
    public void A_map_without_beats()
    {
        FitAnswer answer = Fit(Clean, new TrackMap { Title = "Silence", Seconds = 60 });

        Assert.Empty(answer.Plans);
        Assert.Null(answer.Kindest);
        Assert.Contains(FitRemark.NoBeats, answer.Remarks);
    }

    [Fact]
    public void A_track_shorter_than_the_dance()
    {
        FitAnswer answer = Fit(Clean, Maps.Of("A 12"));

        Assert.Contains(FitRemark.TrackShorterThanDance, answer.Remarks);
        FitWall wall = Assert.Single(answer.Kindest!.Walls);
        Assert.Equal(12, wall.Danced);
    }

    [Fact]
    public void A_dance_without_steps()
    {
        FitAnswer answer = Fit("Nothing Yet\n", Maps.Of("A 32"));

        Assert.Empty(answer.Plans);
        Assert.Contains(FitRemark.NoSteps, answer.Remarks);
    }

    [Fact]
    public void A_dance_with_words_that_could_not_be_read()
    {
        string text = Clean.Replace("7-8 rock R back, recover", "7-8 zibble the frump, recover", StringComparison.Ordinal);
        FitAnswer answer = Fit(text, Maps.Of("intro 16, A 64, B 34, A 64, B 64"));

        Assert.Contains(FitRemark.DanceHasUnknownWords, answer.Remarks);
        Assert.NotNull(answer.Kindest);
        Assert.NotEmpty(answer.Kindest.Walls);
    }

    [Fact]
    public void A_dance_that_does_not_repeat()
    {
        FitAnswer answer = Fit("Odd\n\nsection 1\n1-8 step R to side, step L together, step R to side, step L together, step R to side, step L together, step R to side, hold\n", Maps.Of("intro 16, A 64"));

        Assert.Contains(FitRemark.DanceDoesNotRepeat, answer.Remarks);
        Assert.Equal(8, answer.Kindest!.Walls.Count);
    }

    [Fact]
    public void A_waltz_to_common_time()
    {
        Dance waltz = DanceReader.Read(Repository.Read("demo/dances/slack-water-waltz.dance")).Dance;

        Assert.Contains(FitRemark.OtherMeter, new DanceFitter(waltz).Fit(Maps.Of("intro 16, A 64")).Remarks);
    }

    [Fact]
    public void Corrections_that_contradict_one_another_still_make_a_map_that_can_be_fitted()
    {
        TrackMap map = Maps.Of("intro 16, A 64, B 64");
        TrackMap said = new TrackCorrections([new Correction.SetMeter(Meter.Three), new Correction.SetMeter(Meter.Four), new Correction.SetFirstCount(9e9), new Correction.SetFirstCount(-4)])
            .ApplyTo(map);

        Assert.NotNull(new DanceFitter(DanceReader.Read(Clean).Dance).Fit(said).Kindest);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    public void A_map_of_hardly_any_beats(int beats)
    {
        TrackMap map = new()
        {
            Title = "Stub",
            Seconds = beats,
            Beats = [.. Enumerable.Range(0, beats).Select(i => new TrackBeat(i * 0.5, 0, 0))],
            Tempo = new Estimate<double>(120, 0.1),
        };

        Assert.NotNull(Fit(Clean, map).Kindest);
    }

    [Fact]
    public void Sections_that_lie_outside_the_beats_do_no_harm()
    {
        TrackMap map = Maps.Of("intro 16, A 64");
        TrackMap wild = map with { Sections = [.. map.Sections, new TrackSection(4000, 90, "Z", "", 1), new TrackSection(-5, 3, "Y", "", 1)], FirstCount = Estimate<int>.Said(9999) };

        Assert.NotNull(Fit(Clean, wild).Kindest);
    }

    private const string Clean = """
        Plain

        section 1
        1-4 rocking chair R
        5-6 step R to side, touch L together
        7-8 step L to side, touch R together

        section 2
        1-4 rocking chair R
        5-6 rock R forward, recover
        7-8 rock R back, recover
        """;

    private static FitAnswer Fit(string text, TrackMap map) => new DanceFitter(DanceReader.Read(text).Dance).Fit(map);
}
