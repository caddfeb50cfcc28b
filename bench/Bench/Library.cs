using System.Diagnostics;
using System.Globalization;
using Microsoft.Data.Sqlite;
using Scuff;
using Scuff.Repertoire;

namespace Bench;

/// <summary>
/// A club of many dances and tracks: how long it takes to find something in it, alone and with fifty people at it, beside a plain search of the
/// same table.
/// </summary>
internal static class Library
{
    private const int Times = 40;
    private const int People = 50;
    private const int Each = 20;
    private const int Reading = 2000;

    private static readonly string[] First =
    [
        "Tin", "Silver", "Harbour", "Lantern", "Market", "Rope", "Copper", "Salt", "Winter", "Sunday", "Paper", "Border", "Canvas", "Willow", "Dusty", "Northern",
        "Quiet", "Second", "Stormy", "Velvet", "Windmill", "Yellow", "Été", "Søndag", "Über",
    ];

    private static readonly string[] Second =
    [
        "Lantern", "Waltz", "Stroll", "Shuffle", "Tide", "Crossing", "Moon", "Parade", "Road", "Letter", "Garden", "Kitchen", "Bell", "Station", "Summer", "Corner",
        "Promise", "River", "Window", "Dance",
    ];

    private static readonly string[] Names = ["Ann", "Bo", "Cleo", "Dora", "Émile", "Finn", "Greta", "Hugo", "Ida", "Jens"];

    private static readonly DanceQuery[] Questions =
    [
        new(),
        new() { Words = "l" },
        new() { Words = "la" },
        new() { Words = "lantern" },
        new() { Words = "harb lan" },
        new() { Words = "step" },
        new() { Words = "step rock vine" },
        new() { Words = "sondag greta" },
        new() { Words = "nothing of the kind" },
        new() { Words = "step", Level = "improver", Walls = 4, OnlyWithComplaints = true },
        new() { Tag = "monday class" },
        new() { Order = DanceOrder.LastSaved },
        new() { Words = "step", Skip = 5000 },
    ];

    /// <summary>Makes a club, unless the folder has one, and prints the table.</summary>
    public static void Measure(TextWriter output, int dances, int tracks, string? folder)
    {
        DirectoryInfo? passing = folder is null ? Directory.CreateTempSubdirectory("scuff-bench-") : null;
        try
        {
            string place = folder ?? passing!.FullName;
            bool isNew = !File.Exists(Path.Combine(place, "club.db"));
            using Club club = Club.Open(place, TimeProvider.System, new Reader());
            if (isNew)
            {
                Fill(output, club, dances, tracks);
            }

            (int some, int songs) = (club.Dances.Search(new DanceQuery()).Total, club.Tracks.Search(new TrackQuery()).Total);
            output.WriteLine(Line($"{some} dances, {songs} tracks, {new FileInfo(Path.Combine(place, "club.db")).Length >> 20} MB"));
            output.WriteLine();
            output.WriteLine("question                                     found   best ms   95 % ms     ratio");
            double reference = Scanned(output, place);
            foreach (DanceQuery question in Questions)
            {
                Row(output, Name(question), reference, () => club.Dances.Search(question).Total);
            }

            foreach (string words in (string[])["", "la", "harb lan"])
            {
                Row(output, $"tracks: {words}", reference, () => club.Tracks.Search(new TrackQuery { Words = words }).Total);
            }

            Row(output, "duplicates of all dances", reference, () => club.Dances.Duplicates().Count);
            Row(output, "duplicates of all tracks", reference, () => club.Tracks.Duplicates().Count);
            Saves(output, club);
            Together(output, club);
        }
        finally
        {
            passing?.Delete(recursive: true);
        }
    }

    /// <summary>In a process of its own: how long until a club is open, the first list is there, and the first save is on the disk.</summary>
    public static void Open(TextWriter output, string folder)
    {
        long start = Stopwatch.GetTimestamp();
        using Club club = Club.Open(folder, TimeProvider.System, new Reader());
        double opened = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        DancePage page = club.Dances.Search(new DanceQuery());
        double listed = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        StoredDance dance = club.Dances.Get(page.Rows[0].Id)!;
        double read = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        // she reads before she types
        using (ManualResetEventSlim never = new())
        {
            never.Wait(Reading);
        }

        start = Stopwatch.GetTimestamp();
        club.Dances.Save(dance.Id, dance.Text + "\n", dance.Revision, "bench");
        double saved = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        output.WriteLine(Line($"cold: open after {opened:F0} ms, first list {listed:F0}, first text {read:F0}, a first save two seconds later {saved:F0}"));
    }

