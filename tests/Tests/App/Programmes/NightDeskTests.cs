using Scuff.Analysis.Planning;
using Scuff.App.Clubs;
using Scuff.App.Memory;
using Scuff.App.Programmes;
using Scuff.Repertoire;
using Tests.Prose;

namespace Tests.App.Programmes;

/// <summary>Programmes made from a club with classes and dances of the harbour town.</summary>
public sealed class NightDeskTests : IDisposable
{
    private static readonly DateOnly Day = new(2026, 12, 5);

    private readonly DirectoryInfo _place = Directory.CreateTempSubdirectory("scuff-night-");
    private readonly Club _club;
    private readonly NightDesk _desk = new(new ProgrammeSearch());
    private readonly Dictionary<string, string> _ids = [];

    public NightDeskTests()
    {
        _club = Club.Open(_place.FullName, TimeProvider.System, new DanceFactReader());
        foreach ((string name, string text) in SeedTexts.Demo.Select(d => (d.Name, d.Text)))
        {
            _ids[Path.GetFileNameWithoutExtension(name)] = _club.Dances.Add(text, Hands.Import).Id;
        }
    }

    public void Dispose()
    {
        _club.Dispose();
        _place.Delete(recursive: true);
    }

    [Fact]
    public void A_programme_fills_the_evening_with_dances_that_those_there_can_dance_each_song_once()
    {
        EveningProgramme programme = Planned(Plan());

        EveningItem[] dances = [.. programme.Items.Where(i => i.SongKey.Length > 0)];
        Assert.InRange(dances.Length, 12, 40);
        Assert.Equal(dances.Length, dances.Select(d => d.SongKey).Distinct().Count());
        Assert.All(dances, d => Assert.True(d.FloorShare >= ProgrammeRules.Usual.LeastFloor, d.Title));
        Assert.All(dances, d => Assert.True(d.Start + d.Seconds <= 120 * 60));
        Assert.True(programme.Points <= programme.Bound);
    }

    [Fact]
    public void Rests_and_lessons_lie_where_she_put_them_and_the_new_dance_is_danced_right_after()
    {
        EveningProgramme programme = Planned(Plan() with
        {
            Stops = [new EveningStop { AtMinute = 30, Minutes = 20, IsLesson = true, DanceId = _ids["tin-lantern"] }, new EveningStop { AtMinute = 80, Minutes = 15 }],
        });

        EveningItem lesson = programme.Items.Single(i => programme.Stretches[i.Stretch].Kind == StretchKind.Lesson);
        EveningItem rest = programme.Items.Single(i => programme.Stretches[i.Stretch].Kind == StretchKind.Rest);
        Assert.Equal((30 * 60, 20 * 60), (lesson.Start, lesson.Seconds));
        Assert.Equal((80 * 60, 15 * 60), (rest.Start, rest.Seconds));
        Assert.Equal(_ids["tin-lantern"], programme.Items[programme.Items.ToList().IndexOf(lesson) + 1].DanceId);
    }

    [Fact]
    public void What_she_decides_holds_and_every_line_has_a_sentence()
    {
        EveningPlan plan = EveningChange.Forbid(EveningChange.Pin(Plan(), _ids["net-loft"], 0, 1), _ids["first-tide"]) with { ClosingId = _ids["moorings"] };

        plan = plan with { Programme = Planned(plan) };

        EveningItem[] dances = [.. plan.Programme!.Items.Where(i => i.SongKey.Length > 0)];
        Assert.Equal(_ids["net-loft"], dances[1].DanceId);
        Assert.Equal(_ids["moorings"], dances[^1].DanceId);
        Assert.DoesNotContain(dances, d => d.DanceId == _ids["first-tide"]);
        EveningWords words = _desk.Words(_club, Evening, plan);
        Assert.All(words.Items, w => Assert.NotEmpty(w));
        Assert.Contains("You put it here.", words.Items[1]);
    }

    [Fact]
    public void Pinning_the_line_that_closes_keeps_it_at_the_end()
    {
        EveningPlan plan = Plan() with { Programme = Planned(Plan()) };
        EveningItem last = plan.Programme!.Items[^1];

        EveningProgramme again = Planned(EveningChange.Pin(plan, last.DanceId, last.Stretch, last.Place));

        Assert.Equal(last.DanceId, again.Items[^1].DanceId);
        Assert.True(again.Items[^1].IsPinned);
    }

    [Fact]
    public void The_rest_of_a_night_leaves_out_what_was_danced_and_ends_in_time()
    {
        EveningPlan plan = Plan() with { Programme = Planned(Plan()) };
        DateTimeOffset begun = new(Day.ToDateTime(new TimeOnly(19, 30)), TimeSpan.Zero);
        plan = NightRun.Begin(plan, begun);
        string[] done = [.. plan.Programme!.Items.Take(4).Select(i => i.DanceId)];
        for (int i = 0; i < done.Length; i++)
        {
            plan = NightRun.Tick(plan, plan.Programme!.Items[0].Start, begun.AddMinutes(5 * (i + 1)))!;
        }

        EveningProgramme rest = _desk.Plan(_club, Evening, NightRun.Asked(plan, begun, 25 * 60), 25 * 60, 5, TestContext.Current.CancellationToken);

        Assert.DoesNotContain(rest.Items, i => done.Contains(i.DanceId));
        Assert.All(rest.Items, i => Assert.True(i.Start >= 25 * 60 && i.Start + i.Seconds <= 120 * 60));
        Assert.Equal(4, rest.Items[0].Place);
    }

