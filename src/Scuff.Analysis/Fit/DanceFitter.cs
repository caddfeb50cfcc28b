using Scuff.Analysis.Loads;
using Scuff.Dances;
using Scuff.Music;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Fit;

/// <summary>
/// Fits a dance to tracks: where it begins, where every wall then falls in the music, and what to do where the music breaks the pattern. What depends on
/// the dance alone is found once, so that one fitter serves a whole library. Safe to share between threads.
/// </summary>
public sealed class DanceFitter
{
    // Beyond the likely start, so far is looked for another.
    private const int SearchedStart = 64;

    // A phrased dance has so many ways at most to share the labels of the music out to its parts before only the longest labels are shared out.
    private const int MostPairings = 243;

    // Counts a minute that are comfortable when nothing is known of a dance.
    private const double ComfortableTempo = 112;

    // Half an octave would be as far from one as from the other.
    private const double ClearlyNearer = 0.35;

    private readonly FitOptions _options;
    private readonly FitPrices _prices;
    private readonly FitActs _acts;
    private readonly FitTables _tables;
    private readonly bool _hasUnknown;
    private readonly bool _repeats;

    /// <summary>Prepares a dance.</summary>
    /// <param name="dance">The dance.</param>
    /// <param name="options">What is asked; null for the usual.</param>
    public DanceFitter(Dance dance, FitOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(dance);
        Dance = dance;
        _options = options ?? new FitOptions();
        _prices = _options.Prices ?? FitPrices.For(dance.ClaimedLevel ?? Level.Intermediate);
        _acts = FitActs.Of(dance, _prices);
        _tables = new FitTables(_acts.Parts);
        _hasUnknown = dance.Sections.SelectMany(s => s.Steps).Any(s => s.Action.Kind == ActionKind.Unknown);
        _repeats = _acts.Danced.All(p => LeavingPlace.IsFree(p.Places[p.Length].Weight, p.Begin)) || dance.IsPhrased;
    }

    /// <summary>The dance.</summary>
    public Dance Dance { get; }

    /// <summary>The usual prices for the dance.</summary>
    public FitPrices Prices => _prices;

    /// <summary>
    /// After how many counts of the first part the dance may begin again: where weight, foot and facing allow it, perhaps with a changed last step, no
    /// figure is cut, and a section begins. Rising.
    /// </summary>
    public ValueList<int> RestartPlaces => _acts.Parts.Count == 0
        ? []
        :
        [
            .. Enumerable.Range(0, _acts.Parts[0].Length + 1).Where(q => _acts.Parts[0].IsBoundary[q] && !_acts.Danced[0].Places[q].CutsFigure
                && _acts.Parts[0].Acts[q].Any(a => a.Type == FitActType.Restart)),
        ];

    /// <summary>Fits the dance to a track. Never throws on a map, however poor: what could not be done is a remark.</summary>
    public FitAnswer Fit(TrackMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        Ratio beats = _options.BeatsPerCount ?? CountedFor(map);
        CountedMusic music = CountedMusic.Of(map, beats);
        FitAnswer answer = new() { Dance = Dance, Music = music, BeatsPerCount = beats, Remarks = RemarksOf(map, music) };
        if (music.Counts == 0 || _acts.Parts.Count == 0)
        {
            return answer;
        }

        Track? like = Dance.Tracks.FirstOrDefault(t => IsOf(t, map));
        FitModel model = ModelOf(music, like);
        using FitSearch search = new(model);
        ValueList<FitSolution> solutions = search.Solve(_options.MostInterruptions);
        answer = answer with
        {
            Plans = [.. solutions.Select(s => PlanOf(music, model, s, like))],
            AsWritten = like is null ? null : WrittenPlan(music, model, like),
        };
        answer = solutions.All(s => s.IsProven) ? answer : answer with { Remarks = [.. answer.Remarks, FitRemark.NotProven] };
        return solutions.Count > 0 || _options.Pins.Count == 0 ? answer : answer with { Remarks = [.. answer.Remarks, FitRemark.NoPlanKeepsTo] };
    }

    /// <summary>
    /// What the kindest plan for a track pays, and how many interruptions it has; null when there is none, or none below a limit. Quicker than
    /// <see cref="Fit"/>, because nothing is told.
    /// </summary>
    /// <param name="map">The track.</param>
    /// <param name="limit">What it may pay at most.</param>
    public (int Price, int Interruptions)? Kindest(TrackMap map, int limit)
    {
        ArgumentNullException.ThrowIfNull(map);
        CountedMusic music = CountedMusic.Of(map, _options.BeatsPerCount ?? CountedFor(map));
        if (music.Counts == 0 || _acts.Parts.Count == 0)
        {
            return null;
        }

        using FitSearch search = new(ModelOf(music, Dance.Tracks.FirstOrDefault(t => IsOf(t, map))));
        return search.LowerBound(_options.MostInterruptions) <= limit && search.Kindest(_options.MostInterruptions) is { } solution
            ? (solution.Price, solution.Acts)
            : null;
    }

