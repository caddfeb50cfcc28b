using Scuff.Dances;

namespace Scuff.Analysis.Planning;

/// <summary>
/// A question in whole numbers: what can stand where, what it brings there, what may not stand together. Both solvers and the brute force of the tests work on
/// this, and <see cref="ProgrammeScore"/> reckons what a programme is worth.
/// </summary>
internal sealed class ProgrammeModel
{
    /// <summary>From this share on a group counts as dancing, in percent.</summary>
    public const int MostOfAGroup = 50;

    // What goes by the time on the floor is stated for four minutes, about what a dance takes with what is said before it. By the dance, two short songs would be
    // worth twice a long one.
    private const int UsualSeconds = 240;

    // how much of a group dances a dance that it has just been taught (common practice, no source)
    private const int ShareAfterLesson = 60;

    // more places than any stretch of an evening needs; keeps an absurd question small
    private const int MostPlaces = 80;

    private readonly Dictionary<string, int> _danceAt;
    private readonly List<ProgrammeMissed> _missed = [];
    private readonly HashSet<int> _barred = [];
    private readonly int[] _lessonOf;
    private readonly int[,] _base;

    /// <summary>Sets up a question.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="letGo">Indices of pins that cannot hold together with others and are let go.</param>
    public ProgrammeModel(ProgrammeQuestion question, IReadOnlySet<int>? letGo = null)
    {
        Question = question;
        Rules = question.Rules;
        _danceAt = [];
        for (int i = 0; i < question.Dances.Count; i++)
        {
            _danceAt.TryAdd(question.Dances[i].Id, i);
        }

        _lessonOf = LessonStretches();
        BarDone();
        List<(int Index, ProgrammePin Pin)> pins =
            [.. question.Pins.Select((p, i) => (i, p)).Where(p => letGo?.Contains(p.i) != true)];
        _missed.AddRange(question.Pins.Where((_, i) => letGo?.Contains(i) == true).SelectMany(p => MissedOf(p, ProgrammeMissedKind.Together)));
        ReadForbidden(pins);
        (Options, SongKeys) = MakeOptions(pins);
        OptionsOf = [.. Enumerable.Range(0, question.Dances.Count).Select(d => Enumerable.Range(0, Options.Length).Where(o => Options[o].Dance == d || Options[o].Other == d).ToArray())];
        (Slots, FirstSlot, Capacity) = MakeSlots(pins);
        FirstDanced = Array.FindIndex(Capacity, c => c > 0);
        LastDanced = Array.FindLastIndex(Capacity, c => c > 0);
        ReadPins(pins);
        Alike = ReadLikenesses();
        Groups = [.. Enumerable.Range(0, question.Groups.Count).Where(g => Options.Any(o => (o.Dancing >> g & 1) == 1))];
        _base = MakePoints();
    }

    /// <summary>What is asked.</summary>
    public ProgrammeQuestion Question { get; }

    /// <summary>What a good programme is.</summary>
    public ProgrammeRules Rules { get; }

    /// <summary>What can stand at a place.</summary>
    public ProgrammeOption[] Options { get; }

    /// <summary>The keys of the songs.</summary>
    public string[] SongKeys { get; }

    /// <summary>For each dance the options it is in.</summary>
    public int[][] OptionsOf { get; }

    /// <summary>The places, stretch by stretch.</summary>
    public ProgrammeSlot[] Slots { get; }

    /// <summary>For each stretch the index of its first place; one more at the end.</summary>
    public int[] FirstSlot { get; }

    /// <summary>For each stretch how many places it has at most.</summary>
    public int[] Capacity { get; }

    /// <summary>Pairs of dances that are nearly the same, by index.</summary>
    public (int One, int Other)[] Alike { get; }

    /// <summary>The groups that can dance anything at all.</summary>
    public int[] Groups { get; }

    /// <summary>Dances at places: the dance, its place.</summary>
    public List<(int Dance, int Slot)> PinnedAt { get; } = [];

    /// <summary>Dances within stretches.</summary>
    public List<(int Dance, int Stretch)> PinnedWithin { get; } = [];

