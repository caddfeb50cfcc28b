using System.Numerics;

namespace Scuff.Analysis.Fit;

/// <summary>
/// For every place of music and dance the least that the rest of a plan costs with so many acts at most, when kinds cost nothing, or when there are only
/// some kinds. Reckoned from the end
/// of the music to its start, all places of the dance at once.
/// </summary>
internal sealed class FitBounds
{
    private readonly FitModel _model;
    private readonly int _rows;
    private readonly int[] _rowOfPart;
    private readonly int[] _free;
    private readonly int[] _isLast;
    private readonly (FitActType Type, int Length, int[] Prices)[] _stays;
    private readonly (int Next, int[] Prices)[] _restarts;
    private readonly List<int[]> _layers = [];

    public FitBounds(FitModel model, int[]? kinds = null)
    {
        _model = model;
        _rowOfPart = new int[model.Parts.Count];
        for (int i = 0; i < _rowOfPart.Length; i++)
        {
            _rowOfPart[i] = _rows;
            _rows += model.Parts[i].Length + 1;
        }

        // a multiple of what is reckoned at once
        int width = Vector<int>.Count;
        int used = _rows;
        _rows = (_rows + width) / width * width;
        _free = new int[_rows];
        _isLast = new int[_rows];
        Dictionary<(FitActType, int), int[]> stays = [];
        Dictionary<int, int[]> restarts = [];
        foreach ((FitPart part, int first) in model.Parts.Zip(_rowOfPart))
        {
            for (int q = 0; q <= part.Length; q++)
            {
                _free[first + q] = q == 0 || part.IsBoundary[q] ? 0 : -1;
                _isLast[first + q] = q == part.Length ? -1 : 0;
                foreach (FitAct act in part.Acts[q])
                {
                    if (kinds is not null && Array.IndexOf(kinds, act.Kind) < 0)
                    {
                        continue;
                    }

                    int[] prices = act.Type == FitActType.Restart
                        ? Made(restarts, act.Next)
                        : Made(stays, (act.Type, act.Length));
                    prices[first + q] = Math.Min(prices[first + q], act.Price);
                }
            }
        }

        for (int row = used; row < _rows; row++)
        {
            _isLast[row] = -1;
        }

        _stays = [.. stays.Select(s => (s.Key.Item1, s.Key.Item2, s.Value))];
        _restarts = [.. restarts.Select(r => (r.Key, r.Value))];
    }

    /// <summary>Where the counts of a part stand.</summary>
    public int RowOf(int part) => _rowOfPart[part];

    /// <summary>The least that the rest costs from a place on, with so many acts at most.</summary>
    public int Rest(int acts, int at, int row) => Layer(acts)[(at * _rows) + row];

    // A layer holds all places of the dance at count 0 of the music, then at count 1, and so on.
    private int[] Layer(int acts)
    {
        while (_layers.Count <= acts)
        {
            _layers.Add(Reckoned(_layers.Count == 0 ? null : _layers[^1]));
        }

        return _layers[acts];
    }

    private int[] Made<T>(Dictionary<T, int[]> of, T key)
        where T : notnull
    {
        if (!of.TryGetValue(key, out int[]? prices))
        {
            prices = new int[_rows];
            Array.Fill(prices, FitModel.Never);
            of.Add(key, prices);
        }

        return prices;
    }

    private int[] Reckoned(int[]? before)
    {
        int counts = _model.Counts;
        int[] layer = new int[((counts + 1) * _rows) + Vector<int>.Count];
        Array.Fill(layer, FitModel.Never);
        for (int i = 0; i < _rowOfPart.Length; i++)
        {
            for (int q = 0; q <= _model.Parts[i].Length; q++)
            {
                layer[(counts * _rows) + _rowOfPart[i] + q] = _model.End(i, q);
            }
        }

        for (int at = counts - 1; at >= 0; at--)
        {
            if (before is not null)
            {
                TakeActs(layer, before, at);
            }

            TakeRun(layer, at);
            TakeBegin(layer, at);
        }

        return layer;
    }

    private void TakeActs(int[] layer, int[] before, int at)
    {
        Span<int> here = layer.AsSpan(at * _rows, _rows);
        foreach ((FitActType type, int length, int[] prices) in _stays)
        {
            if (at + length <= _model.Counts)
            {
                int extra = _model.Act(at, new FitAct(type, length, 0, 0, -1, -1));
                if (extra >= FitModel.Never)
                {
                    continue;
                }

                Lower(here, prices, before.AsSpan((at + length) * _rows, _rows), extra);
            }
        }

        foreach ((int next, int[] prices) in _restarts)
        {
            Lower(here, prices, _model.Begin[next][at] + before[(at * _rows) + _rowOfPart[next]]);
        }
    }

    // The next count is danced; at the end of a part there is none.
    private void TakeRun(int[] layer, int at)
    {
        Span<int> here = layer.AsSpan(at * _rows, _rows);
        ReadOnlySpan<int> next = layer.AsSpan(((at + 1) * _rows) + 1, _rows);
        Vector<int> phrase = new(_model.Phrase[at]);
        for (int i = 0; i < _rows; i += Vector<int>.Count)
        {
            Vector<int> danced = new Vector<int>(next[i..]) + (phrase & new Vector<int>(_free, i));
            danced = Vector.ConditionalSelect(new Vector<int>(_isLast, i), new Vector<int>(FitModel.Never), danced);
            Vector.Min(new Vector<int>(here[i..]), danced).CopyTo(here[i..]);
        }
    }

    private void TakeBegin(int[] layer, int at)
    {
        int from = at * _rows;
        for (int i = 0; i < _rowOfPart.Length; i++)
        {
            int last = from + _rowOfPart[i] + _model.Parts[i].Length;
            for (int next = 0; next < _rowOfPart.Length; next++)
            {
                if (_model.Parts[i].CanFollow[next])
                {
                    layer[last] = Math.Min(layer[last], _model.Begin[next][at] + layer[from + _rowOfPart[next]]);
                }
            }
        }
    }

    private static void Lower(Span<int> here, int[] prices, ReadOnlySpan<int> rest, int extra)
    {
        Vector<int> more = new(extra);
        for (int i = 0; i < here.Length; i += Vector<int>.Count)
        {
            Vector.Min(new Vector<int>(here[i..]), new Vector<int>(prices, i) + new Vector<int>(rest[i..]) + more).CopyTo(here[i..]);
        }
    }

    private static void Lower(Span<int> here, int[] prices, int rest)
    {
        Vector<int> more = new(rest);
        for (int i = 0; i < here.Length; i += Vector<int>.Count)
        {
            Vector.Min(new Vector<int>(here[i..]), new Vector<int>(prices, i) + more).CopyTo(here[i..]);
        }
    }
}
