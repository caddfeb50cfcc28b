using Scuff;
using Scuff.Analysis.Fit;
using Scuff.Audio.Songs;
using Scuff.Dances;
using Scuff.Music;
using Scuff.Prose;
using Scuff.Stance;
using Scuff.Timing;
using Tests.House;

namespace Tests.Analysis.Fit;

public sealed class DanceFitterTests
{
    private static readonly string[] Planted =
        ["customs-house", "gull-on-the-rail", "lighthouse-keeper", "slack-water-waltz", "tin-lantern", "boathouse-switch", "net-loft"];

    public static TheoryData<string> Club => [.. Planted.Where(d => d != "net-loft").Append("ebb-and-flow").Append("moorings").Append("night-ferry")];

    [Fact]
    public void Music_in_even_phrases_needs_nothing()
    {
        FitAnswer answer = Fit("tin-lantern", "intro 32, A 32, B 32, B 32, A 32, B 32, B 32, A 32");

        FitPlan plan = Assert.Single(answer.Plans);
        Assert.Equal((0, 32, 0), (plan.Interruptions, plan.Intro, plan.Price));
        Assert.Equal([32, 64, 96, 128, 160, 192, 224], plan.Walls.Select(w => w.Begins));
        Assert.Empty(answer.Remarks);
    }

    // common practice, no source: the sixth repetition of a dance that turns a quarter right begins facing 3:00
    [Fact]
    public void The_sixth_wall_of_a_dance_that_turns_a_quarter_right_begins_at_three()
    {
        FitPlan plan = Fit("customs-house", "intro 16, A 32, A 32, A 32, A 32, A 32, A 32, A 32").Kindest!;

        Assert.Equal(["12:00", "3:00", "6:00", "9:00", "12:00", "3:00", "6:00"], plan.Walls.Select(w => w.Facing.ToString()));
    }

    [Fact]
    public void After_a_restart_the_walls_are_reckoned_and_not_counted()
    {
        // the dance is left before it has turned, so wall 4 begins where wall 3 did
        FitPlan plan = Fit("customs-house", "intro 16, A 64, B 16, A 64, A 64, A 64").Kindest!;

        FitBreak at = Assert.Single(plan.Breaks);
        Assert.Equal((3, 16, true), (at.Wall, at.After, at.Restarts));
        Assert.Equal(plan.Walls[2].Facing, plan.Walls[3].Facing);
        Assert.Equal(Facing.FromClock(6, 0), at.Facing);
    }

    [Fact]
    public void A_bar_too_many_is_a_tag_of_the_dance_when_it_has_one()
    {
        FitPlan plan = Fit("tin-lantern", "intro 32, A 32, B 36, A 32, B 64, A 64, B 64").Kindest!;

        FitBreak at = Assert.Single(plan.Breaks);
        Assert.Equal((2, true, 4), (at.Wall, at.IsAtEnd, at.Length));
        Assert.Equal("Lamps", Assert.IsType<InterruptionAct.PlayTag>(at.Written.Acts[0]).Name);
        Assert.Empty(plan.MadeTags);
    }

    [Fact]
    public void A_dance_without_tags_gets_one_that_keeps_the_foot()
    {
        Dance dance = Read("customs-house");
        FitPlan plan = new DanceFitter(dance).Fit(Maps.Of("intro 16, A 64, B 36, A 64, B 64, A 64")).Kindest!;

        FitBreak at = Assert.Single(plan.Breaks);
        Assert.Equal(4, at.Length);
        Assert.True(at.IsAtEnd);
        Assert.All(plan.Timeline.Stretches.Zip(plan.Timeline.Stretches.Skip(1)), pair => Assert.Equal(pair.First.WeightAfter, pair.Second.Weight));
        Assert.All(plan.Timeline.Stretches.Where(s => s.Plan.StartsWall), s => Assert.Equal(dance.Start, s.Weight));
    }

    [Fact]
    public void A_wall_begins_where_she_has_put_it()
    {
        TrackMap map = Maps.Of("intro 16, A 64, B 64, A 64, A 64");
        FitPlan free = new DanceFitter(Read("customs-house")).Fit(map).Kindest!;
        DanceFitter fitter = new(Read("customs-house"), new FitOptions { Pins = [new FitPin.Begins(96)] });

        FitPlan plan = fitter.Fit(map).Kindest!;

        Assert.DoesNotContain(96, free.Walls.Select(w => w.Begins));
        Assert.Contains(96, plan.Walls.Select(w => w.Begins));
        Assert.True(plan.IsProven && plan.Price > free.Price);
        Assert.Equal(plan.Price, plan.Items.Sum(i => i.Price));
    }

