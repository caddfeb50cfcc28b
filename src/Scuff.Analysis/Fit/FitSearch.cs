namespace Scuff.Analysis.Fit;

/// <summary>
/// Finds the cheapest plan with at most so many acts, exactly. What the rest of a plan costs when kinds cost nothing (<see cref="FitBounds"/>) never
/// says too much, and so the search looks only where something cheaper can still be (A*). Of two ways to the same place one is dropped when even with
/// all kinds of the other learnt on top it costs no more.
/// </summary>
public sealed class FitSearch : IDisposable
{
    private readonly FitModel _model;
    private readonly FitBounds _bounds;
    private readonly int _mostLabels;
    private readonly Dictionary<(int, int, int), FitBounds> _withKinds = [];

    /// <summary>Prepares the search.</summary>
    /// <param name="model">The problem.</param>
    /// <param name="mostLabels">After so many places looked at, a search is given up and what was found is not proven.</param>
    public FitSearch(FitModel model, int mostLabels = 400_000)
    {
        _model = model;
        _bounds = new FitBounds(model);
        _mostLabels = mostLabels;
    }

    /// <summary>
    /// The cheapest plans with at most 0, 1, 2 and so on acts; each costs less than the one before, so that a number of acts that does not help is left
    /// out. Empty when there is no plan at all.
    /// </summary>
    /// <param name="mostActs">With how many acts at most.</param>
    public ValueList<FitSolution> Solve(int mostActs)
    {
        List<FitSolution> found = [];
        for (int acts = 0; acts <= mostActs; acts++)
        {
            FitSolution? best = Cheapest(acts, found.Count == 0 ? null : found[^1]);
            if (best is not null)
            {
                found.Add(best);
            }
        }

        return found.ToValueList();
    }

    /// <summary>The cheapest plan with at most so many acts, without those with fewer; null when there is no plan at all.</summary>
    /// <param name="mostActs">With how many acts at most.</param>
    public FitSolution? Kindest(int mostActs) => Cheapest(mostActs, null);

    /// <summary>Gives its memory to the next search. Not doing so only costs time.</summary>
    public void Dispose()
    {
        _bounds.Release();
        foreach (FitBounds bounds in _withKinds.Values)
        {
            bounds.Release();
        }

        _withKinds.Clear();
    }

    /// <summary>A price that no plan with so many acts goes below; plans with kinds may cost more.</summary>
    public int LowerBound(int acts) => Roots(acts).Select(r => r.Price).DefaultIfEmpty(FitModel.Never).Min();

    // What the rest costs with the kinds learnt so far and no other; null for more kinds than are worth it.
    private FitBounds? With(int[] kinds)
    {
        if (kinds.Length is 0 or > 3)
        {
            return null;
        }

        int[] rising = [.. kinds.Order()];
        (int, int, int) key = (rising[0], rising.Length > 1 ? rising[1] : -1, rising.Length > 2 ? rising[2] : -1);
        if (!_withKinds.TryGetValue(key, out FitBounds? bounds))
        {
            _withKinds.Add(key, bounds = new FitBounds(_model, rising));
        }

        return bounds;
    }

    // All ways to begin, with what the whole costs at least.
    private IEnumerable<(int Start, int Part, int Price)> Roots(int acts)
    {
        for (int s = 0; s < _model.Starts.Count; s++)
        {
            FitStart start = _model.Starts[s];
            for (int part = 0; part < _model.Parts.Count; part++)
            {
                if (_model.CanBeFirst[part] && start.Count < _model.Counts && start.Count <= _model.LatestStart)
                {
                    int price = start.Price + _model.Begin[part][start.Count] + _bounds.Rest(acts, start.Count, _bounds.RowOf(part));
                    if (price < FitModel.Never)
                    {
                        yield return (s, part, price);
                    }
                }
            }
        }
    }

    // Null when nothing is cheaper than what is known.
    private FitSolution? Cheapest(int acts, FitSolution? known)
    {
        (int Start, int Part, int Price)[] roots = [.. Roots(acts)];
        Round round = new(this, known?.Price ?? FitModel.Never);

        // the least bound, walked down, is a plan: most often the cheapest already
        foreach ((int start, int part, _) in roots.Where(r => known is null || r.Price < known.Price).OrderBy(r => r.Price).Take(1))
        {
            round.Descend(start, part, acts);
        }

        foreach ((int start, int part, _) in roots)
        {
            round.AddRoot(start, part, acts);
        }

        bool isProven = round.Run(_mostLabels);
        return round.Best is { } best ? new FitSolution(best.Price, best.Start, best.Trail.ToEvents(), isProven) : null;
    }

