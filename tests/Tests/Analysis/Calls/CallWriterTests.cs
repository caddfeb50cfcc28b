using Scuff.Analysis;
using Scuff.Analysis.Calls;
using Scuff.Dances;
using Scuff.Prose;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;
using Tests.House;
using Tests.Prose;

namespace Tests.Analysis.Calls;

public sealed class CallWriterTests(ITestOutputHelper output)
{
    private const double Near = 1e-6;

    private const string Lamps = """
        Tide Lamps

        counts: 32
        walls: 4

        section 1: out and home
        1-4   vine right, touch L
        5-8   vine left, touch R

        section 2: over the bar
        1-2   rock R forward, recover
        3&4   right coaster step
        5-6   step L forward, pivot 1/2 right
        7&8   shuffle L forward

        section 3: box
        1-4   jazz box R turning 1/4 right
        5-8   rocking chair R

        section 4: home
        1-2   step R to side, touch L together
        3-4   step L to side, touch R together
        5-6   step R to side, touch L together
        7-8   step L to side, touch R together

        tag "Lamps" 4 counts
        1-4   sway R, sway L, sway R, sway L

        track: "Quay Road", 100 bpm, intro 32
        wall 2: after 32 tag "Lamps"
        wall 4: after 16 restart, with count 8: stomp L together
        """;

    public static TheoryData<string> Dances => [.. SeedTexts.Demo.Select(d => d.Name)];

    // Published limits: trade notes on teaching, section 2 (common practice, after group fitness training): a call comes before its move; two short words
    // a beat at most at 120 beats a minute; one word on the beat before, two or three from two beats before, four to six from four beats before.
    [Theory]
    [MemberData(nameof(Dances))]
    public void Every_call_ends_before_its_move_and_none_overlaps_at_any_tempo(string name)
    {
        DanceAnalysis analysis = Analyse(SeedTexts.Demo.Single(d => d.Name == name).Text);
        foreach (int tempo in (ReadOnlySpan<int>)[60, 80, 100, 112, 120, 140, 160, 180, 200])
        {
            foreach (CallHelp help in Enum.GetValues<CallHelp>())
            {
                foreach (Timeline timeline in analysis.TrackTimelines.Select(t => t.Timeline).Append(analysis.PlainTimeline))
                {
                    CallScript script = CallWriter.Write(analysis.Dance, timeline, CountClock.Even(tempo), new CallOptions { HelpByWall = [help] });
                    CheckPlaces(script, tempo);
                }
            }
        }
    }

    private static void CheckPlaces(CallScript script, int tempo)
    {
        double until = double.NegativeInfinity;
        foreach (Call call in script.Calls)
        {
            double due = call.For.Value.ToDouble();
            Assert.True(call.Seconds >= until, $"'{call.Words}' begins before the one before it ends.");
            Assert.True(call.At >= -8 - Near, $"'{call.Words}' begins before the count-in.");
            until = call.Until;
            if (call.Kind == CallKind.CountIn && char.IsAsciiDigit(call.Words[0]) && call.Words.Length == 1)
            {
                Assert.Equal(due, call.At, Near);
                Assert.True(call.Until <= call.Due + (60.0 / tempo), $"'{call.Words}' lasts beyond its count.");
                continue;
            }

            Assert.True(call.Until < call.Due, $"'{call.Words}' ends after its move begins at {tempo}.");
            double words = SpokenLength.WordsIn(call.Words);
            double beats = due - call.At;
            Assert.True(words <= (2 * beats * Math.Min(1, 120.0 / tempo)) + Near, $"'{call.Words}' has {words} words in {beats} beats at {tempo}.");
            Assert.True(words <= 6, $"'{call.Words}' is longer than a breath.");
        }
    }

    [Fact]
    public void Nearly_every_figure_is_called_at_class_tempo()
    {
        // what share of the moves of the first wall gets words, by tempo; written down because nobody can say a word a step at 200
        foreach ((int tempo, double least) in ((int, double)[])[(80, 0.98), (100, 0.95), (120, 0.90), (160, 0.75), (200, 0.55)])
        {
            int said = 0;
            int all = 0;
            foreach ((_, string text) in SeedTexts.Demo)
            {
                DanceAnalysis analysis = Analyse(text);
                CallOptions every = new() { HelpByWall = [CallHelp.EveryStep] };
                Timeline timeline = analysis.PlainTimeline;
                all += CallItems.Of(analysis.Dance, timeline, every).Count(i => i.Kind == CallKind.Move);
                said += CallWriter.Write(analysis.Dance, timeline, CountClock.Even(tempo), every).Calls.Count(c => c.Kind == CallKind.Move);
            }

            output.WriteLine($"{tempo}: {said} of {all} moves called ({100.0 * said / all:0.0} %)");
            Assert.True(said >= least * all, $"At {tempo} only {said} of {all} moves are called.");
        }
    }

