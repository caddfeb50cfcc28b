using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Scuff.Analysis.Levels;
using Scuff.App.Classes;
using Scuff.App.Handouts;
using Scuff.App.Programmes;
using Scuff.App.Web.Contract;
using Scuff.App.Web.Hall;
using Scuff.Dances;
using Scuff.Repertoire;
using Scuff.Sheets;

namespace Scuff.App.Web.Routes;

/// <summary>Evenings: her wishes, the programme, the night. Her tablet leads the night; what classes there are is told on this machine alone.</summary>
internal sealed class EveningRoutes : IRouteGroup
{
    private const int PageRows = 40;

    // a whole programme may take a while; what she decides in it is answered at once
    private const double PlanSeconds = 8;
    private const double DecideSeconds = 2.5;

    public void Map(IEndpointRouteBuilder routes, Studio studio)
    {
        routes.MapGet("/api/evenings", context => Exchange.Answer(context, List(studio, Skip(context))));
        routes.MapPost("/api/evenings", async context =>
        {
            EveningBody body = await Exchange.Read<EveningBody>(context).ConfigureAwait(false);
            ClubEvening made = Taken(new ClubEvening { Title = body.Title, Date = default }, body);
            EveningPlan plan = body.Wishes is { } wishes ? EveningPage.Wished(EveningPlan.Empty, wishes, made.Starts) : Everybody(studio.Club);
            ClubEvening kept = Kept(studio.Club, made, plan, 0);
            await Exchange.Answer(context, Answer(context, studio, kept, plan, []), StatusCodes.Status201Created).ConfigureAwait(false);
        });
        routes.MapGet("/api/evenings/{id}", context =>
        {
            (ClubEvening evening, EveningPlan plan) = Get(studio.Club, context);
            return Exchange.Answer(context, Answer(context, studio, evening, plan, []));
        });
        routes.MapPut("/api/evenings/{id}", async context =>
        {
            EveningBody body = await Exchange.Read<EveningBody>(context).ConfigureAwait(false);
            (ClubEvening before, EveningPlan was) = Get(studio.Club, context);
            ClubEvening taken = Taken(before, body);
            EveningPlan plan = body.Wishes is { } wishes ? EveningPage.Wished(was, wishes, taken.Starts) : was;
            if (plan.Programme is { IsStale: false } programme && (IsOther(was, plan) || taken.Minutes != before.Minutes || taken.Date != before.Date))
            {
                plan = plan with { Programme = programme with { IsStale = true } };
            }

            ClubEvening kept = Kept(studio.Club, taken, plan, body.Revision);
            await Exchange.Answer(context, Answer(context, studio, kept, plan, [])).ConfigureAwait(false);
        });
        routes.MapDelete("/api/evenings/{id}", context => studio.Club.Evenings.Remove(Exchange.Path(context, "id"))
            ? Exchange.Answer(context, List(studio, 0))
            : throw Missing());
        routes.MapPost("/api/evenings/{id}/plan", async context =>
        {
            EveningTurn turn = await Exchange.Read<EveningTurn>(context).ConfigureAwait(false);
            (ClubEvening evening, EveningPlan plan) = Get(studio.Club, context, turn.Revision);
            await Planned(context, studio, evening, plan, plan, PlanSeconds).ConfigureAwait(false);
        });
        routes.MapPost("/api/evenings/{id}/decide", async context =>
        {
            EveningDecision decision = await Exchange.Read<EveningDecision>(context).ConfigureAwait(false);
            (ClubEvening evening, EveningPlan plan) = Get(studio.Club, context, decision.Revision);
            await Planned(context, studio, evening, plan, Decided(plan, decision), DecideSeconds).ConfigureAwait(false);
        });
        routes.MapPost("/api/evenings/{id}/night", async context =>
        {
            NightTurn turn = await Exchange.Read<NightTurn>(context).ConfigureAwait(false);
            await Turned(context, studio, turn).ConfigureAwait(false);
        });
        routes.MapGet("/api/evenings/{id}/songs", context => Exchange.Answer(context, new SongChoices(
            [.. studio.Night.Songs(studio.Club, context.Request.Query["dance"].ToString()).Select(s => new SongChoice(s.Key, s.Title, $"{s.Seconds / 60}:{s.Seconds % 60:00}"))])));
        routes.MapGet("/api/evenings/{id}/file/{format}", context =>
        {
            (ClubEvening evening, EveningPlan plan) = Get(studio.Club, context);
            Handout<EveningOut> form = EveningHandouts.Find(Exchange.Path(context, "format"))
                ?? throw new RefusalException(StatusCodes.Status404NotFound, "An evening cannot be taken along like that.");
            if (plan.Programme is null)
            {
                throw new RefusalException(StatusCodes.Status409Conflict, "This evening has no programme yet. Plan it first.");
            }

            SheetChoices choices = new() { Paper = context.Request.Query["paper"] == "letter" ? Paper.Letter : Paper.A4, IsLarge = context.Request.Query["large"] == "true" };
            EveningOut taken = TakenOut.Evening(studio.Club, evening, plan, studio.Night.Words(studio.Club, evening, plan), choices, studio.Clock.GetLocalNow());
            return Exchange.Handout(context, form, taken, form.FileNameFor($"{evening.Title} {DayWords.Plain(evening.Date)}"));
        });
    }

