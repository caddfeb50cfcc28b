using Scuff.Analysis.Planning;
using Scuff.App.Programmes;
using Scuff.Repertoire;

namespace Tests.Web;

/// <summary>
/// A desk for tests of what lies around it: dances in the order of the club, pinned ones at their places, five minutes each, as many as there is time for.
/// </summary>
internal sealed class PlainNightDesk : INightDesk
{
    private const int Seconds = 300;

    /// <summary>How often a programme was made.</summary>
    public int Asked { get; private set; }

    public EveningProgramme Plan(Club club, ClubEvening evening, EveningPlan plan, int fromSecond, double seconds, CancellationToken stop)
    {
        Asked++;
        HashSet<string> over = [.. (plan.Night?.Done ?? []).Where(d => d.Item.SongKey.Length > 0).Select(d => d.Item.DanceId)];
        HashSet<string> never = [.. plan.Pins.Where(p => p.Kind == EveningPinKind.Never).Select(p => p.DanceId)];
        EveningPin[] pinned = [.. plan.Pins.Where(p => p.Kind == EveningPinKind.At)];
        List<DanceRow> free =
        [
            .. club.Dances.Every()
                .Where(d => !over.Contains(d.Id) && !never.Contains(d.Id) && !pinned.Any(p => p.DanceId == d.Id))
                .OrderByDescending(d => plan.Requests.FirstOrDefault(r => r.DanceId == d.Id)?.People ?? 0),
        ];
        List<EveningStretch> stretches = [];
        List<EveningItem> items = [];
        int at = 0;
        foreach (EveningStop? stop_ in plan.Stops.OrderBy(s => s.AtMinute).Cast<EveningStop?>().Append(null))
        {
            int end = Math.Min(stop_?.AtMinute * 60 ?? int.MaxValue, evening.Minutes * 60);
            int stretch = stretches.Count;
            int place = (plan.Night?.Done ?? []).Count(d => d.Item.Stretch == stretch);
            stretches.Add(new EveningStretch { Kind = StretchKind.Dancing, Start = at, Seconds = Math.Max(0, end - at), EffortAtStart = 40, EffortAtEnd = 60 });
            for (int start = Math.Max(at, fromSecond); start + Seconds <= end; start += Seconds, place++)
            {
                string? id = pinned.FirstOrDefault(p => p.Stretch == stretch && p.Place == place)?.DanceId ?? free.FirstOrDefault()?.Id;
                if (id is null || club.Dances.Get(id) is not { } dance)
                {
                    break;
                }

                free.RemoveAll(d => d.Id == id);
                items.Add(new EveningItem
                {
                    Stretch = stretch,
                    Place = place,
                    Start = start,
                    Seconds = Seconds,
                    DanceId = id,
                    Title = dance.Row.Facts.Title,
                    Level = dance.Row.Facts.Level,
                    SongKey = "song",
                    SongTitle = "A song",
                    SongSeconds = 200,
                    Effort = 40 + (place * 5),
                    FloorShare = 80,
                    IsPinned = pinned.Any(p => p.DanceId == id),
                    Reasons = [new ProgrammeReason(ProgrammeReasonKind.Floor, 48, 80)],
                });
            }

            if (stop_ is not null)
            {
                stretches.Add(new EveningStretch { Kind = stop_.IsLesson ? StretchKind.Lesson : StretchKind.Rest, Start = stop_.AtMinute * 60, Seconds = stop_.Minutes * 60, DanceId = stop_.DanceId });
                at = (stop_.AtMinute + stop_.Minutes) * 60;
                if (at > fromSecond)
                {
                    items.Add(new EveningItem { Stretch = stretches.Count - 1, Place = 0, Start = Math.Max(fromSecond, stop_.AtMinute * 60), Seconds = at - Math.Max(fromSecond, stop_.AtMinute * 60), DanceId = stop_.DanceId, Title = stop_.IsLesson ? club.Dances.Get(stop_.DanceId)?.Row.Facts.Title ?? "" : "" });
                }
            }
        }

        return new EveningProgramme
        {
            Stretches = stretches,
            Items = items,
            Points = 90,
            Bound = 90,
            Missed = [.. plan.Requests.Where(r => items.TrueForAll(i => i.DanceId != r.DanceId)).Select(r => new EveningMissed { DanceId = r.DanceId, Title = "x", Kind = ProgrammeMissedKind.WorthLess })],
        };
    }

    public EveningWords Words(Club club, ClubEvening evening, EveningPlan plan)
    {
        EveningProgramme programme = plan.Programme!;
        return new EveningWords(
            programme.Points == programme.Bound ? "Proven: no better one exists." : "Nobody knows.",
            [.. programme.Items.Select(i => (IReadOnlyList<string>)[.. i.Reasons.Select(r => $"{r.Value} percent of the floor can dance it.")])],
            [],
            [.. programme.Missed.Select(m => $"{m.Title} was asked for; others are worth more.")]);
    }

    public IReadOnlyList<ProgrammeSong> Songs(Club club, string danceId) => [new ProgrammeSong("song", "A song", 200, ""), new ProgrammeSong("other", "Another song", 185, "")];

    public IReadOnlyList<string> Moved(EveningProgramme before, EveningProgramme after)
    {
        HashSet<string> was = [.. before.Items.Select(i => i.DanceId)];
        string[] gone = [.. was.Where(id => id.Length > 0 && after.Items.All(i => i.DanceId != id))];
        return gone.Length > 0 ? [$"{gone.Length} left the programme."] : [];
    }
}