    // What happened so far; shared by the plans that go on from it.
    private sealed record Trail(Trail? Before, FitEvent Event)
    {
        public ValueList<FitEvent> ToEvents()
        {
            Stack<FitEvent> events = new();
            for (Trail? t = this; t is not null; t = t.Before)
            {
                events.Push(t.Event);
            }

            return events.ToValueList();
        }
    }

    private sealed record Label(int At, int Part, int Count, int Left, int Price, int[] Kinds, int Start, Trail Trail);

    private sealed record Complete(int Price, int Start, Trail Trail);

    // One search for the cheapest plan with at most so many acts.
    private sealed class Round(FitSearch search, int limit)
    {
        private readonly FitModel _model = search._model;
        private readonly FitBounds _bounds = search._bounds;
        private readonly PriorityQueue<Label, (int Price, int Order)> _open = new();
        private readonly Dictionary<(int At, int Row, int Left), List<(int Price, int[] Kinds)>> _seen = [];
        private int _limit = limit;
        private int _order;

        public Complete? Best { get; private set; }

        public void AddRoot(int start, int part, int acts)
        {
            FitStart from = _model.Starts[start];
            int price = from.Price + _model.Begin[part][from.Count];
            Add(new Label(from.Count, part, 0, acts, price, [], start, new Trail(null, new FitEvent(from.Count, part, 0, -1))));
        }

        // Answers whether everything was looked at.
        public bool Run(int mostLabels)
        {
            while (_open.TryDequeue(out Label? label, out (int Price, int Order) priority))
            {
                if (priority.Price >= _limit)
                {
                    break;
                }

                if (_order > mostLabels)
                {
                    return false;
                }

                Walk(label);
            }

            return true;
        }

        // Follows the bounds down to a plan.
        public void Descend(int start, int part, int acts)
        {
            FitStart from = _model.Starts[start];
            Trail trail = new(null, new FitEvent(from.Count, part, 0, -1));
            Label at = new(from.Count, part, 0, acts, from.Price + _model.Begin[part][from.Count], [], start, trail);
            while (true)
            {
                if (at.At == _model.Counts)
                {
                    Finish(at);
                    return;
                }

                int rest = _bounds.Rest(at.Left, at.At, _bounds.RowOf(at.Part) + at.Count);
                Label? next = Steps(at).FirstOrDefault(s => s.Price - at.Price + Rest(s) == rest);
                next ??= at.Left > 0
                    ? Acts(at).Select(s => (Label: s, Bare: s.Price - NewKinds(at, s)))
                        .FirstOrDefault(s => s.Bare - at.Price + Rest(s.Label) == rest).Label
                    : null;
                if (next is null)
                {
                    return;
                }

                at = next;
            }
        }

        private int Rest(Label label) => _bounds.Rest(label.Left, label.At, _bounds.RowOf(label.Part) + label.Count);

        private int NewKinds(Label before, Label after) => (after.Kinds.Length - before.Kinds.Length) * _model.NewKind;

        // What the whole costs at least: with the kinds learnt so far, or with one more.
        private int Least(Label label)
        {
            int row = _bounds.RowOf(label.Part) + label.Count;
            int rest = _bounds.Rest(label.Left, label.At, row);
            if (label.Left == 0 || label.Price + rest >= _limit)
            {
                return label.Price + rest;
            }

            int without = label.Kinds.Length == 0
                ? _bounds.Rest(0, label.At, row)
                : search.With(label.Kinds)?.Rest(label.Left, label.At, row) ?? rest;
            return label.Price + Math.Min(without, rest + _model.NewKind);
        }

        private void Add(Label label)
        {
            int least = Least(label);
            if (least >= _limit)
            {
                return;
            }

            (int, int, int) key = (label.At, _bounds.RowOf(label.Part) + label.Count, label.Left);
            if (!_seen.TryGetValue(key, out List<(int Price, int[] Kinds)>? seen))
            {
                _seen.Add(key, seen = []);
            }

            foreach ((int price, int[] kinds) in seen)
            {
                if (price + (label.Kinds.Count(k => !kinds.Contains(k)) * _model.NewKind) <= label.Price)
                {
                    return;
                }
            }

            seen.Add((label.Price, label.Kinds));
            _open.Enqueue(label, (least, _order++));
        }

