using System.Globalization;
using Google.OrTools.Sat;
using Scuff.Analysis.Planning;

namespace Scuff.Solving;

/// <summary>
/// Finds the programme that is worth most, with proof or with a bound, by the solvers of OR-Tools. Our own search (<see cref="ProgrammeSearch"/>) finds a good
/// programme first; meanwhile the simplex method, fractions allowed, gives a bound, and for every dance at every place what is lost by it at least. What loses more
/// than the bound lies above the programme found cannot be in a better one. Then CP-SAT decides exactly: among all that is left, or, where that is too much for the
/// time, among the few that lose least, and the bound says how far from the best that can be.
/// </summary>
public sealed class ExactProgrammeSolver : IProgrammeSolver
{
    // the share of the time for the first programme and the bound
    private const double FirstShare = 0.25;

    // so many variables CP-SAT settles in seconds; of more than that, so many dances at places are looked at
    private const int Settled = 6_000;
    private const int Few = 700;

    // the simplex method reckons with fractions of this order
    private const double Rounding = 1e-6;

    /// <summary>Workers of the solver at once: the two cores of a small laptop.</summary>
    public int Workers { get; init; } = 2;

    /// <summary>Told what each step took and found, for measuring; null for nobody.</summary>
    internal Action<string>? Tell { get; init; }

    /// <inheritdoc/>
    public Programme Solve(ProgrammeQuestion question, double seconds, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(question);
        try
        {
            return Proven(question, seconds, stop);
        }
        catch (Exception e) when (IsMissing(e) || (e is AggregateException many && many.InnerExceptions.All(IsMissing)))
        {
            // OR-Tools has no native library for every machine; a programme without proof is better than none
            return new ProgrammeSearch().Solve(question, seconds, stop);
        }
    }

    private static bool IsMissing(Exception e)
        => e is DllNotFoundException or BadImageFormatException or EntryPointNotFoundException || (e is TypeInitializationException { InnerException: { } inner } && IsMissing(inner));

    private Programme Proven(ProgrammeQuestion question, double seconds, CancellationToken stop)
    {
        Budget budget = new(seconds, stop);
        HashSet<int> letGo = [];
        while (true)
        {
            ProgrammeModel model = new(question, letGo);
            if (model.Slots.Length > 0 && Best(model, budget) is { } best)
            {
                return ProgrammeWriting.Write(model, best.Chosen, best.Bound);
            }

            // her decisions cannot hold together: the one made last is let go
            if (model.Slots.Length == 0 || ProgrammeSearch.LastDecision(question, letGo) is not { } last)
            {
                return ProgrammeSearch.Nothing(model);
            }

            letGo.Add(last);
        }
    }

    // Null when nothing can hold, or nothing was found in the time.
    private (int[] Chosen, int Bound)? Best(ProgrammeModel model, Budget budget)
    {
        ProgrammeEquations equations = new(model);
        double begins = budget.Spent;
        double first = budget.Share(FirstShare);
        (double Bound, double[] Loss)? relaxed = null;
        int[]? chosen = null;
        Parallel.Invoke(
            () => relaxed = equations.Numbers.Relaxed(budget.Share(1 - FirstShare)),
            () => chosen = ProgrammeSearch.Find(model, ProgrammeAnnealing.MovesFor(model), ProgrammeSearch.Rounds, () => budget.Stop.IsCancellationRequested ? 1 : (budget.Spent - begins) / first));
        int points = chosen is null ? int.MinValue : ProgrammeScore.Of(model, chosen)!.Value;
        int bound = relaxed is { } r ? (int)Math.Floor(r.Bound + Rounding) : ProgrammeSearch.BoundOf(model);
        Tell?.Invoke(string.Create(CultureInfo.InvariantCulture, $"{budget.Spent:F2} s: search {points}, bound {bound}"));
        if (points >= bound)
        {
            return (chosen!, bound);
        }

        // what loses more than this can be in no better programme
        double most = relaxed is null || chosen is null ? double.PositiveInfinity : relaxed.Value.Bound - points - 1 + Rounding;
        double[] loss = relaxed?.Loss ?? new double[equations.Numbers.Count];
        bool isAll = loss.Count(l => l <= most) <= Settled || relaxed is null;
        double kept = isAll ? most : Math.Min(most, FewestLoss(equations, loss));
        if (Decide(equations, loss, kept, chosen, budget) is { } found)
        {
            int better = ProgrammeScore.Of(model, found.Chosen)!.Value;
            (chosen, points) = better > points ? (found.Chosen, better) : (chosen, points);

            // whatever was left out loses more than what was kept, or than any better programme may
            int beyond = isAll ? points : (int)Math.Floor(relaxed!.Value.Bound - kept + Rounding);
            bound = Math.Min(bound, Math.Max(Math.Max(found.Bound, points), beyond));
            Tell?.Invoke(string.Create(CultureInfo.InvariantCulture, $"{budget.Spent:F2} s: {(isAll ? "all" : "few")} {better} of {found.Bound}, losing up to {kept:F1}"));
        }

        return chosen is null ? null : (chosen, bound);
    }

    // The loss up to which about so many remain.
    private static double FewestLoss(ProgrammeEquations equations, double[] loss)
    {
        double[] dances = [.. Enumerable.Range(0, equations.Choices).Where(equations.IsDance).Select(v => loss[v]).Order()];
        return dances.Length <= Few ? double.PositiveInfinity : dances[Few];
    }

    private (int[] Chosen, int Bound)? Decide(ProgrammeEquations equations, double[] loss, double most, int[]? first, Budget budget)
    {
        HashSet<int> ones = first is null ? [] : equations.Ones(first);
        (CpModel model, IntVar?[] variables) = equations.Numbers.Exact(v => loss[v] <= most || ones.Contains(v) || v >= equations.Choices, hint: null);
        for (int v = 0; first is not null && v < equations.Choices; v++)
        {
            if (variables[v] is { } variable)
            {
                model.AddHint(variable, ones.Contains(v) ? 1 : 0);
            }
        }

        CpSolver solver = new()
        {
            StringParameters = string.Create(
                CultureInfo.InvariantCulture,
                $"num_workers:{Workers} random_seed:7 max_time_in_seconds:{budget.Share(1):0.###} linearization_level:2 cp_model_probing_level:1 symmetry_level:0"),
        };
        using CancellationTokenRegistration ending = budget.Stop.Register(solver.StopSearch);
        CpSolverStatus status = solver.Solve(model);
        return status is CpSolverStatus.Optimal or CpSolverStatus.Feasible
            ? (equations.Chosen(v => variables[v] is { } variable && solver.Value(variable) > 0), (int)Math.Floor(solver.BestObjectiveBound + 1e-6))
            : null;
    }

    /// <summary>The time there is.</summary>
    private sealed class Budget(double seconds, CancellationToken stop)
    {
        // a solver that is given no time at all gives no answer
        private const double Least = 0.05;

        private readonly long _began = Environment.TickCount64;

        public CancellationToken Stop => stop;

        public double Spent => (Environment.TickCount64 - _began) / 1000.0;

        public double Share(double share) => Math.Max(Least, (seconds - Spent) * share);
    }
}
