using System.Globalization;
using Scuff.Analysis.Planning;
using Scuff.App.Classes;
using Scuff.App.Complaints;
using Scuff.App.Programmes;
using Scuff.App.Web.Contract;
using Scuff.Repertoire;
using Scuff.Sheets.Languages;

namespace Scuff.App.Web;

/// <summary>Makes of an evening what the page shows, and of what the page sends her wishes.</summary>
/// <param name="titles">Titles of the dances of the club, by id.</param>
/// <param name="songOf">The title of a song, by dance and key.</param>
internal sealed class EveningPage(IReadOnlyDictionary<string, string> titles, Func<string, string, string> songOf)
{
    private const int CurvePlaces = 21;
    private const int Minute = 60;
    private const int MinutesOfDay = 24 * 60;

    /// <summary>An evening in a list.</summary>
    public static EveningHead Head(string id, string title, DateOnly date, TimeOnly starts, int minutes, string place, DateOnly today)
    {
        string where = place.Length > 0 ? $", {place}" : "";
        return new EveningHead(
            id,
            title,
            DayWords.Plain(date),
            DayWords.Clock(starts),
            minutes,
            place,
            $"{DayWords.Day(date, today)}, {DayWords.Clock(starts)} to {DayWords.Clock(starts, minutes * Minute)}{where}",
            date < today);
    }

    /// <summary>The courses of effort to choose from.</summary>
    public static IReadOnlyList<CurveChoice> Curves { get; } =
    [
        .. EveningCurve.All.Select(c => new CurveChoice(
            c.Id,
            c.Words,
            [.. Enumerable.Range(0, CurvePlaces).Select(i => c.At(100.0 * i / (CurvePlaces - 1)))])),
    ];

    /// <summary>Her wishes as the page shows them.</summary>
    public EveningWishes Wishes(EveningPlan plan, TimeOnly starts) => new(
        [.. plan.Groups.Select(g => new GroupWish(g.ClassId, g.Name, g.Level, g.People))],
        [
            .. plan.Stops.OrderBy(s => s.AtMinute).Select(s => new StopWish(
                DayWords.Clock(starts, s.AtMinute * Minute),
                s.Minutes,
                s.IsLesson,
                s.DanceId.Length > 0 ? s.DanceId : null,
                s.DanceId.Length > 0 ? Title(s.DanceId) : "")),
        ],
        plan.WarmUpMinutes,
        plan.CoolDownMinutes,
        EveningCurve.Find(plan.Curve).Id,
        Named(plan.OpeningId),
        Named(plan.ClosingId),
        [.. plan.Requests.Select(r => new RequestWish(r.DanceId, Title(r.DanceId), r.People))],
        [.. plan.Pins.Select(p => new PinWish(WordOf(p.Kind.ToString()), p.DanceId, p.OtherId, p.Stretch, p.Place, p.SongKey, Words(p)))],
        plan.MaySplit,
        [.. plan.OnlyTags]);

    /// <summary>The plan with the wishes that the page sends; the programme and the night stay.</summary>
    /// <exception cref="RefusalException">A wish cannot be.</exception>
    public static EveningPlan Wished(EveningPlan plan, EveningWishes wishes, TimeOnly starts) => plan with
    {
        Groups =
        [
            .. wishes.Groups.Select(g => new EveningGroup { ClassId = g.ClassId, Name = g.Name.Trim(), Level = g.Level, People = Between(g.People, 1, 9999, "people of a group") }),
        ],
        Stops =
        [
            .. wishes.Stops.Select(s => new EveningStop
            {
                AtMinute = MinuteOf(s.At, starts),
                Minutes = Between(s.Minutes, 1, 600, "minutes of a rest or a lesson"),
                IsLesson = s.IsLesson,
                DanceId = s.DanceId ?? "",
            }).OrderBy(s => s.AtMinute),
        ],
        WarmUpMinutes = Between(wishes.WarmUpMinutes, 0, 240, "minutes to warm up"),
        CoolDownMinutes = Between(wishes.CoolDownMinutes, 0, 240, "minutes to calm down"),
        Curve = wishes.Curve,
        OpeningId = wishes.Opening?.DanceId ?? "",
        ClosingId = wishes.Closing?.DanceId ?? "",
        Requests = [.. wishes.Requests.Select(r => new EveningRequest { DanceId = r.DanceId, People = Between(r.People, 1, 9999, "people who asked for a dance") })],
        Pins =
        [
            .. wishes.Pins.Select(p => new EveningPin
            {
                Kind = Enum.TryParse(p.Kind, ignoreCase: true, out EveningPinKind kind) && Enum.IsDefined(kind)
                    ? kind
                    : throw Refuse($"There is no decision {p.Kind}."),
                DanceId = p.DanceId,
                OtherId = p.OtherId,
                Stretch = p.Stretch,
                Place = p.Place,
                SongKey = p.SongKey,
            }),
        ],
        MaySplit = wishes.MaySplit,
        OnlyTags = [.. wishes.OnlyTags],
    };

