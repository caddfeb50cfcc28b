using Scuff.Analysis.Floor;
using Scuff.Analysis.Loads;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Easier;

/// <summary>
/// Finds easier ways to dance what a dance asks: other figures and plain steps of the catalogue that take the same counts, leave the same
/// foot free and face the same wall, near enough to those who dance the original. Immutable, and safe to share between threads.
/// </summary>
public sealed class EasierFinder
{
    /// <summary>
    /// The most that an easier way may end away from the others, in metres: with 1.2 m from neighbour to neighbour in class (trade: body
    /// and floor, 2) two who dance differently still have more than an arm's breadth between them. Design value.
    /// </summary>
    public const double MostAway = 0.5;

    // Longer than an eight nobody keeps two versions apart.
    private const int MostCounts = 8;
    private const int MostMoves = 3;

    private readonly DanceAnalysis _analysis;
    private readonly EasierQuestion _question;
    private readonly Timeline _timeline;
    private readonly Lazy<FloorPath> _path;
    private readonly Dictionary<WrittenStep, int> _indexes = new(ReferenceEqualityComparer.Instance);

    /// <summary>A finder for one question about a dance.</summary>
    public EasierFinder(DanceAnalysis analysis, EasierQuestion question)
    {
        _analysis = analysis;
        _question = question;
        _timeline = analysis.OnceTimeline;
        _path = new Lazy<FloorPath>(() => FloorSimulator.Simulate(_timeline, DancerSize.Default));
        for (int i = 0; i < _timeline.Steps.Count; i++)
        {
            _indexes.TryAdd(_timeline.Steps[i].Written, i);
        }

        Places = FindPlaces().ToValueList();
    }

    /// <summary>The moves that are worth making easier, in the order of the text; what could not be read is not among them.</summary>
    public ValueList<EasierPlace> Places { get; }

    /// <summary>
    /// Easier ways for a move, the best first: for its own counts before those that take its neighbours in. None, where weight or facing
    /// are not known there. They are looked for while they are asked for.
    /// </summary>
    public IEnumerable<EasierWay> WaysFor(EasierPlace place)
    {
        HashSet<string> seen = [];
        EasierWindow? own = null;
        foreach (EasierWindow window in WindowsFor(place))
        {
            own ??= window;
            foreach (EasierWay way in WaysIn(window, window.Length > own.Length))
            {
                if (seen.Add(Shape(way)))
                {
                    yield return way;
                }
            }
        }
    }

    private static string Shape(EasierWay way)
        => way.Counts + string.Concat(way.Moves.SelectMany(move => move.Steps).Select(step => step.Count.Place + " " + step.Action));

    private IEnumerable<EasierPlace> FindPlaces()
    {
        foreach ((string part, Section section, bool isTag) in _analysis.Dance.Parts.SelectMany(p => p.Sections.Select(s => (p.Name, s, false)))
            .Concat(_analysis.Dance.Tags.Select(t => (t.Name, t.Body, true))))
        {
            if ((_question.Part is { } asked && !string.Equals(asked, part, StringComparison.OrdinalIgnoreCase))
                || (_question.Section is { } number && (isTag || number != section.Number)))
            {
                continue;
            }

            foreach (WrittenMove move in section.Lines.SelectMany(line => line.Moves))
            {
                if (move.Steps.Count > 0 && _indexes.TryGetValue(move.Steps[0], out int index) && IsAsked(move))
                {
                    MoveDemand demand = MoveDemand.Of([move], _timeline.Steps[index].WeightBefore);
                    if (IsHard(demand) && move.Steps.All(step => step.Action.Kind != ActionKind.Unknown))
                    {
                        yield return new EasierPlace(move, section, DancePlace.Of(_timeline.Steps[index], _timeline), demand);
                    }
                }
            }
        }
    }

    private bool IsAsked(WrittenMove move)
        => (_question.Counts is not { } counts || move.Steps.Any(step => counts.Contains(step.Count.Place)))
            && (_question.Lines is not { } lines || (move.Steps[0].Line >= lines.First && move.Steps[0].Line <= lines.Last));

