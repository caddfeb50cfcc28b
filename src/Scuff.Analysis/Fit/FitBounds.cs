using System.Buffers;
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
    private readonly FitTables _tables;
    private readonly int _rows;
    private readonly List<int[]> _layers = [];

    public FitBounds(FitModel model, int[]? kinds = null)
    {
        _model = model;
        _tables = kinds is null && model.Tables is { } known ? known : new FitTables(model.Parts, kinds);
        _rows = _tables.Rows;
    }

    /// <summary>Where the counts of a part stand.</summary>
    public int RowOf(int part) => _tables.RowOf(part);

    /// <summary>Gives its memory to the next; nothing may be asked any more.</summary>
    public void Release()
    {
        foreach (int[] layer in _layers)
        {
            ArrayPool<int>.Shared.Return(layer);
        }

        _layers.Clear();
    }

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

    private int[] Reckoned(int[]? before)
    {
        int counts = _model.Counts;
        int size = ((counts + 1) * _rows) + Vector<int>.Count;
        int[] layer = ArrayPool<int>.Shared.Rent(size);
        layer.AsSpan(0, size).Fill(FitModel.Never);
        for (int i = 0; i < _model.Parts.Count; i++)
        {
            for (int q = 0; q <= _model.Parts[i].Length; q++)
            {
                layer[(counts * _rows) + RowOf(i) + q] = _model.End(i, q);
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
        foreach ((FitActType type, int length, int[] prices) in _tables.Stays)
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

        if (!_model.MayAct(at, new FitAct(FitActType.Restart, 0, 0, 0, -1, -1)))
        {
            return;
        }

        foreach ((int next, int[] prices) in _tables.Restarts)
        {
            Lower(here, prices, _model.Begin[next][at] + before[(at * _rows) + RowOf(next)]);
        }
    }

    // The next count is danced; at the end of a part there is none.
    private void TakeRun(int[] layer, int at)
    {
        FitDecided decided = _model.Decided(at);
        if (decided is FitDecided.Extra or FitDecided.Nothing)
        {
            return;
        }

        Span<int> here = layer.AsSpan(at * _rows, _rows);
        ReadOnlySpan<int> next = layer.AsSpan(((at + 1) * _rows) + 1, _rows);
        if (decided == FitDecided.Begins)
        {
            // only the first count of a part; what begins there is paid for at its beginning
            for (int part = 0; part < _model.Parts.Count; part++)
            {
                int row = RowOf(part);
                here[row] = Math.Min(here[row], next[row]);
            }

            return;
        }

        Vector<int> phrase = new(_model.Phrase[at]);
        for (int i = 0; i < _rows; i += Vector<int>.Count)
        {
            Vector<int> danced = new Vector<int>(next[i..]) + (phrase & new Vector<int>(_tables.IsFree, i));
            danced = Vector.ConditionalSelect(new Vector<int>(_tables.IsLast, i), new Vector<int>(FitModel.Never), danced);
            Vector.Min(new Vector<int>(here[i..]), danced).CopyTo(here[i..]);
        }
    }

    private void TakeBegin(int[] layer, int at)
    {
        int from = at * _rows;
        for (int i = 0; i < _model.Parts.Count; i++)
        {
            int last = from + RowOf(i) + _model.Parts[i].Length;
            for (int next = 0; next < _model.Parts.Count; next++)
            {
                if (_model.Parts[i].CanFollow[next])
                {
                    layer[last] = Math.Min(layer[last], _model.Begin[next][at] + layer[from + RowOf(next)]);
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