    // two eights before the likely start: 300 points for those, and up to 500 for the place
    [Theory]
    [InlineData(0.6, 550)]
    [InlineData(0.2, 675)]
    [InlineData(0.0, 800)]
    public void A_start_that_is_less_likely_pays_more(double confidence, int points)
    {
        TrackMap map = Maps.Of("intro 32, A 32, B 32, A 32, B 32, A 32") with { FirstCount = new Estimate<int>(32, 0.6, [new Alternative<int>(16, confidence)]) };

        FitPlan plan = new DanceFitter(Read("tin-lantern"), new FitOptions { Pins = [new FitPin.Begins(16)] }).Fit(map).Kindest!;

        Assert.Equal(points, plan.Items.Where(i => i.Reason == FitReason.StartsElsewhere).Sum(i => i.Price));
    }

    [Fact]
    public void Extra_counts_begin_where_she_has_put_them_and_nothing_interrupts_where_she_forbids_it()
    {
        TrackMap map = Maps.Of("intro 16, A 64, B 36, A 64, B 64, A 64");
        Dance dance = Read("customs-house");
        FitBreak free = Assert.Single(new DanceFitter(dance).Fit(map).Kindest!.Breaks);

        FitPlan moved = new DanceFitter(dance, new FitOptions { Pins = [new FitPin.Extra(free.Begins - 16)] }).Fit(map).Kindest!;
        FitPlan calm = new DanceFitter(dance, new FitOptions { Pins = [new FitPin.Undisturbed(free.Begins - 32, free.Begins + 8)] }).Fit(map).Kindest!;

        Assert.Contains(moved.Breaks, b => b.Begins == free.Begins - 16 && b.Length > 0);
        Assert.DoesNotContain(calm.Breaks, b => b.Begins >= free.Begins - 32 && b.Begins < free.Begins + 8);
    }

    [Fact]
    public void What_cannot_be_is_said_and_not_bent()
    {
        FitAnswer answer = new DanceFitter(Read("customs-house"), new FitOptions { Pins = [new FitPin.Begins(40), new FitPin.Extra(40)] })
            .Fit(Maps.Of("intro 16, A 64, B 64"));

        Assert.Empty(answer.Plans);
        Assert.Contains(FitRemark.NoPlanKeepsTo, answer.Remarks);
    }

    [Fact]
    public void A_dance_on_swung_music_has_its_ands_late()
    {
        TrackMap map = Maps.Of("intro 16, A 64, B 64") with { Swing = Estimate<double>.Said(2) };
        CountedMusic music = CountedMusic.Of(map, 1);

        ValueList<CountTime> times = music.Performed(16);

        Assert.Equal(-16, times[0].Count);
        Assert.Equal((2 * music.Counts) + 1, times.Count);
        CountTime and = times.Single(t => t.Count == 3.5);
        Assert.Equal(music.SecondsOf(19) + ((music.SecondsOf(20) - music.SecondsOf(19)) * 2 / 3), and.Seconds, 6);
        Assert.All(times.Zip(times.Skip(1)), pair => Assert.True(pair.First.Seconds < pair.Second.Seconds && pair.First.Count < pair.Second.Count));
    }

    [Fact]
    public void A_plan_with_an_ending_is_danced_to_the_front()
    {
        FitPlan plan = Fit("customs-house", "intro 16, A 64, B 64, A 64, A 40").Kindest!;

        Assert.NotNull(plan.Ending);
        Assert.Equal(Facing.Front, plan.WithEnding.FacingAfter);
    }

