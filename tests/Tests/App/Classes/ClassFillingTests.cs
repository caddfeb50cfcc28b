using Scuff.Analysis.Planning;
using Scuff.App.Classes;
using Scuff.App.Clubs;
using Scuff.App.Memory;
using Scuff.App.Programmes;
using Scuff.Repertoire;
using Tests.Prose;

namespace Tests.App.Classes;

/// <summary>The time of a class filled around what she has put into its plan.</summary>
public sealed class ClassFillingTests : IDisposable
{
    private const int LessonMinutes = 25;

    private static readonly DateOnly Day = new(2026, 12, 7);

    private readonly DirectoryInfo _place = Directory.CreateTempSubdirectory("scuff-fill-");
    private readonly Club _club;
    private readonly Dictionary<string, string> _ids = [];
    private readonly ClubClass _class;

    public ClassFillingTests()
    {
        _club = Club.Open(_place.FullName, TimeProvider.System, new DanceFactReader());
        foreach ((string name, string text) in SeedTexts.Demo.Select(d => (d.Name, d.Text)))
        {
            _ids[Path.GetFileNameWithoutExtension(name)] = _club.Dances.Add(text, Hands.Import).Id;
        }

        _class = _club.Book.SaveClass(new ClubClass { Title = "Monday", Level = "improver", Minutes = 90, People = 12 });
        foreach (string name in new[] { "net-loft", "moorings", "gangplank", "ebb-and-flow", "anchor-watch", "rope-walk", "first-tide", "quayside-swing", "market-day", "slipway-weave" })
        {
            _club.Book.SaveSession(new ClassSession { ClassId = _class.Id, Date = Day.AddDays(-14), IsHeld = true, Items = [Item(ItemRole.Danced, name)] });
            _club.Book.SetMark(new KnownMark(_class.Id, _ids[name], Day.AddDays(-14), Knowing.KnowsAlone));
        }

        _club.Book.SetMark(new KnownMark(_class.Id, _ids["market-day"], Day.AddDays(-14), Knowing.Follows));
    }

    public void Dispose()
    {
        _club.Dispose();
        _place.Delete(recursive: true);
    }

    [Fact]
    public void Warm_up_revision_lesson_dances_and_an_end_fill_the_class_and_no_more()
    {
        FilledClass filled = Filled(Item(ItemRole.Taught, "tin-lantern"));

        Assert.InRange(filled.Items.Sum(i => i.Minutes ?? 0), 80, 90);
        Assert.Equal(LessonMinutes, filled.Items.Single(i => i.Role == ItemRole.Taught).Minutes);
        Assert.All([ItemRole.WarmUp, ItemRole.Revised, ItemRole.Danced, ItemRole.CoolDown], r => Assert.Contains(filled.Items, i => i.Role == r));
        Assert.Equal(filled.Items.Select(i => i.Role).Order(), filled.Items.Select(i => i.Role));
        Assert.Contains(filled.Items, i => i.Role == ItemRole.Revised && i.DanceId == _ids["market-day"]);
    }

    [Fact]
    public void The_new_dance_is_danced_after_its_lesson_and_no_dance_comes_twice_else()
    {
        FilledClass filled = Filled(Item(ItemRole.Taught, "tin-lantern"));

        Assert.Equal(_ids["tin-lantern"], filled.Items.First(i => i.Role == ItemRole.Danced).DanceId);
        string?[] others = [.. filled.Items.Where(i => i.DanceId != _ids["tin-lantern"]).Select(i => i.DanceId)];
        Assert.Equal(others.Length, others.Distinct().Count());
    }

    [Fact]
    public void What_she_has_put_in_stays_with_her_minutes_and_notes()
    {
        SessionItem mine = Item(ItemRole.Danced, "lighthouse-keeper") with { Minutes = 6, Note = "twice" };
        SessionItem visitor = new() { Role = ItemRole.Requested, Title = "A visitor's dance" };

        FilledClass filled = Filled(mine, visitor, Item(ItemRole.WarmUp, "first-tide"), Item(ItemRole.Revised, "moorings"));

        Assert.Contains(filled.Items, i => i is { Role: ItemRole.Danced, Minutes: 6, Note: "twice" } && i.DanceId == mine.DanceId);
        Assert.Contains(visitor, filled.Items);
        Assert.Contains(filled.Items, i => i.Role == ItemRole.WarmUp && i.DanceId == _ids["first-tide"]);
        Assert.Equal([_ids["moorings"]], filled.Items.Where(i => i.Role == ItemRole.Revised).Select(i => i.DanceId));
    }

    [Fact]
    public void A_class_too_short_for_what_she_wants_keeps_what_she_wants()
    {
        SessionItem[] mine = [Item(ItemRole.Taught, "tin-lantern") with { Minutes = 70 }, Item(ItemRole.Revised, "moorings") with { Minutes = 30 }];

        FilledClass filled = Filled(mine);

        Assert.All(mine, m => Assert.Contains(m, filled.Items));
    }

    private SessionItem Item(ItemRole role, string name) => new() { Role = role, DanceId = _ids[name], Title = _club.Dances.Get(_ids[name])!.Row.Facts.Title };

    private FilledClass Filled(params SessionItem[] items) => ClassFilling.Fill(
        _club,
        new NightDesk(new ProgrammeSearch()),
        new RevisionDesk(),
        _class,
        new ClassSession { ClassId = _class.Id, Date = Day, Items = [.. items] },
        _ => LessonMinutes,
        TestContext.Current.CancellationToken);
}
