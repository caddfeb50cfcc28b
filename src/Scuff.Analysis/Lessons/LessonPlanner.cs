using System.Globalization;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Analysis.Lessons;

/// <summary>
/// Plans a lesson: cuts the dance into chunks, orders the steps as dances are usually taught (trade: teaching, 1), and shares the time out to them. Never throws for
/// what is in the text. The same question gets the same plan.
/// </summary>
internal sealed class LessonPlanner
{
    private const int Tenths = 10;
    private readonly DanceAnalysis _analysis;
    private readonly Dance _dance;
    private readonly LessonOptions _options;
    private readonly Level _class;
    private readonly Track? _track;
    private readonly Ratio _tempo;
    private readonly bool _isTempoTaken;
    private readonly Ratio _aloud;
    private readonly ValueList<LessonChunk> _chunks;
    private readonly int[] _partOf;
    private readonly ValueList<LessonFigure> _figures;
    private readonly ValueList<LessonBreak> _breaks;
    private readonly ValueList<LessonOffer> _offers;
    private readonly List<LessonNote> _notes = [];

    private LessonPlanner(DanceAnalysis analysis, LessonOptions options)
    {
        (_analysis, _dance, _options) = (analysis, analysis.Dance, options);
        _class = options.Class ?? _dance.ClaimedLevel ?? analysis.Level.Level;
        _track = _dance.Tracks.FirstOrDefault(t => options.Track.Length > 0 && string.Equals(t.Title, options.Track, StringComparison.OrdinalIgnoreCase));
        if (_track is null && _dance.Tracks.Count > 0)
        {
            _track = _dance.Tracks[0];
        }

        if (options.Track.Length > 0 && !string.Equals(_track?.Title, options.Track, StringComparison.OrdinalIgnoreCase))
        {
            Note(LessonNoteKind.OtherTrack, 0);
        }

        Ratio? stated = Loads.DancedTempo.FastestOf(_dance with { Tracks = _track is null ? [] : [_track] })?.CountsPerMinute;
        _isTempoTaken = stated is null;
        _tempo = stated ?? LessonLimits.AssumedTempo;
        _aloud = Min(_tempo, Max(LessonLimits.SlowestAloud, Min(LessonLimits.FastestAloud, _tempo * LessonLimits.AloudPercent / 100)));
        (ValueList<ValueList<LessonMove>> parts, ValueList<ValueList<LessonMove>> tags) = LessonMeter.Measure(analysis, options, _class, _tempo);
        ValueList<LessonMove> moves = [.. parts.SelectMany(p => p)];
        List<LessonChunk> chunks = [];
        List<int> partOf = [];
        Counts start = Counts.Zero;
        for (int i = 0; i < _dance.Parts.Count; i++)
        {
            Part part = _dance.Parts[i];
            ValueList<int> lengths = _dance.BeatsPerBar == 3 ? LessonLimits.ChunksOfThree : LessonLimits.ChunksOfFour;
            foreach (CountSpan span in ChunkCutter.Cut(part, start, parts[i], lengths, LessonLimits.ChunkPoints(_class)))
            {
                chunks.Add(Chunk(chunks.Count + 1, span, part, start, parts[i]));
                partOf.Add(i);
            }

            start += part.Length;
        }

        _chunks = chunks.ToValueList();
        _partOf = [.. partOf];
        _figures =
        [
            .. moves.Where(m => m.Figure).Select(m => Figure(m, ChunkAt(m.Head))),
            .. tags.SelectMany(t => t).Where(m => m.Figure).Select(m => Figure(m, 0)),
        ];
        _breaks = BreakFinder.Of(analysis, _track);
        _offers = OfferFinder.Of(analysis, _chunks, moves, options);
    }

    private bool IsBackward { get; set; }

    /// <summary>The plan of a lesson.</summary>
    public static LessonPlan Plan(DanceAnalysis analysis, LessonOptions options) => new LessonPlanner(analysis, options).Plan();

    private static Ratio Min(Ratio a, Ratio b) => a < b ? a : b;

    private static Ratio Max(Ratio a, Ratio b) => a > b ? a : b;

    private static LessonFigure Figure(LessonMove move, int chunk) => new(move.Move.Definition!, move.End - move.Head, chunk);

    private static Ratio Rounded(Ratio value) => new(((value * Tenths) + new Ratio(1, 2)).Floor, Tenths);

    private static string Numbered(string word, int number) => string.Create(CultureInfo.InvariantCulture, $"{word}-{number}");

