using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Scuff.Analysis.Compare;
using Scuff.Analysis.Lessons;
using Scuff.Analysis.Levels;
using Scuff.App.Classes;
using Scuff.App.Handouts;
using Scuff.App.Web.Contract;
using Scuff.App.Web.Hall;
using Scuff.Dances;
using Scuff.Repertoire;
using Scuff.Sheets;
using Scuff.Sheets.Languages;

namespace Scuff.App.Web.Routes;

/// <summary>The book of classes: who meets when, what was danced and will be, what they know. On this machine alone; the hall has no business in it.</summary>
internal sealed class ClassRoutes : IRouteGroup
{
    private const int HistoryRows = 8;
    private const int KnownRows = 40;
    private const int MostPlanned = 500;
    private const int Offered = 3;

    public void Map(IEndpointRouteBuilder routes, Studio studio)
    {
        ClubBook book = studio.Club.Book;
        routes.MapGet("/api/classes", context => Exchange.Answer(context, List(studio))).For(HallCircle.Here);
        routes.MapPost("/api/classes", async context =>
        {
            ClassBody body = await Exchange.Read<ClassBody>(context).ConfigureAwait(false);
            ClubClass made = book.SaveClass(Taken(body, ""));
            await Exchange.Answer(context, Answer(studio, made), StatusCodes.Status201Created).ConfigureAwait(false);
        }).For(HallCircle.Here);
        routes.MapGet("/api/classes/{id}", context => Exchange.Answer(context, Answer(studio, Get(studio, context)))).For(HallCircle.Here);
        routes.MapPut("/api/classes/{id}", async context =>
        {
            ClassBody body = await Exchange.Read<ClassBody>(context).ConfigureAwait(false);
            ClubClass kept = book.SaveClass(Taken(body, Get(studio, context).Id));
            await Exchange.Answer(context, Answer(studio, kept)).ConfigureAwait(false);
        }).For(HallCircle.Here);
        routes.MapDelete("/api/classes/{id}", context => book.RemoveClass(Exchange.Path(context, "id"), forGood: true) == ClassRemoval.Gone
            ? throw Missing()
            : Exchange.Answer(context, List(studio))).For(HallCircle.Here);
        routes.MapPost("/api/classes/{id}/sessions", context => Keep(studio, context, "")).For(HallCircle.Here);
        routes.MapPut("/api/classes/{id}/sessions/{session}", context => Keep(studio, context, Exchange.Path(context, "session"))).For(HallCircle.Here);
        routes.MapDelete("/api/classes/{id}/sessions/{session}", context => book.RemoveSession(Exchange.Path(context, "session"))
            ? Exchange.Answer(context, Answer(studio, Get(studio, context)))
            : throw new RefusalException(StatusCodes.Status404NotFound, "There is no such session any more.")).For(HallCircle.Here);
        routes.MapGet("/api/classes/{id}/history", context =>
        {
            ClassShown shown = new(studio, Get(studio, context));
            SessionPage page = book.Sessions(new SessionQuery { ClassId = shown.Held.Id, IsHeld = true, Skip = Whole(context, "skip"), Take = HistoryRows });
            return Exchange.Answer(context, new HistoryPage([.. page.Sessions.Select(s => shown.Session(s))], page.Total));
        }).For(HallCircle.Here);
        routes.MapGet("/api/classes/{id}/dances", context =>
        {
            ClassShown shown = new(studio, Get(studio, context));
            List<KnownDance> known = shown.Known(context.Request.Query["order"].ToString());
            return Exchange.Answer(context, new KnownPage([.. known.Skip(Whole(context, "skip")).Take(KnownRows)], known.Count));
        }).For(HallCircle.Here);
        routes.MapPost("/api/classes/{id}/fill", async context =>
        {
            SessionBody body = await Exchange.Read<SessionBody>(context).ConfigureAwait(false);
            ClubClass held = Get(studio, context);
            FilledClass filled = ClassFilling.Fill(
                studio.Club,
                studio.Night,
                studio.Revision,
                held,
                Said(body, held, ""),
                id => studio.Club.Dances.Get(id) is { } dance ? TeachingMinutes(studio, dance, held) : 0,
                context.RequestAborted);
            await Exchange.Answer(context, new FilledSession(
                [.. filled.Items.Select(i => new SessionLine(ClassShown.Roles.First(r => r.Role == i.Role).Word, i.DanceId, i.Title, i.Minutes, i.Note, null))],
                [.. filled.Missed])).ConfigureAwait(false);
        }).For(HallCircle.Here);
        routes.MapPost("/api/classes/{id}/marks", async context =>
        {
            MarkBody body = await Exchange.Read<MarkBody>(context).ConfigureAwait(false);
            ClubClass held = Get(studio, context);
            book.SetMark(new KnownMark(held.Id, body.DanceId, Today(studio), KnowingOf(body.Knowing)));
            await Exchange.Answer(context, Answer(studio, held)).ConfigureAwait(false);
        }).For(HallCircle.Here);
        routes.MapGet("/api/classes/{id}/pick", context => Exchange.Answer(context, Picked(studio, Get(studio, context), context.Request.Query))).For(HallCircle.Here);
        routes.MapGet("/api/classes/{id}/sheet", context => Exchange.Answer(context, Changed(studio, Get(studio, context), context.Request.Query["dance"].ToString()))).For(HallCircle.Here);
        routes.MapGet("/api/book/file/{format}", context =>
        {
            Handout<BookOut> form = BookHandouts.Find(Exchange.Path(context, "format"))
                ?? throw new RefusalException(StatusCodes.Status404NotFound, "The book cannot be taken along like that.");
            BookOut taken = TakenOut.Book(studio.Club, studio.Night, studio.Clock.GetLocalNow());
            return Exchange.Handout(context, form, taken, form.FileNameFor(taken.Name));
        }).For(HallCircle.Here);
    }