    /// <summary>The minutes from the beginning of an evening to a time by the clock, over midnight too.</summary>
    /// <exception cref="RefusalException">It is no time.</exception>
    public static int MinuteOf(string clock, TimeOnly starts)
    {
        TimeOnly at = DayWords.ReadClock(clock) ?? throw Refuse($"{clock} is no time of the day. Write it as 20:45.");
        return ((int)(at.ToTimeSpan() - starts.ToTimeSpan()).TotalMinutes + MinutesOfDay) % MinutesOfDay;
    }

    /// <summary>The programme as the page shows it.</summary>
    /// <param name="plan">The plan with a programme.</param>
    /// <param name="words">What is said of it.</param>
    /// <param name="evening">The evening.</param>
    public ProgrammeAnswer Programme(EveningPlan plan, EveningWords words, ClubEvening evening)
    {
        EveningProgramme programme = plan.Programme!;
        HashSet<string> asked = [.. plan.Requests.Select(r => r.DanceId)];
        var lines = programme.Items.Select((item, i) => (item.Stretch, Line: Line(item, words.Items[i], evening.Starts, asked))).ToLookup(l => l.Stretch, l => l.Line);
        return new ProgrammeAnswer(
            [
                .. programme.Stretches.Select((s, i) => new ProgrammeStretchItem(
                    i,
                    Name(s.Kind),
                    WordOf(s.Kind.ToString()),
                    $"{DayWords.Clock(evening.Starts, s.Start)} to {DayWords.Clock(evening.Starts, s.Start + s.Seconds)}",
                    [.. lines[i]])).Where(s => s.Lines.Count > 0),
            ],
            Effort(plan, programme, evening),
            words.Sure,
            words.Common,
            [.. programme.Missed.Select((m, i) => new MissedItem(m.DanceId, m.Title, words.Missed[i], EveningChange.CanInsist(m.Kind)))],
            programme.IsStale ? "Your wishes have changed since. Plan it anew to see what becomes of it." : "");
    }

    /// <summary>The night as the page shows it.</summary>
    /// <param name="plan">The plan with a night.</param>
    /// <param name="evening">The evening.</param>
    /// <param name="origin">The moment from which its seconds count.</param>
    /// <param name="now">The moment.</param>
    public static NightAnswer Night(EveningPlan plan, ClubEvening evening, DateTimeOffset origin, DateTimeOffset now)
    {
        EveningNight night = plan.Night!;
        int end = NightRun.EndSecond(plan, evening.Minutes);
        return new NightAnswer(
            now.ToString("o", CultureInfo.InvariantCulture),
            origin.ToString("o", CultureInfo.InvariantCulture),
            (int)(NightRun.Since(night) - origin).TotalSeconds,
            end,
            Clock(origin.AddSeconds(end)),
            [.. night.Done.Reverse().Select(d => new DoneLine(LineTitle(d.Item), Clock(d.At), d.IsSkipped))],
            night.EndedAt is not null,
            night.EndedAt is { } ended ? Over(night, ended) : "");
    }

    private static string Over(EveningNight night, DateTimeOffset ended)
    {
        int danced = night.Done.Count(d => !d.IsSkipped && d.Item.SongKey.Length > 0);
        int left = night.Done.Count(d => d.IsSkipped);
        string skipped = left > 0 ? $", {left} left out" : "";
        return $"{Summary.Number(danced, "dance")} danced{skipped}. It began at {Clock(night.BegunAt)} and ended at {Clock(ended)}.";
    }

    private static string Clock(DateTimeOffset at) => at.ToString("HH:mm", CultureInfo.InvariantCulture);

    private static ProgrammeLine Line(EveningItem item, IReadOnlyList<string> reasons, TimeOnly starts, HashSet<string> asked) => new(
        item.Place,
        DayWords.Clock(starts, item.Start),
        item.Start,
        item.Seconds,
        item.DanceId,
        LineTitle(item),
        item.Level,
        item.OtherId,
        item.OtherTitle,
        item.OtherLevel,
        item.SongKey,
        item.SongTitle,
        item.TrackId,
        item.FloorShare,
        Floor(item.FloorShare),
        item.Effort > 0 ? string.Create(CultureInfo.InvariantCulture, $"About {item.Effort / 10.0:0.0} METs.") : "",
        item.IsPinned,
        asked.Contains(item.DanceId) || asked.Contains(item.OtherId),
        reasons);