    // Seconds, rounded up.
    private static int SecondsOf(Ratio counts, Ratio perMinute) => -(-(counts * 60 / perMinute)).Floor;

    private LessonPlan Plan()
    {
        (Ratio ending, Ratio other) = EndingPoints();
        IsBackward = !_dance.IsPhrased && _chunks.Count >= LessonLimits.LeastChunksBackward && (_options.Order is { } asked
            ? asked == LessonOrder.Backward
            : ending * Tenths >= other * LessonLimits.HardEndingTenths
                && ending * 8 * Tenths >= LessonLimits.ChunkPoints(_class) * LessonLimits.HardEndingLoadTenths);
        List<LessonDemand> whole = Demands(_chunks.Count, isWhole: true);
        int least = whole.Where(d => d.Step.IsNeeded).Sum(d => d.Least) * LessonLimits.Unit;
        int usual = whole.Where(IsTeaching).Sum(d => d.Step.UsualSeconds);
        List<LessonStep> steps;
        ValueList<LessonStep> leftOut = [];
        int taught = _chunks.Count;
        bool isWhole = true;
        int seconds;
        if (_options.Minutes is { } minutes)
        {
            seconds = Math.Clamp(minutes, LessonLimits.LeastMinutes, LessonLimits.MostMinutes) * 60;
            if (least > seconds)
            {
                IsBackward = false;
                isWhole = false;
                taught = MostChunksIn(seconds);
            }

            (steps, leftOut) = Shared(isWhole ? whole : Demands(taught, isWhole: false), whole, seconds);
        }
        else
        {
            steps = [.. whole.Where(d => d.Step.Usual > 0).Select(d => d.Step)];
            seconds = steps.Sum(s => s.Seconds);
        }

        AddNotes(seconds, usual, least, steps);
        Placed(steps);
        return new LessonPlan
        {
            Seconds = seconds,
            UsualSeconds = usual,
            LeastSeconds = least,
            Class = _class,
            Steps = steps.ToValueList(),
            LeftOut = leftOut,
            Chunks = _chunks,
            Taught = taught,
            IsWhole = isWhole,
            Order = IsBackward ? LessonOrder.Backward : LessonOrder.Forward,
            IsOrderAsked = _options.Order is not null,
            EndingPoints = Rounded(ending),
            OtherPoints = Rounded(other),
            NewFigures = _figures,
            Shared = SharedFinder.Of(_analysis, _options.KnownDances),
            Breaks = _breaks,
            Offers = _offers,
            Cautions = _analysis.Cautions,
            Notes = _notes.ToValueList(),
            Practise = Hardest(taught),
            Walls = _analysis.Walls,
            SecondWall = SecondWall(),
            Tempo = _tempo,
            Track = _track,
        };
    }

    private static bool IsTeaching(LessonDemand demand) => demand.Step.Kind is not (LessonStepKind.WarmUp or LessonStepKind.CoolDown);

    private static void Placed(List<LessonStep> steps)
    {
        int start = 0;
        LessonStep[] late = [.. steps.Where(s => !s.IsNeeded && s.Kind != LessonStepKind.Spare)
            .OrderBy(s => LessonLimits.Importance(s.Kind))
            .ThenByDescending(s => s.Seconds)];
        for (int i = 0; i < steps.Count; i++)
        {
            int turn = Array.IndexOf(late, steps[i]);

            // what is spare is the first to go
            steps[i] = steps[i] with { Start = start, LeaveOut = steps[i].Kind == LessonStepKind.Spare ? 1 : turn < 0 ? null : turn + 2 };
            start += steps[i].Seconds;
        }
    }

    // The most chunks from the front that can be taught in the time; none when it is too short even for one.
    private int MostChunksIn(int seconds)
    {
        int least = 0;
        int most = _chunks.Count;
        while (least < most)
        {
            int middle = (least + most + 1) / 2;
            bool fits = Demands(middle, isWhole: false).Where(d => d.Step.IsNeeded).Sum(d => d.Least) * LessonLimits.Unit <= seconds;
            (least, most) = fits ? (middle, most) : (least, middle - 1);
        }

        return least;
    }