    private static EveningPlan Decided(EveningPlan plan, EveningDecision decision) => decision.What switch
    {
        "pin" => EveningChange.Pin(plan, decision.DanceId, Math.Max(0, decision.Stretch), Math.Max(0, decision.Place)),
        "unpin" => EveningChange.Unpin(plan, decision.DanceId),
        "forbid" => EveningChange.Forbid(plan, decision.DanceId),
        "allow" => EveningChange.Allow(plan, decision.DanceId),
        "must" => EveningChange.Must(plan, decision.DanceId),
        "song" => EveningChange.Song(plan, decision.DanceId, decision.SongKey),
        "request" => EveningChange.Request(plan, decision.DanceId),
        "unrequest" => EveningChange.Unrequest(plan, decision.DanceId),
        _ => throw new RefusalException(StatusCodes.Status400BadRequest, $"There is no decision {decision.What}."),
    };

    // Her decision is kept before it is looked for, so that a long search loses nothing.
    private static async Task Planned(HttpContext context, Studio studio, ClubEvening evening, EveningPlan was, EveningPlan plan, double seconds)
    {
        EveningPlan asked = plan.Programme is { } seen ? plan with { Programme = seen with { IsStale = true } } : plan;
        ClubEvening kept = Kept(studio.Club, evening, asked, evening.Revision);
        EveningPlan made = plan.Night is null
            ? plan with { Programme = studio.Night.Plan(studio.Club, kept, plan, 0, seconds, context.RequestAborted) }
            : Rest(studio, kept, plan, HoldsFirst(plan), seconds, context.RequestAborted);
        kept = Kept(studio.Club, kept, made, kept.Revision);
        await Exchange.Answer(context, Answer(context, studio, kept, made, Moved(studio, was, made))).ConfigureAwait(false);
    }

    private static IReadOnlyList<string> Moved(Studio studio, EveningPlan was, EveningPlan made)
        => was.Programme is { } before && made.Programme is { } after ? studio.Night.Moved(before, after) : [];