        // Dances on from a place, and looks at every act on the way.
        private void Walk(Label at)
        {
            while (Least(at) < _limit)
            {
                if (at.At == _model.Counts)
                {
                    Finish(at);
                    return;
                }

                if (at.Left > 0)
                {
                    AddActs(at);
                }

                Label? next = null;
                foreach (Label step in Steps(at))
                {
                    if (next is null)
                    {
                        next = step;
                    }
                    else
                    {
                        Add(step);
                    }
                }

                if (next is null)
                {
                    return;
                }

                at = next;
            }
        }

        private void Finish(Label at)
        {
            int price = at.Price + _model.End(at.Part, at.Count);
            if (price < _limit)
            {
                _limit = price;
                Best = new Complete(price, at.Start, at.Trail);
            }
        }

        // The next count, or the next part.
        private IEnumerable<Label> Steps(Label at)
        {
            FitPart part = _model.Parts[at.Part];
            if (at.Count < part.Length)
            {
                if (!_model.MayRun(at.At, at.Count))
                {
                    yield break;
                }

                yield return at with { At = at.At + 1, Count = at.Count + 1, Price = at.Price + _model.Run(at.At, at.Part, at.Count) };
                yield break;
            }

            for (int next = 0; next < _model.Parts.Count; next++)
            {
                if (part.CanFollow[next] && _model.Begin[next][at.At] < FitModel.Never)
                {
                    yield return at with
                    {
                        Part = next,
                        Count = 0,
                        Price = at.Price + _model.Begin[next][at.At],
                        Trail = new Trail(at.Trail, new FitEvent(at.At, next, 0, -1)),
                    };
                }
            }
        }

        // As below, but without making what cannot be cheap enough.
        private void AddActs(Label at)
        {
            ValueList<FitAct> acts = _model.Parts[at.Part].Acts[at.Count];
            for (int i = 0; i < acts.Count; i++)
            {
                FitAct act = acts[i];
                if (at.At + act.Length <= _model.Counts)
                {
                    bool isRestart = act.Type == FitActType.Restart;
                    int row = isRestart ? _bounds.RowOf(act.Next) : _bounds.RowOf(at.Part) + at.Count;
                    int kind = Array.IndexOf(at.Kinds, act.Kind) < 0 ? _model.NewKind : 0;
                    int sure = at.Price + act.Price + kind + _bounds.Rest(at.Left - 1, at.At + act.Length, row);
                    if (sure < _limit && sure + _model.Act(at.At, act with { Price = 0 }) + (isRestart ? _model.Begin[act.Next][at.At] : 0) < _limit)
                    {
                        Add(After(at, i));
                    }
                }
            }
        }

        private IEnumerable<Label> Acts(Label at)
        {
            ValueList<FitAct> acts = _model.Parts[at.Part].Acts[at.Count];
            for (int i = 0; i < acts.Count; i++)
            {
                if (at.At + acts[i].Length <= _model.Counts && _model.Act(at.At, acts[i]) < FitModel.Never)
                {
                    yield return After(at, i);
                }
            }
        }

        private Label After(Label at, int number)
        {
            FitAct act = _model.Parts[at.Part].Acts[at.Count][number];
            bool isRestart = act.Type == FitActType.Restart;
            bool isNew = Array.IndexOf(at.Kinds, act.Kind) < 0;
            Trail trail = new(at.Trail, new FitEvent(at.At, at.Part, at.Count, number));
            return at with
            {
                At = at.At + act.Length,
                Part = isRestart ? act.Next : at.Part,
                Count = isRestart ? 0 : at.Count,
                Left = at.Left - 1,
                Price = at.Price + _model.Act(at.At, act) + (isRestart ? _model.Begin[act.Next][at.At] : 0) + (isNew ? _model.NewKind : 0),
                Kinds = isNew ? [.. at.Kinds, act.Kind] : at.Kinds,
                Trail = isRestart ? new Trail(trail, new FitEvent(at.At, act.Next, 0, -1)) : trail,
            };
        }
    }
}
