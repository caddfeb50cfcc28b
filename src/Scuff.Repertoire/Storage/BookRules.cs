using System.Globalization;

namespace Scuff.Repertoire.Storage;

/// <summary>What can be kept in the book of a club, and the sentences for what cannot. Answers with the tidy form of what can.</summary>
internal static class BookRules
{
    private const int LongestLine = 200;
    private const int LongestText = 100_000;
    private const int LongestPlan = 8_000_000;
    private const int MostItems = 500;
    private const int MostPeople = 100_000;
    private const int MinutesOfDay = 24 * 60;

    private static readonly DateOnly FirstDay = new(1900, 1, 1);
    private static readonly DateOnly LastDay = new(2199, 12, 31);

    /// <summary>A class.</summary>
    /// <exception cref="ClubTrouble">It cannot be kept.</exception>
    public static ClubClass Tidy(ClubClass given)
    {
        string title = Needed(given.Title, "A class needs a title.", "The title of a class");
        if (given.Weekday is { } day && !Enum.IsDefined(day))
        {
            throw new ArgumentOutOfRangeException(nameof(given), day, "A week has no such day.");
        }

        return given with
        {
            Title = title,
            Level = Line(given.Level, "The level of a class"),
            Starts = ToMinute(given.Starts),
            Minutes = Minutes(given.Minutes, "A class"),
            Place = Line(given.Place, "The place of a class"),
            People = People(given.People),
            Notes = Text(given.Notes, "The notes of a class"),
            EndedOn = given.EndedOn is { } end ? Date(end) : null,
        };
    }

    /// <summary>A session, but for the dances it names.</summary>
    /// <exception cref="ClubTrouble">It cannot be kept.</exception>
    public static ClassSession Tidy(ClassSession given)
    {
        if (given.Items.Count > MostItems)
        {
            throw Cannot($"A session has at most {MostItems} dances, and this one has {given.Items.Count}.");
        }

        return given with
        {
            Date = Date(given.Date),
            Starts = ToMinute(given.Starts),
            Minutes = given.Minutes is { } minutes ? Minutes(minutes, "A session") : null,
            People = People(given.People),
            HowItWent = Text(given.HowItWent, "What is said about a session"),
            Items = given.Items.Select(Tidy).ToValueList(),
        };
    }

    /// <summary>An evening.</summary>
    /// <exception cref="ClubTrouble">It cannot be kept.</exception>
    public static ClubEvening Tidy(ClubEvening given) => given with
    {
        Title = Needed(given.Title, "An evening needs a title.", "The title of an evening"),
        Date = Date(given.Date),
        Starts = ToMinute(given.Starts)!.Value,
        Minutes = Minutes(given.Minutes, "An evening"),
        Place = Line(given.Place, "The place of an evening"),
        Plan = given.Plan.Length <= LongestPlan
            ? given.Plan.Replace('\0', '\uFFFD')
            : throw Cannot($"The plan of an evening has at most {LongestPlan / 1_000_000} million characters."),
    };

    /// <summary>A person.</summary>
    /// <exception cref="ClubTrouble">The person cannot be kept.</exception>
    public static ClubPerson Tidy(ClubPerson given) => given with
    {
        Name = Needed(given.Name, "A person needs a name.", "A name"),
        Level = Line(given.Level, "A level"),
        Needs = Text(given.Needs, "What a person needs"),
        Notes = Text(given.Notes, "The notes about a person"),
    };

    /// <summary>A day in the years that are kept.</summary>
    /// <exception cref="ClubTrouble">It is in no such year.</exception>
    public static DateOnly Date(DateOnly day) => day >= FirstDay && day <= LastDay
        ? day
        : throw Cannot(string.Create(CultureInfo.InvariantCulture, $"The book knows the years {FirstDay.Year} to {LastDay.Year}, and {day:yyyy-MM-dd} is in none of them."));

    /// <summary>The trouble of what cannot be kept.</summary>
    public static ClubTrouble Cannot(string sentence) => new(ClubTroubleKind.Impossible, sentence);

    private static SessionItem Tidy(SessionItem given, int place)
    {
        if (!Enum.IsDefined(given.Role))
        {
            throw new ArgumentOutOfRangeException(nameof(given), given.Role, "A dance has no such role.");
        }

        string title = Line(given.Title, "A title in a session");
        return title.Length > 0 || given.DanceId is { Length: > 0 }
            ? given with
            {
                Title = title,
                Minutes = given.Minutes is { } minutes ? Minutes(minutes, title.Length > 0 ? title : "A dance") : null,
                Note = Text(given.Note, "What is said about a dance"),
            }
            : throw Cannot(string.Create(CultureInfo.InvariantCulture, $"Place {place + 1} of the session names no dance."));
    }

    private static int Minutes(int minutes, string what) => minutes is >= 1 and <= MinutesOfDay
        ? minutes
        : throw Cannot(string.Create(CultureInfo.InvariantCulture, $"{what} cannot last {minutes} minutes: it lasts from 1 minute to a day, which has {MinutesOfDay}."));

    private static int? People(int? people) => people is null or (>= 0 and <= MostPeople)
        ? people
        : throw Cannot(string.Create(CultureInfo.InvariantCulture, $"There cannot be {people} people in a class."));

    // what is printed and planned goes by the minute
    private static TimeOnly? ToMinute(TimeOnly? time) => time is { } at ? new TimeOnly(at.Hour, at.Minute) : null;

    private static string Needed(string text, string isEmpty, string what)
        => Line(text, what) is { Length: > 0 } line ? line : throw Cannot(isEmpty);

    private static string Line(string text, string what)
    {
        string line = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Replace('\0', '\uFFFD');
        return line.Length <= LongestLine ? line : throw Cannot($"{what} has at most {LongestLine} characters, and this one has {line.Length}.");
    }

    private static string Text(string text, string what) => text.Length <= LongestText
        ? DanceWriting.Tidy(text)
        : throw Cannot($"{what} has at most {LongestText} characters, and this has {text.Length}.");
}
