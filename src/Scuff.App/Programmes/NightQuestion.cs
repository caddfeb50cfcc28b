using Scuff.Analysis.Levels;
using Scuff.Analysis.Likeness;
using Scuff.Analysis.Planning;
using Scuff.App.Memory;
using Scuff.Dances;
using Scuff.Repertoire;

namespace Scuff.App.Programmes;

/// <summary>Gathers from a club what a planner has to know of an evening.</summary>
internal sealed class NightQuestion
{
    // where nobody says what level a class or a dance has
    private const Level UsualLevel = Level.Improver;

    // how far back evenings are looked through for what was danced last
    private const int DaysBack = 120;

    private readonly Club _club;
    private readonly ClubEvening _evening;
    private readonly EveningPlan _plan;
    private readonly Dictionary<string, DanceRow> _rows;
    private readonly ClubSongs _songs;
    private readonly List<(ProgrammeGroup Group, ClassBook? Book)> _groups = [];

    public NightQuestion(Club club, ClubEvening evening, EveningPlan plan)
    {
        (_club, _evening, _plan) = (club, evening, plan);
        _rows = club.Dances.Every().ToDictionary(r => r.Id, StringComparer.Ordinal);
        _songs = new ClubSongs(club);
        ReadGroups();
    }

    /// <summary>The question about what is still to come, and the stretches of the whole evening.</summary>
    /// <param name="fromSecond">Where it begins, in seconds from the beginning of the evening.</param>
    /// <param name="likenesses">Finds which of the dances resemble each other.</param>
    public (ProgrammeQuestion Question, IReadOnlyList<EveningStretch> Stretches, int First, int Danced) Make(
        int fromSecond, Func<IReadOnlyList<(string Id, FeetPrint Print)>, ValueList<ProgrammeLikeness>> likenesses)
    {
        DanceRow[] candidates = [.. Candidates()];
        int[] efforts = [.. candidates.Select(EffortOf).Order()];
        int calm = efforts.Length == 0 ? 35 : efforts[efforts.Length / 10];
        int lively = efforts.Length == 0 ? 60 : efforts[efforts.Length * 9 / 10];
        IReadOnlyList<EveningStretch> stretches = EveningStretches.Of(_evening, _plan, calm, lively);
        int first = 0;
        while (first < stretches.Count && stretches[first].Start + stretches[first].Seconds <= fromSecond)
        {
            first++;
        }

        EveningDone[] done = [.. _plan.Night?.Done ?? []];
        int danced = done.Count(d => d.Item.SongKey.Length > 0 && d.Item.Stretch == first && !d.IsSkipped);
        HashSet<string> taught = [.. stretches.Take(first).Select(s => s.DanceId).Where(d => d.Length > 0)];
        Dictionary<string, int> lastDanced = LastDanced();
        ProgrammeDance[] dances = [.. candidates.Select(r => Dance(r, taught, lastDanced))];
        ProgrammeQuestion question = new()
        {
            Stretches =
            [
                .. stretches.Skip(first).Select((s, i) => new ProgrammeStretch
                {
                    Kind = s.Kind,
                    Seconds = i == 0 ? s.Start + s.Seconds - Math.Max(s.Start, fromSecond) : s.Seconds,
                    EffortAtStart = s.EffortAtStart,
                    EffortAtEnd = s.EffortAtEnd,
                    DanceId = s.DanceId,
                }),
            ],
            Groups = _groups.Select(g => g.Group).ToValueList(),
            Dances = dances.ToValueList(),
            Likenesses = likenesses([.. candidates.Select(r => (r.Id, FeetPrint.Read(r.Facts.Feet)))]),
            Pins = Pins(first, danced, stretches).ToValueList(),
            Rules = Rules(),
            Done = done.Where(d => d.Item.SongKey.Length > 0).Select(d => new ProgrammeDone(d.Item.DanceId, d.Item.OtherId, d.Item.SongKey)).ToValueList(),
            Seen = _plan.Programme is null
                ? []
                : [.. _plan.Programme.Items.Select(i => Seen(i, first, danced)).OfType<ProgrammeItem>()],
            MaySplit = _plan.MaySplit,
        };
        return (question, stretches, first, danced);
    }

    /// <summary>A dance of the club; null when it is no more.</summary>
    public DanceRow? Row(string id) => _rows.GetValueOrDefault(id);

    /// <summary>The level of a dance.</summary>
    public static Level LevelOf(DanceRow row)
        => row.Facts.Rank is { } rank && Enum.IsDefined((Level)rank) ? (Level)rank : LevelPhrases.Find(row.Facts.Level) ?? UsualLevel;

