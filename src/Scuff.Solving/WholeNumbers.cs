using Google.OrTools.LinearSolver;
using Google.OrTools.Sat;

namespace Scuff.Solving;

/// <summary>
/// A question in linear equations over whole numbers from 0 on, to be made as large as can be. It is put together once and handed to two solvers: as it is to
/// CP-SAT, and with fractions allowed to the simplex method, which says at once what cannot be exceeded and which variables cannot be part of anything better.
/// </summary>
internal sealed class WholeNumbers
{
    private readonly List<int> _highest = [];
    private readonly List<int> _gain = [];
    private readonly List<WholeNumberRow> _rows = [];

    /// <summary>How many variables there are.</summary>
    public int Count => _gain.Count;

    /// <summary>Adds a variable between 0 and a bound, and says what each unit of it brings.</summary>
    public int Add(int gain, int highest = 1)
    {
        _gain.Add(gain);
        _highest.Add(highest);
        return _gain.Count - 1;
    }

    /// <summary>The sum lies between the bounds.</summary>
    public void Between(long low, long high, IEnumerable<int> variables)
    {
        int[] all = [.. variables];
        if (all.Length > 0 || low > 0)
        {
            _rows.Add(new WholeNumberRow(low, high, all, null));
        }
    }

    /// <summary>The sum, each term with its factor, lies between the bounds. A variable may come more than once.</summary>
    public void Between(long low, long high, IEnumerable<(int Variable, long Factor)> terms)
    {
        (int Variable, long Factor)[] all = [.. terms.GroupBy(t => t.Variable).Select(g => (g.Key, g.Sum(t => t.Factor))).Where(t => t.Item2 != 0)];
        _rows.Add(new WholeNumberRow(low, high, [.. all.Select(t => t.Variable)], [.. all.Select(t => t.Factor)]));
    }

    /// <summary>
    /// With fractions allowed: what cannot be exceeded, and for each variable what is lost at least by each unit of it. Null when there is no answer at all or
    /// the time is over.
    /// </summary>
    public (double Bound, double[] Loss)? Relaxed(double seconds)
    {
        using Solver solver = Solver.CreateSolver("GLOP");
        solver.SetTimeLimit((long)(seconds * 1000));
        Objective objective = solver.Objective();
        objective.SetMaximization();
        Variable[] variables = new Variable[Count];
        for (int v = 0; v < variables.Length; v++)
        {
            variables[v] = solver.MakeNumVar(0, _highest[v], "");
            objective.SetCoefficient(variables[v], _gain[v]);
        }

        foreach (WholeNumberRow row in _rows)
        {
            Google.OrTools.LinearSolver.Constraint made = solver.MakeConstraint(
                row.Low == long.MinValue ? double.NegativeInfinity : row.Low,
                row.High == long.MaxValue ? double.PositiveInfinity : row.High);
            for (int i = 0; i < row.Variables.Length; i++)
            {
                made.SetCoefficient(variables[row.Variables[i]], row.Factors?[i] ?? 1);
            }
        }

        return solver.Solve() == Solver.ResultStatus.OPTIMAL
            ? (objective.Value(), [.. variables.Select(v => Math.Max(0, -v.ReducedCost()))])
            : null;
    }

    /// <summary>The question for CP-SAT, all variables that are not kept being 0.</summary>
    /// <param name="isKept">Which variables are kept.</param>
    /// <param name="hint">Where to begin: a value for each variable, or null.</param>
    public (CpModel Model, IntVar?[] Variables) Exact(Func<int, bool> isKept, int[]? hint)
    {
        CpModel model = new();
        IntVar?[] variables = new IntVar?[Count];
        LinearExprBuilder gain = Google.OrTools.Sat.LinearExpr.NewBuilder();
        for (int v = 0; v < variables.Length; v++)
        {
            if (!isKept(v))
            {
                continue;
            }

            IntVar made = _highest[v] == 1 ? model.NewBoolVar("") : model.NewIntVar(0, _highest[v], "");
            variables[v] = made;
            gain.AddTerm(made, _gain[v]);
            if (hint is not null)
            {
                model.AddHint(made, hint[v]);
            }
        }

        foreach (WholeNumberRow row in _rows)
        {
            int[] kept = [.. Enumerable.Range(0, row.Variables.Length).Where(i => variables[row.Variables[i]] is not null)];
            bool isPlain = row.Factors is null && kept.All(i => _highest[row.Variables[i]] == 1);
            IEnumerable<ILiteral> literals = kept.Select(i => (ILiteral)variables[row.Variables[i]]!);
            if (isPlain && row is { Low: 1, High: 1 })
            {
                model.AddExactlyOne(literals);
            }
            else if (isPlain && row is { Low: <= 0, High: 1 })
            {
                model.AddAtMostOne(literals);
            }
            else
            {
                LinearExprBuilder sum = Google.OrTools.Sat.LinearExpr.NewBuilder();
                foreach (int i in kept)
                {
                    sum.AddTerm(variables[row.Variables[i]]!, row.Factors?[i] ?? 1);
                }

                model.AddLinearConstraint(sum, row.Low, row.High);
            }
        }

        model.Maximize(gain);
        return (model, variables);
    }
}
