using Scuff.Analysis.Planning;
using Scuff.App.Memory;
using Scuff.App.Programmes;
using Scuff.Repertoire;

namespace Scuff.App.Classes;

/// <summary>
/// Fills the time of a class around what she has put into its plan: a warm-up of easy known dances, what is about to be forgotten, the lesson, known dances,
/// something calm at the end (common practice, trade: teaching, 6). What she has put in stays.
/// </summary>
internal static class ClassFilling
{
    // a shorter class warms up with one dance, and has no time to calm down
    private const int WarmUpMinutes = 8;
    private const int ShortWarmUpMinutes = 4;
    private const int CoolDownMinutes = 5;
    private const int ShortClass = 45;

    // "dance these three next week"; a short class has time for two
    private const int Revisions = 3;
    private const int ShortRevisions = 2;

    private const double LookSeconds = 2;
    private const int Minute = 60;

    /// <summary>The items of the session with the time filled, in the order of a class.</summary>
    /// <param name="club">The club.</param>
    /// <param name="night">Makes the programme.</param>
    /// <param name="revision">Says what is about to be forgotten.</param>
    /// <param name="held">The class.</param>
    /// <param name="session">The session with what she has put into it.</param>
    /// <param name="teachingMinutes">How long it takes to teach a dance.</param>
    /// <param name="cancel">Ends it early.</param>
    public static FilledClass Fill(
        Club club, INightDesk night, IRevisionDesk revision, ClubClass held, ClassSession session, Func<string, int> teachingMinutes, CancellationToken cancel)
    {
        int minutes = session.Minutes ?? held.Minutes;
        bool isShort = minutes < ShortClass;
        HashSet<string> there = [.. session.Items.Select(i => i.DanceId).OfType<string>()];
        SessionItem[] taught = [.. Of(ItemRole.Taught).Select(i => i with { Minutes = i.Minutes ?? (i.DanceId is { } id ? teachingMinutes(id) : null) })];
        List<SessionItem> revised = [.. Of(ItemRole.Revised).Select(i => i with { Minutes = i.Minutes ?? ClassPlanning.RevisionMinutes })];
        if (revised.Count == 0)
        {
            revised.AddRange(revision.Of(club, held.Id, session.Date)
                .Where(d => d.Due > 0 && !there.Contains(d.DanceId))
                .Select(d => (Remembered: d, Dance: club.Dances.Get(d.DanceId)))
                .Where(d => d.Dance is { Row.RemovedAt: null })
                .Take(isShort ? ShortRevisions : Revisions)
                .Select(d => new SessionItem { Role = ItemRole.Revised, DanceId = d.Remembered.DanceId, Title = d.Dance!.Row.Facts.Title, Minutes = ClassPlanning.RevisionMinutes }));
        }

        int warmUp = Math.Min(minutes, isShort ? ShortWarmUpMinutes : WarmUpMinutes);
        int at = warmUp;
        List<EveningStop> stops = [];
        foreach ((string danceId, int length, bool isLesson) in revised.Select(i => ("", i.Minutes ?? 0, false)).Concat(taught.Select(i => (i.DanceId ?? "", i.Minutes ?? 0, true))))
        {
            stops.Add(new EveningStop { AtMinute = at, Minutes = length, IsLesson = isLesson, DanceId = danceId });
            at += length;
        }

        EveningPlan plan = EveningPlan.Empty with
        {
            Groups = [new EveningGroup { ClassId = held.Id, Name = held.Title, Level = held.Level, People = Math.Max(1, held.People ?? 1) }],
            WarmUpMinutes = warmUp,
            CoolDownMinutes = isShort ? 0 : CoolDownMinutes,
            Stops = stops,
            Requests = [.. Of(ItemRole.Requested).Where(i => i.DanceId is not null).Select(i => new EveningRequest { DanceId = i.DanceId! })],
            Pins =
            [
                .. revised.Where(i => i.DanceId is not null).Select(i => new EveningPin { Kind = EveningPinKind.Never, DanceId = i.DanceId! }),
                .. Of(ItemRole.WarmUp).Where(i => i.DanceId is not null).Select(i => new EveningPin { Kind = EveningPinKind.Within, DanceId = i.DanceId!, Stretch = 0 }),
                .. Of(ItemRole.Requested).Concat(Of(ItemRole.Danced)).Where(i => i.DanceId is not null).Select(i => new EveningPin { Kind = EveningPinKind.Somewhere, DanceId = i.DanceId! }),
                .. Of(ItemRole.CoolDown).Where(i => i.DanceId is not null).Take(1).Select(i => new EveningPin { Kind = EveningPinKind.Closing, DanceId = i.DanceId! }),
            ],
        };
        ClubEvening evening = new() { Title = held.Title, Date = session.Date, Minutes = Math.Max(1, minutes), ClassId = held.Id };
        EveningProgramme programme = night.Plan(club, evening, plan, 0, LookSeconds, cancel);
        HashSet<string> fixedDances = [.. revised.Concat(taught).Select(i => i.DanceId).OfType<string>()];
        List<SessionItem> items = [.. revised, .. taught];
        foreach (EveningItem line in programme.Items.Where(i => i.SongKey.Length > 0))
        {
            ItemRole role = RoleOf(session, line.DanceId, programme.Stretches[line.Stretch].Kind);
            if (!fixedDances.Contains(line.DanceId) || role == ItemRole.Danced)
            {
                SessionItem? had = session.Items.FirstOrDefault(i => i.DanceId == line.DanceId && i.Role == role);
                items.Add((had ?? new SessionItem { Role = role, DanceId = line.DanceId, Title = line.Title }) with
                {
                    Minutes = had?.Minutes ?? MinuteOf(line.Start + line.Seconds) - MinuteOf(line.Start),
                });
            }
        }

        // what found no room, or is no dance of the club, is not thrown away
        items.AddRange(session.Items.Where(i => !items.Exists(n => n.Role == i.Role && n.DanceId == i.DanceId && n.Title == i.Title)));
        return new FilledClass(
            items.OrderBy(i => i.Role).ToValueList(),
            night.Words(club, evening, plan with { Programme = programme }).Missed.ToValueList());

        IEnumerable<SessionItem> Of(ItemRole role) => session.Items.Where(i => i.Role == role);
    }

    // The minute nearest to a second: lengths that are rounded by where they begin and end add up to no more than there is.
    private static int MinuteOf(int second) => (second + (Minute / 2)) / Minute;

    private static ItemRole RoleOf(ClassSession session, string danceId, StretchKind kind)
        => session.Items.FirstOrDefault(i => i.DanceId == danceId && i.Role is (ItemRole.Requested or ItemRole.CoolDown or ItemRole.WarmUp))?.Role ?? kind switch
        {
            StretchKind.WarmUp => ItemRole.WarmUp,
            StretchKind.CoolDown => ItemRole.CoolDown,
            _ => ItemRole.Danced,
        };
}
