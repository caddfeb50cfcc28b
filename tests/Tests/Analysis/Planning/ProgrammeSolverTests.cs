using Scuff.Analysis.Planning;
using Scuff.Dances;
using Scuff.Solving;

namespace Tests.Analysis.Planning;

/// <summary>Programmes against brute force, and against what must hold.</summary>
public sealed class ProgrammeSolverTests
{
    // far more than a small evening needs; a proof ends the search
    private const double Seconds = 60;

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 60)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_exact_solver_finds_what_trying_every_programme_finds(int seed)
    {
        ProgrammeQuestion question = DrawnEvening.Draw(seed);
        ProgrammeModel model = new(question);
        int? best = model.Slots.Length == 0 ? null : DrawnEvening.BestOf(model);

        Programme found = new ExactProgrammeSolver().Solve(question, Seconds, TestContext.Current.CancellationToken);

        if (best is { } points)
        {
            Assert.Equal(points, found.Points);
            Assert.True(found.IsProven);
        }
        else if (model.Slots.Length > 0)
        {
            Assert.Contains(found.Missed, m => m.Kind == ProgrammeMissedKind.Together);
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Without_the_exact_solver_the_programme_is_never_better_than_the_best_and_mostly_as_good(int seed)
    {
        ProgrammeQuestion question = DrawnEvening.Draw(seed);
        ProgrammeModel model = new(question);
        if (model.Slots.Length == 0 || DrawnEvening.BestOf(model) is not { } best)
        {
            return;
        }

        int[]? chosen = ProgrammeSearch.Find(model, ProgrammeAnnealing.MovesFor(model), ProgrammeSearch.Rounds, () => 0);

        Assert.NotNull(chosen);
        Assert.InRange(ProgrammeScore.Of(model, chosen)!.Value, best - (Math.Abs(best) / 20), best);
        Assert.True(ProgrammeSearch.BoundOf(model) >= best);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_reasons_of_a_programme_add_up_to_its_points(int seed)
    {
        Programme found = new ProgrammeSearch().Solve(DrawnEvening.Draw(seed), Seconds, TestContext.Current.CancellationToken);

        Assert.Equal(found.Points, found.Items.SelectMany(i => i.Reasons).Concat(found.Common).Sum(r => r.Points));
    }

    [Fact]
    public void An_evening_of_three_hours_keeps_to_everything_she_decided()
    {
        ProgrammeQuestion question = Evening() with
        {
            Pins =
            [
                new ProgrammePin.At("d5", 0, 2), new ProgrammePin.Within("d9", 2), new ProgrammePin.Somewhere("d14"), new ProgrammePin.Never("d1"),
                new ProgrammePin.Closing("d3"), new ProgrammePin.Before("d14", "d9"),
            ],
        };

        Programme found = new ProgrammeSearch().Solve(question, Seconds, TestContext.Current.CancellationToken);

        ProgrammeItem[] dances = [.. found.Items.Where(i => i.SongKey.Length > 0)];
        Assert.Equal("d5", dances.Single(i => i is { Stretch: 0, Place: 2 }).DanceId);
        Assert.Equal(2, dances.Single(i => i.DanceId == "d9").Stretch);
        Assert.Equal("d3", dances[^1].DanceId);
        Assert.DoesNotContain(dances, i => i.DanceId == "d1");
        Assert.True(dances.Single(i => i.DanceId == "d14").Start < dances.Single(i => i.DanceId == "d9").Start);
        Assert.Equal(dances.Length, dances.Select(i => i.SongKey).Distinct().Count());
        Assert.Empty(found.Missed);
    }

    [Fact]
    public void The_lines_of_a_programme_follow_each_other_and_stay_within_their_stretches()
    {
        ProgrammeQuestion question = Evening();

        Programme found = new ProgrammeSearch().Solve(question, Seconds, TestContext.Current.CancellationToken);

        int begin = 0;
        for (int s = 0; s < question.Stretches.Count; s++)
        {
            int at = begin;
            foreach (ProgrammeItem item in found.Items.Where(i => i.Stretch == s))
            {
                Assert.Equal(at, item.Start);
                at += item.Seconds;
            }

            begin += question.Stretches[s].Seconds;
            Assert.InRange(at, begin - question.Stretches[s].Seconds + 1, begin);
        }
    }

    [Fact]
    public void A_dance_that_is_taught_is_danced_first_after_its_lesson_and_not_before()
    {
        ProgrammeQuestion question = Evening();

        Programme found = new ProgrammeSearch().Solve(question, Seconds, TestContext.Current.CancellationToken);

        ProgrammeItem danced = found.Items.Single(i => i.DanceId == "d7" && i.SongKey.Length > 0);
        Assert.Equal((2, 0), (danced.Stretch, danced.Place));
        Assert.Contains(danced.Reasons, r => r.Kind == ProgrammeReasonKind.JustTaught);
    }

    [Fact]
    public void Two_dances_go_to_one_song_at_once_where_each_suits_those_whom_the_other_leaves_out()
    {
        ProgrammeDance easy = Plain("easy", Level.Beginner) with { Shares = [90, 0], Songs = [new ProgrammeSong("both", "", 200, "")] };
        ProgrammeDance hard = Plain("hard", Level.Intermediate) with { Shares = [0, 90], Songs = [new ProgrammeSong("both", "", 200, "")] };
        ProgrammeQuestion question = new()
        {
            Stretches = [new() { Kind = StretchKind.Dancing, Seconds = 260 }],
            Groups = [new("Monday", Level.Beginner, 20), new("Tuesday", Level.Intermediate, 20)],
            Dances = [easy, hard],
        };

        Programme found = new ExactProgrammeSolver().Solve(question, Seconds, TestContext.Current.CancellationToken);
        Programme alone = new ExactProgrammeSolver().Solve(question with { MaySplit = false }, Seconds, TestContext.Current.CancellationToken);

        Assert.Equal(("easy", "hard"), (found.Items[0].DanceId, found.Items[0].OtherId));
        Assert.Equal("", alone.Items[0].OtherId);
    }

    [Fact]
    public void A_request_that_has_no_room_is_named_with_the_reason()
    {
        ProgrammeQuestion question = new()
        {
            Stretches = [new() { Kind = StretchKind.Dancing, Seconds = 260 }],
            Groups = [new("Monday", Level.Beginner, 20)],
            Dances =
            [
                Plain("first", Level.Beginner) with { Requests = 3 },
                Plain("same song", Level.Beginner) with { Requests = 1, Songs = [new ProgrammeSong("first", "", 200, "")] },
                Plain("later", Level.Beginner) with { Requests = 1 },
                Plain("no song", Level.Beginner) with { Requests = 1, Songs = [] },
                Plain("forbidden", Level.Beginner) with { Requests = 1 },
            ],
            Pins = [new ProgrammePin.Never("forbidden"), new ProgrammePin.Somewhere("nowhere")],
        };

        Programme found = new ExactProgrammeSolver().Solve(question, Seconds, TestContext.Current.CancellationToken);

        Assert.Equal("first", found.Items.Single().DanceId);
        Assert.Equal(ProgrammeMissedKind.WorthLess, KindOf("later"));
        Assert.Equal(ProgrammeMissedKind.NoSong, KindOf("no song"));
        Assert.Equal(ProgrammeMissedKind.Forbidden, KindOf("forbidden"));
        Assert.Equal(ProgrammeMissedKind.NotThere, KindOf("nowhere"));

        ProgrammeMissedKind KindOf(string id) => found.Missed.Single(m => m.DanceId == id).Kind;
    }

    [Fact]
    public void Decisions_that_cannot_hold_together_give_way_from_the_last_and_are_named()
    {
        ProgrammeQuestion question = Evening() with
        {
            Pins = [new ProgrammePin.At("d5", 0, 0), new ProgrammePin.At("d6", 0, 0), new ProgrammePin.Before("d9", "d5"), new ProgrammePin.Within("d9", 4)],
        };

        Programme found = new ExactProgrammeSolver().Solve(question, seconds: 8, TestContext.Current.CancellationToken);

        Assert.Equal("d5", found.Items[0].DanceId);
        Assert.Contains(found.Missed, m => m is { DanceId: "d6", Kind: ProgrammeMissedKind.PlaceTaken, OtherId: "d5" });
        Assert.Contains(found.Missed, m => m is { DanceId: "d9", Kind: ProgrammeMissedKind.Together });
    }

    [Fact]
    public void Nothing_to_dance_or_no_time_gives_a_programme_of_rests_alone()
    {
        ProgrammeQuestion empty = Evening() with { Dances = [] };
        ProgrammeQuestion brief = Evening() with { Stretches = [new() { Kind = StretchKind.Dancing, Seconds = 30 }] };

        Assert.Equal(2, new ExactProgrammeSolver().Solve(empty, Seconds, TestContext.Current.CancellationToken).Items.Count);
        Assert.Empty(new ExactProgrammeSolver().Solve(brief, Seconds, TestContext.Current.CancellationToken).Items);
        Assert.Empty(new ProgrammeSearch().Solve(brief, Seconds, TestContext.Current.CancellationToken).Items);
    }

    [Fact]
    public void What_was_danced_and_its_song_do_not_come_again()
    {
        ProgrammeQuestion question = Evening();
        string[] done = ["d1", "d2", "d3"];

        Programme found = new ProgrammeSearch().Solve(
            question with { Done = [.. done.Select(d => new ProgrammeDone(d, "", $"song {d}"))] }, Seconds, TestContext.Current.CancellationToken);

        Assert.DoesNotContain(found.Items, i => done.Contains(i.DanceId) || done.Contains(i.OtherId));
    }

    private static ProgrammeDance Plain(string id, Level level) => new()
    {
        Id = id,
        Title = id,
        Level = level,
        CountsPerMinute = 110,
        Songs = [new ProgrammeSong(id, id, 200, "")],
        Shares = [80, 60],
    };

    private static ProgrammeQuestion Evening() => new()
    {
        Stretches =
        [
            new() { Kind = StretchKind.Dancing, Seconds = 2400, EffortAtStart = 40, EffortAtEnd = 55 },
            new() { Kind = StretchKind.Lesson, Seconds = 1200, DanceId = "d7" },
            new() { Kind = StretchKind.Dancing, Seconds = 2700, EffortAtStart = 50, EffortAtEnd = 60 },
            new() { Kind = StretchKind.Rest, Seconds = 900 },
            new() { Kind = StretchKind.Dancing, Seconds = 2400, EffortAtStart = 60, EffortAtEnd = 40 },
        ],
        Groups = [new("Monday", Level.Beginner, 20), new("Tuesday", Level.Intermediate, 10)],
        Dances =
        [
            .. Enumerable.Range(0, 60).Select(i => Plain($"d{i}", (Level)(1 + (i % 3))) with
            {
                CountsPerMinute = 85 + (i * 7 % 70),
                Effort = 35 + (i * 5 % 40),
                Songs = [new ProgrammeSong($"song d{i}", "", 160 + (i * 11 % 100), "")],
                Shares = [i % 3 == 0 ? 90 : 40, i % 4 == 0 ? 30 : 80],
                Requests = i % 20 == 0 ? 1 : 0,
            }),
        ],
    };
}