    private bool IsHard(MoveDemand demand) => _question.Aim switch
    {
        EasierAim.Level => demand.Level > _question.Level,
        EasierAim.Knees => demand.IsForKnees,
        EasierAim.Turns => demand.Turn.Sign > 0,
        _ => demand.OffBeats > 0,
    };

    private bool IsEasier(MoveDemand before, MoveDemand after) => _question.Aim switch
    {
        EasierAim.Level => after.Level <= _question.Level && after.Level < before.Level,
        EasierAim.Knees => !after.IsForKnees && after.Level <= before.Level,
        EasierAim.Turns => after.Turn < before.Turn && after.Level <= before.Level,
        _ => after.OffBeats == 0 && after.Steps < before.Steps && after.Level <= before.Level,
    };

    private IEnumerable<EasierWay> WaysIn(EasierWindow window, bool isWider)
    {
        MoveDemand before = MoveDemand.Of(window.Moves, window.Before);
        Level most = _question.Aim == EasierAim.Level ? _question.Level : (Level)Math.Min((int)before.Level, (int)Level.Beginner);
        Dancer start = FloorSimulator.Before(_timeline, DancerSize.Default, window.First);
        if (Original(window, start.Copy()) is not { } original || (_question.Aim == EasierAim.Turns && LeastTurn(original[^1].Turned) >= before.Turn))
        {
            yield break;
        }

        EasierSearch search = new(window, start, EasierBlocks.UpTo(most), original, FeetMatterAfter(window));
        foreach ((ValueList<EasierBlock> row, int points, double away) in search.Run())
        {
            (ValueList<WrittenMove> moves, ValueList<Counts> places) = Written(window, row);
            MoveDemand after = MoveDemand.Of(moves, window.Before);
            if (IsEasier(before, after) && after.Turn <= before.Turn && !IsSame(window.Moves, moves))
            {
                EasierWay way = new()
                {
                    Section = window.Section,
                    Counts = window.Counts,
                    Replaces = window.Moves,
                    Moves = moves,
                    Places = places,
                    Before = before,
                    After = after,
                    Away = away,
                    IsWider = isWider,
                    Points = points,
                };

                // the search knows neither what comes after nor how the whole wall begins: what counts is the dance with it
                way = way with { Away = AwayOf(way) };
                if (way.Away <= MostAway)
                {
                    yield return way;
                }
            }
        }
    }

    private double AwayOf(EasierWay way)
    {
        Dance dance = EasierDance.Take(_analysis.Dance, [way]);
        Timeline timeline = DanceAnalysis.Of(_analysis.Draft with { Dance = dance }).OnceTimeline;
        return (Way(timeline, FloorSimulator.Simulate(timeline, DancerSize.Default), way.Moves) - Way(_timeline, _path.Value, way.Replaces)).Length;
    }

    // From where she stood before the moves to where she stands after them.
    private static FloorPoint Way(Timeline timeline, FloorPath path, ValueList<WrittenMove> moves)
    {
        HashSet<WrittenStep> steps = new(moves.SelectMany(move => move.Steps), ReferenceEqualityComparer.Instance);
        int first = -1;
        int last = -1;
        for (int i = 0; i < timeline.Steps.Count; i++)
        {
            if (steps.Contains(timeline.Steps[i].Written))
            {
                first = first < 0 ? i : first;
                last = i;
            }
        }

        return path.Keys[last].Body - (first == 0 ? path.Start : path.Keys[first - 1]).Body;
    }

    // who has to end at another wall has to turn: the shorter way round
    private static int LeastTurn(int eighths) => Math.Min(eighths, 8 - eighths);

    private static bool IsSame(ValueList<WrittenMove> one, ValueList<WrittenMove> other)
        => one.SelectMany(move => move.Steps).Select(step => (step.Count.Place, step.Action with { Contact = Contact.Air }))
            .SequenceEqual(other.SelectMany(move => move.Steps).Select(step => (step.Count.Place, step.Action with { Contact = Contact.Air })));