    [Fact]
    public void A_class_hears_the_count_in_the_first_move_and_then_less_wall_by_wall()
    {
        DanceAnalysis analysis = Analyse(Lamps);
        Timeline timeline = analysis.TrackTimelines.Single().Timeline;

        CallScript script = CallWriter.Write(analysis.Dance, timeline, CountClock.Even(100));

        Assert.Equal(["vine right", "5", "6", "7", "8"], script.Calls.Take(5).Select(c => c.Words));
        Assert.Equal(
            ["vine right", "touch", "vine left", "touch", "right rock", "recover", "coaster", "forward", "pivot half right", "shuffle", "jazz box quarter", "rocking chair",
                "right side", "touch", "side", "touch", "side", "touch", "side", "touch"],
            script.Calls.Where(c => c is { Wall: 1, Kind: CallKind.Move }).Select(c => c.Words));
        Assert.Equal(["out and home", "over the bar", "box", "home"], script.Calls.Where(c => c is { Wall: 2, Kind: CallKind.Heading }).Select(c => c.Words));
        Assert.DoesNotContain(script.Calls, c => c is { Wall: > 3, Kind: CallKind.Heading });
    }

    [Fact]
    public void Tags_restarts_new_walls_and_the_last_one_are_announced_ahead()
    {
        DanceAnalysis analysis = Analyse(Lamps);
        Timeline timeline = analysis.TrackTimelines.Single().Timeline;

        CallScript script = CallWriter.Write(analysis.Dance, timeline, CountClock.Even(100), new CallOptions { HelpByWall = [CallHelp.Warnings] });

        // the tag stands after 64 counts; the second warning repeats the first, as the trade's timing table has it: eight beats ahead, then two
        Call[] tag = [.. script.Calls.Where(c => c.Kind == CallKind.Tag)];
        Assert.Equal(["tag coming", "tag"], tag.Select(c => c.Words));
        Assert.Equal([64.0, 64.0], tag.Select(c => c.For.Value.ToDouble()));
        Assert.InRange(tag[0].At, 55.5, 57);
        Assert.InRange(tag[1].At, 61.5, 63);

        // wall 4 is cut after 16: 64 + 4 + 32 + 16
        Call[] restart = [.. script.Calls.Where(c => c.Kind == CallKind.Restart)];
        Assert.Equal(["restart coming", "restart"], restart.Select(c => c.Words));
        Assert.Equal([116.0, 116.0], restart.Select(c => c.For.Value.ToDouble()));

        // what is danced differently before it is said even where nothing else is
        Assert.Contains(script.Calls, c => c is { Kind: CallKind.Move, Words: "stomp", Wall: 4 });
        Assert.Contains(script.Calls, c => c is { Kind: CallKind.NewWall, Wall: 2 });
        Call last = Assert.Single(script.Calls, c => c.Kind == CallKind.LastOne);
        Assert.Equal(timeline.Walls, last.Wall);
    }

    [Fact]
    public void A_dance_of_one_wall_has_no_new_wall()
    {
        DanceAnalysis analysis = Analyse("Still\n\nwalls: 1\n\nsection 1\n1-4  vine right, touch L\n5-8  vine left, touch R\n");
        Timeline timeline = Unroller.Unroll(analysis.Dance, PlanBuilder.ForMusic(analysis.Dance, new Track { Title = "x", Span = default, Line = 1 }, 64));

        CallScript script = CallWriter.Write(analysis.Dance, timeline, CountClock.Even(100), new CallOptions { HelpByWall = [CallHelp.Warnings] });

        Assert.Equal(["5", "6", "7", "8", "last one"], script.Calls.Select(c => c.Words));
    }

