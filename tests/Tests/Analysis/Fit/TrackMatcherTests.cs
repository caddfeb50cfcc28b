using Scuff;
using Scuff.Analysis.Fit;
using Scuff.Dances;
using Scuff.Music;
using Scuff.Prose;
using Scuff.Stance;
using Scuff.Steps;
using Tests.House;

namespace Tests.Analysis.Fit;

public sealed class TrackMatcherTests
{
    [Fact]
    public void The_best_are_the_best_of_all_whatever_is_left_out_of_the_search()
    {
        Random dice = new(3);
        TrackMap[] maps =
        [
            .. Enumerable.Range(0, 120).Select(i =>
            {
                string form = "intro 32, " + string.Join(", ", Enumerable.Range(0, 6).Select(k => $"{(char)('A' + (k % 2))} {32 + (dice.Next(5) == 0 ? 4 * dice.Next(1, 5) : 0)}"));
                return Maps.Of(form, $"Track {i}") with { Tempo = new Estimate<double>(dice.Next(90, 150), 1) };
            }),
        ];
        TrackMatcher matcher = new(Read());

        ValueList<TrackMatch> ranked = matcher.Rank(maps, 10, 2);

        int[] all = [.. maps.Select(m => matcher.Of(m).Points).Order()];
        Assert.Equal(all.Take(10), ranked.Select(m => m.Points));
    }

    [Fact]
    public void The_same_tracks_are_ranked_the_same_whoever_works()
    {
        TrackMap[] maps = [.. Enumerable.Range(0, 40).Select(i => Maps.Of($"intro 16, A 32, B {32 + (4 * (i % 3))}, A 64", $"Track {i}"))];
        TrackMatcher matcher = new(Read());

        Assert.Equal(matcher.Rank(maps, 40, 1).Select(m => m.Map.Title), matcher.Rank(maps, 40, 4).Select(m => m.Map.Title));
    }

    [Fact]
    public void A_stop_is_met_by_a_stomp_where_a_foot_is_set_down_together()
    {
        Dance dance = DanceReader.Read("Stop\n\nsection 1\n1-2 step R to side, touch L together\n3-4 step L to side, step R together\n5-6 step L to side, touch R together\n7-8 step R to side, step L together\n").Dance;
        TrackMap map = Maps.Of("intro 16, A 64");

        FitAccent stomp = AccentAt(dance, map, 16 + 3);
        Assert.Equal((1, 1, "4", false), (stomp.Wall, stomp.Section, stomp.Count, stomp.Meets));
        Assert.Equal(ActionKind.Stomp, stomp.Suggested!.Kind);
        Assert.Equal(ActingFoot.Right, stomp.Suggested.Foot);

        FitAccent hold = AccentAt(dance, map, 16 + 8 + 1);
        Assert.Equal((2, "2", ActionKind.Hold), (hold.Wall, hold.Count, hold.Suggested!.Kind));

        Assert.Null(AccentAt(dance, map, 16 + 8 + 2).Suggested);
    }

    private static FitAccent AccentAt(Dance dance, TrackMap map, int beat)
    {
        double start = map.Beats[beat].Seconds;
        FitAnswer answer = new DanceFitter(dance).Fit(map with { Breaks = [new TrackBreak(start, start + 0.6, IsStop: true, 1)] });
        return Assert.Single(AccentFinder.Find(answer.Music, answer.Kindest!));
    }

    private static Dance Read() => DanceReader.Read(Repository.Read("demo/dances/customs-house.dance")).Dance;
}