    /// <summary>The problem that the search solves for a track; for tests and measurements.</summary>
    public FitModel ModelOf(CountedMusic music) => ModelOf(music, null);

    /// <summary>Whether a track of the dance's text is this one, by its title.</summary>
    public static bool IsOf(Track track, TrackMap map)
    {
        ArgumentNullException.ThrowIfNull(track);
        ArgumentNullException.ThrowIfNull(map);
        string title = Letters(map.Title);
        return title.Length > 0 && string.Equals(Letters(track.Title), title, StringComparison.OrdinalIgnoreCase);

        // the names of files have lines and dashes where titles have spaces
        static string Letters(string words) => string.Concat(words.Where(char.IsLetterOrDigit));
    }

    /// <summary>
    /// Beats that a count takes on a track: as the dance says, or at half or double of that where its tempo is clearly nearer to what the dance is
    /// otherwise danced at.
    /// </summary>
    public Ratio CountedFor(TrackMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        Ratio said = IsCountable(Dance.BeatsPerCount) ? Dance.BeatsPerCount : 1;
        if (map.Tempo.Value <= 0 || map.Meter.Value.BeatsInBar == 3)
        {
            return said;
        }

        Ratio best = said;
        double near = Away(map.Tempo.Value / said.ToDouble());
        foreach (Ratio other in new[] { said * 2, said / 2 }.Where(IsCountable))
        {
            double away = Away(map.Tempo.Value / other.ToDouble());
            if (away < near - ClearlyNearer)
            {
                (best, near) = (other, away);
            }
        }

        return best;
    }

    /// <summary>Whether counts of so many beats can be laid over a track: whole beats, or so many counts to a beat.</summary>
    public static bool IsCountable(Ratio beats) => beats.Sign > 0 && beats <= 8 && beats >= new Ratio(1, 8) && (beats.IsWhole || beats.Numerator == 1);

    // In octaves: how far a tempo is from what the dance is danced at.
    private double Away(double counts)
    {
        if (DancedTempo.FastestOf(Dance) is { } stated)
        {
            return Math.Abs(Math.Log2(counts / stated.CountsPerMinute.ToDouble()));
        }

        ValueList<UsualRange> usual = UsualTempo.Of(Dance.Rhythm);
        return usual.Count == 0
            ? Math.Abs(Math.Log2(counts / ComfortableTempo))
            : usual.Min(r => counts < r.From ? Math.Log2(r.From / counts) : counts > r.To ? Math.Log2(counts / r.To) : 0);
    }

    private ValueList<FitRemark> RemarksOf(TrackMap map, CountedMusic music)
    {
        List<FitRemark> remarks = [];
        AddIf(FitRemark.NoSteps, _acts.Parts.Count == 0);
        AddIf(FitRemark.NoBeats, music.Counts == 0);
        AddIf(FitRemark.TrackShorterThanDance, music.Counts > 0 && _acts.Parts.Count > 0 && music.Counts < _acts.Parts[0].Length);
        AddIf(FitRemark.DanceHasUnknownWords, _hasUnknown);
        AddIf(FitRemark.DanceDoesNotRepeat, !_repeats && !_hasUnknown);
        AddIf(FitRemark.PartOfCount, _acts.Danced.Any(p => !p.Part.Length.IsWhole));
        AddIf(FitRemark.OtherMeter, map.Beats.Count > 0 && (Dance.BeatsPerBar == 3) != (map.Meter.Value.BeatsInBar == 3));
        AddIf(FitRemark.CountedOtherwise, music.BeatsPerCount != Dance.BeatsPerCount);
        AddIf(FitRemark.MapIsUnsure, map.Remark.Length > 0 && map.Beats.Count > 0);
        AddIf(FitRemark.NoSections, map.Sections.Count == 0 && map.Beats.Count > 0);
        return remarks.ToValueList();

        void AddIf(FitRemark remark, bool holds)
        {
            if (holds)
            {
                remarks.Add(remark);
            }
        }
    }