    private static ClassList List(Studio studio)
    {
        ClubBook book = studio.Club.Book;
        DateOnly today = Today(studio);
        ILookup<string, ClassSession> planned = book.Sessions(new SessionQuery { IsHeld = false, Take = MostPlanned }).Sessions.ToLookup(s => s.ClassId);
        Dictionary<string, DateOnly> held = [];
        foreach (ClassSession session in book.Sessions(new SessionQuery { IsHeld = true, From = today, Take = MostPlanned }).Sessions)
        {
            held.TryAdd(session.ClassId, session.Date);
        }

        ClassItem[] all =
        [
            .. book.Classes(includeEnded: true).Select(c =>
            {
                ClassSession? next = ClassPlanning.Next(c, planned[c.Id], held.TryGetValue(c.Id, out DateOnly last) ? last : null, today);
                return Item(c, next, today);
            }),
        ];
        bool HasEnded(ClassItem c) => c.EndedOn is { } end && string.CompareOrdinal(end, DayWords.Plain(today)) <= 0;
        return new ClassList(
            DayWords.Plain(today),
            [.. all.Where(c => !HasEnded(c))],
            [.. all.Where(HasEnded).OrderByDescending(c => c.EndedOn, StringComparer.Ordinal)],
            [.. Enum.GetValues<Level>().Select(LevelPhrases.Name)],
            [.. BookHandouts.All.Select(f => new FileOffer(f.Name, f.Title, f.Extension))]);
    }

    private static ClassItem Item(ClubClass held, ClassSession? next, DateOnly today) => new(
        held.Id,
        held.Title,
        held.Level,
        (int?)held.Weekday,
        held.Starts is { } starts ? DayWords.Clock(starts) : null,
        held.Minutes,
        held.Place,
        held.People,
        held.Notes,
        held.EndedOn is { } end ? DayWords.Plain(end) : null,
        ClassWords.Of(held),
        next is null ? "" : ClassWords.Next(next.Date, next.Items.Count > 0, today));