    /// <summary>Dances that must come.</summary>
    public List<int> PinnedSomewhere { get; } = [];

    /// <summary>Pairs that must come at once.</summary>
    public List<(int One, int Other)> PinnedSplits { get; } = [];

    /// <summary>One before the other.</summary>
    public List<(int First, int Second)> PinnedBefore { get; } = [];

    /// <summary>Wishes that cannot be met whatever is chosen.</summary>
    public IReadOnlyList<ProgrammeMissed> Missed => _missed;

    /// <summary>Index of the first stretch with places; -1 when there is none.</summary>
    public int FirstDanced { get; }

    /// <summary>Index of the last stretch with places; -1 when there is none.</summary>
    public int LastDanced { get; }

    /// <summary>The place where the programme closes; -1 when it has no place at all.</summary>
    public int ClosingSlot => Slots.Length - 1;

    /// <summary>The place of the dance at an index of a stretch that has so many.</summary>
    public int SlotAt(int stretch, int index, int count)
        => stretch == LastDanced && index == count - 1 ? ClosingSlot : FirstSlot[stretch] + index;

    /// <summary>Whether a place has a dance in every programme: the first of a stretch, and the closing.</summary>
    public bool MustBeUsed(int slot) => Slots[slot].IsClosing || (Slots[slot].Place == 0 && Slots[slot].Stretch != LastDanced);

    /// <summary>Index of a dance; -1 when it is not among those that may be danced.</summary>
    public int DanceAt(string id) => _danceAt.GetValueOrDefault(id, -1);

    /// <summary>Whether an option may stand at a place, whatever stands elsewhere.</summary>
    public bool MayStand(int option, int slot) => _base[option, slot] != int.MinValue;

    /// <summary>What an option brings at a place, whatever stands elsewhere.</summary>
    public int PointsAt(int option, int slot) => _base[option, slot];

    /// <summary>What it costs that one follows the other within a stretch.</summary>
    public int DifficultyCost(int before, int after) => before != after ? 0 : before switch { 2 => Rules.HardAfterHard, 0 => Rules.EasyAfterEasy, _ => 0 };

    /// <summary>What it costs that one follows the other within a stretch.</summary>
    public int TempoCost(int before, int after) => before != after ? 0 : before switch { 2 => Rules.FastAfterFast, 0 => Rules.SlowAfterSlow, _ => 0 };

    /// <summary>What is missing of a full floor, in tenths, rounded.</summary>
    public static int Missing(ProgrammeOption option) => (100 - option.Floor + 5) / 10;

    /// <summary>What seconds cost that a stretch leaves unused, rounded down.</summary>
    public int EmptyCost(int seconds) => seconds * Rules.EmptyMinute / 60;