    // whatever is left of the music when it must be turned: a count or ten, a quarter or a half, with either foot free
    [Theory]
    [MemberData(nameof(Club))]
    public void Every_ending_made_is_at_the_front_on_the_last_beat_and_turns_as_it_says(string dance)
    {
        int made = 0;
        DanceFitter fitter = new(Read(dance));
        for (int left = 1; left <= 64; left += 3)
        {
            FitAnswer answer = fitter.Fit(Maps.Of($"intro 16, A 64, B 64, A 64, B {left}"));
            if (answer.Kindest is not { Ending: { IsHers: false } ending } plan)
            {
                continue;
            }

            made++;
            Assert.Equal(Facing.Front, plan.WithEnding.FacingAfter);
            Assert.Equal(Facing.Front, ending.Facing!.Value + ending.Turn);
            Assert.Equal(
                ending.Turn,
                ending.Written.Body!.Lines.SelectMany(l => l.Moves).SelectMany(m => m.Steps).Aggregate(Turn.None, (sum, s) => sum + s.Action.Turn));
            Assert.Equal(16 + 192 + left, ending.Begins + ending.Written.Body.Length.Value.Floor);
            Assert.True(ending.Written.Body.Length.Value.Floor <= 12);
        }

        Assert.True(made > 1, $"{made} endings were made");
    }

    // step and pivot are as good an end as a stomp, and better than standing about where there is no time for one
    [Fact]
    public void With_two_counts_left_the_pivot_is_the_end()
    {
        FitEnding ending = Fit("customs-house", "intro 16, A 64, B 64, A 64, B 10").Kindest!.Ending!;

        Assert.Equal((8, 2), (ending.After, ending.Written.Body!.Length.Value.Floor));
    }

    [Fact]
    public void A_stop_of_the_whole_band_can_be_stood_through()
    {
        TrackMap map = Maps.Of("intro 16, A 64, B 36, A 64, B 64, A 64");
        double end = map.Beats[16 + 64 + 36].Seconds;
        map = map with { Breaks = [new TrackBreak(end - 2, end, IsStop: true, 1)] };

        FitPlan plan = new DanceFitter(Read("customs-house")).Fit(map).Kindest!;

        Assert.IsType<InterruptionAct.Wait>(Assert.Single(plan.Breaks).Written.Acts[0]);

        // a dance with a tag of its own dances it
        Dance own = Read("tin-lantern");
        FitPlan danced = new DanceFitter(own).Fit(map).Kindest!;
        Assert.IsType<InterruptionAct.PlayTag>(Assert.Single(danced.Breaks).Written.Acts[0]);
    }

    [Theory]
    [InlineData("intro 32, A 32, B 36, A 32, B 64, A 16, B 64, A 64")]
    [InlineData("intro 16, A 34, B 32, A 34, B 64, A 64, B 64")]
    [InlineData("intro 16, A 64, B 8, A 64, B 64, A 64, B 72, A 64")]
    public void What_the_search_pays_is_what_the_plan_pays_item_by_item(string form)
    {
        foreach (string name in Planted.Where(n => n != "slack-water-waltz"))
        {
            DanceFitter fitter = new(Read(name));
            TrackMap map = Maps.Of(form);
            FitAnswer answer = fitter.Fit(map);
            CountedMusic music = CountedMusic.Of(map, answer.BeatsPerCount);
            ValueList<FitSolution> solutions = new FitSearch(fitter.ModelOf(music)).Solve(6);

            Assert.Equal(solutions.Select(s => s.Price), answer.Plans.Select(p => p.Price));
            Assert.All(answer.Plans, p => Assert.Equal(p.Interruptions, p.Items.Count(i => i.Reason is FitReason.Restart or FitReason.Tag or FitReason.Hold)));
        }
    }

    [Theory]
    [MemberData(nameof(PlantedDances))]
    public void Planted_breaks_are_found_with_the_true_map(string name)
    {
        DanceFitter fitter = new(Read(name) with { Tracks = [], Interruptions = [] });
        int right = 0;
        const int songs = 20;
        for (int i = 0; i < songs; i++)
        {
            Dance dance = fitter.Dance;
            PlantedSong song = PlantedSongs.Make($"test {name} {i}", dance.Length.Value.Floor, dance.BeatsPerBar == 3 ? 3 : 4, i % 4, fitter.RestartPlaces);
            FitPlan plan = fitter.Fit(Maps.Of(song.Recipe)).Kindest!;

            // a break is right where the next wall begins as it should
            right += plan.Breaks.Select(b => b.IsAtEnd || b.Restarts ? b.Begins + b.Length - plan.Begins : -1)
                .SequenceEqual(song.Breaks.Select(b => b.Count + b.Extra)) ? 1 : 0;
        }

        // the table over many more songs is in docs/performance.md
        Assert.True(right >= songs - 2, $"{right} of {songs}");
    }

    public static TheoryData<string> PlantedDances => [.. Planted];