    [Fact]
    public void A_class_gets_what_it_is_about_to_forget()
    {
        ClubClass held = _club.Book.SaveClass(new ClubClass { Title = "Monday", Level = "improver", People = 12 });
        foreach (string name in new[] { "tin-lantern", "net-loft", "moorings", "gangplank", "ebb-and-flow", "anchor-watch" })
        {
            Danced(held, name, Day.AddDays(-7), Knowing.KnowsAlone);
        }

        Danced(held, "market-day", Day.AddDays(-60), Knowing.KnowsTheStart);

        IReadOnlyList<RememberedDance> next = new RevisionDesk().Next(_club, held.Id, Day);
        EveningProgramme programme = Planned(Plan() with { Groups = [new EveningGroup { ClassId = held.Id }], RevisionMinutes = 15 });

        Assert.Equal(_ids["market-day"], next[0].DanceId);
        Assert.Contains("eight weeks ago", next[0].Reason, StringComparison.Ordinal);
        EveningItem revised = programme.Items.Single(i => i.DanceId == _ids["market-day"]);
        Assert.Contains(revised.Reasons, r => r.Kind == ProgrammeReasonKind.Due);
    }

    [Fact]
    public void What_a_class_knows_of_a_new_dance_is_said_by_the_feet()
    {
        string copy = _club.Dances.Add(SeedTexts.Demo.Single(d => d.Name.StartsWith("tin-lantern", StringComparison.Ordinal)).Text.Replace("Tin Lantern", "Tin Lamp", StringComparison.Ordinal), "page").Id;

        IReadOnlyList<string> known = new LikenessDesk().KnownAlready(_club, copy, [_ids["tin-lantern"], _ids["net-loft"]]);

        Assert.StartsWith("It is nearly the same as “Tin Lantern”", known[0], StringComparison.Ordinal);
        Assert.Contains(known, k => k.StartsWith("They know section 1 already from section 1 of “Tin Lantern”", StringComparison.Ordinal));
    }

    [Fact]
    public void What_moved_is_told_dance_by_dance()
    {
        EveningProgramme before = Planned(Plan());
        EveningItem[] dances = [.. before.Items];
        EveningProgramme after = before with { Items = [dances[1], dances[0], .. dances.Skip(3)] };

        IReadOnlyList<string> moved = _desk.Moved(before, after);

        Assert.Contains($"“{dances[2].Title}” is left out.", moved);
        Assert.Contains(moved, m => m == $"“{dances[0].Title}” comes later." || m == $"“{dances[1].Title}” comes earlier.");
        Assert.Equal(2, moved.Count);
        Assert.Empty(_desk.Moved(before, before));
    }

    [Fact]
    public void Every_reason_and_every_wish_that_is_not_met_has_words()
    {
        EveningItem item = new() { Stretch = 0, Place = 0, Start = 0, Seconds = 200, Title = "One", Effort = 45, SongKey = "s" };
        EveningProgramme programme = new()
        {
            Stretches = [],
            Items = [.. Enum.GetValues<ProgrammeReasonKind>().Where(k => k != ProgrammeReasonKind.EmptyTime).Select(k => item with { Reasons = [new ProgrammeReason(k, 1, 3, "Monday")] })],
            Missed = [.. Enum.GetValues<ProgrammeMissedKind>().Select(k => new EveningMissed { DanceId = "d", Title = "One", Kind = k, OtherTitle = "Other" })],
            Common = [new ProgrammeReason(ProgrammeReasonKind.EmptyTime, -1, 200)],
        };

        EveningWords words = ProgrammeWords.Of(programme);

        Assert.All(words.Items, w => Assert.EndsWith(".", Assert.Single(w), StringComparison.Ordinal));
        Assert.All(words.Missed.Concat(words.Common), w => Assert.EndsWith(".", w, StringComparison.Ordinal));
        Assert.Equal(words.Missed.Count, words.Missed.Distinct().Count());
    }

    private static ClubEvening Evening => new() { Title = "Social", Date = Day, Minutes = 120 };

    private static EveningPlan Plan() => EveningPlan.Empty with
    {
        Groups = [new EveningGroup { Name = "beginners", Level = "beginner", People = 10 }, new EveningGroup { Name = "improvers", Level = "improver", People = 20 }],
    };

    private EveningProgramme Planned(EveningPlan plan) => _desk.Plan(_club, Evening, plan, 0, 20, TestContext.Current.CancellationToken);

    private void Danced(ClubClass held, string name, DateOnly day, Knowing knowing)
    {
        _club.Book.SaveSession(new ClassSession { ClassId = held.Id, Date = day, IsHeld = true, Items = [new SessionItem { Role = ItemRole.Taught, DanceId = _ids[name] }] });
        _club.Book.SetMark(new KnownMark(held.Id, _ids[name], day, knowing));
    }
}