    private static int EffortOf(DanceRow row) => row.Facts.Effort ?? new ProgrammeDance { Id = "", Title = "", Level = default }.Effort;

    private void ReadGroups()
    {
        IEnumerable<EveningGroup> groups = _plan.Groups.Count == 0 && _evening.ClassId is { } own ? [new EveningGroup { ClassId = own }] : _plan.Groups;
        foreach (EveningGroup group in groups)
        {
            ClubClass? met = group.ClassId is { } id ? _club.Book.Class(id) : null;
            Level level = LevelPhrases.Find(group.Level) ?? LevelPhrases.Find(met?.Level ?? "") ?? UsualLevel;
            string name = met?.Title ?? (group.Name.Length > 0 ? group.Name : LevelPhrases.Name(level));
            int people = group.People > 1 ? group.People : met?.People ?? Math.Max(1, group.People);
            ClassBook? book = met is null ? null : ClassBook.Of(_club, met.Id, _evening.Date);
            _groups.Add((new ProgrammeGroup(name, level, people), book is { IsEmpty: false } ? book : null));
        }
    }

    // Dances that have steps and are fit to be danced, those with her tags if she asks for tags; what she names herself always.
    private IEnumerable<DanceRow> Candidates()
    {
        HashSet<string> named =
        [
            .. _plan.Requests.Select(r => r.DanceId), .. _plan.Pins.Where(p => p.Kind != EveningPinKind.Never).SelectMany(p => new[] { p.DanceId, p.OtherId }),
            .. _plan.Stops.Select(s => s.DanceId), _plan.OpeningId, _plan.ClosingId,
        ];
        return _rows.Values
            .Where(r => named.Contains(r.Id)
                || (r.Facts is { Counts: > 0, Errors: 0 } && (_plan.OnlyTags.Count == 0 || r.Tags.Any(t => _plan.OnlyTags.Contains(t, StringComparer.OrdinalIgnoreCase)))))
            .OrderBy(r => r.Id, StringComparer.Ordinal);
    }

    private ProgrammeDance Dance(DanceRow row, HashSet<string> taught, Dictionary<string, int> lastDanced)
    {
        Level level = LevelOf(row);
        int due = 0;
        int? since = lastDanced.TryGetValue(row.Id, out int days) ? days : null;
        List<int> shares = [];
        foreach ((ProgrammeGroup group, ClassBook? book) in _groups)
        {
            int share = book is null ? FloorShares.ByLevel(level, group.Level) : FloorShares.Remembered(book.Knowing(row.Id), book.Memory(row.Id), level, group.Level);
            shares.Add(taught.Contains(row.Id) ? Math.Max(share, FloorShares.JustTaught) : share);
            if (book?.Memory(row.Id) is { } memory)
            {
                due = Math.Max(due, memory.Due);
                since = Math.Min(since ?? int.MaxValue, memory.Days);
            }
        }

        return new ProgrammeDance
        {
            Id = row.Id,
            Title = row.Facts.Title,
            Level = level,
            CountsPerMinute = (int)Math.Round(row.Facts.FastestTempo ?? 0),
            Effort = EffortOf(row),
            Songs = _songs.Of(row),
            Shares = shares.ToValueList(),
            Due = due,
            Requests = _plan.Requests.Where(r => r.DanceId == row.Id).Sum(r => Math.Max(1, r.People)),
            DaysSinceDanced = since,
        };
    }

    // Days since each dance was danced at an evening of the last months.
    private Dictionary<string, int> LastDanced()
    {
        Dictionary<string, int> last = [];
        foreach (EveningRow row in _club.Evenings.List(_evening.Date.AddDays(-DaysBack), _evening.Date.AddDays(-1)))
        {
            if (_club.Evenings.Get(row.Id) is not { Plan.Length: > 0 } evening)
            {
                continue;
            }

            EveningPlan plan;
            try
            {
                plan = EveningPlan.Read(evening.Plan);
            }
            catch (FormatException)
            {
                // a newer program's evening says nothing to this one
                continue;
            }

            int days = _evening.Date.DayNumber - evening.Date.DayNumber;
            foreach (EveningDone done in (plan.Night?.Done ?? []).Where(d => !d.IsSkipped && d.Item.SongKey.Length > 0))
            {
                foreach (string id in new[] { done.Item.DanceId, done.Item.OtherId }.Where(i => i.Length > 0))
                {
                    last[id] = Math.Min(last.GetValueOrDefault(id, int.MaxValue), days);
                }
            }
        }

        return last;
    }

