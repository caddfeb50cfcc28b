using System.Diagnostics;
using System.Globalization;
using Scuff;
using Scuff.Repertoire;

namespace Bench;

/// <summary>A club with twenty years of five classes a week in its book: how long everything takes that a screen asks for.</summary>
internal static class Book
{
    private const int Years = 20;
    private const int Weeks = 48;
    private const int Items = 10;
    private const int Dances = 300;
    private const int EveningsOfYear = 20;
    private const int Times = 200;
    private const int PlanLength = 20_000;

    private static readonly DateOnly Last = new(2026, 6, 26);
    private static readonly string[] Classes = ["Monday beginners", "Tuesday improvers", "Wednesday morning", "Thursday intermediate", "Friday social hour"];

    /// <summary>Makes the club, unless the folder has it, and prints the table.</summary>
    public static void Measure(TextWriter output, string? folder)
    {
        DirectoryInfo? passing = folder is null ? Directory.CreateTempSubdirectory("scuff-bench-") : null;
        try
        {
            string place = folder ?? passing!.FullName;
            bool isNew = !File.Exists(Path.Combine(place, "club.db"));
            using (Club made = Club.Open(place, TimeProvider.System, new TitleReader()))
            {
                if (isNew)
                {
                    Fill(output, made);
                }
            }

            long start = Stopwatch.GetTimestamp();
            using Club club = Club.Open(place, TimeProvider.System, new TitleReader());
            double opened = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
            ClubBook book = club.Book;
            ClubClass held = book.Classes()[0];
            SessionPage page = book.Sessions(new SessionQuery());
            string dance = book.LastDanced(held.Id)[0].DanceId;
            EveningRow evening = club.Evenings.List()[0];
            int danced = book.Classes().Sum(c => book.LastDanced(c.Id).Sum(d => d.Dates.Count));
            output.WriteLine(Line($"{page.Total} sessions in which a dance was danced {danced} times, {club.Evenings.List().Count} evenings, {Dances} dances, ")
                + Line($"{new FileInfo(Path.Combine(place, "club.db")).Length >> 20} MB; opened in {opened:F0} ms"));
            output.WriteLine();
            output.WriteLine("asked for                                    found  median ms   95 % ms  worst ms");
            Row(output, "the classes", () => book.Classes().Count);
            Row(output, "the first page of sessions of a class", () => book.Sessions(new SessionQuery { ClassId = held.Id }).Sessions.Count);
            Row(output, "the last page of sessions of a class", () => book.Sessions(new SessionQuery { ClassId = held.Id, Skip = (Years * Weeks) - 50 }).Sessions.Count);
            Row(output, "a month of all classes", () => book.Sessions(new SessionQuery { From = Last.AddDays(-31), To = Last }).Sessions.Count);
            Row(output, "a year of all classes", () => book.Sessions(new SessionQuery { From = Last.AddDays(-365), To = Last, Take = 1000 }).Sessions.Count);
            Row(output, "one session", () => book.Session(page.Sessions[0].Id)!.Items.Count);
            Row(output, "all days on which a class danced each dance", () => book.LastDanced(held.Id).Count);
            Row(output, "how well a class knows its dances", () => book.Marks(held.Id, Last).Count);
            Row(output, "all marks of a class for one dance", () => book.MarkHistory(held.Id, dance).Count);
            Row(output, "which sheets a class was taught from", () => book.TaughtBefore(held.Id).Count);
            Row(output, "all dances for a programme", () => club.Dances.Every().Count);
            Row(output, "the evenings of a year", () => club.Evenings.List(Last.AddDays(-365), Last).Count);
            Row(output, "all evenings", () => club.Evenings.List().Count);
            Row(output, "one evening with its programme", () => club.Evenings.Get(evening.Id)!.Plan.Length);
            Row(output, "a class to be planned: all of this about it", () => book.LastDanced(held.Id).Count + book.Marks(held.Id, Last).Count
                + book.TaughtBefore(held.Id).Count + club.Dances.Every().Count + book.Sessions(new SessionQuery { ClassId = held.Id, Take = 10 }).Sessions.Count);
            ClassSession session = page.Sessions[0];
            int turn = 0;
            Row(output, "a session saved, on the disk", () => book.SaveSession(session with { HowItWent = Line($"{turn++}") }).Items.Count);
            Row(output, "a mark set, on the disk", () =>
            {
                book.SetMark(new KnownMark(held.Id, dance, Last, (Knowing)(1 + (turn++ % 4))));
                return 1;
            });
        }
        finally
        {
            passing?.Delete(recursive: true);
        }
    }

