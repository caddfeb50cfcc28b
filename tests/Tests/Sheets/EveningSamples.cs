using Scuff;
using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Sheets;
using Tests.Analysis.Lessons;
using Tests.Prose;

namespace Tests.Sheets;

/// <summary>Evenings of the harbour club, made up from the demo dances.</summary>
internal static class EveningSamples
{
    /// <summary>What stands between two dances, in seconds.</summary>
    public const int Between = 40;

    private static readonly Lazy<Dictionary<string, DanceAnalysis>> Read = new(() => SeedTexts.Demo.ToDictionary(d => d.Name, d => LessonSamples.Club(d.Name), StringComparer.Ordinal));

    /// <summary>The demo dances by their names, which serve as their ids.</summary>
    public static IReadOnlyDictionary<string, DanceAnalysis> Dances => Read.Value;

    /// <summary>An evening with a line of every kind.</summary>
    public static EveningPaper Small { get; } = Of(
        "Harbour Social",
        90,
        [
            Dance("first-tide") with { Reasons = ["It opens: all of the floor knows it."] },
            Dance("tin-lantern") with { Reasons = ["Four people asked for it.", "It was not danced for nine weeks."], Note = "mind the tag on wall 2" },
            Lesson("capstan-stomp", 15 * 60),
            Dance("capstan-stomp") with { Reasons = ["It is danced after its lesson."] },
            Split("moorings", "night-ferry") with { Reasons = ["Two dances to one song, so that both classes dance."] },
            Rest(10 * 60),
            Dance("bandstand-points"),
            Dance("slack-water-waltz") with { Reasons = ["It closes: everybody can dance it."] },
        ]) with
    {
        Remarks = ["Market Day was asked for, but is nearly the same as Long Pier Stroll."],
    };

    /// <summary>An evening of three hours with 40 lines: every demo dance, some of them twice, two split floors, a lesson and two rests.</summary>
    public static EveningPaper Social { get; } = Long();

    /// <summary>A paper whose lines follow each other.</summary>
    public static EveningPaper Of(string title, int minutes, IEnumerable<EveningLine> lines)
    {
        int clock = 0;
        List<EveningLine> timed = [];
        foreach (EveningLine line in lines)
        {
            timed.Add(line with { StartSeconds = clock });
            clock += line.Seconds;
        }

        return new EveningPaper
        {
            Title = title,
            Date = new DateOnly(2026, 11, 28),
            Starts = new TimeOnly(19, 30),
            Minutes = minutes,
            Place = "Boathouse Hall",
            Lines = timed.ToValueList(),
        };
    }

    /// <summary>A demo dance to its first track.</summary>
    public static EveningLine Dance(string name)
    {
        Dance dance = Dances[name].Dance;
        Track? track = dance.Tracks is [var first, ..] ? first : null;
        int seconds = track?.LengthSeconds?.Floor ?? 200;
        return new EveningLine
        {
            Kind = EveningLineKind.Dance,
            StartSeconds = 0,
            Seconds = Between + seconds,
            DanceId = name,
            Title = dance.Title,
            Level = dance.ClaimedLevel ?? Dances[name].Level.Level,
            Song = track?.Title ?? "",
            Artist = track?.Artist ?? "",
            SongSeconds = seconds,
            TrackId = track is null ? "" : "track-" + name,
        };
    }

    /// <summary>Two demo dances to the first track of the first.</summary>
    public static EveningLine Split(string name, string other) => Dance(name) with
    {
        OtherId = other,
        OtherTitle = Dances[other].Dance.Title,
        OtherLevel = Dance(other).Level,
    };

    /// <summary>A demo dance is taught.</summary>
    public static EveningLine Lesson(string name, int seconds) => Dance(name) with { Kind = EveningLineKind.Lesson, Seconds = seconds, Song = "", Artist = "", SongSeconds = 0, TrackId = "" };

    /// <summary>Nobody dances.</summary>
    public static EveningLine Rest(int seconds) => new() { Kind = EveningLineKind.Rest, StartSeconds = 0, Seconds = seconds };

    private static EveningPaper Long()
    {
        string[] names = [.. Dances.Keys];
        List<EveningLine> lines = [.. names.Select(Dance)];
        lines.InsertRange(20, names.Take(7).Select(Dance));
        lines.Insert(9, Split("moorings", "night-ferry"));
        lines.Insert(27, Split("market-day", "long-pier-stroll"));
        lines.Insert(12, Lesson("capstan-stomp", 15 * 60));
        lines.Insert(18, Rest(10 * 60));
        lines.Insert(31, Rest(10 * 60));
        return Of("Harbour Club Winter Social", 180, lines);
    }
}