    /// <summary>The parts of what an option brings at a place, whatever stands elsewhere; those without points as well, if they say something.</summary>
    public IEnumerable<ProgrammeReason> ReasonsAt(int option, int slot)
    {
        ProgrammeOption o = Options[option];
        ProgrammeSlot place = Slots[slot];
        StretchKind kind = Question.Stretches[place.Stretch].Kind;
        ValueList<ProgrammeDance> dances = o.IsSplit ? [Question.Dances[o.Dance], Question.Dances[o.Other]] : [Question.Dances[o.Dance]];
        int floor = kind == StretchKind.WarmUp ? Rules.FullFloor * 3 / 2 : Rules.FullFloor;
        yield return new ProgrammeReason(ProgrammeReasonKind.Floor, (int)((long)o.Floor * floor * o.Seconds / (100 * UsualSeconds)), o.Floor);
        int requests = dances.Sum(d => d.Requests);
        if (requests > 0)
        {
            yield return new ProgrammeReason(ProgrammeReasonKind.Requested, Rules.Request + (Math.Min(5, requests - 1) * Rules.FurtherRequest), requests);
        }

        int due = dances.Max(d => d.Due);
        if (due > 0)
        {
            int all = kind == StretchKind.Revision ? Rules.Due * 3 : Rules.Due;
            yield return new ProgrammeReason(ProgrammeReasonKind.Due, due * all / 100, due);
        }

        int? since = dances.Max(d => d.DaysSinceDanced is { } days ? Math.Max(0, days) : int.MaxValue);
        int fresh = Rules.FreshDays <= 0 ? 0 : (int)((long)Rules.Fresh * Math.Min(since.Value, Rules.FreshDays) * o.Seconds / (Rules.FreshDays * UsualSeconds));
        if (fresh > 0 && kind != StretchKind.Revision)
        {
            yield return new ProgrammeReason(ProgrammeReasonKind.Fresh, fresh, since == int.MaxValue ? -1 : since.Value);
        }

        if (place.Wished > 0)
        {
            yield return new ProgrammeReason(ProgrammeReasonKind.Effort, -(Math.Abs(o.Effort - place.Wished) * Rules.EffortOff * o.Seconds / (10 * UsualSeconds)), place.Wished);
        }

        if (o.IsSplit)
        {
            yield return new ProgrammeReason(ProgrammeReasonKind.Split, -Rules.SplitFloor);
        }

        // an opening, and every dance of a warm-up, is one that all can dance
        if ((place.Stretch == FirstDanced && place.Place == 0) || kind is StretchKind.WarmUp or StretchKind.CoolDown)
        {
            int cost = Missing(o) * Rules.OpeningFloor;
            if (cost > 0)
            {
                yield return new ProgrammeReason(ProgrammeReasonKind.Opening, -cost, 100 - o.Floor);
            }
        }

        if (place.IsClosing && Missing(o) > 0)
        {
            yield return new ProgrammeReason(ProgrammeReasonKind.Closing, -(Missing(o) * Rules.ClosingFloor), 100 - o.Floor);
        }

        if (Stays(o, place))
        {
            yield return new ProgrammeReason(ProgrammeReasonKind.Stays, Rules.Stays);
        }

        if (dances.Any(d => IsJustTaught(d.Id, place)))
        {
            yield return new ProgrammeReason(ProgrammeReasonKind.JustTaught, 0);
        }
    }

    /// <summary>Wishes that a pin stands for, as not met.</summary>
    public static IEnumerable<ProgrammeMissed> MissedOf(ProgrammePin pin, ProgrammeMissedKind kind) => pin switch
    {
        ProgrammePin.At p => [new ProgrammeMissed(p.DanceId, kind)],
        ProgrammePin.Within p => [new ProgrammeMissed(p.DanceId, kind)],
        ProgrammePin.Somewhere p => [new ProgrammeMissed(p.DanceId, kind)],
        ProgrammePin.Closing p => [new ProgrammeMissed(p.DanceId, kind)],
        ProgrammePin.Before p => [new ProgrammeMissed(p.DanceId, kind, p.OtherId)],
        ProgrammePin.Split p => [new ProgrammeMissed(p.DanceId, kind, p.OtherId)],
        ProgrammePin.Song p => [new ProgrammeMissed(p.DanceId, kind)],
        ProgrammePin.Never => [],
        _ => throw new InvalidOperationException($"A planner does not know the decision {pin}."),
    };

    private static int Clamped(int percent) => Math.Clamp(percent, 0, 100);

    private bool Stays(ProgrammeOption option, ProgrammeSlot place)
    {
        string id = Question.Dances[option.Dance].Id;
        return Question.Seen.Any(i => i.Stretch == place.Stretch && i.Place == place.Place && (i.DanceId == id || (i.OtherId == id && i.OtherId.Length > 0)));
    }

    private bool IsJustTaught(string id, ProgrammeSlot place)
        => place.Place == 0 && Question.Stretches.Take(place.Stretch).Any(s => s.Kind == StretchKind.Lesson && s.DanceId == id)
            && _lessonOf[DanceAt(id)] == place.Stretch;