    private FitModel ModelOf(CountedMusic music, Track? like)
    {
        FitModel model = new()
        {
            Counts = music.Counts,
            Parts = _acts.Parts,
            Tables = _tables,
            Phrase = [.. Enumerable.Range(0, music.Counts).Select(i => _prices.PhraseInside * music.StrengthOf(i) / 100)],
            Begin = [.. _acts.Parts.Select(p => BeginOf(p, music))],
            Starts = StartsOf(music, like),
            CanBeFirst = [.. _acts.Danced.Select((p, i) => i == FirstPart())],
            Stand = [.. Enumerable.Range(0, music.Counts).Select(i => music.IsStop(i) ? 0 : FitModel.Never)],
            NewKind = _prices.AtLevel(_prices.NewKind),
            EndInside = _prices.EndInside,
        };
        model = _acts.Parts.Count > 1 && music.Map.Sections.Count > 0 ? Paired(model, music) : model;

        // which part belongs to which music does not depend on what was decided in one place
        return _options.Pins.Count == 0 ? model : model with { Pins = _options.Pins };
    }

    // What beginning a part costs, count by count. A part no longer than a small phrase may begin with one.
    private ValueList<int> BeginOf(FitPart part, CountedMusic music)
    {
        int bar = Dance.BeatsPerBar == 3 ? 3 : 4;
        int[] prices = new int[music.Counts];
        for (int i = 0; i < prices.Length; i++)
        {
            int strength = music.StrengthOf(i);
            bool isShort = (strength >= CountedMusic.TwoEights && part.Length <= 4 * bar) || (strength >= CountedMusic.OneEight && part.Length <= 2 * bar);
            strength = isShort ? Math.Max(strength, CountedMusic.FourEights) : strength;

            // what begins on the last chord is not danced any more
            prices[i] = music.Counts - i < bar ? 0 : _prices.WallOffPhrase * (100 - strength) / 100;
        }

        return [.. prices];
    }

    private int FirstPart()
    {
        string first = Dance.Sequence.FirstOrDefault(i => !i.IsTag)?.Name ?? "";
        for (int i = 0; i < _acts.Danced.Count; i++)
        {
            if (string.Equals(_acts.Danced[i].Part.Name, first, StringComparison.OrdinalIgnoreCase))
            {
                return i;
            }
        }

        return 0;
    }

    // The likely start costs nothing, or that of the intro she wants; others more.
    private ValueList<FitStart> StartsOf(CountedMusic music, Track? like)
    {
        int? wanted = _options.Intro ?? (like?.Intro is { IsWhole: true } stated ? stated.Value.Floor : null);
        List<FitStart> starts = [];
        int last = Math.Min(music.Counts - 1, music.Likely + SearchedStart);
        int? decided = _options.Pins.OfType<FitPin.Begins>().Select(p => (int?)p.At).Min();
        for (int count = 0; count <= last; count++)
        {
            bool isWanted = wanted is { } intro && music.IntroOf(count) == intro;
            if (isWanted || count == music.Likely || count == decided || music.StrengthOf(count) > 0)
            {
                int eights = (Math.Abs(count - music.Likely) + 7) / 8;
                int kind = count == music.Likely ? 0
                    : AlternativeAt(count) is { } other ? OtherStart(other.Confidence, music.Map.FirstCount.Confidence)
                    : music.BeginsSection(count) ? _prices.StartElsewhere
                    : _prices.StartElsewhere * 3 / 2;
                int price = isWanted ? 0 : kind + (_prices.WaitedEight * eights) + (wanted is null ? 0 : _prices.StartElsewhere);
                starts.Add(new FitStart(count, price));
            }
        }

        return starts.ToValueList();

        Alternative<int>? AlternativeAt(int count) => music.Map.FirstCount.Alternatives.Where(a => music.CountAt(a.Value) == count).MaxBy(a => a.Confidence);
    }

    // As sure as the likely start: half the price; the less sure, the more of it.
    private int OtherStart(double sure, double likely) => sure <= 0 ? _prices.StartElsewhere : (int)Math.Round(_prices.StartElsewhere * likely / (sure + likely));

    // Parts belong to kinds of music: which to which costs least is tried out, every part with some music of its own.
    private FitModel Paired(FitModel model, CountedMusic music)
    {
        string first = music.Map.Sections[Math.Max(0, music.SectionOf(music.Likely))].Label;
        string[] labels =
        [
            .. music.Map.Sections.Where(s => s.FirstBeat + s.Beats > music.BeatOf(music.Likely).Floor).GroupBy(s => s.Label)
                .OrderByDescending(g => g.Key == first).ThenByDescending(g => g.Sum(s => s.Beats)).Select(g => g.Key),
        ];
        int parts = model.Parts.Count;
        int shared = labels.Length;
        while (shared > 1 && Math.Pow(parts, shared) > MostPairings)
        {
            shared--;
        }

        FitModel? best = null;
        int least = int.MaxValue;
        foreach (int[] pairing in Pairings(shared, parts).OrderBy(p => p.Where((part, label) => part != Math.Min(label, parts - 1)).Count()))
        {
            Dictionary<string, int> home = labels.Take(shared).Zip(pairing).ToDictionary(p => p.First, p => p.Second);
            FitModel tried = model with { Begin = [.. model.Begin.Select((b, part) => PairedBegin(b, part, music, home))] };
            using FitSearch search = new(tried);
            int price = search.LowerBound(0);
            if (price < least)
            {
                (best, least) = (tried, price);
            }
        }

        return best ?? model;
    }