    [Fact]
    public void A_waltz_is_counted_in_in_three()
    {
        DanceAnalysis analysis = Analyse(Repository.Read("demo/dances/slack-water-waltz.dance"));

        CallScript script = CallWriter.Write(analysis.Dance, analysis.PlainTimeline, CountClock.Even(90));

        Assert.Equal(["4", "5", "6"], script.Calls.Where(c => c.Kind == CallKind.CountIn && c.Words.Length == 1).Select(c => c.Words));
        Assert.Equal(6, script.CountIn);
    }

    [Fact]
    public void Her_own_words_take_the_place_of_ours_and_nothing_keeps_still()
    {
        string text = Lamps
            .Replace("section 1: out and home\n", "section 1: out and home\ncall: away we go\n", StringComparison.Ordinal)
            .Replace("5-8   vine left, touch R\n", "5-8   vine left, touch R\n      call: and home again\n", StringComparison.Ordinal)
            .Replace("3&4   right coaster step\n", "3&4   right coaster step\n      call 3&4: nothing\n", StringComparison.Ordinal)
            .Replace("tag \"Lamps\" 4 counts\n", "tag \"Lamps\" 4 counts\ncall: lamps\n", StringComparison.Ordinal);
        DanceAnalysis analysis = Analyse(text);
        Assert.DoesNotContain(analysis.Report.Complaints, c => c.Rule.Id.StartsWith("reading/", StringComparison.Ordinal) || c.Rule.Id.StartsWith("call/", StringComparison.Ordinal));
        Timeline timeline = analysis.TrackTimelines.Single().Timeline;

        CallScript script = CallWriter.Write(analysis.Dance, timeline, CountClock.Even(100));

        Call hers = Assert.Single(script.Calls, c => c is { Wall: 1, Words: "and home again" });
        Assert.True(hers.IsHers);
        Assert.Equal(4, hers.For.Value.ToDouble());
        Assert.Equal("      call: and home again".Trim(), text.Substring(hers.Span.Start, hers.Span.Length).Trim());
        Assert.DoesNotContain(script.Calls, c => c is { Wall: 1, Words: "coaster" });
        Assert.Contains(script.Calls, c => c is { Wall: 2, Kind: CallKind.Heading, Words: "away we go" });
        Assert.Equal(["lamps coming", "lamps"], script.Calls.Where(c => c.Kind == CallKind.Tag).Select(c => c.Words));
    }

    [Fact]
    public void Calls_of_her_own_outlive_tidying()
    {
        string text = Lamps.Replace("5-8   vine left, touch R\n", "5-8   vine left, touch R\n      call 5: and home again\n", StringComparison.Ordinal);

        string tidy = DanceWriter.Tidy(DanceReader.Read(text));

        Assert.Contains("call 5: and home again", tidy, StringComparison.Ordinal);
        Assert.Equal(DanceReader.Read(text).Dance.Parts[0].Sections[0].Calls.Select(c => (c.Counts, c.Words)),
            DanceReader.Read(tidy).Dance.Parts[0].Sections[0].Calls.Select(c => (c.Counts, c.Words)));
    }

    [Fact]
    public void Words_that_have_no_room_are_told()
    {
        string text = Lamps.Replace("5-8   vine left, touch R\n", "5-8   vine left, touch R\n      call: and now all the way back home to where the lamps of the harbour are lit and the boats come in from the sea in the evening\n", StringComparison.Ordinal);
        DanceAnalysis analysis = Analyse(text);

        CallScript script = CallWriter.Write(analysis.Dance, analysis.PlainTimeline, CountClock.Even(100), new CallOptions { HelpByWall = [CallHelp.EveryStep] });

        Assert.All(script.Unsaid, c => Assert.StartsWith("and now all", c.Words, StringComparison.Ordinal));
        Assert.NotEmpty(script.Unsaid);
        Assert.Contains(analysis.Report.Complaints, c => c.Rule.Id == "call/too-long");
    }

    [Fact]
    public void Words_that_could_not_be_read_are_passed_over()
    {
        DanceAnalysis analysis = Analyse("Odd\n\nsection 1\n1-4  glimber the wimble\n5-8  vine right, touch L\n");

        CallScript script = CallWriter.Write(analysis.Dance, analysis.PlainTimeline, CountClock.Even(100));

        Assert.Contains(script.Calls, c => c.Words == "vine right");
        Assert.DoesNotContain(script.Calls, c => c.Words.Contains("glimber", StringComparison.Ordinal));
    }

