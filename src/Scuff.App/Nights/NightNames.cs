using Scuff.App.Classes;
using Scuff.App.Programmes;
using Scuff.Repertoire;

namespace Scuff.App.Nights;

/// <summary>Finds evenings by what is typed of them, and keeps them.</summary>
internal static class NightNames
{
    private const int MostNamed = 5;

    /// <summary>The evening of an id, a day, or the beginning of a title; of several with one title the next to come, else the last.</summary>
    /// <exception cref="ClubTrouble">There is none, or more than one.</exception>
    public static ClubEvening Evening(Club club, string typed, DateOnly today)
    {
        ValueList<EveningRow> all = club.Evenings.List();
        EveningRow[] found = [.. all.Where(e => e.Id == typed || DayWords.Plain(e.Date) == typed)];
        if (found.Length == 0)
        {
            string key = TrackFacts.KeyOf(typed.Replace('-', ' '));
            found = [.. all.Where(e => key.Length > 0 && TrackFacts.KeyOf(e.Title.Replace('-', ' ')).StartsWith(key, StringComparison.Ordinal))];
            EveningRow? next = found.Where(e => e.Date >= today).MinBy(e => (e.Date, e.Starts)) ?? found.MaxBy(e => (e.Date, e.Starts));
            found = next is not null && found.All(f => f.Title == next.Title) ? [next] : found;
        }

        return found switch
        {
            [var one] => club.Evenings.Get(one.Id) ?? throw None(typed, all),
            [] => throw None(typed, all),
            _ => throw new ClubTrouble(ClubTroubleKind.NotFound, $"{typed} may be one of {found.Length} evenings: {Names(found)}. Write its day, or more of its title."),
        };
    }

    /// <summary>The plan of an evening.</summary>
    /// <exception cref="ClubTrouble">A newer program wrote it.</exception>
    public static EveningPlan PlanOf(ClubEvening evening)
    {
        try
        {
            return EveningPlan.Read(evening.Plan);
        }
        catch (FormatException trouble)
        {
            throw new ClubTrouble(ClubTroubleKind.Newer, trouble.Message, trouble);
        }
    }

    /// <summary>Keeps an evening with its plan.</summary>
    /// <exception cref="ClubTrouble">Somebody else changed it meanwhile, or it cannot be kept.</exception>
    public static ClubEvening Keep(Club club, ClubEvening evening, EveningPlan plan)
        => club.Evenings.Save(evening with { Plan = plan.Text() }, evening.Revision) is EveningOutcome.Saved saved
            ? saved.Evening
            : throw new ClubTrouble(ClubTroubleKind.Busy, $"{evening.Title} was changed by somebody else meanwhile, so nothing was kept. Try again.");

    private static ClubTrouble None(string typed, ValueList<EveningRow> all) => new(
        ClubTroubleKind.NotFound,
        all.Count == 0
            ? $"There is no evening called {typed}, nor any other yet. Make one: {CommandTree.Name} night make \"Harbour social\" 2026-12-05"
            : $"There is no evening called {typed}. There are {Names(all)}.");

    private static string Names(IReadOnlyList<EveningRow> rows)
        => string.Join(", ", rows.Take(MostNamed).Select(e => $"{e.Title} on {DayWords.Plain(e.Date)}")) + (rows.Count > MostNamed ? " and others" : "");
}
