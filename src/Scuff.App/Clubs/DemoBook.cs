using Scuff.App.Programmes;
using Scuff.Repertoire;

namespace Scuff.App.Clubs;

/// <summary>The classes of the demo club and what they did lately, all invented: a teacher's weeks in a small harbour town.</summary>
internal static class DemoBook
{
    private const ItemRole WarmUp = ItemRole.WarmUp;
    private const ItemRole Revised = ItemRole.Revised;
    private const ItemRole Taught = ItemRole.Taught;
    private const ItemRole Requested = ItemRole.Requested;
    private const ItemRole Danced = ItemRole.Danced;
    private const ItemRole CoolDown = ItemRole.CoolDown;

    private static readonly ClubClass FirstSteps = new()
    {
        Title = "First steps",
        Level = "beginner",
        Weekday = DayOfWeek.Monday,
        Starts = new TimeOnly(18, 0),
        Minutes = 60,
        Place = "Net loft",
        People = 12,
    };

    private static readonly ClubClass Improvers = new()
    {
        Title = "Tuesday improvers",
        Level = "improver",
        Weekday = DayOfWeek.Tuesday,
        Starts = new TimeOnly(19, 0),
        Minutes = 90,
        Place = "Net loft",
        People = 16,
        Notes = "Two of them spare their knees. The loft is low: nobody jumps.",
    };

    private static readonly ClubClass Regulars = new()
    {
        Title = "Thursday regulars",
        Level = "intermediate",
        Weekday = DayOfWeek.Thursday,
        Starts = new TimeOnly(20, 0),
        Minutes = 90,
        Place = "Harbour hall",
        People = 14,
    };

    private static readonly Week[] Weeks =
    [
        new(FirstSteps, 7, 11, "", [(WarmUp, "Long Pier Stroll", null), (Taught, "First Tide", Knowing.KnowsTheStart)]),
        new(FirstSteps, 5, 12, "The turn wants another week.", [(WarmUp, "Long Pier Stroll", null), (Revised, "First Tide", Knowing.KnowsWithCues), (Taught, "Rope Walk", Knowing.Follows)]),
        new(FirstSteps, 2, 9, "", [(WarmUp, "First Tide", Knowing.KnowsAlone), (Revised, "Rope Walk", Knowing.KnowsTheStart), (CoolDown, "Long Pier Stroll", null)]),
        new(FirstSteps, 1, 13, "Rain, and still thirteen.", [(WarmUp, "Long Pier Stroll", Knowing.KnowsAlone), (Taught, "Ferry Polka", Knowing.Follows), (Danced, "First Tide", null)]),
        new(Improvers, 9, 15, "", [(WarmUp, "Rope Walk", Knowing.KnowsAlone), (Taught, "Moorings", Knowing.KnowsTheStart), (Danced, "Net Loft", null)]),
        new(Improvers, 7, 16, "They asked for it again at once.", [(WarmUp, "First Tide", null), (Revised, "Moorings", Knowing.KnowsWithCues), (Taught, "Tin Lantern", Knowing.KnowsTheStart)]),
        new(Improvers, 5, 14, "", [(WarmUp, "Rope Walk", null), (Revised, "Tin Lantern", Knowing.KnowsWithCues), (Taught, "Market Day", Knowing.KnowsTheStart), (Danced, "Net Loft", Knowing.KnowsAlone)]),
        new(Improvers, 3, 17, "Got lost at the tag, every wall.", [(WarmUp, "Net Loft", null), (Taught, "Anchor Watch", Knowing.Follows), (Requested, "Tin Lantern", Knowing.KnowsAlone)]),
        new(Improvers, 1, 16, "", [(WarmUp, "Rope Walk", null), (Revised, "Anchor Watch", Knowing.KnowsTheStart), (Danced, "Tin Lantern", null), (CoolDown, "Slack Water Waltz", Knowing.KnowsWithCues)]),
        new(Regulars, 8, 13, "", [(WarmUp, "Quayside Swing", Knowing.KnowsAlone), (Taught, "Lighthouse Keeper", Knowing.KnowsTheStart), (Danced, "Tin Lantern", Knowing.KnowsAlone)]),
        new(Regulars, 5, 12, "", [(WarmUp, "Tin Lantern", null), (Revised, "Lighthouse Keeper", Knowing.KnowsWithCues), (Taught, "Round the Buoys", Knowing.Follows), (Requested, "Capstan Stomp", Knowing.KnowsWithCues)]),
        new(Regulars, 1, 14, "The restart sits now.", [(WarmUp, "Quayside Swing", null), (Revised, "Round the Buoys", Knowing.KnowsWithCues), (Danced, "Capstan Stomp", null), (CoolDown, "Slack Water Waltz", Knowing.KnowsAlone)]),
    ];

