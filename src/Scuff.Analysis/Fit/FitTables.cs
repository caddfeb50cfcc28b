using System.Numerics;

namespace Scuff.Analysis.Fit;

/// <summary>
/// The places of a dance in a row, and what each kind of act costs at each of them: what <see cref="FitBounds"/> needs of the dance, which is the same for
/// every track.
/// </summary>
internal sealed class FitTables
{
    private readonly int[] _rowOfPart;

    public FitTables(ValueList<FitPart> parts, int[]? kinds = null)
    {
        _rowOfPart = new int[parts.Count];
        int used = 0;
        for (int i = 0; i < _rowOfPart.Length; i++)
        {
            _rowOfPart[i] = used;
            used += parts[i].Length + 1;
        }

        // a multiple of what is reckoned at once
        int width = Vector<int>.Count;
        Rows = (used + width) / width * width;
        IsFree = new int[Rows];
        IsLast = new int[Rows];
        Dictionary<(FitActType, int), int[]> stays = [];
        Dictionary<int, int[]> restarts = [];
        foreach ((FitPart part, int first) in parts.Zip(_rowOfPart))
        {
            for (int q = 0; q <= part.Length; q++)
            {
                IsFree[first + q] = q == 0 || part.IsBoundary[q] ? 0 : -1;
                IsLast[first + q] = q == part.Length ? -1 : 0;
                foreach (FitAct act in part.Acts[q])
                {
                    if (kinds is null || Array.IndexOf(kinds, act.Kind) >= 0)
                    {
                        int[] prices = act.Type == FitActType.Restart ? Made(restarts, act.Next) : Made(stays, (act.Type, act.Length));
                        prices[first + q] = Math.Min(prices[first + q], act.Price);
                    }
                }
            }
        }

        for (int row = used; row < Rows; row++)
        {
            IsLast[row] = -1;
        }

        Stays = [.. stays.Select(s => (s.Key.Item1, s.Key.Item2, s.Value))];
        Restarts = [.. restarts.Select(r => (r.Key, r.Value))];
    }

    /// <summary>How many places there are, and some to fill up.</summary>
    public int Rows { get; }

    /// <summary>-1 where no section begins, so that music that begins there is paid for; else 0.</summary>
    public int[] IsFree { get; }

    /// <summary>-1 at the end of a part, else 0.</summary>
    public int[] IsLast { get; }

    /// <summary>Tags and holds by length, with their price at each place.</summary>
    public (FitActType Type, int Length, int[] Prices)[] Stays { get; }

    /// <summary>Restarts by the part that begins, with their price at each place.</summary>
    public (int Next, int[] Prices)[] Restarts { get; }

    /// <summary>Where the counts of a part stand.</summary>
    public int RowOf(int part) => _rowOfPart[part];

    private int[] Made<T>(Dictionary<T, int[]> of, T key)
        where T : notnull
    {
        if (!of.TryGetValue(key, out int[]? prices))
        {
            prices = new int[Rows];
            Array.Fill(prices, FitModel.Never);
            of.Add(key, prices);
        }

        return prices;
    }
}