    private ValueList<int> PairedBegin(ValueList<int> begin, int part, CountedMusic music, Dictionary<string, int> home)
    {
        int[] prices = [.. begin];
        for (int i = 0; i < prices.Length; i++)
        {
            string label = music.SectionOf(i) < 0 ? "" : music.Map.Sections[music.SectionOf(i)].Label;
            prices[i] += home.TryGetValue(label, out int own) && own != part ? _prices.OtherMusic : 0;
        }

        return [.. prices];
    }

    private IEnumerable<int[]> Pairings(int labels, int parts)
    {
        int first = FirstPart();
        int all = (int)Math.Pow(parts, labels);
        for (int number = 0; number < all; number++)
        {
            int[] pairing = new int[labels];
            int rest = number;
            for (int i = 0; i < labels; i++)
            {
                pairing[i] = rest % parts;
                rest /= parts;
            }

            if (pairing[0] == first && (labels < parts || pairing.Distinct().Count() == parts))
            {
                yield return pairing;
            }
        }
    }

    private FitPlan PlanOf(CountedMusic music, FitModel model, FitSolution solution, Track? like)
    {
        FitWriting writing = FitWriting.Of(Dance, _acts, music, solution);
        int begins = model.Starts[solution.Start].Count;
        Track track = writing.TrackAt(begins, like);
        Dance dance = Dance with { Tags = [.. Dance.Tags, .. writing.MadeTags], Interruptions = [] };
        FitPlan told = Told(music, model, dance, like?.Ending is { } hers ? track with { Ending = hers } : track, begins, model.Starts[solution.Start].Price, writing.MadeTags);
        return Claimed(told) with { Interruptions = solution.Acts, IsProven = solution.IsProven };
    }

    // The sheet tells the facing at every interruption, and how it ends.
    private static FitPlan Claimed(FitPlan plan)
    {
        ValueList<FitBreak> breaks =
        [
            .. plan.Breaks.Select(b => b.Facing is { } facing
                ? b with { Written = b.Written with { Claim = new FacingClaim(facing, Counts.Zero, default) } }
                : b),
        ];
        return plan with
        {
            Breaks = breaks,
            Track = plan.Track with
            {
                Interruptions = [.. breaks.Where(b => !b.IsInSequence).Select(b => b.Written)],
                Ending = plan.Ending is { IsHers: false } ending ? ending.Written : plan.Track.Ending,
            },
        };
    }

    // The dance as its text has it for the track.
    private FitPlan WrittenPlan(CountedMusic music, FitModel model, Track track)
    {
        int begins = music.Likely;
        int price = 0;
        if (track.Intro is { IsWhole: true } intro)
        {
            for (int i = 0; i < music.Counts; i++)
            {
                if (music.IntroOf(i) == intro.Value.Floor && i >= intro.Value.Floor)
                {
                    begins = i;
                    break;
                }
            }

            price = model.Starts.Where(s => s.Count == begins).Select(s => s.Price).FirstOrDefault();
        }

        return Told(music, model, Dance, track, begins, price, []);
    }

    private FitPlan Told(CountedMusic music, FitModel model, Dance dance, Track track, int begins, int startPrice, ValueList<Tag> made)
    {
        Plan plan = PlanBuilder.ForMusic(dance, track, music.Counts - begins);
        Timeline timeline = Unroller.Unroll(dance, plan);
        ValueList<FitItem> items = FitScore.Of(_acts, model, _prices, made, timeline, begins, startPrice);
        ValueList<FitBreak> breaks = BreaksOf(music, timeline, begins);
        FitPlan told = new()
        {
            Price = items.Sum(i => i.Price),
            Items = items,
            Interruptions = items.Count(i => i.Reason is FitReason.Restart or FitReason.Tag or FitReason.Hold),
            IsProven = false,
            Begins = begins,
            BeginsSeconds = music.SecondsOf(begins),
            Intro = music.IntroOf(begins),
            Walls = WallsOf(music, timeline, begins),
            Breaks = breaks,
            Dance = dance,
            Track = track,
            MadeTags = made,
            Plan = plan,
            Timeline = timeline,
        };
        return told with { Ending = EndingFinder.Find(told, music, _acts) };
    }