    /// <summary>Puts them in, with the weeks before a day and a plan and an evening after it. Does nothing in a club that has classes.</summary>
    /// <param name="club">The club, with the demo dances.</param>
    /// <param name="today">The day it is.</param>
    public static void Fill(Club club, DateOnly today)
    {
        if (club.Book.Classes(includeEnded: true).Count > 0)
        {
            return;
        }

        Dictionary<string, string> ids = [];
        foreach (DanceRow dance in club.Dances.Every())
        {
            ids.TryAdd(dance.Facts.Title, dance.Id);
        }

        Dictionary<string, ClubClass> kept = ((ClubClass[])[FirstSteps, Improvers, Regulars]).ToDictionary(c => c.Title, club.Book.SaveClass, StringComparer.Ordinal);
        foreach (Week week in Weeks)
        {
            ClubClass held = kept[week.Class.Title];
            DateOnly day = Last(today, held.Weekday!.Value).AddDays(-7 * (week.WeeksAgo - 1));
            club.Book.SaveSession(new ClassSession
            {
                ClassId = held.Id,
                Date = day,
                IsHeld = true,
                People = week.People,
                HowItWent = week.Went,
                Items = [.. week.Dances.Where(d => ids.ContainsKey(d.Title)).Select(d => new SessionItem { Role = d.Role, DanceId = ids[d.Title], Title = d.Title })],
            });
            foreach ((_, string title, Knowing? knowing) in week.Dances)
            {
                if (knowing is not null && ids.TryGetValue(title, out string? id))
                {
                    club.Book.SetMark(new KnownMark(held.Id, id, day, knowing));
                }
            }
        }

        Evening(club, [.. kept.Values], ids, today);
    }

    private static void Evening(Club club, ClubClass[] classes, Dictionary<string, string> ids, DateOnly today)
    {
        EveningPlan plan = EveningPlan.Empty with
        {
            Groups = [.. classes.Select(c => new EveningGroup { ClassId = c.Id, Name = c.Title, Level = c.Level, People = c.People ?? 1 })],
            Stops = [new EveningStop { AtMinute = 50, Minutes = 10 }],
            Requests = [.. ((string[])["Tin Lantern", "Moorings"]).Where(ids.ContainsKey).Select(t => new EveningRequest { DanceId = ids[t], People = 2 })],
        };
        club.Evenings.Save(
            new ClubEvening
            {
                Title = "Harbour social",
                Date = today.AddDays(((int)DayOfWeek.Saturday - (int)today.DayOfWeek + 7) % 7),
                Starts = new TimeOnly(19, 30),
                Minutes = 100,
                Place = "Harbour hall",
                Plan = plan.Text(),
            },
            0);
    }

    // the last such day before today
    private static DateOnly Last(DateOnly today, DayOfWeek weekday) => today.AddDays(-(((int)today.DayOfWeek - (int)weekday + 6) % 7) - 1);

    private sealed record Week(ClubClass Class, int WeeksAgo, int People, string Went, (ItemRole Role, string Title, Knowing? Knowing)[] Dances);
}
