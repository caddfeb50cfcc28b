namespace Scuff.Analysis.Planning;

/// <summary>One run of simulated annealing over the stretches of a question. A stretch is a row of options; a move changes one row or two.</summary>
internal sealed class ProgrammeAnnealing
{
    // moves that settle an evening of three hours out of three hundred dances; a small question needs fewer
    private const int MostMoves = 700_000;
    private const int FewestMoves = 20_000;
    private const int MovesEach = 60;

    // in points: at first a hard dance after another may be taken, at the end nothing that is felt
    private const double Hottest = 40;
    private const double Coldest = 0.7;

    // what a wish of hers that does not hold yet counts while the search goes on
    private const int Unheld = 2_000;

    // what each second too long counts
    private const int TooLong = 1;

    private const int Broken = int.MinValue / 2;
    private const int TimeIsAsked = 1024;

    private readonly ProgrammeModel _model;
    private readonly Random _luck;
    private readonly int[][] _rows;
    private readonly int[] _counts;
    private readonly int[] _points;
    private readonly int[] _stretches;
    private readonly bool[] _danced;
    private readonly bool[] _played;
    private readonly int[][] _alike;
    private readonly int[][] _likely;
    private readonly int[] _sitting;
    private readonly int[] _slotOf;
    private readonly bool _hasPins;
    private readonly int[] _first;
    private readonly int[] _second;

    private ProgrammeAnnealing(ProgrammeModel model, int seed)
    {
        _model = model;
        _luck = new Random(seed);
        int stretches = model.Capacity.Length;
        _rows = [.. model.Capacity.Select(c => new int[c + 1])];
        _counts = new int[stretches];
        _points = new int[stretches];
        _stretches = [.. Enumerable.Range(0, stretches).Where(s => model.Capacity[s] > 0)];
        _danced = new bool[model.Question.Dances.Count];
        _played = new bool[model.SongKeys.Length];
        _sitting = new int[model.Groups.Length];
        _slotOf = new int[model.Question.Dances.Count];
        _first = new int[model.Capacity.Max() + 1];
        _second = new int[model.Capacity.Max() + 1];
        _hasPins = model.PinnedAt.Count + model.PinnedWithin.Count + model.PinnedSomewhere.Count + model.PinnedSplits.Count + model.PinnedBefore.Count > 0;
        _alike = [.. Enumerable.Range(0, model.Question.Dances.Count).Select(d => model.Alike.Where(a => a.One == d || a.Other == d).Select(a => a.One == d ? a.Other : a.One).ToArray())];

        // what is tried oftenest: what brings most in a stretch, by the middle of it
        _likely =
        [
            .. Enumerable.Range(0, stretches).Select(s => model.Capacity[s] == 0 ? [] : Enumerable.Range(0, model.Options.Length)
                .Where(o => model.MayStand(o, model.FirstSlot[s] + (model.Capacity[s] / 2)))
                .OrderByDescending(o => model.PointsAt(o, model.FirstSlot[s] + (model.Capacity[s] / 2)) * 1000L / model.Options[o].Seconds)
                .ToArray()),
        ];
    }

    private int Total => _points.Sum() - (_hasPins ? Unheld * Missing() : 0);

    /// <summary>How many moves settle a question.</summary>
    public static int MovesFor(ProgrammeModel model) => (int)Math.Clamp((long)model.Slots.Length * model.Options.Length * MovesEach, FewestMoves, MostMoves);

    /// <summary>The best choice of a run; null when none was found in which all her decisions hold.</summary>
    /// <param name="model">The question.</param>
    /// <param name="seed">Where luck begins.</param>
    /// <param name="moves">How much is tried.</param>
    /// <param name="spent">What part of its time is spent, from 0 to 1: a run that is short of it cools sooner.</param>
    public static int[]? Run(ProgrammeModel model, int seed, int moves, Func<double> spent)
    {
        ProgrammeAnnealing run = new(model, seed);
        return run.Begin() ? run.Cool(moves, spent) : null;
    }

