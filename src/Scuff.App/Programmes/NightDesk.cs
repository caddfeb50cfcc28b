using Scuff.Analysis.Levels;
using Scuff.Analysis.Likeness;
using Scuff.Analysis.Planning;
using Scuff.Repertoire;

namespace Scuff.App.Programmes;

/// <summary>Makes programmes: asks the club, lets the solver look, and words the answer. Safe to share between threads.</summary>
/// <param name="solver">Finds the programme.</param>
internal sealed class NightDesk(IProgrammeSolver solver) : INightDesk
{
    private readonly Lock _lock = new();
    private (string Prints, ValueList<ProgrammeLikeness> Found) _likenesses = ("", []);

    /// <inheritdoc/>
    public EveningProgramme Plan(Club club, ClubEvening evening, EveningPlan plan, int fromSecond, double seconds, CancellationToken stop)
    {
        NightQuestion asked = new(club, evening, plan);
        (ProgrammeQuestion question, IReadOnlyList<EveningStretch> stretches, int first, int danced) = asked.Make(Math.Max(0, fromSecond), Alike);
        Programme programme = question.Stretches.Count == 0
            ? new Programme { Items = [], Points = 0, Bound = 0 }
            : solver.Solve(question, seconds, stop);
        int begin = first < stretches.Count ? Math.Max(stretches[first].Start, fromSecond) : fromSecond;
        Dictionary<string, ProgrammeDance> dances = question.Dances.ToDictionary(d => d.Id, StringComparer.Ordinal);
        return new EveningProgramme
        {
            Stretches = stretches,
            Items = [.. programme.Items.Select(i => Item(i, dances, first, danced, begin))],
            Common = [.. programme.Common],
            Missed = [.. programme.Missed.Select(m => new EveningMissed
            {
                DanceId = m.DanceId,
                Title = asked.Row(m.DanceId)?.Facts.Title ?? "",
                Kind = m.Kind,
                OtherId = m.OtherId,
                OtherTitle = asked.Row(m.OtherId)?.Facts.Title ?? "",
                Points = m.Points,
            })],
            Points = programme.Points,
            Bound = programme.Bound,
        };
    }

    /// <inheritdoc/>
    public EveningWords Words(Club club, ClubEvening evening, EveningPlan plan) => ProgrammeWords.Of(plan.Programme!);

    /// <inheritdoc/>
    public IReadOnlyList<ProgrammeSong> Songs(Club club, string danceId)
        => club.Dances.Get(danceId) is { } dance ? [.. new ClubSongs(club).Of(dance.Row)] : [];

    /// <inheritdoc/>
    public IReadOnlyList<string> Moved(EveningProgramme before, EveningProgramme after) => ProgrammeWords.Moved(before, after);

    private static EveningItem Item(ProgrammeItem item, Dictionary<string, ProgrammeDance> dances, int first, int danced, int begin)
    {
        ProgrammeDance? dance = dances.GetValueOrDefault(item.DanceId);
        ProgrammeDance? other = dances.GetValueOrDefault(item.OtherId);
        ProgrammeSong? song = item.SongKey.Length == 0 ? null : dance?.Songs.FirstOrDefault(s => s.Key == item.SongKey);
        return new EveningItem
        {
            Stretch = item.Stretch + first,
            Place = item.Stretch == 0 ? item.Place + danced : item.Place,
            Start = begin + item.Start,
            Seconds = item.Seconds,
            DanceId = item.DanceId,
            Title = dance?.Title ?? "",
            Level = dance is null ? "" : LevelPhrases.Name(dance.Level),
            OtherId = item.OtherId,
            OtherTitle = other?.Title ?? "",
            OtherLevel = other is null ? "" : LevelPhrases.Name(other.Level),
            SongKey = item.SongKey,
            SongTitle = song?.Title ?? "",
            TrackId = song?.TrackId ?? "",
            SongSeconds = song?.Seconds ?? 0,
            CountsPerMinute = dance?.CountsPerMinute ?? 0,
            Effort = song is null ? 0 : other is null ? dance!.Effort : (dance!.Effort + other.Effort) / 2,
            FloorShare = item.FloorShare,
            IsPinned = item.IsPinned,
            Reasons = [.. item.Reasons],
        };
    }

    // Comparing all dances of a large club takes a moment, and they seldom change between two questions.
    private ValueList<ProgrammeLikeness> Alike(IReadOnlyList<(string Id, FeetPrint Print)> dances)
    {
        string prints = string.Join('\n', dances.Select(d => $"{d.Id} {d.Print.GetHashCode()}"));
        lock (_lock)
        {
            if (_likenesses.Prints == prints)
            {
                return _likenesses.Found;
            }
        }

        List<ProgrammeLikeness>[] rows = new List<ProgrammeLikeness>[dances.Count];
        Parallel.For(0, dances.Count, i =>
        {
            rows[i] = [];
            for (int j = i + 1; j < dances.Count; j++)
            {
                int percent = dances[i].Print.Sections.Count == 0 || dances[j].Print.Sections.Count == 0 ? 0 : DanceLikeness.Between(dances[i].Print, dances[j].Print).Percent;
                if (percent >= ProgrammeRules.Usual.LikeFrom)
                {
                    rows[i].Add(new ProgrammeLikeness(dances[i].Id, dances[j].Id, percent));
                }
            }
        });
        ValueList<ProgrammeLikeness> found = rows.SelectMany(r => r).ToValueList();
        lock (_lock)
        {
            _likenesses = (prints, found);
        }

        return found;
    }
}