    private static async Task Turned(HttpContext context, Studio studio, NightTurn turn)
    {
        (ClubEvening evening, EveningPlan was) = Get(studio.Club, context, turn.Revision);
        if (was.Programme is null)
        {
            throw new RefusalException(StatusCodes.Status409Conflict, "This evening has no programme yet. Plan it first.");
        }

        if (was.Night is null && turn.What != "begin")
        {
            throw new RefusalException(StatusCodes.Status409Conflict, "The evening has not begun.");
        }

        DateTimeOffset now = studio.Clock.GetLocalNow();
        RefusalException elsewhere = new(StatusCodes.Status409Conflict, "The list went on meanwhile, on another page. Here it is as it stands now.");
        EveningPlan plan = turn.What switch
        {
            "begin" => NightRun.Begin(was, now),
            "danced" => NightRun.Tick(was, turn.Line, now) ?? throw elsewhere,
            "skip" => NightRun.Skip(was, turn.Line, now) ?? throw elsewhere,
            "back" => NightRun.Back(was) ?? throw elsewhere,
            "end-at" => was with { Night = was.Night! with { EndMinute = turn.EndsAt.Length > 0 ? EveningPage.MinuteOf(turn.EndsAt, NightBegins(studio, evening, was)) : null } },
            "again" => was,
            "request" => EveningChange.Request(was, turn.DanceId),
            "close" => was with { Night = was.Night! with { EndedAt = now } },
            "reopen" => was with { Night = was.Night! with { EndedAt = null } },
            _ => throw new RefusalException(StatusCodes.Status400BadRequest, $"Nothing like {turn.What} happens in a night."),
        };

        // what she ticked is on the disk before anything is looked for
        ClubEvening kept = Kept(studio.Club, evening, plan, evening.Revision);
        bool isShort = turn.What == "danced" && NightRun.IsShort(plan, evening.Minutes, SecondOf(studio, evening, plan));
        bool isOfFirst = was.Programme.Items is [var shown, ..] && shown.Start == turn.Line;
        EveningPlan made = turn.What switch
        {
            "end-at" or "again" or "request" => Rest(studio, kept, plan, HoldsFirst(plan), DecideSeconds, context.RequestAborted),
            "skip" => Rest(studio, kept, plan, !isOfFirst && HoldsFirst(plan), DecideSeconds, context.RequestAborted),
            "danced" when isShort => Rest(studio, kept, plan, isFirstHeld: false, DecideSeconds, context.RequestAborted),
            _ => plan,
        };
        IReadOnlyList<string> moved = [];
        if (!ReferenceEquals(made, plan))
        {
            kept = Kept(studio.Club, kept, made, kept.Revision);
            moved = Moved(studio, plan, made);
            moved = isShort ? ["Time ran short, so the rest was planned anew.", .. moved] : moved;
        }

        await Exchange.Answer(context, Answer(context, studio, kept, made, moved)).ConfigureAwait(false);
    }

    private static bool HoldsFirst(EveningPlan plan) => plan is { Night: not null, Programme.Items.Count: > 0 };

    // The line that is danced now stays as it is; what comes after it is planned anew.
    private static EveningPlan Rest(Studio studio, ClubEvening evening, EveningPlan plan, bool isFirstHeld, double seconds, CancellationToken stop)
    {
        DateTimeOffset origin = Origin(studio, evening, plan);
        int now = Math.Max(0, SecondOf(studio, evening, plan));
        EveningItem? first = isFirstHeld ? plan.Programme!.Items[0] : null;
        EveningPlan asked = plan;
        int from = now;
        if (first is not null)
        {
            // it began when the one before it was ticked, early or late
            first = first with { Start = Math.Max(0, (int)(NightRun.Since(plan.Night!) - origin).TotalSeconds) };
            from = Math.Max(now, first.Start + first.Seconds);
            DateTimeOffset over = origin.AddSeconds(from);
            asked = plan with
            {
                Night = plan.Night! with { Done = [.. plan.Night!.Done, new EveningDone { Item = first, At = over }] },
                Programme = plan.Programme! with { Items = [.. plan.Programme.Items.Skip(1)] },
            };
        }

        ClubEvening until = evening with { Minutes = plan.Night!.EndMinute ?? evening.Minutes };
        EveningProgramme rest = studio.Night.Plan(studio.Club, until, NightRun.Asked(asked, origin, from), from, seconds, stop);
        return plan with { Programme = first is null ? rest : rest with { Items = [first, .. rest.Items] } };
    }

    private static TimeOnly NightBegins(Studio studio, ClubEvening evening, EveningPlan plan) => TimeOnly.FromDateTime(Origin(studio, evening, plan).DateTime);

    private static DateTimeOffset Origin(Studio studio, ClubEvening evening, EveningPlan plan)
    {
        DateTime planned = evening.Date.ToDateTime(evening.Starts);
        return NightRun.Origin(new DateTimeOffset(planned, studio.Clock.LocalTimeZone.GetUtcOffset(planned)), plan.Night!);
    }

    private static int SecondOf(Studio studio, ClubEvening evening, EveningPlan plan)
        => (int)(studio.Clock.GetLocalNow() - Origin(studio, evening, plan)).TotalSeconds;

    private static ClubEvening Taken(ClubEvening evening, EveningBody body) => evening with
    {
        Title = body.Title,
        Date = DayWords.ReadDay(body.Date) ?? throw new RefusalException(StatusCodes.Status400BadRequest, $"{body.Date} is no day. Choose one from the calendar."),
        Starts = DayWords.ReadClock(body.Starts) ?? throw new RefusalException(StatusCodes.Status400BadRequest, $"{body.Starts} is no time of the day. Write it as 19:30."),
        Minutes = body.Minutes is >= 10 and <= 900 ? body.Minutes : throw new RefusalException(StatusCodes.Status400BadRequest, "An evening lasts from 10 minutes to 15 hours."),
        Place = body.Place,
    };

