using Scuff.Analysis.Planning;

namespace Scuff.Solving;

/// <summary>
/// A question as linear equations over yes and no. What follows what is written as a flow of the degrees of difficulty and of tempo from place to place: its
/// relaxation is as tight as it can be for each, which is what makes proofs quick.
/// </summary>
internal sealed class ProgrammeEquations
{
    private const int Degrees = 3;
    private const int None = -1;

    private readonly ProgrammeModel _model;
    private readonly int[,] _stands;
    private readonly int[] _used;

    /// <summary>Puts a question into equations.</summary>
    public ProgrammeEquations(ProgrammeModel model)
    {
        _model = model;
        _stands = new int[model.Options.Length, model.Slots.Length];
        _used = new int[model.Slots.Length];
        Seat();
        Choices = Numbers.Count;
        ComeOnce();
        KeepTime();
        KeepApart();
        KeepPins();
        Change(o => o.Difficulty, model.DifficultyCost);
        Change(o => o.Tempo, model.TempoCost);
        SitOut();
    }

    /// <summary>The equations.</summary>
    public WholeNumbers Numbers { get; } = new();

    /// <summary>Variables before this one say what stands where; those after follow from them.</summary>
    public int Choices { get; }

    /// <summary>What was chosen: for each place the option, or -1.</summary>
    /// <param name="isOne">Whether a variable is 1.</param>
    public int[] Chosen(Func<int, bool> isOne)
    {
        int[] chosen = new int[_used.Length];
        for (int slot = 0; slot < chosen.Length; slot++)
        {
            chosen[slot] = -1;
            for (int o = 0; o < _model.Options.Length; o++)
            {
                if (_stands[o, slot] != None && isOne(_stands[o, slot]))
                {
                    chosen[slot] = o;
                }
            }
        }

        return chosen;
    }

    /// <summary>The variables that are 1 in a choice, of those that say what stands where.</summary>
    public HashSet<int> Ones(int[] chosen)
        => [.. Enumerable.Range(0, chosen.Length).Where(s => chosen[s] >= 0).SelectMany(s => new[] { _used[s], _stands[chosen[s], s] })];

    /// <summary>Whether a variable says that a dance stands somewhere, not that a place is in use.</summary>
    public bool IsDance(int variable) => variable < Choices && !_used.Contains(variable);

    private void Seat()
    {
        for (int slot = 0; slot < _used.Length; slot++)
        {
            _used[slot] = Numbers.Add(0);
            List<(int, long)> here = [];
            for (int o = 0; o < _model.Options.Length; o++)
            {
                _stands[o, slot] = _model.MayStand(o, slot) ? Numbers.Add(_model.PointsAt(o, slot)) : None;
                if (_stands[o, slot] != None)
                {
                    here.Add((_stands[o, slot], 1));
                }
            }

            if (_model.MustBeUsed(slot))
            {
                Numbers.Between(1, 1, [_used[slot]]);
                Numbers.Between(1, 1, here.Select(h => h.Item1));
                continue;
            }

            Numbers.Between(0, 0, [.. here, (_used[slot], -1)]);
            if (_model.Slots[slot].Place > 0)
            {
                Numbers.Between(0, 1, [(_used[slot - 1], 1), (_used[slot], -1)]);
            }
        }
    }

    private IEnumerable<int> Standing(IEnumerable<int> options, int from, int to)
    {
        foreach (int o in options)
        {
            for (int slot = from; slot < to; slot++)
            {
                if (_stands[o, slot] != None)
                {
                    yield return _stands[o, slot];
                }
            }
        }
    }

    private void ComeOnce()
    {
        foreach (int[] options in _model.OptionsOf.Where(o => o.Length > 0))
        {
            Numbers.Between(0, 1, Standing(options, 0, _used.Length));
        }

        foreach (IGrouping<int, int> song in Enumerable.Range(0, _model.Options.Length).GroupBy(o => _model.Options[o].Song))
        {
            // one dance alone cannot play its song twice
            if (song.Select(o => _model.Options[o].Dance).Distinct().Skip(1).Any())
            {
                Numbers.Between(0, 1, Standing(song, 0, _used.Length));
            }
        }
    }

    private void KeepTime()
    {
        for (int s = 0; s < _model.Capacity.Length; s++)
        {
            if (_model.Capacity[s] == 0)
            {
                continue;
            }

            int seconds = _model.Question.Stretches[s].Seconds;
            (int Variable, long Factor)[] time =
            [
                .. Enumerable.Range(0, _model.Options.Length)
                    .SelectMany(o => Standing([o], _model.FirstSlot[s], _model.FirstSlot[s + 1]).Select(v => (v, (long)_model.Options[o].Seconds))),
            ];
            Numbers.Between(long.MinValue, seconds, time);

            // rounded down, as the score does: the least whole number of points that is no less than the cost of all but a last part of a point
            long rule = _model.Rules.EmptyMinute;
            if (rule > 0)
            {
                int empty = Numbers.Add(-1, Math.Max(1, _model.EmptyCost(seconds)));
                Numbers.Between((seconds * rule) - 59, long.MaxValue, [(empty, 60L), .. time.Select(t => (t.Variable, t.Factor * rule))]);
            }
        }
    }