    [Fact]
    public void The_demo_club_has_a_track_that_breaks_a_late_wall_in_its_middle()
    {
        DemoSong song = DemoSongs.All.Single(s => s.Dance == "customs-house" && s.Recipe.Title == "Nothing to Declare");
        Dance dance = Read("customs-house");
        FitAnswer answer = new DanceFitter(dance).Fit(Maps.Of(song.Recipe, song.Artist));

        FitBreak at = Assert.Single(answer.Kindest!.Breaks);
        Assert.Equal((5, 16, true), (at.Wall, at.After, at.Restarts));
        Assert.Equal(answer.Kindest.Price, answer.AsWritten!.Price);
        Assert.Equal("wall 5: after 16 restart [12:00]", TrackWriter.Sentence(at.Written));
    }

    [Fact]
    public void The_demo_club_has_another_track_for_it_that_needs_nothing()
    {
        DemoSong song = DemoSongs.All.Single(s => s.Dance == "customs-house" && s.Recipe.Title != "Nothing to Declare");

        FitPlan plan = new DanceFitter(Read("customs-house")).Fit(Maps.Of(song.Recipe, song.Artist)).Kindest!;

        Assert.Equal(0, plan.Interruptions);
        Assert.All(plan.Walls.Take(plan.Walls.Count - 1), w => Assert.True(w.Strength >= 80));
    }

    [Theory]
    [InlineData("tin-lantern", "intro 32, A 32, B 36, A 32, B 64, A 64, B 64")]
    [InlineData("customs-house", "intro 16, A 64, B 16, A 64, A 64, A 64")]
    [InlineData("customs-house", "intro 16, A 64, B 36, A 64, B 64, A 64")]
    [InlineData("gull-on-the-rail", "intro 16, A 34, B 32, A 34, B 64, A 64, B 64")]
    [InlineData("lighthouse-keeper", "intro 32, A 64, B 68, A 64, B 48, A 64, B 64, A 64")]
    [InlineData("boathouse-switch", "intro 32, A 32, B 40, A 32, B 24, A 64, B 64, A 64")]
    public void A_plan_written_into_the_text_is_danced_as_planned_and_checks_clean(string name, string form)
    {
        string text = Repository.Read($"demo/dances/{name}.dance");
        TrackMap map = Maps.Of(form);
        FitPlan plan = new DanceFitter(DanceReader.Read(text).Dance).Fit(map).Kindest!;

        string made = EditWriter.Apply(text, EditWriter.ToTextEdits(DanceReader.Read(text), new DanceEdit.WriteTrack(plan.Track, plan.MadeTags)));
        Draft draft = DanceReader.Read(made);

        FitPlan read = new DanceFitter(draft.Dance).Fit(map).AsWritten!;
        Assert.Equal(plan.Walls.Select(w => (w.Begins, w.Facing, w.Danced)), read.Walls.Select(w => (w.Begins, w.Facing, w.Danced)));
        Assert.Equal(plan.Price - (plan.MadeTags.Count == 0 ? 0 : MadePrice(plan)), read.Price);
        Assert.DoesNotContain(
            Scuff.Analysis.DanceAnalysis.Of(draft).Report.Complaints,
            c => c.Severity > Scuff.Diagnostics.Severity.Hint && c.Rule.Id.Split('/')[0] is "interruption" or "tag" or "reading" or "ending" or "weight");

        // once more changes nothing
        string again = EditWriter.Apply(made, EditWriter.ToTextEdits(draft, new DanceEdit.WriteTrack(plan.Track, [])));
        Assert.Equal(made, again);
    }

    [Fact]
    public void Half_time_is_taken_where_the_tempo_asks_for_it()
    {
        Dance dance = DanceReader.Read("Slow Tide\n\nrhythm: nightclub two-step\nbpm: 64\n\nsection 1\n1-8  rocking chair R, rocking chair R\n").Dance;

        FitAnswer answer = new DanceFitter(dance).Fit(Maps.Of("intro 32, A 64, B 64"));

        Assert.Equal(new Ratio(2, 1), answer.BeatsPerCount);
        Assert.Contains(FitRemark.CountedOtherwise, answer.Remarks);
        Assert.Equal(60, answer.Music.CountsPerMinute, 3);
    }