    // For each dance that is taught the stretch in which it is danced first; -1 for the others.
    private int[] LessonStretches()
    {
        int[] danced = new int[Question.Dances.Count];
        Array.Fill(danced, -1);
        for (int s = 0; s < Question.Stretches.Count; s++)
        {
            ProgrammeStretch stretch = Question.Stretches[s];
            if (stretch.Kind != StretchKind.Lesson || DanceAt(stretch.DanceId) is not (>= 0 and int dance))
            {
                continue;
            }

            for (int next = s + 1; next < Question.Stretches.Count; next++)
            {
                if (Question.Stretches[next].IsDanced)
                {
                    danced[dance] = next;
                    break;
                }
            }
        }

        return danced;
    }

    private void BarDone()
    {
        foreach (ProgrammeDone done in Question.Done)
        {
            foreach (int dance in new[] { DanceAt(done.DanceId), DanceAt(done.OtherId) }.Where(d => d >= 0))
            {
                _barred.Add(dance);
            }
        }
    }

    private void ReadForbidden(List<(int Index, ProgrammePin Pin)> pins)
    {
        HashSet<string> never = [.. pins.Select(p => p.Pin).OfType<ProgrammePin.Never>().Select(n => n.DanceId)];
        foreach (int dance in never.Select(DanceAt).Where(d => d >= 0))
        {
            _barred.Add(dance);
        }

        pins.RemoveAll(p =>
        {
            string[] named = p.Pin switch
            {
                ProgrammePin.At a => [a.DanceId],
                ProgrammePin.Within w => [w.DanceId],
                ProgrammePin.Somewhere s => [s.DanceId],
                ProgrammePin.Closing c => [c.DanceId],
                ProgrammePin.Split s => [s.DanceId, s.OtherId],
                _ => [],
            };
            ProgrammeMissedKind? why = named.Any(never.Contains) ? ProgrammeMissedKind.Forbidden
                : named.Any(n => DanceAt(n) < 0 || _barred.Contains(DanceAt(n))) ? ProgrammeMissedKind.NotThere
                : named.Any(n => Question.Dances[DanceAt(n)].Songs.Count == 0) ? ProgrammeMissedKind.NoSong
                : null;
            if (why is { } kind)
            {
                _missed.AddRange(MissedOf(p.Pin, kind));
            }

            return why is not null;
        });
    }

    private (ProgrammeOption[] Options, string[] SongKeys) MakeOptions(List<(int Index, ProgrammePin Pin)> pins)
    {
        Dictionary<string, string> songPins = [];
        foreach (ProgrammePin.Song pin in pins.Select(p => p.Pin).OfType<ProgrammePin.Song>())
        {
            int dance = DanceAt(pin.DanceId);
            if (dance >= 0 && Question.Dances[dance].Songs.Any(s => s.Key == pin.SongKey))
            {
                songPins[pin.DanceId] = pin.SongKey;
            }
            else
            {
                _missed.AddRange(MissedOf(pin, dance < 0 ? ProgrammeMissedKind.NotThere : ProgrammeMissedKind.NoSong));
            }
        }

        HashSet<string> played = [.. Question.Done.Select(d => d.SongKey).Where(k => k.Length > 0)];
        Dictionary<string, int> songAt = [];
        List<ProgrammeOption> options = [];
        Dictionary<string, List<(int Dance, ProgrammeSong Song)>> bySong = [];
        for (int d = 0; d < Question.Dances.Count; d++)
        {
            ProgrammeDance dance = Question.Dances[d];
            if (_barred.Contains(d) || DanceAt(dance.Id) != d)
            {
                continue;
            }

            foreach (ProgrammeSong song in dance.Songs.DistinctBy(s => s.Key, StringComparer.Ordinal))
            {
                if ((songPins.TryGetValue(dance.Id, out string? wished) && wished != song.Key) || played.Contains(song.Key) || song.Seconds <= 0)
                {
                    continue;
                }

                ProgrammeOption alone = Option(d, -1, song, songAt);
                if (Question.Groups.Count == 0 || alone.Floor >= Rules.LeastFloor || IsNamed(d))
                {
                    options.Add(alone);
                }

                if (!bySong.TryGetValue(song.Key, out List<(int Dance, ProgrammeSong Song)>? to))
                {
                    bySong.Add(song.Key, to = []);
                }

                to.Add((d, song));
            }
        }

        HashSet<(int, int)> asked = [.. pins.Select(p => p.Pin).OfType<ProgrammePin.Split>().SelectMany(s => new[] { (DanceAt(s.DanceId), DanceAt(s.OtherId)), (DanceAt(s.OtherId), DanceAt(s.DanceId)) })];
        foreach (List<(int Dance, ProgrammeSong Song)> to in bySong.OrderBy(s => s.Key, StringComparer.Ordinal).Select(s => s.Value))
        {
            for (int i = 0; i < to.Count; i++)
            {
                for (int j = i + 1; j < to.Count; j++)
                {
                    bool isAsked = asked.Contains((to[i].Dance, to[j].Dance));
                    if (isAsked || (Question.MaySplit && IsWorthASplit(to[i].Dance, to[j].Dance)))
                    {
                        options.Add(Option(to[i].Dance, to[j].Dance, to[i].Song, songAt));
                    }
                }
            }
        }

        return ([.. options], [.. songAt.OrderBy(s => s.Value).Select(s => s.Key)]);
    }