    // One dance into each stretch, what is decided for its places first.
    private bool Begin()
    {
        foreach (int s in _stretches)
        {
            int first = _model.SlotAt(s, 0, 1);
            int[] decided = [.. _model.PinnedAt.Where(p => p.Slot == first).SelectMany(p => _model.OptionsOf[p.Dance])];
            int[] likely = [.. decided, .. _likely[s]];
            int option = Array.Find(likely, o => _model.MayStand(o, first) && IsFree(_model.Options[o]));
            if (likely.Length == 0 || !_model.MayStand(option, first) || !IsFree(_model.Options[option]))
            {
                return false;
            }

            _rows[s][0] = option;
            _counts[s] = 1;
            Mark(_model.Options[option], isIn: true);
            _points[s] = Worth(s, _rows[s], 1);
            if (_points[s] == Broken)
            {
                return false;
            }
        }

        return true;
    }

    private int[]? Cool(int moves, Func<double> spent)
    {
        int now = Total;
        bool isWhole = KeepsTime() && (!_hasPins || Missing() == 0);
        int best = isWhole ? now : int.MinValue;
        int[]? chosen = isWhole ? Choice() : null;
        double heat = Hottest;
        for (int move = 0; move < moves; move++)
        {
            if (move % TimeIsAsked == 0)
            {
                double gone = Math.Max(spent(), (double)move / moves);
                if (gone >= 1 && move > 0)
                {
                    break;
                }

                heat = Hottest * Math.Pow(Coldest / Hottest, Math.Min(1, gone));
            }

            now = Try(now, heat);
            if (now > best && KeepsTime() && (!_hasPins || Missing() == 0))
            {
                (best, chosen) = (now, Choice());
            }
        }

        return chosen;
    }

    private bool KeepsTime()
    {
        foreach (int s in _stretches)
        {
            int seconds = 0;
            for (int i = 0; i < _counts[s]; i++)
            {
                seconds += _model.Options[_rows[s][i]].Seconds;
            }

            if (seconds > _model.Question.Stretches[s].Seconds)
            {
                return false;
            }
        }

        return true;
    }

    private int[] Choice()
    {
        int[] chosen = new int[_model.Slots.Length];
        Array.Fill(chosen, -1);
        foreach (int s in _stretches)
        {
            for (int i = 0; i < _counts[s]; i++)
            {
                chosen[_model.SlotAt(s, i, _counts[s])] = _rows[s][i];
            }
        }

        return chosen;
    }

    private int Try(int now, double heat)
    {
        int s = _stretches[_luck.Next(_stretches.Length)];
        int kind = _luck.Next(20);
        return kind switch
        {
            < 9 => Replace(s, now, heat),
            < 14 => Exchange(s, _stretches[_luck.Next(_stretches.Length)], now, heat),
            < 17 => Shift(s, now, heat),
            < 19 => PutIn(s, now, heat),
            _ => TakeOut(s, now, heat),
        };
    }

    private int Replace(int s, int now, double heat)
    {
        int place = _luck.Next(_counts[s]);
        int was = _rows[s][place];
        int next = Likely(s);
        if (next == was)
        {
            return now;
        }

        Mark(_model.Options[was], isIn: false);
        if (IsFree(_model.Options[next]))
        {
            _rows[s].AsSpan(0, _counts[s]).CopyTo(_first);
            _first[place] = next;
            if (Accept(s, _counts[s], -1, 0, now, heat) is { } found)
            {
                Mark(_model.Options[next], isIn: true);
                return found;
            }
        }

        Mark(_model.Options[was], isIn: true);
        return now;
    }

    private int Exchange(int s, int t, int now, double heat)
    {
        int a = _luck.Next(_counts[s]);
        int b = _luck.Next(_counts[t]);
        if (s == t && a == b)
        {
            return now;
        }

        _rows[s].AsSpan(0, _counts[s]).CopyTo(_first);
        if (s == t)
        {
            (_first[a], _first[b]) = (_first[b], _first[a]);
            return Accept(s, _counts[s], -1, 0, now, heat) ?? now;
        }

        _rows[t].AsSpan(0, _counts[t]).CopyTo(_second);
        (_first[a], _second[b]) = (_second[b], _first[a]);
        return Accept(s, _counts[s], t, _counts[t], now, heat) ?? now;
    }