    private void KeepApart()
    {
        foreach ((int one, int other) in _model.Alike)
        {
            int[] options = [.. _model.OptionsOf[one].Concat(_model.OptionsOf[other]).Distinct()];
            for (int s = 0; s < _model.Capacity.Length; s++)
            {
                int end = _model.FirstSlot[s + 1];
                for (int slot = _model.FirstSlot[s]; slot < end; slot++)
                {
                    int to = Math.Min(end, slot + _model.Rules.LikeApart + 1);
                    Numbers.Between(0, 1, Standing(options, slot, to));
                    if (to == end)
                    {
                        break;
                    }
                }
            }

            // the closing has nothing like it in the whole of its stretch
            int closing = _model.ClosingSlot;
            for (int slot = _model.FirstSlot[_model.LastDanced]; slot < closing; slot++)
            {
                Numbers.Between(0, 1, Standing(options, slot, slot + 1).Concat(Standing(options, closing, closing + 1)));
            }
        }
    }

    private void KeepPins()
    {
        foreach ((int dance, int slot) in _model.PinnedAt)
        {
            Numbers.Between(1, 1, Standing(_model.OptionsOf[dance], slot, slot + 1));
        }

        foreach ((int dance, int stretch) in _model.PinnedWithin)
        {
            Numbers.Between(1, 1, Standing(_model.OptionsOf[dance], _model.FirstSlot[stretch], _model.FirstSlot[stretch + 1]));
        }

        foreach (int dance in _model.PinnedSomewhere)
        {
            Numbers.Between(1, 1, Standing(_model.OptionsOf[dance], 0, _used.Length));
        }

        foreach ((int one, int other) in _model.PinnedSplits)
        {
            Numbers.Between(1, 1, Standing(_model.OptionsOf[one].Intersect(_model.OptionsOf[other]), 0, _used.Length));
        }

        foreach ((int first, int second) in _model.PinnedBefore)
        {
            for (int slot = 0; slot < _used.Length; slot++)
            {
                Numbers.Between(0, 1, Standing(_model.OptionsOf[second], 0, slot + 1).Concat(Standing(_model.OptionsOf[first], slot, _used.Length)).Distinct());
            }
        }
    }

    private void Change(Func<ProgrammeOption, int> degreeOf, Func<int, int, int> cost)
    {
        int[][] of = [.. Enumerable.Range(0, Degrees).Select(c => Enumerable.Range(0, _model.Options.Length).Where(o => degreeOf(_model.Options[o]) == c).ToArray())];
        for (int slot = 0; slot + 1 < _used.Length; slot++)
        {
            if (_model.Slots[slot + 1].Stretch != _model.Slots[slot].Stretch || _model.Slots[slot + 1].IsClosing)
            {
                continue;
            }

            // the last column is the end of the stretch
            int[,] flow = new int[Degrees, Degrees + 1];
            for (int a = 0; a < Degrees; a++)
            {
                for (int b = 0; b <= Degrees; b++)
                {
                    flow[a, b] = Numbers.Add(b < Degrees ? -cost(a, b) : 0);
                }
            }

            for (int a = 0; a < Degrees; a++)
            {
                Numbers.Between(0, 0, [.. Standing(of[a], slot, slot + 1).Select(v => (v, -1L)), .. Enumerable.Range(0, Degrees + 1).Select(b => (flow[a, b], 1L))]);
                Numbers.Between(0, 0, [.. Standing(of[a], slot + 1, slot + 2).Select(v => (v, -1L)), .. Enumerable.Range(0, Degrees).Select(b => (flow[b, a], 1L))]);
            }
        }
    }

    private void SitOut()
    {
        if (_model.Rules.SatOut <= 0)
        {
            return;
        }

        foreach (int group in _model.Groups)
        {
            int[] dancing = [.. Enumerable.Range(0, _model.Options.Length).Where(o => (_model.Options[o].Dancing >> group & 1) == 1)];
            for (int slot = 0; slot < _used.Length; slot++)
            {
                if (_model.Slots[slot].Place < _model.Rules.MostSatOut || _model.Slots[slot].IsClosing)
                {
                    continue;
                }

                int sits = Numbers.Add(-_model.Rules.SatOut);
                Numbers.Between(0, long.MaxValue, [.. Standing(dancing, slot - _model.Rules.MostSatOut, slot + 1).Select(v => (v, 1L)), (sits, 1), (_used[slot], -1)]);
            }
        }
    }
}