    // Whether somebody asked for it, she decided something of it, or it is taught.
    private bool IsNamed(int dance)
    {
        string id = Question.Dances[dance].Id;
        return Question.Dances[dance].Requests > 0 || _lessonOf[dance] >= 0 || Question.Pins.Any(p => p switch
        {
            ProgrammePin.At a => a.DanceId == id,
            ProgrammePin.Within w => w.DanceId == id,
            ProgrammePin.Somewhere s => s.DanceId == id,
            ProgrammePin.Closing c => c.DanceId == id,
            _ => false,
        });
    }

    // Splitting the floor pays only where some group dances one and not the other, each way round.
    private bool IsWorthASplit(int one, int other)
    {
        ValueList<int> a = Question.Dances[one].Shares;
        ValueList<int> b = Question.Dances[other].Shares;
        bool oneHasMore = false;
        bool otherHasMore = false;
        for (int g = 0; g < Question.Groups.Count; g++)
        {
            (int x, int y) = (g < a.Count ? a[g] : 0, g < b.Count ? b[g] : 0);
            oneHasMore |= x >= MostOfAGroup && y < MostOfAGroup;
            otherHasMore |= y >= MostOfAGroup && x < MostOfAGroup;
        }

        return oneHasMore && otherHasMore;
    }

    private ProgrammeOption Option(int dance, int other, ProgrammeSong song, Dictionary<string, int> songAt)
    {
        if (!songAt.TryGetValue(song.Key, out int index))
        {
            songAt.Add(song.Key, index = songAt.Count);
        }

        ProgrammeDance one = Question.Dances[dance];
        ProgrammeDance? two = other < 0 ? null : Question.Dances[other];
        long people = 0;
        long dancing = 0;
        uint most = 0;
        for (int g = 0; g < Question.Groups.Count && g < 32; g++)
        {
            int share = Math.Max(ShareOf(dance, g), two is null ? 0 : ShareOf(other, g));
            int count = Math.Max(1, Question.Groups[g].People);
            people += count;
            dancing += (long)count * share;
            most |= share >= MostOfAGroup ? 1u << g : 0;
        }

        int difficulty = DifficultyOf(one.Level);
        int tempo = two is null || two.CountsPerMinute == 0 ? one.CountsPerMinute : one.CountsPerMinute == 0 ? two.CountsPerMinute : (one.CountsPerMinute + two.CountsPerMinute) / 2;
        return new ProgrammeOption
        {
            Dance = dance,
            Other = other,
            Song = index,
            SongKey = song.Key,
            Seconds = song.Seconds + Math.Max(0, Rules.SecondsBetween),
            // a split floor is as easy as the easier of its dances
            Difficulty = two is null ? difficulty : Math.Min(difficulty, DifficultyOf(two.Level)),
            Tempo = tempo == 0 ? 1 : tempo < Rules.SlowBelow ? 0 : tempo > Rules.FastAbove ? 2 : 1,
            Effort = two is null ? one.Effort : (one.Effort + two.Effort) / 2,
            Floor = people == 0 ? 100 : (int)(dancing / people),
            Dancing = most,
        };
    }

