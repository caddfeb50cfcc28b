using System.CommandLine;
using System.Globalization;
using Scuff.Analysis.Levels;
using Scuff.App.Book;
using Scuff.App.Programmes;
using Scuff.Repertoire;
using Scuff.Sheets;
using Scuff.Sheets.Languages;

namespace Scuff.App.Nights;

/// <summary>The options of <c>scuff night</c>, and her wishes read from them. Each act takes some of them (<see cref="Commands.IClubAct.Takes"/>).</summary>
internal sealed class NightOptions
{
    // the names that acts refer to
    public const string Json = "--json";
    public const string Seconds = "--seconds";
    public const string Why = "--why";

    private const char Part = ':';

    private readonly Option<bool> _json = new(Json) { Description = "Answer in JSON." };
    private readonly Option<double?> _seconds = new(Seconds) { Description = "How long the planner may look; 10 when not said.", HelpName = "number" };
    private readonly Option<bool> _why = new(Why) { Description = "Say of each line why it stands there." };
    private readonly Option<string?> _starts = new("--starts") { Description = "When it begins, such as 19:30.", HelpName = "time" };
    private readonly Option<int?> _minutes = new("--minutes") { Description = "How long it lasts, in minutes.", HelpName = "number" };
    private readonly Option<string?> _place = new("--place") { Description = "Where.", HelpName = "place" };
    private readonly Option<string[]> _classes = new("--class") { Description = "A class that is there, with its people: monday or monday:24.", HelpName = "class", AllowMultipleArgumentsPerToken = true };
    private readonly Option<string[]> _levels = new("--level") { Description = "Others who are there, by level: improver:20.", HelpName = "level", AllowMultipleArgumentsPerToken = true };
    private readonly Option<string[]> _rests = new("--rest") { Description = "A rest, after so many minutes and so long: 80:15.", HelpName = "rest", AllowMultipleArgumentsPerToken = true };
    private readonly Option<string[]> _lessons = new("--lesson") { Description = "A lesson: 60:20:\"Tin Lantern\".", HelpName = "lesson", AllowMultipleArgumentsPerToken = true };
    private readonly Option<string[]> _requests = new("--request") { Description = "A dance that was asked for, with how many asked: tin or tin:3.", HelpName = "dance", AllowMultipleArgumentsPerToken = true };
    private readonly Option<string[]> _musts = new("--must") { Description = "A dance that must come.", HelpName = "dance", AllowMultipleArgumentsPerToken = true };
    private readonly Option<string[]> _nevers = new("--never") { Description = "A dance that must not.", HelpName = "dance", AllowMultipleArgumentsPerToken = true };
    private readonly Option<string[]> _splits = new("--split") { Description = "Two dances at once to one song, one each side: tin:box.", HelpName = "dances", AllowMultipleArgumentsPerToken = true };
    private readonly Option<string?> _opening = new("--opening") { Description = "The dance that opens.", HelpName = "dance" };
    private readonly Option<string?> _closing = new("--closing") { Description = "The dance that closes.", HelpName = "dance" };
    private readonly Option<string?> _curve = new("--course") { Description = $"The wished course of effort: {string.Join(", ", EveningCurve.All.Select(c => c.Id))}.", HelpName = "course" };
    private readonly Option<int?> _warmUp = new("--warm-up") { Description = "Minutes of warming up.", HelpName = "number" };
    private readonly Option<int?> _revision = new("--revision") { Description = "Minutes of revision.", HelpName = "number" };
    private readonly Option<int?> _coolDown = new("--cool-down") { Description = "Minutes of cooling down.", HelpName = "number" };
    private readonly Option<bool> _noSplit = new("--no-split") { Description = "Never two dances at once." };
    private readonly Option<string[]> _tags = new("--tag") { Description = "Only dances with one of these tags.", HelpName = "tag", AllowMultipleArgumentsPerToken = true };

    private readonly Option<string> _paper = new("--paper") { Description = "The paper: a4 or letter.", DefaultValueFactory = _ => "a4" };
    private readonly Option<bool> _large = new("--large") { Description = "Print large." };
    private readonly Option<string> _language = new("--language") { Description = $"The language of what is printed: {string.Join(", ", SheetLanguage.Codes)}.", DefaultValueFactory = _ => "en" };