    private int Shift(int s, int now, double heat)
    {
        int from = _luck.Next(_counts[s]);
        int to = _luck.Next(_counts[s]);
        if (from == to)
        {
            return now;
        }

        int moved = _rows[s][from];
        int place = 0;
        for (int i = 0; i < _counts[s]; i++)
        {
            if (i == to && from > to)
            {
                _first[place++] = moved;
            }

            if (i != from)
            {
                _first[place++] = _rows[s][i];
            }

            if (i == to && from < to)
            {
                _first[place++] = moved;
            }
        }

        return Accept(s, _counts[s], -1, 0, now, heat) ?? now;
    }

    private int PutIn(int s, int now, double heat)
    {
        int next = Likely(s);
        if (_counts[s] >= _model.Capacity[s] || !IsFree(_model.Options[next]))
        {
            return now;
        }

        int at = _luck.Next(_counts[s] + 1);
        for (int i = 0, place = 0; i <= _counts[s]; i++)
        {
            if (i == at)
            {
                _first[place++] = next;
            }

            if (i < _counts[s])
            {
                _first[place++] = _rows[s][i];
            }
        }

        if (Accept(s, _counts[s] + 1, -1, 0, now, heat) is not { } found)
        {
            return now;
        }

        Mark(_model.Options[next], isIn: true);
        return found;
    }

    private int TakeOut(int s, int now, double heat)
    {
        if (_counts[s] < 2)
        {
            return now;
        }

        int at = _luck.Next(_counts[s]);
        int gone = _rows[s][at];
        for (int i = 0, place = 0; i < _counts[s]; i++)
        {
            if (i != at)
            {
                _first[place++] = _rows[s][i];
            }
        }

        if (Accept(s, _counts[s] - 1, -1, 0, now, heat) is not { } found)
        {
            return now;
        }

        Mark(_model.Options[gone], isIn: false);
        return found;
    }

    private int Likely(int s)
    {
        // one of all, or, squared, one of the best
        double drawn = _luck.NextDouble();
        int[] likely = _likely[s];
        return likely[(int)(drawn * drawn * likely.Length)];
    }

    // Takes the rows that lie ready if they are better, or by luck; null leaves everything as it was.
    private int? Accept(int s, int count, int t, int other, int now, double heat)
    {
        int first = Worth(s, _first, count);
        int second = t < 0 ? 0 : Worth(t, _second, other);
        if (first == Broken || second == Broken)
        {
            return null;
        }

        (int[] Row, int Count, int Points) keptFirst = (_rows[s], _counts[s], _points[s]);
        int change = first - _points[s] + (t < 0 ? 0 : second - _points[t]);
        if (!_hasPins && change < 0 && _luck.NextDouble() >= Math.Exp(change / heat))
        {
            return null;
        }

        if (!_hasPins)
        {
            Take(s, _first, count, first);
            if (t >= 0)
            {
                Take(t, _second, other, second);
            }

            return now + change;
        }

        // decisions look at all rows at once
        int[] wasFirst = [.. keptFirst.Row.AsSpan(0, keptFirst.Count)];
        int[] wasSecond = t < 0 ? [] : [.. _rows[t].AsSpan(0, _counts[t])];
        int pointsSecond = t < 0 ? 0 : _points[t];
        Take(s, _first, count, first);
        if (t >= 0)
        {
            Take(t, _second, other, second);
        }

        int total = Total;
        if (total >= now || _luck.NextDouble() < Math.Exp((total - now) / heat))
        {
            return total;
        }

        Take(s, wasFirst, wasFirst.Length, keptFirst.Points);
        if (t >= 0)
        {
            Take(t, wasSecond, wasSecond.Length, pointsSecond);
        }

        return null;
    }

    private void Take(int s, int[] row, int count, int points)
    {
        Array.Copy(row, _rows[s], count);
        _counts[s] = count;
        _points[s] = points;
    }