    private static void Fill(TextWriter output, Club club, int dances, int tracks)
    {
        DirectoryInfo files = Directory.CreateTempSubdirectory("scuff-bench-");
        try
        {
            Random dice = new(1);
            for (int i = 0; i < dances; i++)
            {
                string title = $"{Pick(dice, First)} {Pick(dice, Second)} {Pick(dice, Second)}";
                string text = Texts.Dance(i, 4 + (i % 5));
                text = string.Concat(title, text.AsSpan(text.IndexOf('\n', StringComparison.Ordinal)))
                    .Replace("the measuring bench", $"{Pick(dice, Names)} {Pick(dice, Second)}", StringComparison.Ordinal);
                File.WriteAllText(
                    Path.Combine(files.FullName, Line($"{i:D6}.dance")),
                    $"{text}\ntrack: \"{Pick(dice, First)} {Pick(dice, Second)}\" by The {Pick(dice, First)} Band, 112 bpm\n");
            }

            long start = Stopwatch.GetTimestamp();
            int added = club.Import(files.FullName, SameTitle.AddBeside).Added.Count;
            output.WriteLine(Line($"{added} dances imported in {Stopwatch.GetElapsedTime(start).TotalSeconds:F1} s"));
            for (int i = 1; i <= dances; i += 7)
            {
                club.Dances.SetTags(Line($"d{i}"), i % 2 == 0 ? ["Monday class"] : ["easy", "warm up"]);
            }

            start = Stopwatch.GetTimestamp();
            string map = "{\"beats\":[" + string.Join(',', Enumerable.Range(0, 500).Select(b => Line($"{b * 0.5357:F4}"))) + "]}";
            for (int i = 0; i < tracks; i++)
            {
                TrackFacts facts = new()
                {
                    Title = $"{Pick(dice, First)} {Pick(dice, Second)}",
                    Artist = $"The {Pick(dice, First)} Band",
                    Seconds = 150 + dice.Next(100),
                    Tempo = 90 + dice.Next(60),
                };
                club.Tracks.SaveMap(club.Tracks.AddWithoutAudio(Line($"{i}.mp3"), facts).Id, map, "bench");
            }

            output.WriteLine(Line($"{tracks} tracks with their maps added one by one in {Stopwatch.GetElapsedTime(start).TotalSeconds:F1} s"));
        }
        finally
        {
            files.Delete(recursive: true);
        }
    }

    // The reference: SQLite looks through the same titles and texts with LIKE, which knows no accents and finds words in the middle of words.
    private static double Scanned(TextWriter output, string folder)
    {
        using SqliteConnection connection = new($"Data Source={Path.Combine(folder, "club.db")};Mode=ReadWrite");
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "SELECT count(*) FROM Dances d JOIN DanceTexts t ON t.Key = d.Key WHERE d.Title LIKE '%lantern%' OR t.Text LIKE '%lantern%'";
        return Row(output, "reference: LIKE '%lantern%' over title, text", null, () => Convert.ToInt32(command.ExecuteScalar(), CultureInfo.InvariantCulture));
    }

    private static void Saves(TextWriter output, Club club)
    {
        StoredDance dance = club.Dances.Get(club.Dances.Search(new DanceQuery()).Rows[0].Id)!;
        int revision = dance.Revision;
        double[] times = Timed(Times, i =>
        {
            SaveOutcome outcome = club.Dances.Save(dance.Id, Line($"{dance.Text}\nnote {revision} {i}"), revision, "bench");
            revision = ((SaveOutcome.Saved)outcome).Revision;
        });
        output.WriteLine(Line($"a save, on the disk                                  {times[0],9:F1} {times[times.Length * 95 / 100],9:F1}"));
    }