    private static (List<LessonStep> Steps, ValueList<LessonStep> LeftOut) Shared(List<LessonDemand> demands, List<LessonDemand> whole, int seconds)
    {
        ValueList<int> chosen = LessonAllocator.Share(demands, seconds / LessonLimits.Unit)
            ?? throw new InvalidOperationException("Naming the dance fits into the shortest lesson.");
        List<LessonStep> steps = [];
        for (int i = 0; i < demands.Count; i++)
        {
            if (demands[i].Choices[chosen[i]] is { Units: > 0 } choice)
            {
                steps.Add(demands[i].With(choice));
            }
        }

        HashSet<string> done = new(steps.Select(s => s.Id), StringComparer.Ordinal);
        ValueList<LessonStep> leftOut = [.. whole.Where(d => d.Step.Usual > 0 && !done.Contains(d.Step.Id)).Select(d => d.Step)];
        int rest = seconds - steps.Sum(s => s.Seconds);
        int questions = steps.FindIndex(s => s.Kind == LessonStepKind.Practise);
        if (rest > 0 && rest <= LessonLimits.SmallRest && questions >= 0)
        {
            steps[questions] = steps[questions] with { Seconds = steps[questions].Seconds + rest };
        }
        else if (rest > 0)
        {
            int at = steps.FindIndex(s => s.Kind is LessonStepKind.Practise or LessonStepKind.CoolDown);
            steps.Insert(at < 0 ? steps.Count : at, new LessonStep { Kind = LessonStepKind.Spare, Id = "spare", Seconds = rest, Times = 1, Usual = 0, UsualSeconds = 0 });
        }

        return (steps, leftOut);
    }

    private void AddNotes(int seconds, int usual, int least, List<LessonStep> steps)
    {
        if (_chunks.Count == 0)
        {
            Note(LessonNoteKind.NothingToTeach, 0);
        }

        int unknown = _dance.Sections.Concat(_dance.Tags.Select(t => t.Body)).SelectMany(s => s.Lines).SelectMany(l => l.Moves).Count(m => m.IsUnknown);
        if (unknown > 0)
        {
            Note(LessonNoteKind.UnknownWords, unknown);
        }

        int teaching = steps.Where(s => s.Kind is not (LessonStepKind.WarmUp or LessonStepKind.CoolDown or LessonStepKind.Spare)).Sum(s => s.Seconds);
        if (least > seconds)
        {
            Note(LessonNoteKind.TooShort, (least + 59) / 60);
        }
        else if (teaching < usual)
        {
            Note(LessonNoteKind.Shorter, (usual + 59) / 60);
        }

        if (steps.Find(s => s.Kind == LessonStepKind.Spare) is { } spare)
        {
            Note(LessonNoteKind.LeftOver, spare.Seconds / 60);
        }

        if (teaching > LessonLimits.LongestBlock)
        {
            Note(LessonNoteKind.LongBlock, teaching / 60);
        }

        if (_figures.Count > LessonLimits.MostNewFigures)
        {
            Note(LessonNoteKind.ManyNew, _figures.Count);
        }

        int above = (int)_analysis.Level.Level - (int)_class;
        if (above > 0)
        {
            Note(LessonNoteKind.AboveClass, above);
        }

        if (_isTempoTaken)
        {
            Note(LessonNoteKind.TempoTaken, _tempo);
        }
    }

    private void Note(LessonNoteKind kind, Ratio number) => _notes.Add(new LessonNote(kind, number));

    /// <summary>All steps of the lesson that teaches the first so many chunks, in the usual order; unless it is whole, without walls, tags and music.</summary>
    private List<LessonDemand> Demands(int taught, bool isWhole)
    {
        List<LessonDemand> demands = [];
        if (_options.HasWarmUp)
        {
            demands.Add(Timed(LessonStepKind.WarmUp, "warm-up", LessonLimits.ShortestWarmUp, LessonLimits.WarmUp, (LessonLimits.WarmUp + LessonLimits.LongestWarmUp) / 2, LessonLimits.LongestWarmUp));
        }

        demands.Add(LessonDemand.Of(
            Step(LessonStepKind.Name, "name"),
            2,
            [(1, LessonLimits.Unit), (2, LessonLimits.Name + (_analysis.Cautions.Count > 0 ? LessonLimits.SayCautions : 0))]));
        demands.Add(Once(Step(LessonStepKind.Listen, "listen"), LessonLimits.Listen));
        AddChunks(demands, taught);
        if (taught > 0)
        {
            AddWhole(demands, taught, isWhole);
        }

        demands.Add(Once(Step(LessonStepKind.Practise, "practise"), LessonLimits.Practise));
        if (_options.HasWarmUp)
        {
            demands.Add(Timed(LessonStepKind.CoolDown, "cool-down", LessonLimits.ShortestCoolDown, LessonLimits.CoolDown));
        }

        return demands;
    }