    [Fact]
    public void A_phrased_dance_follows_the_letters_of_the_music()
    {
        Dance dance = DanceReader.Read("""
            Two Parts

            part A
            section 1
            1-8   rocking chair R, rocking chair R
            section 2
            1-8   rocking chair R, rocking chair R
            section 3
            1-8   rocking chair R, rocking chair R
            section 4
            1-8   rocking chair R, rocking chair R

            part B
            section 1
            1-8   vine right, touch L, vine left, touch R
            section 2
            1-8   vine right, touch L, vine left, touch R

            sequence: A B A B
            """).Dance;

        FitPlan plan = new DanceFitter(dance).Fit(Maps.Of("intro 16, V 32, C 32, V 32, C 16, V 64, C 32")).Kindest!;

        Assert.Equal(["A", "B", "B", "A", "B", "A", "A", "B", "B"], plan.Walls.Select(w => w.Part).Take(9));
        Assert.Equal(0, plan.Interruptions);
    }

    [Fact]
    public void A_tag_between_parts_stands_in_their_order()
    {
        string text = Repository.Read("demo/dances/market-day.dance");
        TrackMap map = Maps.Of("intro 16, V 32, C 32, V 32, C 36, V 64, C 32");
        FitPlan plan = new DanceFitter(DanceReader.Read(text).Dance).Fit(map).Kindest!;

        FitBreak at = Assert.Single(plan.Breaks);
        Assert.True(at.IsInSequence);
        string made = EditWriter.Apply(text, EditWriter.ToTextEdits(DanceReader.Read(text), new DanceEdit.WriteTrack(plan.Track, plan.MadeTags)));
        Assert.Contains("sequence: A B B A B B tag \"Bell\" A A B B\n", made, StringComparison.Ordinal);
        FitPlan read = new DanceFitter(DanceReader.Read(made).Dance).Fit(map).AsWritten!;
        Assert.Equal(plan.Walls.Select(w => (w.Begins, w.Facing, w.Part)), read.Walls.Select(w => (w.Begins, w.Facing, w.Part)));
    }

    [Fact]
    public void Tracks_have_endings_of_their_own_and_quotations_and_holds_are_read()
    {
        Draft draft = DanceReader.Read("""
            Quoting

            section 1
            1-4 rocking chair R
            5-8 rocking chair R

            track: "One", 110 bpm, intro 16
            wall 2: after 8 repeat section 1 counts 5-8 [12:00]
            wall 4: after 8 hold 2 counts [12:00]
            ending: wall 5, after 4 counts: step R forward [12:00]

            track: "Two", 112 bpm, intro 16
            ending: wall 6, after 4 counts: step R forward [12:00]
            """);

        Assert.Equal([5, 6], draft.Dance.Tracks.Select(t => t.Ending!.Wall));
        Assert.Equal(new InterruptionAct.Quote("", 1, new CountSpan(Counts.FromWhole(4), Counts.FromWhole(8))), draft.Dance.Tracks[0].Interruptions[0].Acts[0]);
        Assert.Equal(new InterruptionAct.Wait(Counts.FromWhole(2)), draft.Dance.Tracks[0].Interruptions[1].Acts[0]);
        Assert.DoesNotContain(draft.Report.Complaints, c => c.Severity >= Scuff.Diagnostics.Severity.Question);
    }

    [Fact]
    public void Other_prices_make_another_plan()
    {
        Dance dance = Read("customs-house");
        TrackMap map = Maps.Of("intro 16, A 64, B 16, A 64, A 64, A 64");

        Assert.Equal(1, new DanceFitter(dance).Fit(map).Kindest!.Interruptions);
        Assert.Equal(0, new DanceFitter(dance, new FitOptions { Prices = new FitPrices { Interruption = 9000 } }).Fit(map).Kindest!.Interruptions);
    }

    [Fact]
    public void Beginners_pay_more_for_interruptions()
        => Assert.True(FitPrices.For(Level.AbsoluteBeginner).LevelPercent > FitPrices.For(Level.Improver).LevelPercent);

    // what was paid for tags that are now the dance's own
    private static int MadePrice(FitPlan plan)
    {
        FitPrices prices = new DanceFitter(plan.Dance).Prices;
        return plan.Timeline.Stretches.Count(s => plan.MadeTags.Any(t => t.Name == s.Plan.Name)) * (prices.MadeTag * prices.LevelPercent / 100);
    }

    private static FitAnswer Fit(string name, string form) => new DanceFitter(Read(name)).Fit(Maps.Of(form));

    private static Dance Read(string name) => DanceReader.Read(Repository.Read($"demo/dances/{name}.dance")).Dance;
}
