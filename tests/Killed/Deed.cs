using System.Globalization;
using Scuff;
using Scuff.Repertoire;

namespace Killed;

/// <summary>
/// One deed of the writer. Seed and serial say all of it, so whoever knows them knows what must stand in the club afterwards: the writer does it to
/// the club, and the witness to a table of what is expected.
/// </summary>
/// <param name="Serial">Its number, from 1.</param>
/// <param name="Kind">What is done.</param>
/// <param name="Slot">To which of the few things of its kind.</param>
internal sealed record Deed(int Serial, DeedKind Kind, int Slot)
{
    /// <summary>How many classes there are.</summary>
    public const int Classes = 3;

    /// <summary>How many dances there are.</summary>
    public const int Dances = 6;

    private const int Sessions = 12;
    private const int Others = 4;

    // of a hundred deeds so many are of each kind
    private static readonly (DeedKind Kind, int Share, int Slots)[] Kinds =
    [
        (DeedKind.Session, 34, Sessions), (DeedKind.Dance, 16, Dances), (DeedKind.Evening, 12, Others), (DeedKind.Mark, 9, Classes * Dances),
        (DeedKind.Class, 7, Classes), (DeedKind.Setting, 6, Others), (DeedKind.NoSession, 5, Sessions), (DeedKind.Person, 4, Others),
        (DeedKind.Backup, 4, 1), (DeedKind.Restore, 2, 1), (DeedKind.NoPeople, 1, 1),
    ];

    /// <summary>The deed of a number.</summary>
    public static Deed Of(int seed, int serial)
    {
        Random dice = new(unchecked((seed * 486187739) + serial));
        int drawn = dice.Next(100);
        foreach ((DeedKind kind, int share, int slots) in Kinds)
        {
            if (drawn < share)
            {
                return new Deed(serial, kind, dice.Next(slots));
            }

            drawn -= share;
        }

        throw new InvalidOperationException("The shares add up to a hundred.");
    }

    /// <summary>The class it saves.</summary>
    public ClubClass AsClass() => new() { Title = Name("class"), Minutes = 30 + (Serial % 60), Notes = Words(400) };

    /// <summary>The session it saves.</summary>
    /// <param name="classId">The class of a slot.</param>
    /// <param name="danceId">The dance of a slot.</param>
    public ClassSession AsSession(Func<int, string> classId, Func<int, string> danceId) => new()
    {
        ClassId = classId(Slot % Classes),
        Date = new DateOnly(2020, 1, 1).AddDays(Serial % 2000),
        IsHeld = Serial % 3 != 0,
        HowItWent = $"{Name("session")} {Words(300)}",
        Items = Enumerable.Range(0, 2 + (Serial % 9)).Select(place => new SessionItem
        {
            Role = (ItemRole)(1 + (place % 6)),
            DanceId = danceId((Serial + place) % Dances),
            Title = Line($"dance {(Serial + place) % Dances}"),
            Minutes = 1 + (Serial % 50),
            Note = Words(60),
        }).ToValueList(),
    };

    /// <summary>The mark it sets.</summary>
    public KnownMark AsMark(Func<int, string> classId, Func<int, string> danceId)
        => new(classId(Slot / Dances), danceId(Slot % Dances), new DateOnly(2026, 1, 1), (Knowing)(1 + (Serial % 4)));

    /// <summary>The evening it saves.</summary>
    public ClubEvening AsEvening() => new() { Title = Name("evening"), Date = new DateOnly(2026, 1, 1).AddDays(Serial % 300), Plan = Words(12_000) };

    /// <summary>The text of the dance it saves.</summary>
    public string AsDance() => $"{Name("dance")}\n{Words(3000)}";

    /// <summary>The person it saves.</summary>
    public ClubPerson AsPerson() => new() { Name = Name("person"), Notes = Words(200) };

    /// <summary>Its slot in words.</summary>
    public string Name(string kind) => Line($"{kind} {Slot}");

    /// <summary>So many characters that name the deed all along, so that no part of it passes for another's.</summary>
    public string Words(int length) => string.Concat(Enumerable.Repeat(Line($"{Serial};"), (length / 2) + 1))[..length];

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