    // all her classes are asked to a social, until she says otherwise
    private static EveningPlan Everybody(Club club) => EveningPlan.Empty with
    {
        Groups = [.. club.Book.Classes().Select(c => new EveningGroup { ClassId = c.Id, Name = c.Title, Level = c.Level, People = Math.Max(1, c.People ?? 10) })],
    };

    private static bool IsOther(EveningPlan before, EveningPlan after) => (before with { Programme = null, Night = null }).Text() != (after with { Programme = null, Night = null }).Text();

    private static ClubEvening Kept(Club club, ClubEvening evening, EveningPlan plan, int revision) => club.Evenings.Save(evening with { Plan = plan.Text() }, revision) switch
    {
        EveningOutcome.Saved saved => saved.Evening,
        EveningOutcome.Changed => throw Overtaken(),
        _ => throw Missing(),
    };

    private static (ClubEvening Evening, EveningPlan Plan) Get(Club club, HttpContext context, int? revision = null)
    {
        ClubEvening evening = club.Evenings.Get(Exchange.Path(context, "id")) ?? throw Missing();
        if (revision is { } seen && seen != evening.Revision)
        {
            throw Overtaken();
        }

        try
        {
            return (evening, EveningPlan.Read(evening.Plan));
        }
        catch (FormatException trouble)
        {
            throw new RefusalException(StatusCodes.Status409Conflict, trouble.Message);
        }
    }

    private static EveningAnswer Answer(HttpContext context, Studio studio, ClubEvening evening, EveningPlan plan, IReadOnlyList<string> moved)
    {
        Club club = studio.Club;
        bool isHere = HallGate.CircleOf(context) == HallCircle.Here;
        DateTimeOffset now = studio.Clock.GetLocalNow();
        DateOnly today = DateOnly.FromDateTime(now.DateTime);
        Dictionary<string, string> titles = club.Dances.Every().ToDictionary(d => d.Id, d => d.Facts.Title, StringComparer.Ordinal);
        EveningPage page = new(titles, (dance, song) => studio.Night.Songs(club, dance).FirstOrDefault(s => s.Key == song)?.Title ?? "a song it has no more");
        return new EveningAnswer(
            EveningPage.Head(evening.Id, evening.Title, evening.Date, evening.Starts, evening.Minutes, evening.Place, today),
            evening.Revision,
            page.Wishes(plan, evening.Starts),
            isHere ? [.. club.Book.Classes().Select(c => new ClassChoice(c.Id, c.Title, c.Level, c.People ?? 10))] : [],
            [.. Enum.GetValues<Level>().Select(LevelPhrases.Name)],
            EveningPage.Curves,
            [.. club.Dances.Tags().Select(t => t.Tag)],
            plan.Programme is null ? null : page.Programme(plan, studio.Night.Words(club, evening, plan), evening),
            moved,
            plan.Night is null ? null : EveningPage.Night(plan, evening, Origin(studio, evening, plan), now),
            plan.Programme is null ? [] : [.. EveningHandouts.All.Select(f => new FileOffer(f.Name, f.Title, f.Extension))]);
    }

    private static EveningList List(Studio studio, int skip)
    {
        DateOnly today = DateOnly.FromDateTime(studio.Clock.GetLocalNow().DateTime);
        ValueList<EveningRow> all = studio.Club.Evenings.List();
        IEnumerable<EveningRow> ordered = all.Where(e => e.Date >= today).Reverse().Concat(all.Where(e => e.Date < today));
        return new EveningList(
            DayWords.Plain(today),
            [.. ordered.Skip(skip).Take(PageRows).Select(e => EveningPage.Head(e.Id, e.Title, e.Date, e.Starts, e.Minutes, e.Place, today))],
            all.Count);
    }

    private static int Skip(HttpContext context) => int.TryParse(context.Request.Query["skip"], out int skip) && skip > 0 ? skip : 0;

    private static RefusalException Missing() => new(StatusCodes.Status404NotFound, "There is no such evening any more.");

    private static RefusalException Overtaken()
        => new(StatusCodes.Status409Conflict, "This evening was changed elsewhere in the meantime. Here it is as it stands now; do it again if it is still wanted.");
}