    /// <summary>The options that say how it is printed.</summary>
    public static IReadOnlyList<string> OfPrint { get; } = [.. new NightOptions().Printing.Select(o => o.Name)];

    /// <summary>The options that say what is wished.</summary>
    public static IReadOnlyList<string> OfWishes { get; } = [.. new NightOptions().Wishing.Select(o => o.Name)];

    private IEnumerable<Option> Wishing =>
    [
        _starts, _minutes, _place, _classes, _levels, _rests, _lessons, _requests, _musts, _nevers, _splits, _opening, _closing, _curve, _warmUp, _revision, _coolDown,
        _noSplit, _tags,
    ];

    private IEnumerable<Option> Printing => [_paper, _large, _language];

    private IEnumerable<Option> Every => [.. Wishing, _seconds, _why, .. Printing, _json];

    /// <summary>Adds them to the command.</summary>
    public void AddTo(Command command)
    {
        _paper.AcceptOnlyFromAmong("a4", "letter");
        _language.AcceptOnlyFromAmong([.. SheetLanguage.Codes]);
        foreach (Option option in Every)
        {
            command.Options.Add(option);
        }
    }

    /// <summary>The first option that was given and that an act does not take; null when all is well.</summary>
    public string? Misplaced(ParseResult parsed, INightAct act)
        => Every.Where(o => parsed.GetResult(o) is { Implicit: false }).Select(o => o.Name).FirstOrDefault(n => !act.Takes.Contains(n));

    /// <summary>Whether the answer is JSON.</summary>
    public bool IsJson(ParseResult parsed) => parsed.GetValue(_json);

    /// <summary>Whether reasons are told.</summary>
    public bool IsWhy(ParseResult parsed) => parsed.GetValue(_why);

    /// <summary>Paper, print and language of what is printed.</summary>
    public SheetChoices Choices(ParseResult parsed) => new()
    {
        Paper = parsed.GetValue(_paper) == "letter" ? Paper.Letter : Paper.A4,
        IsLarge = parsed.GetValue(_large),
        Language = parsed.GetValue(_language) ?? "en",
    };

    /// <summary>How long the planner may look.</summary>
    /// <exception cref="ClubTrouble">It is no time.</exception>
    public double LookFor(ParseResult parsed) => parsed.GetValue(_seconds) switch
    {
        null => 10,
        > 0 and <= 3600 and double said => said,
        var said => throw BookWords.Cannot($"A planner looks for a second up to an hour, not for {said?.ToString(CultureInfo.InvariantCulture)} seconds."),
    };

    /// <summary>The evening with what was said of its time and place.</summary>
    /// <exception cref="ClubTrouble">Something said is none.</exception>
    public ClubEvening Timed(ParseResult parsed, ClubEvening evening) => evening with
    {
        Starts = parsed.GetValue(_starts) is { } starts ? BookWords.TimeOf(starts) : evening.Starts,
        Minutes = parsed.GetValue(_minutes) ?? evening.Minutes,
        Place = parsed.GetValue(_place) ?? evening.Place,
    };