    private static void Fill(TextWriter output, Club club)
    {
        long start = Stopwatch.GetTimestamp();
        Random dice = new(1);
        string[] dances = new string[Dances];
        for (int i = 0; i < Dances; i++)
        {
            dances[i] = club.Dances.Add(Texts.Dance(i, 4 + (i % 5)), "bench").Id;
        }

        string[] classes = [.. Classes.Select((title, i) => club.Book.SaveClass(new ClubClass { Title = title, Weekday = DayOfWeek.Monday + i, Starts = new TimeOnly(19, 0) }).Id)];
        for (int week = (Years * Weeks) - 1; week >= 0; week--)
        {
            // 48 weeks of 52: the other four are holidays
            DateOnly monday = Last.AddDays(-4 - (7 * (week + (week / Weeks * 4))));
            for (int c = 0; c < classes.Length; c++)
            {
                Teach(club, classes[c], monday.AddDays(c), dances, dice, week);
            }
        }

        for (int i = 0; i < Years * EveningsOfYear; i++)
        {
            club.Evenings.Save(new ClubEvening { Title = Line($"Social {i}"), Date = Last.AddDays(-18 * i), Plan = new string('p', PlanLength) }, 0);
        }

        output.WriteLine(Line($"written in {Stopwatch.GetElapsedTime(start).TotalSeconds:F0} s"));
    }

    // A new dance every third week; the sheet of one in five is changed afterwards.
    private static void Teach(Club club, string held, DateOnly day, string[] dances, Random dice, int week)
    {
        string fresh = dances[(Years * Weeks - week) / 3 % dances.Length];
        ClassSession session = new()
        {
            ClassId = held,
            Date = day,
            IsHeld = true,
            People = 8 + dice.Next(12),
            HowItWent = "They laughed at the turn and got it in the end.",
            Items = Enumerable.Range(0, Items).Select(i => new SessionItem
            {
                Role = i == 0 ? ItemRole.WarmUp : i == 1 && week % 3 == 0 ? ItemRole.Taught : i < 5 ? ItemRole.Revised : ItemRole.Danced,
                DanceId = i == 1 ? fresh : dances[dice.Next(dances.Length)],
                Minutes = 4 + dice.Next(10),
                Note = i == 1 ? "again next week" : "",
            }).ToValueList(),
        };
        club.Book.SaveSession(session);
        if (week % 3 == 0)
        {
            club.Book.SetMark(new KnownMark(held, fresh, day, Knowing.Follows));
            club.Book.SetMark(new KnownMark(held, dances[dice.Next(dances.Length)], day, (Knowing)(1 + dice.Next(4))));
        }

        if (dice.Next(5) == 0)
        {
            StoredDance changed = club.Dances.Get(fresh)!;
            club.Dances.Save(fresh, Line($"{changed.Text}\nnote: {week}"), changed.Revision, Line($"bench {dice.Next(2)}"));
        }
    }

    private static void Row(TextWriter output, string name, Func<int> work)
    {
        int found = work();
        double[] times = new double[Times];
        for (int i = 0; i < Times; i++)
        {
            long start = Stopwatch.GetTimestamp();
            work();
            times[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }

        Array.Sort(times);
        output.WriteLine(Line($"{name,-44} {found,5} {times[Times / 2],10:F2} {times[Times * 95 / 100],9:F2} {times[^1],9:F2}"));
    }

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    // The titles alone: how dances are read is measured elsewhere.
    private sealed class TitleReader : IDanceFactReader
    {
        public string Version => "bench";

        public DanceFacts Read(string text) => new() { Title = text.Split('\n')[0], Fingerprint = Line($"{text.Length}"), Feet = text[..Math.Min(300, text.Length)] };
    }
}
