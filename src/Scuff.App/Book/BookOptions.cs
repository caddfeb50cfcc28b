using System.CommandLine;
using Scuff.Repertoire;

namespace Scuff.App.Book;

/// <summary>The options of <c>scuff book</c>. Each act takes some of them (<see cref="Commands.IClubAct.Takes"/>).</summary>
internal sealed class BookOptions
{
    // the names that acts refer to
    public const string Json = "--json";
    public const string Date = "--date";
    public const string Minutes = "--minutes";
    public const string People = "--people";
    public const string Note = "--note";
    public const string Starts = "--starts";
    public const string Day = "--day";
    public const string Level = "--level";
    public const string Place = "--place";
    public const string Title = "--title";
    public const string Ended = "--ended";
    public const string Remove = "--remove";
    public const string ForGood = "--for-good";
    public const string Class = "--class";
    public const string Needs = "--needs";
    public const string All = "--all";

    private static readonly (ItemRole Role, string Name, string Meaning)[] Roles =
    [
        (ItemRole.WarmUp, "--warm-up", "Dances to warm up with."),
        (ItemRole.Revised, "--revised", "Dances that were revised."),
        (ItemRole.Taught, "--taught", "Dances that were taught as new."),
        (ItemRole.Requested, "--requested", "Dances that were asked for."),
        (ItemRole.Danced, "--danced", "Dances that were danced."),
        (ItemRole.CoolDown, "--cool-down", "Dances to cool down with."),
    ];

    private readonly Option<bool> _json = new(Json) { Description = "Answer in JSON." };
    private readonly Option<string?> _date = new(Date) { Description = "The day of a mark; today when not said.", HelpName = "day" };
    private readonly Option<int?> _minutes = new(Minutes) { Description = "How long it lasts, in minutes.", HelpName = "number" };
    private readonly Option<int?> _people = new(People) { Description = "How many people.", HelpName = "number" };
    private readonly Option<string?> _note = new(Note) { Description = "Your words about it.", HelpName = "words" };
    private readonly Option<string?> _starts = new(Starts) { Description = "When it begins, such as 19:30.", HelpName = "time" };
    private readonly Option<string?> _day = new(Day) { Description = "The day a class meets, such as monday.", HelpName = "weekday" };
    private readonly Option<string?> _level = new(Level) { Description = "The level, in your words.", HelpName = "level" };
    private readonly Option<string?> _place = new(Place) { Description = "Where a class meets.", HelpName = "place" };
    private readonly Option<string?> _title = new(Title) { Description = "A new title for a class.", HelpName = "title" };
    private readonly Option<string?> _ended = new(Ended) { Description = "The last day of a class.", HelpName = "day" };
    private readonly Option<bool> _remove = new(Remove) { Description = "Remove a class; one with held sessions is ended and stays." };
    private readonly Option<bool> _forGood = new(ForGood) { Description = "With --remove: its sessions and marks go too." };
    private readonly Option<string[]> _classes = new(Class) { Description = "A class that a person comes to.", HelpName = "class", AllowMultipleArgumentsPerToken = true };
    private readonly Option<string?> _needs = new(Needs) { Description = "What a person needs.", HelpName = "words" };
    private readonly Option<bool> _all = new(All) { Description = "All of them." };
    private readonly (ItemRole Role, Option<string[]> Option)[] _dances =
    [
        .. Roles.Select(r => (r.Role, new Option<string[]>(r.Name) { Description = r.Meaning, HelpName = "dance", AllowMultipleArgumentsPerToken = true })),
    ];

    /// <summary>The options that name the dances of a session.</summary>
    public static IEnumerable<string> OfDances => Roles.Select(r => r.Name);

    private IEnumerable<Option> Every =>
        [.. _dances.Select(d => d.Option), _date, _minutes, _people, _note, _starts, _day, _level, _place, _title, _ended, _remove, _forGood, _classes, _needs, _all, _json];

    /// <summary>Adds them to the command.</summary>
    public void AddTo(Command command)
    {
        foreach (Option option in Every)
        {
            command.Options.Add(option);
        }
    }

    /// <summary>The first option that was given and that an act does not take; null when all is well.</summary>
    public string? Misplaced(ParseResult parsed, IBookAct act)
        => Every.Where(o => parsed.GetResult(o) is { Implicit: false }).Select(o => o.Name).FirstOrDefault(n => !act.Takes.Contains(n));

    /// <summary>What was said.</summary>
    public BookQuestion Read(ParseResult parsed, IReadOnlyList<string> words, DateTimeOffset now) => new()
    {
        Words = words,
        Now = now,
        AsJson = parsed.GetValue(_json),
        Dances = [.. _dances.SelectMany(d => (parsed.GetValue(d.Option) ?? []).Select(dance => (d.Role, dance)))],
        Date = parsed.GetValue(_date),
        Day = parsed.GetValue(_day),
        Starts = parsed.GetValue(_starts),
        Minutes = parsed.GetValue(_minutes),
        Level = parsed.GetValue(_level),
        Place = parsed.GetValue(_place),
        People = parsed.GetValue(_people),
        Note = parsed.GetValue(_note),
        Title = parsed.GetValue(_title),
        Ended = parsed.GetValue(_ended),
        Classes = parsed.GetValue(_classes) ?? [],
        Needs = parsed.GetValue(_needs),
        IsRemoving = parsed.GetValue(_remove),
        IsForGood = parsed.GetValue(_forGood),
        IsAll = parsed.GetValue(_all),
    };
}