    private void AddChunks(List<LessonDemand> demands, int taught)
    {
        for (int turn = 0; turn < taught; turn++)
        {
            int index = IsBackward ? taught - 1 - turn : turn;
            LessonChunk chunk = _chunks[index];
            AddFigures(demands, chunk.Number);
            int wanted = Math.Min(
                LessonLimits.MostRepeats,
                LessonLimits.LeastRepeats + (((chunk.Points * 2) + LessonLimits.PointsPerRepeat(_class)) / (2 * LessonLimits.PointsPerRepeat(_class))));
            int show = chunk.Moves.Count * LessonLimits.ShowMove;
            int once = SecondsOf(chunk.Span.Length.Value, _aloud) + LessonLimits.Gather;
            demands.Add(LessonDemand.Of(
                Step(LessonStepKind.Chunk, Numbered("chunk", chunk.Number)) with { Chunk = chunk, From = chunk.Number, To = chunk.Number, Pace = Rounded(_aloud) },
                wanted,
                Repeated(LessonLimits.LeastRepeats, wanted, show, once)));
            if (turn > 0 && turn < taught - 1 && JoinOf(index, taught) is { } join)
            {
                int length = SecondsOf((_chunks[join.To - 1].Span.End - _chunks[join.From - 1].Span.Start).Value, _aloud) + LessonLimits.Gather;
                int often = chunk.Points > LessonLimits.ChunkPoints(_class) ? 2 : 1;
                demands.Add(LessonDemand.Of(
                    Step(LessonStepKind.Join, Numbered("join", chunk.Number)) with { Chunk = chunk, From = join.From, To = join.To, Pace = Rounded(_aloud) },
                    often,
                    Repeated(1, often, 0, length)));
            }
        }
    }

    private void AddFigures(List<LessonDemand> demands, int chunk)
    {
        foreach (LessonFigure figure in _figures.Where(f => f.Chunk == chunk))
        {
            int once = (2 * SecondsOf(Max(1, figure.Length.Value), _aloud)) + LessonLimits.Gather;
            demands.Add(LessonDemand.Of(
                Step(LessonStepKind.Figure, "figure-" + figure.Definition.Id) with { Figure = figure, Pace = Rounded(_aloud) },
                LessonLimits.FigureRepeats,
                Repeated(1, LessonLimits.FigureRepeats, LessonLimits.ShowFigure, once)));
        }
    }

    private void AddWhole(List<LessonDemand> demands, int taught, bool isWhole)
    {
        Counts length = !isWhole ? _chunks[taught - 1].Span.End : _dance.IsPhrased ? _analysis.PlainTimeline.Length : _dance.Length;
        int aloud = SecondsOf(length.Value, _aloud) + LessonLimits.Gather;
        demands.Add(LessonDemand.Of(
            Step(LessonStepKind.Whole, "whole") with { From = 1, To = taught, Pace = Rounded(_aloud) },
            2,
            Repeated(1, 2, 0, aloud)));
        if (!isWhole)
        {
            return;
        }

        if (SecondWall() is not null || (_analysis.NetTurn is null && _dance.ClaimedWalls is { Value: > 1 }))
        {
            int wall = SecondsOf(_dance.IsPhrased ? _dance.Parts[0].Length.Value : length.Value, _aloud) + LessonLimits.Gather;
            demands.Add(LessonDemand.Of(
                Step(LessonStepKind.SecondWall, "second-wall") with { From = 1, To = taught, Pace = Rounded(_aloud) },
                1,
                Repeated(1, 1, LessonLimits.TurnClass, wall)));
        }

        AddBreaks(demands);
        foreach ((int percent, bool isOther) in Ladder())
        {
            int walls = _dance.IsPhrased ? 1 : LessonLimits.RungWalls;
            Ratio pace = isOther ? _options.PracticeTempo!.Value : _tempo * percent / 100;
            demands.Add(Once(
                Step(LessonStepKind.Rung, Numbered("slow", percent)) with { Percent = percent, Pace = Rounded(pace), Walls = walls, IsOtherMusic = isOther },
                LessonLimits.StartMusic + SecondsOf(length.Value * walls, pace)));
        }

        AddRuns(demands, length);
    }