    private static string LineTitle(EveningItem item) => item switch
    {
        { SongKey.Length: > 0 } => item.Title,
        { DanceId.Length: > 0 } => $"Lesson: {item.Title}",
        _ => item.Title.Length > 0 ? item.Title : "Rest",
    };

    private static string Floor(int percent) => percent switch
    {
        >= 100 => "the whole floor",
        <= 0 => "nobody knows it yet",
        _ => string.Create(CultureInfo.InvariantCulture, $"{percent} % of the floor"),
    };

    private static string Name(StretchKind kind) => kind switch
    {
        StretchKind.WarmUp => "Warming up",
        StretchKind.Revision => "Revision",
        StretchKind.Dancing => "Dancing",
        StretchKind.Lesson => "Lesson",
        StretchKind.Rest => "Rest",
        StretchKind.CoolDown => "Calming down",
        _ => throw new InvalidOperationException($"There is no stretch {kind}."),
    };

    private static EffortDrawing Effort(EveningPlan plan, EveningProgramme programme, ClubEvening evening)
    {
        IEnumerable<EveningItem> danced = (plan.Night?.Done ?? []).Where(d => !d.IsSkipped).Select(d => d.Item).Concat(programme.Items);
        EffortLine[] lines = [.. danced.Where(i => i is { SongKey.Length: > 0, Effort: > 0 }).Select(i => new EffortLine(i.Start, i.Start + i.Seconds, i.Effort, i.Title))];
        List<EffortPoint> wished = [];
        foreach (EveningStretch stretch in programme.Stretches)
        {
            bool isWished = stretch.EffortAtStart > 0 && stretch.EffortAtEnd > 0;
            if (isWished)
            {
                wished.Add(new EffortPoint(stretch.Start, stretch.EffortAtStart));
                wished.Add(new EffortPoint(stretch.Start + stretch.Seconds, stretch.EffortAtEnd));
            }
            else
            {
                wished.Add(new EffortPoint(stretch.Start, 0));
            }
        }

        int seconds = Math.Max(NightRun.EndSecond(plan, evening.Minutes), lines.Length > 0 ? lines[^1].To : 0);
        return new EffortDrawing(seconds, lines, wished, EffortWords(lines, wished.Exists(w => w.Effort > 0)));
    }

    private static string EffortWords(EffortLine[] lines, bool isWished)
    {
        if (lines.Length == 0)
        {
            return "No dance, no effort.";
        }

        EffortLine most = lines.MaxBy(l => l.Effort)!;
        string wish = isWished ? " The dashed line is the course you wish for." : "";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"Effort in METs, a block a dance: from {lines.Min(l => l.Effort) / 10.0:0.0} to {most.Effort / 10.0:0.0} ({most.Title}).{wish}");
    }

    private static string WordOf(string name) => SheetLanguage.KeyOf(name);

    private static int Between(int number, int least, int most, string what) => number >= least && number <= most
        ? number
        : throw Refuse(string.Create(CultureInfo.InvariantCulture, $"The {what} are from {least} to {most}."));

    private static RefusalException Refuse(string sentence) => new(Microsoft.AspNetCore.Http.StatusCodes.Status400BadRequest, sentence);

    private NamedDance? Named(string id) => id.Length > 0 ? new NamedDance(id, Title(id)) : null;

    private string Title(string id) => titles.GetValueOrDefault(id) is { Length: > 0 } title ? title : "a dance that is not in the book";

    private string Words(EveningPin pin) => pin.Kind switch
    {
        EveningPinKind.At => $"{Title(pin.DanceId)} is line {pin.Place + 1} of part {pin.Stretch + 1}.",
        EveningPinKind.Within => $"{Title(pin.DanceId)} is danced in part {pin.Stretch + 1}.",
        EveningPinKind.Somewhere => $"{Title(pin.DanceId)} is danced, wherever it suits.",
        EveningPinKind.Never => $"{Title(pin.DanceId)} is not danced.",
        EveningPinKind.Closing => $"{Title(pin.DanceId)} closes.",
        EveningPinKind.Before => $"{Title(pin.DanceId)} comes before {Title(pin.OtherId)}.",
        EveningPinKind.Split => $"{Title(pin.DanceId)} and {Title(pin.OtherId)} share the floor.",
        EveningPinKind.Song => $"{Title(pin.DanceId)} is danced to {songOf(pin.DanceId, pin.SongKey)}.",
        _ => throw new InvalidOperationException($"There is no pin {pin.Kind}."),
    };
}