    // Fifty people search at once, as fast as they are answered, while one of them saves.
    private static void Together(TextWriter output, Club club)
    {
        List<double> all = [];
        StoredDance dance = club.Dances.Get(club.Dances.Search(new DanceQuery()).Rows[0].Id)!;
        int done = 0;
        Thread[] people = [.. Enumerable.Range(0, People).Select(person => new Thread(() =>
        {
            double[] times = Timed(Each, i => club.Dances.Search(Questions[(person + i) % Questions.Length]));
            lock (all)
            {
                all.AddRange(times);
            }

            Interlocked.Increment(ref done);
        }))];
        long start = Stopwatch.GetTimestamp();
        Array.ForEach(people, p => p.Start());
        int saves = 0;
        for (int revision = dance.Revision; Volatile.Read(ref done) < People; saves++)
        {
            revision = ((SaveOutcome.Saved)club.Dances.Save(dance.Id, Line($"{dance.Text}\ntogether {saves}"), revision, "bench")).Revision;
        }

        Array.ForEach(people, p => p.Join());
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        all.Sort();
        output.WriteLine(
            Line($"{People} at once, without a pause: {all.Count / seconds:F0} searches a second beside {saves / seconds:F0} saves; ")
            + Line($"half within {all[all.Count / 2]:F0} ms, 95 % within {all[all.Count * 95 / 100]:F0} ms"));
        double[] calm = Calm(club);
        output.WriteLine(
            Line($"{People} people, each a search every two seconds: half within {calm[calm.Length / 2]:F1} ms, ")
            + Line($"95 % within {calm[calm.Length * 95 / 100]:F1} ms, the slowest {calm[^1]:F0} ms"));
    }

    // As people do: they read what was found before they ask again.
    private static double[] Calm(Club club)
    {
        List<double> all = [];
        Thread[] people = [.. Enumerable.Range(0, People).Select(person => new Thread(() =>
        {
            using ManualResetEventSlim never = new();
            never.Wait(person * 2000 / People);
            for (int i = 0; i < 5; i++)
            {
                double time = Timed(1, _ => club.Dances.Search(Questions[(person + i) % Questions.Length]))[0];
                lock (all)
                {
                    all.Add(time);
                }

                never.Wait(2000);
            }
        }))];
        Array.ForEach(people, p => p.Start());
        Array.ForEach(people, p => p.Join());
        all.Sort();
        return [.. all];
    }

    private static double Row(TextWriter output, string name, double? reference, Func<int> work)
    {
        int found = work();
        double[] times = Timed(Times, _ => work());
        string ratio = reference is double one ? Line($"{times[0] / one,9:F2}") : "        1";
        output.WriteLine(Line($"{name,-44} {found,5} {times[0],9:F1} {times[times.Length * 95 / 100],9:F1} {ratio}"));
        return times[0];
    }

    private static double[] Timed(int times, Action<int> work)
    {
        double[] each = new double[times];
        for (int i = 0; i < times; i++)
        {
            long start = Stopwatch.GetTimestamp();
            work(i);
            each[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }

        Array.Sort(each);
        return each;
    }

    private static string Name(DanceQuery question) => string.Join(", ", new[]
    {
        question.Words.Length > 0 ? question.Words : "all",
        question.Tag is { } tag ? $"tag {tag}" : "",
        question.Level is { } level ? Line($"{level}, {question.Walls} walls, complaints") : "",
        question.Order == DanceOrder.BestMatch ? "" : $"by {question.Order}",
        question.Skip > 0 ? Line($"from {question.Skip}") : "",
    }.Where(s => s.Length > 0));

    private static string Pick(Random dice, string[] words) => words[dice.Next(words.Length)];

    private static string Line(FormattableString line) => line.ToString(CultureInfo.InvariantCulture);

    /// <summary>Facts at the price of a split, so that the club is measured and not the reading of dances.</summary>
    private sealed class Reader : IDanceFactReader
    {
        public string Version => "bench";

        public DanceFacts Read(string text)
        {
            string[] lines = text.Split('\n');
            return new DanceFacts
            {
                Title = lines[0],
                Choreographer = lines.FirstOrDefault(l => l.StartsWith("by: ", StringComparison.Ordinal))?[4..] ?? "",
                Level = text.Length % 3 == 0 ? "improver" : "beginner",
                Walls = text.Length % 2 == 0 ? 4 : 2,
                Counts = 8 * lines.Count(l => l.StartsWith("section", StringComparison.Ordinal)),
                Warnings = text.Length % 5,
                Songs = lines.Where(l => l.StartsWith("track: ", StringComparison.Ordinal)).Select(l => l[7..]).ToValueList(),
                Fingerprint = Line($"{text.Length} {string.GetHashCode(text.AsSpan(text.IndexOf("section", StringComparison.Ordinal)), StringComparison.Ordinal)}"),
            };
        }
    }
}