    private int ShareOf(int dance, int group)
    {
        ValueList<int> shares = Question.Dances[dance].Shares;
        int share = Clamped(group < shares.Count ? shares[group] : 0);
        return _lessonOf[dance] >= 0 ? Math.Max(share, ShareAfterLesson) : share;
    }

    private static int DifficultyOf(Level level) => level switch
    {
        Level.AbsoluteBeginner or Level.Beginner => 0,
        Level.Improver => 1,
        _ => 2,
    };

    private (ProgrammeSlot[] Slots, int[] First, int[] Capacity) MakeSlots(List<(int Index, ProgrammePin Pin)> pins)
    {
        // the shortest way to each dance; a dance comes once
        int[] shortest = [.. Options.GroupBy(o => o.Dance).Select(g => g.Min(o => o.Seconds)).Order()];
        int stretches = Question.Stretches.Count;
        int[] capacity = new int[stretches];
        int left = shortest.Length;
        for (int s = 0; s < stretches; s++)
        {
            ProgrammeStretch stretch = Question.Stretches[s];
            long time = 0;
            while (stretch.IsDanced && capacity[s] < Math.Min(shortest.Length, MostPlaces) && (time += shortest[capacity[s]]) <= stretch.Seconds)
            {
                capacity[s]++;
            }

            // every stretch in use takes a dance at least
            if (capacity[s] > 0 && left-- <= 0)
            {
                capacity[s] = 0;
            }
        }

        List<ProgrammeSlot> slots = [];
        int[] first = new int[stretches + 1];
        int usual = shortest.Length == 0 ? 1 : shortest[shortest.Length / 2];
        for (int s = 0; s < stretches; s++)
        {
            ProgrammeStretch stretch = Question.Stretches[s];
            for (int p = 0; p < capacity[s]; p++)
            {
                long at = Math.Min(stretch.Seconds, (long)p * usual + (usual / 2));
                int wished = stretch.EffortAtStart <= 0 || stretch.EffortAtEnd <= 0
                    ? Math.Max(0, stretch.EffortAtStart)
                    : (int)(stretch.EffortAtStart + ((stretch.EffortAtEnd - stretch.EffortAtStart) * at / Math.Max(1, stretch.Seconds)));
                bool isClosing = p == capacity[s] - 1 && !capacity.Skip(s + 1).Any(c => c > 0);
                slots.Add(new ProgrammeSlot(s, p, isClosing ? Math.Max(0, stretch.EffortAtEnd) : wished, isClosing));
            }

            first[s + 1] = slots.Count;
        }

        return ([.. slots], first, capacity);
    }

    private void ReadPins(List<(int Index, ProgrammePin Pin)> pins)
    {
        // what was taught is danced at once, unless she says otherwise
        HashSet<string> placed = [.. pins.Select(p => p.Pin).OfType<ProgrammePin.At>().Select(p => p.DanceId), .. pins.Select(p => p.Pin).OfType<ProgrammePin.Within>().Select(p => p.DanceId)];
        IEnumerable<ProgrammePin> taught = Enumerable.Range(0, _lessonOf.Length)
            .Where(d => _lessonOf[d] >= 0 && OptionsOf[d].Length > 0 && !placed.Contains(Question.Dances[d].Id))
            .Select(d => new ProgrammePin.At(Question.Dances[d].Id, _lessonOf[d], 0));
        HashSet<int> taken = [];
        foreach (ProgrammePin pin in pins.Select(p => p.Pin).Concat(taught))
        {
            switch (pin)
            {
                case ProgrammePin.At p:
                    PinAt(p, taken);
                    break;
                case ProgrammePin.Within p when !HasPlace(p.Stretch, 0) || !Fits(p.DanceId, p.Stretch):
                    _missed.AddRange(MissedOf(p, ProgrammeMissedKind.NoRoom));
                    break;
                case ProgrammePin.Within p:
                    PinnedWithin.Add((DanceAt(p.DanceId), p.Stretch));
                    break;
                case ProgrammePin.Somewhere p when !Enumerable.Range(0, Capacity.Length).Any(s => HasPlace(s, 0) && Fits(p.DanceId, s)):
                    _missed.AddRange(MissedOf(p, ProgrammeMissedKind.NoRoom));
                    break;
                case ProgrammePin.Somewhere p:
                    PinnedSomewhere.Add(DanceAt(p.DanceId));
                    break;
                case ProgrammePin.Closing p when LastDanced < 0 || !Fits(p.DanceId, LastDanced):
                    _missed.AddRange(MissedOf(p, ProgrammeMissedKind.NoRoom));
                    break;
                case ProgrammePin.Closing p:
                    PinAt(new ProgrammePin.At(p.DanceId, LastDanced, Capacity[LastDanced] - 1), taken);
                    break;
                case ProgrammePin.Before p when DanceAt(p.DanceId) >= 0 && DanceAt(p.OtherId) >= 0 && p.DanceId != p.OtherId:
                    PinnedBefore.Add((DanceAt(p.DanceId), DanceAt(p.OtherId)));
                    break;
                case ProgrammePin.Split p:
                    PinSplit(p);
                    break;
                default:
                    break;
            }
        }
    }