    // The dancer of the original at the end of each whole count; null where it ends between two eighths.
    private EasierSearch.Moment[]? Original(EasierWindow window, Dancer dancer)
    {
        EasierSearch.Moment[] moments = new EasierSearch.Moment[window.Length];
        List<WrittenStep> steps = [.. window.Moves.SelectMany(move => move.Steps).OrderBy(step => step.Count.Place)];
        int next = 0;
        Ratio turned = 0;
        for (int count = 0; count < moments.Length; count++)
        {
            bool isStill = true;
            while (next < steps.Count && steps[next].Count.Place < Counts.FromWhole(window.Start + count + 1))
            {
                isStill &= !steps[next].Action.Traits.MovesFoot && steps[next].Action.Effect == WeightEffect.Keeps;
                FloorSimulator.Dance(dancer, _timeline, _indexes[steps[next]]);
                turned += steps[next].Action.Turn.Eighths;
                next++;
            }

            moments[count] = EasierSearch.Moment.Of(dancer, turned, isStill);
        }

        return turned.IsWhole ? moments : null;
    }

    // What comes next may stand on where the feet were left: a recover, a pivot, an unwind, swivels.
    private bool FeetMatterAfter(EasierWindow window)
    {
        WrittenStep? next = window.Section.Steps.Where(step => step.Count.Place >= window.Counts.End).OrderBy(step => step.Count.Place).FirstOrDefault();
        return next is { Action: { Kind: not ActionKind.Hold, Traits.MovesFoot: false } };
    }

    private static (ValueList<WrittenMove> Moves, ValueList<Counts> Places) Written(EasierWindow window, ValueList<EasierBlock> row)
    {
        List<(int Move, Counts At, StepAction Action)> actions = [];
        List<Counts> places = [];
        if (window.Counts.Start < Counts.Zero)
        {
            actions.Add((-1, window.Counts.Start, StepAction.Hold));
            places.Add(window.Counts.Start);
        }

        int start = window.Start;
        for (int i = 0; i < row.Count; i++)
        {
            foreach ((Counts at, StepAction action) in row[i].Rows)
            {
                actions.Add((i, Counts.FromWhole(start) + at, action));
            }

            places.AddRange(row[i].Rows.Select(r => Counts.FromWhole(start) + r.At)
                .Concat(Enumerable.Range(start, row[i].Length).Select(Counts.FromWhole)).Distinct().Order());
            start += row[i].Length;
        }

        Dictionary<int, List<WrittenStep>> steps = [];
        for (int i = 0; i < actions.Count; i++)
        {
            Counts end = i + 1 < actions.Count ? actions[i + 1].At : window.Counts.End;
            WrittenCount count = new(CountGrid.LabelOf(actions[i].At), actions[i].At);
            if (!steps.TryGetValue(actions[i].Move, out List<WrittenStep>? mine))
            {
                steps.Add(actions[i].Move, mine = []);
            }

            mine.Add(new WrittenStep(count, end - actions[i].At, actions[i].Action, default, 0));
        }

        List<WrittenMove> moves = [];
        foreach ((int move, List<WrittenStep> mine) in steps.OrderBy(pair => pair.Key))
        {
            EasierBlock? block = move < 0 ? null : row[move];
            moves.Add(new WrittenMove
            {
                Definition = block?.Definition ?? StepCatalogue.Default.Find("hold"),
                Named = block?.Named,
                StatedTurn = block?.StatedTurn,
                Steps = mine.ToValueList(),
                Span = default,
                Words = "",
            });
        }

        return (moves.ToValueList(), places.ToValueList());
    }

    // The counts of the move, then those with a neighbour, with two, then its whole line: the fewest counts first.
    private IEnumerable<EasierWindow> WindowsFor(EasierPlace place)
    {
        List<WrittenMove> moves = [.. place.Section.Lines.SelectMany(line => line.Moves).Where(move => move.Steps.Count > 0)];
        int own = moves.FindIndex(move => ReferenceEquals(move, place.Move));
        List<(int First, int Last)> ranges = [];
        for (int more = 0; more <= MostMoves; more++)
        {
            for (int before = 0; before <= more; before++)
            {
                ranges.Add((own - before, own + more - before));
            }
        }

        int line = place.Move.Steps[0].Line;
        ranges.Add((moves.FindIndex(move => move.Steps[0].Line == line), moves.FindLastIndex(move => move.Steps[0].Line == line)));
        List<EasierWindow> windows = [];
        foreach ((int first, int last) in ranges)
        {
            if (first >= 0 && last < moves.Count && Closed(place.Section, moves, first, last) is { } window
                && !windows.Exists(other => other.Counts == window.Counts))
            {
                windows.Add(window);
            }
        }

        return windows.OrderBy(window => window.Length);
    }