    private void AddBreaks(List<LessonDemand> demands)
    {
        AddFigures(demands, 0);
        HashSet<string> learned = new(StringComparer.OrdinalIgnoreCase);
        for (int i = 0; i < _breaks.Count; i++)
        {
            LessonBreak pause = _breaks[i];
            if (pause.Body is { } body && (pause.Name.Length == 0 || learned.Add(pause.Name)))
            {
                int once = SecondsOf(Max(1, body.Length.Value), _aloud) + LessonLimits.Gather;
                int show = body.Lines.Sum(l => l.Moves.Count) * LessonLimits.ShowMove;
                demands.Add(LessonDemand.Of(
                    Step(LessonStepKind.Tag, Numbered("tag", i + 1)) with { Break = pause, Pace = Rounded(_aloud) },
                    2,
                    Repeated(1, 2, show, once)));
            }

            int walked = SecondsOf(pause.Length.Value + (2 * LessonLimits.AroundBreak), _aloud) + LessonLimits.Gather;
            demands.Add(LessonDemand.Of(
                Step(LessonStepKind.Break, Numbered("break", i + 1)) with { Break = pause, Pace = Rounded(_aloud) },
                2,
                Repeated(1, 2, LessonLimits.AgreeWord + LessonLimits.TurnClass, walked)));
        }
    }

    private void AddRuns(List<LessonDemand> demands, Counts length)
    {
        int track = _track?.LengthSeconds is { Sign: > 0 } stated && stated < LessonLimits.MostMinutes * 60 ? -(-stated).Floor : LessonLimits.Track;
        int walls = _dance.IsPhrased ? 0 : LessonLimits.FirstRunWalls;
        int first = Math.Min(track, SecondsOf(length.Value * Math.Max(1, walls), _tempo));
        demands.Add(Once(
            Step(LessonStepKind.EveryStep, "every-step") with { Percent = 100, Pace = Rounded(_tempo), Walls = first < track ? Math.Max(1, walls) : 0 },
            LessonLimits.StartMusic + first));
        LessonStep run = Step(LessonStepKind.Headings, "headings") with { Percent = 100, Pace = Rounded(_tempo) };
        demands.Add(Once(run, LessonLimits.StartMusic + track));
        demands.Add(LessonDemand.Of(run with { Kind = LessonStepKind.Warnings, Id = "warnings" }, 0, [(1, LessonLimits.StartMusic + track)]));
        demands.Add(LessonDemand.Of(run with { Kind = LessonStepKind.Silent, Id = "silent" }, 0, [(1, LessonLimits.StartMusic + track)]));
    }

    // The rungs below full tempo, slowest first.
    private List<(int Percent, bool IsOther)> Ladder()
    {
        if (_options.PracticeTempo is { Sign: > 0 } practice && Loads.DancedTempo.IsBelievable(practice))
        {
            int percent = (practice * 100 / _tempo).Floor;
            LessonNoteKind? kind = percent >= 100 ? LessonNoteKind.NotSlower : percent < LessonLimits.SlowestPercent ? LessonNoteKind.TooSlow : null;
            if (kind is { } note && !_notes.Exists(n => n.Kind == note))
            {
                Note(note, percent);
            }

            if (percent < 100)
            {
                return [(percent, true), .. LessonLimits.HardLadder.Where(p => p > percent).TakeLast(1).Select(p => (p, false))];
            }
        }

        Ratio eights = _dance.Length.Value / 8;
        bool isHard = _tempo > LessonLimits.FastTempo || (eights.Sign > 0 && _chunks.Sum(c => c.Points) / eights >= LessonLimits.HardPoints);
        return [.. (isHard ? LessonLimits.HardLadder : LessonLimits.EasyLadder).Select(p => (p, false))];
    }

    private static LessonStep Step(LessonStepKind kind, string id) => new() { Kind = kind, Id = id, Seconds = 0, Times = 0, Usual = 0, UsualSeconds = 0 };

    private static LessonDemand Once(LessonStep step, int seconds) => LessonDemand.Of(step, 1, [(1, seconds)]);

    // One after the other, the second is the usual one.
    private static LessonDemand Timed(LessonStepKind kind, string id, params int[] seconds)
        => LessonDemand.Of(Step(kind, id), 2, seconds.Select((s, i) => (i + 1, s)));

    private static IEnumerable<(int Times, int Seconds)> Repeated(int least, int usual, int once, int each)
        => Enumerable.Range(least, (Math.Max(least, usual) * LessonLimits.MostStretch) - least + 1).Select(times => (times, once + (times * each)));