    private void PinAt(ProgrammePin.At pin, HashSet<int> taken)
    {
        if (!HasPlace(pin.Stretch, pin.Place) || !Fits(pin.DanceId, pin.Stretch))
        {
            _missed.AddRange(MissedOf(pin, ProgrammeMissedKind.NoRoom));
            return;
        }

        int slot = FirstSlot[pin.Stretch] + pin.Place;
        int dance = DanceAt(pin.DanceId);
        if (!taken.Add(slot))
        {
            _missed.Add(new ProgrammeMissed(pin.DanceId, ProgrammeMissedKind.PlaceTaken, Question.Dances[PinnedAt.First(p => p.Slot == slot).Dance].Id));
            return;
        }

        PinnedAt.Add((dance, slot));
    }

    private void PinSplit(ProgrammePin.Split pin)
    {
        (int one, int other) = (DanceAt(pin.DanceId), DanceAt(pin.OtherId));
        if (Options.Any(o => (o.Dance == one && o.Other == other) || (o.Dance == other && o.Other == one)))
        {
            PinnedSplits.Add((one, other));
        }
        else
        {
            _missed.AddRange(MissedOf(pin, ProgrammeMissedKind.NoCommonSong));
        }
    }

    private bool HasPlace(int stretch, int place) => stretch >= 0 && stretch < Capacity.Length && place >= 0 && place < Capacity[stretch];

    private bool Fits(string id, int stretch) => OptionsOf[DanceAt(id)].Any(o => Options[o].Seconds <= Question.Stretches[stretch].Seconds);

    private (int One, int Other)[] ReadLikenesses()
        =>
        [
            .. Question.Likenesses
                .Where(l => l.Percent >= Rules.LikeFrom && DanceAt(l.DanceId) >= 0 && DanceAt(l.OtherId) >= 0 && l.DanceId != l.OtherId)
                .Select(l => (DanceAt(l.DanceId), DanceAt(l.OtherId)))
                .Select(l => (Math.Min(l.Item1, l.Item2), Math.Max(l.Item1, l.Item2)))
                .Where(l => OptionsOf[l.Item1].Length > 0 && OptionsOf[l.Item2].Length > 0)
                .Distinct()
                .Order(),
        ];

    private int[,] MakePoints()
    {
        int[,] points = new int[Options.Length, Slots.Length];
        for (int o = 0; o < Options.Length; o++)
        {
            ProgrammeOption option = Options[o];
            int taught = Math.Max(_lessonOf[option.Dance], option.IsSplit ? _lessonOf[option.Other] : -1);
            for (int s = 0; s < Slots.Length; s++)
            {
                bool isBeforeLesson = taught >= 0 && Slots[s].Stretch < taught;
                points[o, s] = isBeforeLesson || option.Seconds > Question.Stretches[Slots[s].Stretch].Seconds
                    ? int.MinValue
                    : ReasonsAt(o, s).Sum(r => r.Points);
            }
        }

        return points;
    }
}
