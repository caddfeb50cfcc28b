using System.Security.Cryptography;
using Scuff.Analysis;
using Scuff.App.Calendars;
using Scuff.App.Clubs;
using Scuff.App.Programmes;
using Scuff.Prose;
using Scuff.Repertoire;
using Scuff.Sheets;

namespace Scuff.App.Handouts;

/// <summary>Gathers from a club what an evening, or the book, is taken out with. Nothing of people is in it.</summary>
internal static class TakenOut
{
    // names the club to calendars; made once and kept with it
    private const string KeySetting = "calendar-key";

    /// <summary>An evening whose plan has a programme.</summary>
    /// <param name="club">The club.</param>
    /// <param name="evening">The evening.</param>
    /// <param name="plan">Its plan.</param>
    /// <param name="words">What is said of the programme.</param>
    /// <param name="choices">Paper, print and language.</param>
    /// <param name="now">The present moment.</param>
    public static EveningOut Evening(Club club, ClubEvening evening, EveningPlan plan, EveningWords words, SheetChoices choices, DateTimeOffset now)
    {
        IEnumerable<string> ids = plan.Programme!.Items.SelectMany(i => new[] { i.DanceId, i.OtherId }).Where(id => id.Length > 0).Distinct(StringComparer.Ordinal);
        Dictionary<string, DanceAnalysis> dances = new(StringComparer.Ordinal);
        foreach (StoredDance dance in ids.Select(club.Dances.Get).OfType<StoredDance>())
        {
            dances[dance.Row.Id] = DanceAnalysis.Of(DanceReader.Read(dance.Text));
        }

        return new EveningOut
        {
            Paper = EveningPapers.Of(evening, plan, words, id => club.Tracks.Get(id)?.Facts),
            Uid = ClubCalendar.UidOf(KeyOf(club), "evening", evening.Id),
            Changes = Math.Max(0, evening.Revision - 1),
            Dances = dances,
            Choices = choices,
            AudioPathOf = id => club.Tracks.Get(id) is { HasAudio: true } ? club.Tracks.AudioPath(id) : null,
            Now = now,
        };
    }

    /// <summary>The book: classes, sessions, marks, dances, and evenings with their programmes.</summary>
    /// <param name="club">The club.</param>
    /// <param name="desk">Words the programmes.</param>
    /// <param name="now">The present moment, by the clock of the place.</param>
    public static BookOut Book(Club club, INightDesk desk, DateTimeOffset now)
    {
        DateOnly today = DateOnly.FromDateTime(now.DateTime);
        ValueList<ClubClass> classes = club.Book.Classes(includeEnded: true);
        ValueList<ClubEvening> evenings = club.Evenings.List().Select(r => club.Evenings.Get(r.Id)).OfType<ClubEvening>().ToValueList();
        Dictionary<string, EveningPaper> programmes = new(StringComparer.Ordinal);
        foreach (ClubEvening evening in evenings)
        {
            EveningPlan plan;
            try
            {
                plan = EveningPlan.Read(evening.Plan);
            }
            catch (FormatException)
            {
                // what a newer program wrote stands in the calendar without its programme
                continue;
            }

            if (plan.Programme is not null)
            {
                programmes[evening.Id] = EveningPapers.Of(evening, plan, desk.Words(club, evening, plan), id => club.Tracks.Get(id)?.Facts);
            }
        }

        return new BookOut
        {
            Name = club.Settings.Get(ClubPlace.NameSetting) ?? "Classes and evenings",
            ClubKey = KeyOf(club),
            Classes = classes,
            Sessions = club.Book.Sessions(new SessionQuery { Take = int.MaxValue }).Sessions,
            Marks = classes.SelectMany(c => club.Book.Marks(c.Id, today)).ToValueList(),
            Evenings = evenings,
            Programmes = programmes,
            Dances = club.Dances.Every(),
            Today = today,
            Now = now,
        };
    }

    private static string KeyOf(Club club)
    {
        if (club.Settings.Get(KeySetting) is { Length: > 0 } key)
        {
            return key;
        }

        string made = RandomNumberGenerator.GetHexString(24, lowercase: true);
        club.Settings.Set(KeySetting, made);
        return made;
    }
}