    private static ClassAnswer Answer(Studio studio, ClubClass held)
    {
        DateOnly today = Today(studio);
        ClassShown shown = new(studio, held);
        ValueList<ClassSession> planned = studio.Club.Book.Sessions(new SessionQuery { ClassId = held.Id, IsHeld = false, Take = MostPlanned }).Sessions;
        SessionPage page = studio.Club.Book.Sessions(new SessionQuery { ClassId = held.Id, IsHeld = true, Take = HistoryRows });
        ClassSession? next = ClassPlanning.Next(held, planned, page.Sessions.Count > 0 ? page.Sessions[0].Date : null, today);
        List<KnownDance> known = shown.Known("left");
        return new ClassAnswer(
            Item(held, next, today),
            next is null ? null : shown.Session(next),
            next is null ? null : shown.Offer(next, Offered),
            [.. page.Sessions.Select(s => shown.Session(s))],
            page.Total,
            [.. known.Take(KnownRows)],
            known.Count);
    }

    private static async Task Keep(Studio studio, HttpContext context, string id)
    {
        SessionBody body = await Exchange.Read<SessionBody>(context).ConfigureAwait(false);
        ClubClass held = Get(studio, context);

        // what is wrong with a mark is said before anything is kept
        List<(string? DanceId, Knowing? Knowing)> marks = [.. body.Items.Select(i => (i.DanceId, KnowingOf(i.Knowing)))];
        ClassSession kept = studio.Club.Book.SaveSession(Said(body, held, id));
        if (kept.IsHeld)
        {
            Mark(studio.Club.Book, kept, marks);
        }

        ClassShown shown = new(studio, held);
        await Exchange.Answer(context, new SessionSaved(shown.Session(kept), Answer(studio, held))).ConfigureAwait(false);
    }

    private static ClassSession Said(SessionBody body, ClubClass held, string id) => new()
    {
        Id = id,
        ClassId = held.Id,
        Date = DayWords.ReadDay(body.Date) ?? throw Refuse($"{body.Date} is no day. Choose one from the calendar."),
        Starts = body.Starts is { Length: > 0 } starts ? DayWords.ReadClock(starts) ?? throw Refuse($"{starts} is no time of the day. Write it as 19:30.") : null,
        Minutes = body.Minutes is > 0 and var minutes && minutes != held.Minutes ? minutes : null,
        IsHeld = body.IsHeld,
        People = body.People,
        HowItWent = body.HowItWent,
        Items =
        [
            .. body.Items.Select(i => new SessionItem
            {
                Role = RoleOf(i.Role),
                DanceId = i.DanceId,
                Title = i.Title,
                Minutes = i.Minutes is > 0 ? i.Minutes : null,
                Note = i.Note,
            }),
        ],
    };

    private static void Mark(ClubBook book, ClassSession session, IReadOnlyList<(string? DanceId, Knowing? Knowing)> marks)
    {
        Dictionary<string, KnownMark> there = book.Marks(session.ClassId, session.Date).ToDictionary(m => m.DanceId, StringComparer.Ordinal);
        HashSet<string> seen = [];
        foreach ((string? danceId, Knowing? knowing) in marks.OrderBy(m => m.Knowing is null))
        {
            // a dance that stands in two roles is marked once
            if (danceId is not { } dance || !seen.Add(dance))
            {
                continue;
            }

            KnownMark? mark = there.GetValueOrDefault(dance);
            bool isOfThisDay = mark?.Date == session.Date;
            if (knowing is not null && (mark?.Knowing != knowing || !isOfThisDay))
            {
                book.SetMark(new KnownMark(session.ClassId, dance, session.Date, knowing));
            }
            else if (knowing is null && isOfThisDay)
            {
                // the mark of this day is taken back: what was said before it holds again
                Knowing? before = book.MarkHistory(session.ClassId, dance).LastOrDefault(m => m.Date < session.Date)?.Knowing;
                book.SetMark(new KnownMark(session.ClassId, dance, session.Date, before));
            }
        }
    }

