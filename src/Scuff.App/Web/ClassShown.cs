using Scuff.App.Classes;
using Scuff.App.Memory;
using Scuff.App.Web.Contract;
using Scuff.Repertoire;

namespace Scuff.App.Web;

/// <summary>One class, looked up once for all that an answer shows of it.</summary>
internal sealed class ClassShown
{
    private readonly Studio _studio;
    private readonly DateOnly _today;
    private readonly Dictionary<string, string> _titles;
    private readonly Lazy<IReadOnlyList<RememberedDance>> _remembered;
    private readonly Lazy<Dictionary<string, DancedDates>> _danced;
    private readonly Lazy<Dictionary<string, KnownMark>> _marks;

    /// <summary>Looks a class up.</summary>
    public ClassShown(Studio studio, ClubClass held)
    {
        _studio = studio;
        Held = held;
        _today = DateOnly.FromDateTime(studio.Clock.GetLocalNow().DateTime);
        _titles = studio.Club.Dances.Every().ToDictionary(d => d.Id, d => d.Facts.Title, StringComparer.Ordinal);
        _remembered = new(() => studio.Revision.Of(studio.Club, held.Id, _today));
        _danced = new(() => studio.Club.Book.LastDanced(held.Id).ToDictionary(d => d.DanceId, StringComparer.Ordinal));
        _marks = new(() => studio.Club.Book.Marks(held.Id, _today).ToDictionary(m => m.DanceId, StringComparer.Ordinal));
    }

    /// <summary>The words for roles between the program and the page.</summary>
    public static IReadOnlyList<(string Word, ItemRole Role)> Roles { get; } =
    [
        ("warm-up", ItemRole.WarmUp),
        ("revised", ItemRole.Revised),
        ("taught", ItemRole.Taught),
        ("requested", ItemRole.Requested),
        ("danced", ItemRole.Danced),
        ("cool-down", ItemRole.CoolDown),
    ];

    /// <summary>The class.</summary>
    public ClubClass Held { get; }

    /// <summary>Ids of the dances that it danced or that she marked, those of the bin left out.</summary>
    public IEnumerable<string> KnownIds => _danced.Value.Keys.Union(_marks.Value.Keys).Where(_titles.ContainsKey);

    /// <summary>A session as the page shows it.</summary>
    public SessionAnswer Session(ClassSession session)
    {
        Dictionary<string, Knowing?> marked = session.IsHeld
            ? _studio.Club.Book.Marks(Held.Id, session.Date).Where(m => m.Date == session.Date).ToDictionary(m => m.DanceId, m => m.Knowing, StringComparer.Ordinal)
            : [];
        return new SessionAnswer(
            session.Id,
            DayWords.Plain(session.Date),
            (session.Starts ?? Held.Starts) is { } starts ? DayWords.Clock(starts) : null,
            session.Minutes ?? Held.Minutes,
            session.IsHeld,
            session.People,
            session.HowItWent,
            [
                .. session.Items.Select(i => new SessionLine(
                    Roles.First(r => r.Role == i.Role).Word,
                    i.DanceId is { } id && _titles.ContainsKey(id) ? id : null,
                    ClassWords.Title(i, TitleOf),
                    i.Minutes,
                    i.Note,
                    i.DanceId is { } dance ? (int?)marked.GetValueOrDefault(dance) : null)),
            ],
            ClassWords.When(session, Held.Starts, _today),
            session.IsHeld ? ClassWords.Danced(session.Items, TitleOf) : "",
            session.Id.Length > 0 ? ClassWords.Past(session, _today) : "");
    }

    /// <summary>The dances to dance again next, those left out that are planned already; null when none is due.</summary>
    /// <param name="next">The session that comes next.</param>
    /// <param name="most">How many at most.</param>
    public RevisionOffer? Offer(ClassSession next, int most)
    {
        HashSet<string?> planned = [.. next.Items.Select(i => i.DanceId)];
        OfferedDance[] due =
        [
            .. _remembered.Value
                .Where(r => r.Due > 0 && !planned.Contains(r.DanceId) && _titles.ContainsKey(r.DanceId))
                .Take(most)
                .Select(r => new OfferedDance(r.DanceId, _titles[r.DanceId], r.Reason, ClassPlanning.RevisionMinutes)),
        ];
        return due.Length > 0 ? new RevisionOffer(ClassWords.Again(due.Length, next.Date, _today), due) : null;
    }

    /// <summary>The dances it knows.</summary>
    /// <param name="order">title, last (danced last first) or left (what fades first).</param>
    public List<KnownDance> Known(string order)
    {
        Dictionary<string, RememberedDance> remembered = _remembered.Value.ToDictionary(r => r.DanceId, StringComparer.Ordinal);
        Dictionary<string, TaughtSheet> sheets = _studio.Club.Book.TaughtBefore(Held.Id).ToDictionary(s => s.DanceId, StringComparer.Ordinal);
        IEnumerable<(KnownDance Dance, DateOnly Last)> all = KnownIds.Select(id =>
        {
            RememberedDance? left = remembered.GetValueOrDefault(id);
            DateOnly? last = _danced.Value.TryGetValue(id, out DancedDates? dates) && dates.Dates.Count > 0 ? dates.Dates[^1] : null;
            KnownDance dance = new(
                id,
                _titles[id],
                (int?)_marks.Value.GetValueOrDefault(id)?.Knowing,
                last is { } day ? $"danced {DayWords.Ago(day, _today)}" : "not danced here yet",
                left?.LeftPercent,
                left?.Left ?? "",
                sheets.TryGetValue(id, out TaughtSheet? sheet) ? ClassWords.Sheet(sheet, _today) : "");
            return (dance, last ?? DateOnly.MinValue);
        });
        return
        [
            .. (order switch
            {
                "title" => all.OrderBy(d => d.Dance.Title, StringComparer.InvariantCultureIgnoreCase),
                "last" => all.OrderByDescending(d => d.Last),
                _ => all.OrderBy(d => d.Dance.LeftPercent ?? 101).ThenBy(d => d.Last),
            }).ThenBy(d => d.Dance.DanceId, StringComparer.Ordinal).Select(d => d.Dance),
        ];
    }

    private string? TitleOf(string danceId) => _titles.GetValueOrDefault(danceId);
}