    /// <summary>Her wishes with what was said; what was not said stays, and so does what she decided before.</summary>
    /// <exception cref="ClubTrouble">Something said is none, or no such dance or class is there.</exception>
    public EveningPlan Wished(ParseResult parsed, Club club, EveningPlan plan)
    {
        EveningPlan wished = plan with
        {
            Groups = Said(_classes) || Said(_levels) ? [.. Given(_classes).Select(c => ClassOf(club, c)), .. Given(_levels).Select(LevelOf)] : plan.Groups,
            Stops = Said(_rests) || Said(_lessons)
                ? [.. Given(_rests).Select(r => StopOf(club, r, isLesson: false)), .. Given(_lessons).Select(l => StopOf(club, l, isLesson: true))]
                : plan.Stops,
            OpeningId = parsed.GetValue(_opening) is { } opening ? BookNames.Dance(club, opening).Id : plan.OpeningId,
            ClosingId = parsed.GetValue(_closing) is { } closing ? BookNames.Dance(club, closing).Id : plan.ClosingId,
            Curve = parsed.GetValue(_curve) is { } curve ? CurveOf(curve) : plan.Curve,
            WarmUpMinutes = parsed.GetValue(_warmUp) ?? plan.WarmUpMinutes,
            RevisionMinutes = parsed.GetValue(_revision) ?? plan.RevisionMinutes,
            CoolDownMinutes = parsed.GetValue(_coolDown) ?? plan.CoolDownMinutes,
            MaySplit = parsed.GetValue(_noSplit) ? false : plan.MaySplit,
            OnlyTags = Said(_tags) ? Given(_tags) : plan.OnlyTags,
        };
        foreach (string request in Given(_requests))
        {
            (string name, int people) = Counted(request);
            string id = BookNames.Dance(club, name).Id;
            wished = wished with { Requests = [.. wished.Requests.Where(r => r.DanceId != id), new EveningRequest { DanceId = id, People = people }] };
        }

        foreach (string must in Given(_musts))
        {
            wished = EveningChange.Must(wished, BookNames.Dance(club, must).Id);
        }

        foreach (string never in Given(_nevers))
        {
            wished = EveningChange.Forbid(wished, BookNames.Dance(club, never).Id);
        }

        foreach (string split in Given(_splits))
        {
            string[] parts = split.Split(Part);
            if (parts.Length != 2)
            {
                throw BookWords.Cannot($"Two dances at once are written with a colon between: tin:box; {split} is not.");
            }

            EveningPin pin = new() { Kind = EveningPinKind.Split, DanceId = BookNames.Dance(club, parts[0]).Id, OtherId = BookNames.Dance(club, parts[1]).Id };
            wished = wished with { Pins = [.. wished.Pins.Where(p => p != pin), pin] };
        }

        return wished;

        bool Said(Option option) => parsed.GetResult(option) is { Implicit: false };

        string[] Given(Option<string[]> option) => parsed.GetValue(option) ?? [];
    }

    private static EveningGroup ClassOf(Club club, string typed)
    {
        (string name, int people) = Counted(typed, fallback: 0);
        ClubClass held = BookNames.Class(club, name);
        return new EveningGroup { ClassId = held.Id, Name = held.Title, Level = held.Level, People = people > 0 ? people : held.People ?? 1 };
    }

    private static EveningGroup LevelOf(string typed)
    {
        (string name, int people) = Counted(typed);
        return LevelPhrases.Find(name.ToLowerInvariant()) is null
            ? throw BookWords.Cannot($"{name} is no level. Levels are absolute beginner, beginner, improver, intermediate and advanced.")
            : new EveningGroup { Name = name, Level = name.ToLowerInvariant(), People = people };
    }

    private static EveningStop StopOf(Club club, string typed, bool isLesson)
    {
        string[] parts = typed.Split(Part, isLesson ? 3 : 2);
        if (parts.Length < 2 || !int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out int at)
            || !int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out int minutes))
        {
            throw BookWords.Cannot(isLesson
                ? $"A lesson is written as the minute it begins at, how long it takes and the dance: 60:20:tin; {typed} is not."
                : $"A rest is written as the minute it begins at and how long it takes: 80:15; {typed} is not.");
        }

        return new EveningStop { AtMinute = at, Minutes = minutes, IsLesson = isLesson, DanceId = parts.Length > 2 ? BookNames.Dance(club, parts[2]).Id : "" };
    }

    private static string CurveOf(string typed) => EveningCurve.All.FirstOrDefault(c => c.Id == typed)?.Id
        ?? throw BookWords.Cannot($"There is no course of effort called {typed}. There are {string.Join(", ", EveningCurve.All.Select(c => $"{c.Id} ({c.Words})"))}.");

    private static (string Name, int People) Counted(string typed, int fallback = 1)
    {
        int colon = typed.LastIndexOf(Part);
        return colon > 0 && int.TryParse(typed.AsSpan(colon + 1), NumberStyles.None, CultureInfo.InvariantCulture, out int people)
            ? (typed[..colon], Math.Max(1, people))
            : (typed, fallback);
    }
}