    private bool IsFree(ProgrammeOption option)
        => !_played[option.Song] && !_danced[option.Dance] && !(option.IsSplit && _danced[option.Other]);

    private void Mark(ProgrammeOption option, bool isIn)
    {
        _played[option.Song] = isIn;
        _danced[option.Dance] = isIn;
        if (option.IsSplit)
        {
            _danced[option.Other] = isIn;
        }
    }

    // What a row is worth in a stretch; broken when it is too long, something may not stand where it does, or two that are alike are too near.
    private int Worth(int s, int[] row, int count)
    {
        int seconds = _model.Question.Stretches[s].Seconds;
        int points = 0;
        Array.Clear(_sitting);
        for (int i = 0; i < count; i++)
        {
            int slot = _model.SlotAt(s, i, count);
            if (!_model.MayStand(row[i], slot))
            {
                return Broken;
            }

            ProgrammeOption option = _model.Options[row[i]];
            bool isClosing = slot == _model.ClosingSlot;
            seconds -= option.Seconds;
            points += _model.PointsAt(row[i], slot);
            if (i > 0 && !isClosing)
            {
                ProgrammeOption before = _model.Options[row[i - 1]];
                points -= _model.DifficultyCost(before.Difficulty, option.Difficulty) + _model.TempoCost(before.Tempo, option.Tempo);
            }

            for (int g = 0; g < _sitting.Length && !isClosing; g++)
            {
                _sitting[g] = (option.Dancing >> _model.Groups[g] & 1) == 1 ? 0 : _sitting[g] + 1;
                points -= _sitting[g] > _model.Rules.MostSatOut ? _model.Rules.SatOut : 0;
            }

            if ((_alike[option.Dance].Length > 0 || option.IsSplit) && IsAlikeBefore(row, isClosing ? 0 : Math.Max(0, i - _model.Rules.LikeApart), i, option))
            {
                return Broken;
            }
        }

        // a little too long is let pass while the search goes on, or a full stretch could hardly change
        return points - (seconds < 0 ? -seconds * TooLong : _model.EmptyCost(seconds));
    }

    private bool IsAlikeBefore(int[] row, int from, int at, ProgrammeOption option)
    {
        for (int i = from; i < at; i++)
        {
            ProgrammeOption before = _model.Options[row[i]];
            if (IsAlike(option.Dance, before) || (option.IsSplit && IsAlike(option.Other, before)))
            {
                return true;
            }
        }

        return false;
    }

    private bool IsAlike(int dance, ProgrammeOption option)
        => Array.IndexOf(_alike[dance], option.Dance) >= 0 || (option.IsSplit && Array.IndexOf(_alike[dance], option.Other) >= 0);

    // How many of her decisions do not hold as the rows stand.
    private int Missing()
    {
        Array.Fill(_slotOf, -1);
        foreach (int s in _stretches)
        {
            for (int i = 0; i < _counts[s]; i++)
            {
                ProgrammeOption option = _model.Options[_rows[s][i]];
                int slot = _model.SlotAt(s, i, _counts[s]);
                _slotOf[option.Dance] = slot;
                if (option.IsSplit)
                {
                    _slotOf[option.Other] = slot;
                }
            }
        }

        int missing = 0;
        foreach ((int dance, int slot) in _model.PinnedAt)
        {
            missing += _slotOf[dance] == slot ? 0 : 1;
        }

        foreach ((int dance, int stretch) in _model.PinnedWithin)
        {
            missing += _slotOf[dance] >= 0 && _model.Slots[_slotOf[dance]].Stretch == stretch ? 0 : 1;
        }

        foreach (int dance in _model.PinnedSomewhere)
        {
            missing += _slotOf[dance] >= 0 ? 0 : 1;
        }

        foreach ((int one, int other) in _model.PinnedSplits)
        {
            missing += _slotOf[one] >= 0 && _slotOf[one] == _slotOf[other] ? 0 : 1;
        }

        foreach ((int before, int after) in _model.PinnedBefore)
        {
            missing += _slotOf[before] < 0 || _slotOf[after] < 0 || _slotOf[before] < _slotOf[after] ? 0 : 1;
        }

        return missing;
    }
}