    private static PickedDance Picked(Studio studio, ClubClass held, IQueryCollection asked)
    {
        string id = asked["dance"].ToString();
        StoredDance dance = studio.Club.Dances.Get(id) ?? throw new RefusalException(StatusCodes.Status404NotFound, "This dance is not in the club any more.");
        int minutes = asked["role"].ToString() switch
        {
            "taught" => TeachingMinutes(studio, dance, held),
            "revised" => ClassPlanning.RevisionMinutes,
            _ => ClassPlanning.DanceMinutes,
        };
        string[] known = [.. new ClassShown(studio, held).KnownIds.Where(k => k != id)];
        return new PickedDance(
            dance.Row.Facts.Title,
            minutes,
            LibraryRoutes.Item(dance.Row).Facts,
            asked["role"] == "taught" ? studio.Likeness.KnownAlready(studio.Club, id, known) : []);
    }

    // a lesson is planned in steps of five minutes
    private static int TeachingMinutes(Studio studio, StoredDance dance, ClubClass held)
    {
        LessonPlan plan = DanceRoutes.Analyse(studio, dance.Text).Lesson(new LessonOptions { Class = LevelPhrases.Find(held.Level) });
        return Math.Max(5, (int)Math.Ceiling(plan.UsualSeconds / 300.0) * 5);
    }

    private static SheetChange Changed(Studio studio, ClubClass held, string danceId)
    {
        TaughtSheet? sheet = studio.Club.Book.TaughtBefore(held.Id).FirstOrDefault(s => s.DanceId == danceId);
        if (sheet is null || studio.Club.Dances.Get(danceId) is not { } now || studio.Club.Dances.TextOf(danceId, sheet.Revision) is not { } taught)
        {
            throw new RefusalException(StatusCodes.Status404NotFound, "Nobody knows any more which version of this sheet was taught.");
        }

        DanceComparison comparison = DanceComparison.Of(DanceRoutes.Analyse(studio, taught), DanceRoutes.Analyse(studio, now.Text));
        return new SheetChange(
            ClassWords.Sheet(sheet, Today(studio)),
            comparison.IsSame ? ["The dance is the same and prints the same."] : [.. ChangeWords.Of(comparison, SheetLanguage.English)]);
    }

    private static ClubClass Taken(ClassBody body, string id) => new()
    {
        Id = id,
        Title = body.Title,
        Level = body.Level,
        Weekday = body.Weekday switch
        {
            null => null,
            >= 0 and <= 6 and var day => (DayOfWeek)day,
            _ => throw Refuse("A week has no such day."),
        },
        Starts = body.Starts is { Length: > 0 } starts ? DayWords.ReadClock(starts) ?? throw Refuse($"{starts} is no time of the day. Write it as 19:30.") : null,
        Minutes = body.Minutes,
        Place = body.Place,
        People = body.People,
        Notes = body.Notes,
        EndedOn = body.EndedOn is { Length: > 0 } end ? DayWords.ReadDay(end) ?? throw Refuse($"{end} is no day. Choose one from the calendar.") : null,
    };

    private static ItemRole RoleOf(string word) => ClassShown.Roles.FirstOrDefault(r => r.Word == word) is { Word: not null } role
        ? role.Role
        : throw Refuse($"A dance has no role {word} in a session.");

    private static Knowing? KnowingOf(int? number) => number switch
    {
        null => null,
        >= (int)Knowing.Follows and <= (int)Knowing.KnowsAlone and var known => (Knowing)known,
        _ => throw Refuse("A dance is known in four steps, from 1 to 4."),
    };

    private static ClubClass Get(Studio studio, HttpContext context) => studio.Club.Book.Class(Exchange.Path(context, "id")) ?? throw Missing();

    private static DateOnly Today(Studio studio) => DateOnly.FromDateTime(studio.Clock.GetLocalNow().DateTime);

    private static int Whole(HttpContext context, string name) => int.TryParse(context.Request.Query[name], out int number) && number > 0 ? number : 0;

    private static RefusalException Refuse(string sentence) => new(StatusCodes.Status400BadRequest, sentence);

    private static RefusalException Missing() => new(StatusCodes.Status404NotFound, "There is no such class any more.");
}
