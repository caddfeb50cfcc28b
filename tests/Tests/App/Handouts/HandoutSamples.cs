using Scuff.App.Handouts;
using Scuff.App.Playlists;
using Scuff.Repertoire;
using Scuff.Sheets;
using Tests.Sheets;

namespace Tests.App.Handouts;

/// <summary>Things to hand out: an evening, a club, and words that break what is not careful.</summary>
internal static class HandoutSamples
{
    /// <summary>Titles as somebody might write them, to bring a format down.</summary>
    public static readonly string[] Hostile =
    [
        "\"Quotes\" & <tags>, commas; semicolons: all",
        "Line one\nline two\r\nand a tab\there",
        "שלום ים, مرحبا بالبحر",
        "🦀 crab with a family 👩‍👩‍👧 and a long, long name " + "港".PadRight(1) + string.Concat(Enumerable.Repeat("港の夜 ", 30)),
        "#EXTM3U",
        "=HYPERLINK(\"http://example.org\")",
        "\u0001bell\u0007 and half a character \ud83d",
        "../../etc/passwd",
        "100 % of 50? [no] #1",
        "\\n is two signs",
        "   ",
    ];

    /// <summary>The moment of all tests.</summary>
    public static DateTimeOffset Now { get; } = new(2026, 11, 20, 18, 5, 9, TimeSpan.FromHours(1));

    /// <summary>The small evening with everything it needs; no track has audio.</summary>
    public static EveningOut Evening { get; } = new()
    {
        Paper = EveningSamples.Small,
        Uid = "evening-e1@harbour.scuff",
        Dances = EveningSamples.Dances,
        Now = Now,
    };

    /// <summary>A club with two classes, one of them ended, sessions planned and held, and an evening.</summary>
    public static BookOut Book { get; } = new()
    {
        Name = "Harbour Club",
        ClubKey = "harbour",
        Today = new DateOnly(2026, 11, 20),
        Now = Now,
        Classes =
        [
            new ClubClass
            {
                Id = "c1", Title = "Tuesday Beginners", Level = "beginner", Weekday = DayOfWeek.Tuesday, Starts = new TimeOnly(18, 30), Minutes = 90,
                Place = "Boathouse Hall, upper floor; ring twice", People = 14, Notes = "key at the pilot's office",
            },
            new ClubClass { Id = "c2", Title = "Net Loft Improvers", Level = "improver", Weekday = DayOfWeek.Thursday, Starts = new TimeOnly(20, 0), EndedOn = new DateOnly(2026, 10, 1) },
            new ClubClass { Id = "c3", Title = "By appointment" },
        ],
        Sessions =
        [
            new ClassSession
            {
                Id = "s1", ClassId = "c1", Date = new DateOnly(2026, 11, 10), IsHeld = true, People = 12, HowItWent = "Old Marta fell asleep",
                Items =
                [
                    new SessionItem { Role = ItemRole.WarmUp, DanceId = "d1", Title = "First Tide", Revision = 2, Minutes = 8 },
                    new SessionItem { Role = ItemRole.Taught, DanceId = "d2", Title = "Tin Lantern", Revision = 5, Minutes = 40, Note = "Marta got lost in the tag" },
                    new SessionItem { Role = ItemRole.Danced, DanceId = "d1", Title = "First Tide", Revision = 2 },
                ],
            },
            new ClassSession
            {
                Id = "s2", ClassId = "c1", Date = new DateOnly(2026, 11, 24),
                Items =
                [
                    new SessionItem { Role = ItemRole.Revised, DanceId = "d2", Title = "Tin Lantern", Minutes = 15 },
                    new SessionItem { Role = ItemRole.Taught, DanceId = null, Title = "A visitor's dance; new, and long", Minutes = 30 },
                ],
            },
            new ClassSession { Id = "s3", ClassId = "c1", Date = new DateOnly(2026, 12, 2), Starts = new TimeOnly(19, 0), Minutes = 60 },
            new ClassSession { Id = "s4", ClassId = "c2", Date = new DateOnly(2026, 9, 3), IsHeld = true, Starts = new TimeOnly(23, 30), Minutes = 60 },
            new ClassSession { Id = "s5", ClassId = "c3", Date = new DateOnly(2026, 11, 30) },
        ],
        Marks =
        [
            new KnownMark("c1", "d1", new DateOnly(2026, 9, 1), Knowing.Follows),
            new KnownMark("c1", "d1", new DateOnly(2026, 11, 10), Knowing.KnowsAlone),
            new KnownMark("c1", "d2", new DateOnly(2026, 11, 10), Knowing.KnowsTheStart),
            new KnownMark("c2", "d2", new DateOnly(2026, 9, 3), Knowing.KnowsWithCues),
            new KnownMark("c2", "d1", new DateOnly(2026, 9, 1), Knowing.Follows),
            new KnownMark("c2", "d1", new DateOnly(2026, 9, 3), null),
        ],
        Evenings =
        [
            new ClubEvening { Id = "e1", Title = "Harbour Social", Date = new DateOnly(2026, 11, 28), Minutes = 90, Place = "Boathouse Hall", Revision = 3 },
            new ClubEvening { Id = "e2", Title = "Plan of the beginners", Date = new DateOnly(2026, 11, 24), ClassId = "c1", Revision = 1 },
        ],
        Programmes = new Dictionary<string, EveningPaper>(StringComparer.Ordinal) { ["e1"] = EveningSamples.Small },
        Dances = [Row("d2", "Tin Lantern", "improver", 32, 4), Row("d1", "First Tide", "absolute beginner", 16, 1), Row("d3", "=1+1", "", null, null)],
    };

    /// <summary>A playlist with every hostile title.</summary>
    public static Playlist HostilePlaylist { get; } = new()
    {
        Title = Hostile[0],
        Entries =
        [
            .. Hostile.SelectMany((title, i) => (PlaylistEntry[])
            [
                new PlaylistEntry { Title = title, Artist = Hostile[^(i + 1)], Dance = title, Remark = title, Seconds = 100 + i, Source = $"/music/{i}.mp3", Location = $"{i + 1:00} song.mp3" },
                new PlaylistEntry { Title = "Before " + title, Seconds = 40, Location = SilenceFile.NameOf(40) },
            ]),
        ],
        LeftOut = [.. Hostile],
    };

    private static DanceRow Row(string id, string title, string level, int? counts, int? walls) => new(
        id,
        1,
        new DanceFacts { Title = title, Choreographer = "Scuff demo", Level = level, Counts = counts, Walls = walls, Songs = ["Harbour Lights Out, The Demo Band"], FastestTempo = counts is null ? null : 112.5 },
        ["quay", "winter"],
        Now,
        Now,
        null,
        null);
}