    private IEnumerable<ProgrammePin> Pins(int first, int danced, IReadOnlyList<EveningStretch> stretches)
    {
        if (_plan.OpeningId.Length > 0 && first == 0 && danced == 0)
        {
            int opening = stretches.ToList().FindIndex(s => s.Kind is not (StretchKind.Lesson or StretchKind.Rest));
            yield return new ProgrammePin.At(_plan.OpeningId, Math.Max(0, opening), 0);
        }

        if (_plan.ClosingId.Length > 0)
        {
            yield return new ProgrammePin.Closing(_plan.ClosingId);
        }

        EveningItem? last = _plan.Programme?.Items.LastOrDefault(i => i.SongKey.Length > 0);
        foreach (EveningPin pin in _plan.Pins)
        {
            ProgrammePin asked = pin.ToPin();
            switch (asked)
            {
                // what closes the programme she saw is pinned as its closing
                case ProgrammePin.At at when last is not null && at.Stretch == last.Stretch && at.Place == last.Place && at.DanceId == last.DanceId:
                    yield return new ProgrammePin.Closing(at.DanceId);
                    break;
                case ProgrammePin.At at when at.Stretch < first || (at.Stretch == first && at.Place < danced):
                case ProgrammePin.Within within when within.Stretch < first:
                    break;
                case ProgrammePin.At at:
                    yield return at with { Stretch = at.Stretch - first, Place = at.Stretch == first ? at.Place - danced : at.Place };
                    break;
                case ProgrammePin.Within within:
                    yield return within with { Stretch = within.Stretch - first };
                    break;
                default:
                    yield return asked;
                    break;
            }
        }
    }

    private static ProgrammeItem? Seen(EveningItem item, int first, int danced)
    {
        int place = item.Stretch == first ? item.Place - danced : item.Place;
        return item.SongKey.Length == 0 || item.Stretch < first || place < 0
            ? null
            : new ProgrammeItem { Stretch = item.Stretch - first, Place = place, Start = 0, Seconds = item.Seconds, DanceId = item.DanceId, OtherId = item.OtherId, SongKey = item.SongKey };
    }

    private ProgrammeRules Rules()
    {
        ProgrammeRules rules = ProgrammeRules.Usual;
        int Said(string name, int usual) => _plan.Rules.TryGetValue(name, out int said) ? Math.Clamp(said, 0, 1000) : usual;
        return new ProgrammeRules
        {
            SecondsBetween = Said(nameof(ProgrammeRules.SecondsBetween), rules.SecondsBetween),
            LikeApart = Said(nameof(ProgrammeRules.LikeApart), rules.LikeApart),
            LikeFrom = Said(nameof(ProgrammeRules.LikeFrom), rules.LikeFrom),
            MostSatOut = Said(nameof(ProgrammeRules.MostSatOut), rules.MostSatOut),
            LeastFloor = Said(nameof(ProgrammeRules.LeastFloor), rules.LeastFloor),
            FullFloor = Said(nameof(ProgrammeRules.FullFloor), rules.FullFloor),
            Request = Said(nameof(ProgrammeRules.Request), rules.Request),
            FurtherRequest = Said(nameof(ProgrammeRules.FurtherRequest), rules.FurtherRequest),
            Due = Said(nameof(ProgrammeRules.Due), rules.Due),
            Fresh = Said(nameof(ProgrammeRules.Fresh), rules.Fresh),
            FreshDays = Said(nameof(ProgrammeRules.FreshDays), rules.FreshDays),
            EffortOff = Said(nameof(ProgrammeRules.EffortOff), rules.EffortOff),
            HardAfterHard = Said(nameof(ProgrammeRules.HardAfterHard), rules.HardAfterHard),
            EasyAfterEasy = Said(nameof(ProgrammeRules.EasyAfterEasy), rules.EasyAfterEasy),
            FastAfterFast = Said(nameof(ProgrammeRules.FastAfterFast), rules.FastAfterFast),
            SlowAfterSlow = Said(nameof(ProgrammeRules.SlowAfterSlow), rules.SlowAfterSlow),
            SatOut = Said(nameof(ProgrammeRules.SatOut), rules.SatOut),
            OpeningFloor = Said(nameof(ProgrammeRules.OpeningFloor), rules.OpeningFloor),
            ClosingFloor = Said(nameof(ProgrammeRules.ClosingFloor), rules.ClosingFloor),
            EmptyMinute = Said(nameof(ProgrammeRules.EmptyMinute), rules.EmptyMinute),
            SplitFloor = Said(nameof(ProgrammeRules.SplitFloor), rules.SplitFloor),
            Stays = Said(nameof(ProgrammeRules.Stays), rules.Stays),
            SlowBelow = Said(nameof(ProgrammeRules.SlowBelow), rules.SlowBelow),
            FastAbove = Said(nameof(ProgrammeRules.FastAbove), rules.FastAbove),
        };
    }
}