    // Whole counts with whole moves, in which the dance is not cut.
    private EasierWindow? Closed(Section section, List<WrittenMove> moves, int first, int last)
    {
        Counts start = moves[first].Steps.Min(step => step.Count.Place.Value) is var begin ? Counts.FromRatio(begin) : default;
        Counts end = Counts.Zero;
        while (true)
        {
            for (int i = first; i <= last; i++)
            {
                foreach (WrittenStep step in moves[i].Steps)
                {
                    start = Counts.Min(start, step.Count.Place);
                    end = Counts.Max(end, Counts.FromRatio((step.Count.Place + step.Duration).Value));
                    end = Counts.Max(end, Counts.FromWhole(step.Count.Place.Value.Floor + 1));
                }
            }

            start = start < Counts.Zero ? start : Counts.FromWhole(start.Value.Floor);
            end = end.IsWhole ? end : Counts.FromWhole(end.Value.Floor + 1);
            int before = first;
            int after = last;
            while (first > 0 && moves[first - 1].Steps.Any(step => step.Count.Place >= start))
            {
                first--;
            }

            while (last + 1 < moves.Count && moves[last + 1].Steps.Any(step => step.Count.Place < end))
            {
                last++;
            }

            if (before == first && after == last)
            {
                break;
            }
        }

        ValueList<WrittenMove> inside = moves.GetRange(first, last - first + 1).ToValueList();
        List<WrittenStep> steps = [.. inside.SelectMany(move => move.Steps).OrderBy(step => step.Count.Place)];
        if (end > section.Length || end.Value.Floor > MostCounts + Counts.Max(start, Counts.Zero).Value.Floor
            || steps.Exists(step => step.Action.Kind == ActionKind.Unknown || !_indexes.ContainsKey(step))
            || CutsOf(section).Any(cut => cut > start && cut < end))
        {
            return null;
        }

        TimedStep opening = _timeline.Steps[_indexes[steps[0]]];
        TimedStep closing = _timeline.Steps[_indexes[steps[^1]]];
        return opening.WeightBefore == Weight.Unknown || closing.WeightAfter == Weight.Unknown
            ? null
            : new EasierWindow(section, new CountSpan(start, end), inside, _indexes[steps[0]], opening.WeightBefore, closing.WeightAfter);
    }

    /// <summary>
    /// Where a wall may be left or entered within a section, or where counts are danced otherwise: who dances an easier way must be with the
    /// others there too.
    /// </summary>
    private IEnumerable<Counts> CutsOf(Section section)
    {
        Dance dance = _analysis.Dance;
        foreach (Part part in dance.Parts)
        {
            int index = part.Sections.ToList().FindIndex(one => ReferenceEquals(one, section));
            if (index < 0)
            {
                continue;
            }

            Counts start = part.StartOf(index);
            foreach (Interruption interruption in dance.Interruptions.Concat(dance.Tracks.SelectMany(track => track.Interruptions)))
            {
                if (interruption.AfterCounts is { } after)
                {
                    yield return after - start;
                }

                foreach (ChangedCounts change in interruption.Changes)
                {
                    yield return change.Replaces.Start - start;
                    yield return change.Replaces.End - start;
                }

                foreach (InterruptionAct.Quote quote in interruption.Acts.OfType<InterruptionAct.Quote>())
                {
                    if (quote.SectionNumber == section.Number)
                    {
                        yield return quote.Counts.Start;
                        yield return quote.Counts.End;
                    }
                }
            }

            foreach (SequenceItem item in dance.Sequence.Concat(dance.Tracks.SelectMany(track => track.Sequence)))
            {
                if (item.Upto is { } upto)
                {
                    yield return upto - start;
                }
            }

            foreach (Ending? ending in dance.Tracks.Select(track => track.Ending).Append(dance.Ending))
            {
                if (ending?.AfterCounts is { } leave)
                {
                    yield return leave - start;
                }
            }
        }
    }
}