    private static ValueList<FitWall> WallsOf(CountedMusic music, Timeline timeline, int begins)
    {
        List<FitWall> walls = [];
        foreach (IGrouping<int, TimedStretch> wall in timeline.Stretches.Where(s => s.Plan.Kind == StretchKind.Wall).GroupBy(s => s.Plan.Wall))
        {
            TimedStretch first = wall.First();
            int at = begins + first.Span.Start.Value.Floor;
            walls.Add(new FitWall(
                wall.Key,
                first.Plan.Name,
                at,
                music.SecondsOf(at),
                first.Facing,
                wall.Max(s => s.Plan.Counts.End).Value.Floor,
                music.StrengthOf(at),
                music.SectionOf(at)));
        }

        return walls.ToValueList();
    }

    // A tag between parts, or a part that is cut, as the order of the parts has it.
    private static FitBreak SequenceBreak(CountedMusic music, ValueList<TimedStretch> stretches, int index, int begins)
    {
        TimedStretch at = stretches[index];
        bool isCut = at.Plan.Kind == StretchKind.Wall;
        TimedStretch? wall = stretches.Take(index + 1).LastOrDefault(s => s.Plan.Kind == StretchKind.Wall);
        int after = wall?.Plan.Counts.End.Value.Floor ?? 0;
        string part = wall?.Plan.Name ?? "";
        int count = begins + (isCut ? at.Span.End : at.Span.Start).Value.Floor;
        Interruption written = new()
        {
            Walls = [Math.Max(1, stretches.Take(index + 1).Count(s => s.Plan.StartsWall && s.Plan.Name == part))],
            PartName = part,
            AfterCounts = Counts.FromWhole(after),
            Acts = [isCut ? new InterruptionAct.Restart() : new InterruptionAct.PlayTag(at.Plan.Name)],
            Span = default,
            Line = 0,
            Verbatim = "",
        };
        return new FitBreak(
            at.Plan.Wall,
            part,
            after,
            !isCut,
            count,
            music.SecondsOf(Math.Min(count, music.Counts)),
            isCut ? at.FacingAfter : at.Facing,
            isCut ? 0 : at.Span.Length.Value.Floor,
            count < music.Counts ? music.SectionOf(count) : -1,
            written)
        {
            IsInSequence = true,
        };
    }

    private static ValueList<FitBreak> BreaksOf(CountedMusic music, Timeline timeline, int begins)
    {
        List<FitBreak> breaks = [];
        ValueList<TimedStretch> stretches = timeline.Stretches;
        for (int i = 0; i < stretches.Count; i++)
        {
            // the first stretch that the interruption cuts short or adds
            PlanStretch plan = stretches[i].Plan;
            bool isCut = plan.Kind == StretchKind.Wall && plan.IsCutByRestart;
            if (plan.Kind == StretchKind.Wall && !isCut)
            {
                continue;
            }

            if (plan.Cause is not { } cause)
            {
                breaks.Add(SequenceBreak(music, stretches, i, begins));
                continue;
            }

            if (breaks.Any(b => b.Wall == plan.Wall && ReferenceEquals(b.Written, cause)))
            {
                continue;
            }

            TimedStretch[] added =
            [
                .. stretches.Where(s => s.Plan.Wall == plan.Wall && s.Plan.Kind != StretchKind.Wall && ReferenceEquals(s.Plan.Cause, cause)),
            ];
            TimedStretch at = stretches[i];
            Counts place = isCut ? at.Span.End : at.Span.Start;
            int count = begins + place.Value.Floor;
            int length = timeline.Stretches.Where(s => s.Plan.Wall == plan.Wall && s.Plan.Kind == StretchKind.Wall)
                .Select(s => s.Plan.Sections.Aggregate(Counts.Zero, (sum, section) => sum + section.Length)).FirstOrDefault().Value.Floor;
            int after = cause.AfterCounts?.Value.Floor ?? length;
            breaks.Add(new FitBreak(
                plan.Wall,
                cause.PartName,
                after,
                after >= length,
                count,
                music.SecondsOf(Math.Min(count, music.Counts)),
                isCut ? at.FacingAfter : at.Facing,
                added.Aggregate(Counts.Zero, (sum, s) => sum + s.Span.Length).Value.Floor,
                count < music.Counts ? music.SectionOf(count) : -1,
                cause));
        }

        return breaks.ToValueList();
    }
}