    // From the start, or in a long dance from the last chain point; backward to the end, or to the next one.
    private (int From, int To)? JoinOf(int index, int taught)
    {
        int first = index;
        int last = index;
        if (IsBackward)
        {
            while (last + 1 < taught && (_chunks[last + 1].Span.End - _chunks[index].Span.Start).Value <= LessonLimits.ChainCounts)
            {
                last++;
            }
        }
        else
        {
            int begin = Array.IndexOf(_partOf, _partOf[index]);
            Counts start = _chunks[begin].Span.Start;
            int eights = ((_chunks[index].Span.End - start).Value / LessonLimits.ChainCounts).Floor;
            bool isPoint = eights > ((_chunks[index].Span.Start - start).Value / LessonLimits.ChainCounts).Floor;
            first = begin;
            if (!isPoint && eights > 0)
            {
                Counts point = start + Counts.FromWhole(eights * LessonLimits.ChainCounts);
                first = Math.Min(_chunks.ToList().FindIndex(c => c.Span.End > point), index - 1);
            }
        }

        return first < last || first < index ? (_chunks[first].Number, _chunks[last].Number) : null;
    }

    private LessonChunk Chunk(int number, CountSpan span, Part part, Counts partStart, ValueList<LessonMove> moves)
    {
        LessonMove[] here = [.. moves.Where(m => m.Head >= span.Start && m.Head < span.End)];
        List<LessonPiece> pieces = [];
        Counts start = partStart;
        foreach (Section section in part.Sections)
        {
            Counts from = Counts.Max(span.Start, start);
            Counts to = Counts.Min(span.End, start + section.Length);
            if (from < to)
            {
                pieces.Add(new LessonPiece(_dance.IsPhrased ? part.Name : "", section.Number, new CountSpan(from - start, to - start), to - from == section.Length));
            }

            start += section.Length;
        }

        Ratio counts = span.Length.Value;
        IEnumerable<LessonReason> asked = here.SelectMany(m => m.Reasons)
            .GroupBy(r => r.Kind)
            .Select(g => new LessonReason(g.Key, Sum(g.Select(r => r.Number)), g.Sum(r => r.Points)))
            .OrderByDescending(r => Math.Abs(r.Points))
            .ThenBy(r => r.Kind);
        return new LessonChunk(
            number,
            span,
            pieces.ToValueList(),
            [.. here.Select(m => m.Move)],
            [new LessonReason(LessonReasonKind.Counts, counts, (counts * LessonLimits.CountPoints).Floor), .. asked]);
    }

    private static Ratio Sum(IEnumerable<Ratio> numbers)
    {
        Ratio sum = 0;
        foreach (Ratio number in numbers)
        {
            sum += number;
        }

        return sum;
    }

    private int ChunkAt(Counts place) => _chunks.FirstOrDefault(c => place < c.Span.End)?.Number ?? _chunks.Count;

    // Points a count in the last quarter of the counts, by chunks, and before it.
    private (Ratio Ending, Ratio Other) EndingPoints()
    {
        Ratio border = _dance.Length.Value * 3 / 4;
        (int Points, Ratio Counts) ending = (0, 0);
        (int Points, Ratio Counts) other = (0, 0);
        foreach (LessonChunk chunk in _chunks)
        {
            if (chunk.Span.Start.Value >= border)
            {
                ending = (ending.Points + chunk.Points, ending.Counts + chunk.Span.Length.Value);
            }
            else
            {
                other = (other.Points + chunk.Points, other.Counts + chunk.Span.Length.Value);
            }
        }

        return (
            ending.Counts.Sign > 0 ? ending.Points / ending.Counts : 0,
            other.Counts.Sign > 0 ? other.Points / other.Counts : LessonLimits.CountPoints);
    }

    private Facing? SecondWall()
    {
        Facing? second = _analysis.PlainTimeline.Stretches.FirstOrDefault(s => s.Plan is { StartsWall: true, Wall: 2 })?.Facing;
        return second is { } facing && facing != Facing.Front ? facing : null;
    }

    private ValueList<int> Hardest(int taught) =>
    [
        .. _chunks.Take(taught)
            .OrderByDescending(c => c.Points / c.Span.Length.Value)
            .ThenBy(c => c.Number)
            .Take(taught > LessonLimits.LeastChunksBackward ? 2 : Math.Min(taught, 1))
            .Select(c => c.Number)
            .Order(),
    ];
}
