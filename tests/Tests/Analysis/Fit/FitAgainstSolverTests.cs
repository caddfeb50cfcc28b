using Google.OrTools.Sat;
using Scuff.Analysis.Fit;

namespace Tests.Analysis.Fit;

/// <summary>
/// The same optimum as a solver of another making finds: Google OR-Tools CP-SAT 9.15 (Apache-2.0). A plan is written as a flow of one unit through the
/// places of music, dance and acts left; a kind is paid for when any arc of it is used.
/// </summary>
public sealed class FitAgainstSolverTests
{
    [Fact]
    public void The_solver_finds_the_same_optimum()
    {
        Random dice = new(11);
        int withKinds = 0;
        for (int i = 0; i < 40; i++)
        {
            FitModel model = SmallFits.Make(dice);
            FitSolution best = new FitSearch(model).Solve(3)[^1];

            Assert.Equal(Solved(model, 3), best.Price);

            withKinds += best.Acts > 0 ? 1 : 0;
        }

        Assert.True(withKinds > 5, $"{withKinds} cases with acts");
    }

    private static long Solved(FitModel model, int acts)
    {
        CpModel solver = new();
        Dictionary<(int, int, int, int), List<BoolVar>> into = [];
        Dictionary<(int, int, int, int), List<BoolVar>> outOf = [];
        Dictionary<int, BoolVar> kinds = [];
        List<(BoolVar Arc, int Price)> prices = [];
        List<BoolVar> begins = [];
        List<BoolVar> ends = [];
        foreach (FitStart start in model.Starts)
        {
            for (int part = 0; part < model.Parts.Count; part++)
            {
                if (model.CanBeFirst[part])
                {
                    BoolVar arc = Arc(start.Price + model.Begin[part][start.Count]);
                    begins.Add(arc);
                    Get(into, (start.Count, part, 0, acts)).Add(arc);
                }
            }
        }

        for (int at = 0; at <= model.Counts; at++)
        {
            for (int part = 0; part < model.Parts.Count; part++)
            {
                for (int count = 0; count <= model.Parts[part].Length; count++)
                {
                    for (int left = 0; left <= acts; left++)
                    {
                        Leave((at, part, count, left));
                    }
                }
            }
        }

        solver.AddExactlyOne(begins);
        solver.AddExactlyOne(ends);
        foreach ((int, int, int, int) node in into.Keys.Union(outOf.Keys).ToArray())
        {
            solver.Add(LinearExpr.Sum(Get(into, node)) == LinearExpr.Sum(Get(outOf, node)));
        }

        solver.Minimize(LinearExpr.WeightedSum(
            prices.Select(p => p.Arc).Concat(kinds.Values),
            prices.Select(p => (long)p.Price).Concat(kinds.Values.Select(_ => (long)model.NewKind))));
        CpSolver run = new() { StringParameters = "num_workers:1 random_seed:7" };
        Assert.Equal(CpSolverStatus.Optimal, run.Solve(solver));
        return (long)Math.Round(run.ObjectiveValue);

        void Leave((int At, int Part, int Count, int Left) node)
        {
            (int at, int part, int count, int left) = node;
            if (at == model.Counts)
            {
                BoolVar end = Arc(model.End(part, count));
                ends.Add(end);
                Get(outOf, node).Add(end);
                return;
            }

            if (count < model.Parts[part].Length)
            {
                Add(node, (at + 1, part, count + 1, left), model.Run(at, part, count));
            }
            else
            {
                for (int next = 0; next < model.Parts.Count; next++)
                {
                    if (model.Parts[part].CanFollow[next])
                    {
                        Add(node, (at, next, 0, left), model.Begin[next][at]);
                    }
                }
            }

            foreach (FitAct act in model.Parts[part].Acts[count].Where(a => left > 0 && at + a.Length <= model.Counts))
            {
                bool isRestart = act.Type == FitActType.Restart;
                (int, int, int, int) to = isRestart ? (at, act.Next, 0, left - 1) : (at + act.Length, part, count, left - 1);
                BoolVar arc = Add(node, to, model.Act(at, act) + (isRestart ? model.Begin[act.Next][at] : 0));
                if (!kinds.TryGetValue(act.Kind, out BoolVar? kind))
                {
                    kinds.Add(act.Kind, kind = solver.NewBoolVar($"kind {act.Kind}"));
                }

                solver.AddImplication(arc, kind);
            }
        }

        BoolVar Add((int, int, int, int) from, (int, int, int, int) to, int price)
        {
            BoolVar arc = Arc(price);
            Get(outOf, from).Add(arc);
            Get(into, to).Add(arc);
            return arc;
        }

        BoolVar Arc(int price)
        {
            BoolVar arc = solver.NewBoolVar("");
            prices.Add((arc, price));
            return arc;
        }

        static List<BoolVar> Get(Dictionary<(int, int, int, int), List<BoolVar>> of, (int, int, int, int) node)
        {
            if (!of.TryGetValue(node, out List<BoolVar>? arcs))
            {
                of.Add(node, arcs = []);
            }

            return arcs;
        }
    }
}