    [Fact]
    public void A_dance_without_counts_has_nothing_to_call()
    {
        DanceAnalysis analysis = Analyse("Empty\n");

        Assert.Empty(CallWriter.Write(analysis.Dance, analysis.PlainTimeline, CountClock.Even(100)).Calls);
    }

    [Fact]
    public void Every_entry_of_the_catalogue_can_be_called_on_both_feet()
    {
        CallWording wording = new(CallWords.English);
        List<string> wordless = [];
        foreach (StepDefinition step in StepCatalogue.Default.Definitions)
        {
            foreach (Foot named in (ReadOnlySpan<Foot>)[Foot.Left, Foot.Right])
            {
                WrittenMove move = new()
                {
                    Definition = step,
                    Named = named,
                    Steps = [.. step.Rows.Select(r => new WrittenStep(new WrittenCount(r.Label, r.At), Counts.One, r.For(named), default, 1))],
                    Span = default,
                    Words = step.Name,
                };
                List<string> words = wording.Of(move, saysFoot: true);
                if (words.Count == 0)
                {
                    wordless.Add(step.Id);
                }

                Assert.Equal(words.Distinct(), words);
            }
        }

        Assert.Empty(wordless);
    }

    [Fact]
    public void Every_action_has_a_word_and_every_word_of_the_file_is_short()
    {
        foreach (ActionKind kind in Enum.GetValues<ActionKind>().Where(k => k != ActionKind.Unknown))
        {
            Assert.NotEmpty(CallWords.English.Of(kind));
        }

        Assert.All(CallWords.English.All, words => Assert.InRange(SpokenLength.WordsIn(words), 1, 3));
    }

    [Fact]
    public void A_track_that_is_slower_in_its_middle_has_its_calls_there()
    {
        CountClock clock = CountClock.Of([new(-8, 1), new(0, 5), new(16, 13), new(32, 25)]);

        Assert.Equal(9, clock.SecondsAt(8), 9);
        Assert.Equal(19, clock.SecondsAt(24), 9);
        Assert.Equal(28, clock.SecondsAt(36), 9);
        Assert.Equal(0.5, clock.SecondsAt(-9), 9);
        Assert.Equal(24, clock.CountAt(clock.SecondsAt(24)), 9);
        Assert.Equal(clock.SecondsAt(24) / 0.8, clock.AtSpeed(0.8).SecondsAt(24), 9);
        Assert.Throws<ArgumentException>(() => CountClock.Of([new(0, 1), new(1, 1)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => CountClock.Even(0));
    }

    // Exact: no way to say some of the items, tried one by one without dropping any, is worth more.
    [Fact]
    public void The_placement_is_as_good_as_every_way_tried()
    {
        Random random = new(7);
        CountClock clock = CountClock.Even(130);
        CallOptions options = new();
        for (int round = 0; round < 300; round++)
        {
            List<CallItem> items = [];
            int at = 0;
            for (int i = random.Next(1, 6); i > 0; i--)
            {
                at += random.Next(0, 3);
                string[] words = ["vine right quarter", "vine right", "coaster", "side", "together", "tag coming"];
                items.Add(new CallItem
                {
                    Kind = CallKind.Move,
                    Wordings = [.. words.OrderBy(_ => random.Next()).Take(random.Next(1, 4))],
                    For = Counts.FromWhole(at),
                    Latest = at,
                    Worth = random.Next(1, 10),
                    Wall = 1,
                });
            }

            CallPlacement placement = new(clock, options);
            double best = Best(placement, CallPlacement.InOrder(items), 0, double.NegativeInfinity);
            Assert.Equal(best, placement.WorthOf(items), Near);
        }
    }

    private static double Best(CallPlacement placement, List<CallItem> items, int from, double said)
    {
        if (from == items.Count)
        {
            return 0;
        }

        double best = Best(placement, items, from + 1, said);
        foreach (CallPlacement.Way way in placement.WaysOf(items[from]))
        {
            if (placement.After(way, said) is { } moment)
            {
                best = Math.Max(best, moment.Worth + Best(placement, items, from + 1, moment.End));
            }
        }

        return best;
    }

    private static DanceAnalysis Analyse(string text) => DanceAnalysis.Of(DanceReader.Read(text));
}
