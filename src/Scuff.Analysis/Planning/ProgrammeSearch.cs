namespace Scuff.Analysis.Planning;

/// <summary>
/// Finds a good programme quickly, without proof, by simulated annealing: dances are replaced, exchanged, moved, put in and taken out at random; what makes the
/// programme worse is kept ever more seldom. It gives the exact solver its first programme, and stands alone where that one cannot run. The same question gets the
/// same programme, as long as the time is not what ends it. Source of the method: Kirkpatrick, Gelatt and Vecchi, Optimization by Simulated Annealing, Science 220
/// (1983); the cooling is ours, by trial on drawn evenings.
/// </summary>
public sealed class ProgrammeSearch : IProgrammeSolver
{
    // runs at once, each with luck of its own: the two cores of a small laptop
    private const int Runs = 2;

    /// <summary>How often a search is begun anew; one run in four or so gets stuck in something good that is not the best.</summary>
    internal const int Rounds = 4;

    /// <inheritdoc/>
    public Programme Solve(ProgrammeQuestion question, double seconds, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(question);
        long began = Environment.TickCount64;
        double Spent() => stop.IsCancellationRequested ? 1 : (Environment.TickCount64 - began) / Math.Max(1, seconds * 1000);
        HashSet<int> letGo = [];
        while (true)
        {
            ProgrammeModel model = new(question, letGo);
            if (model.Slots.Length > 0 && Find(model, ProgrammeAnnealing.MovesFor(model), Rounds, Spent) is { } chosen)
            {
                return ProgrammeWriting.Write(model, chosen, BoundOf(model));
            }

            // without proof nobody knows whether decisions can hold together: the ones made last go first
            if (model.Slots.Length == 0 || LastDecision(question, letGo) is not { } last)
            {
                return Nothing(model);
            }

            letGo.Add(last);
        }
    }

    /// <summary>A programme without a dance.</summary>
    internal static Programme Nothing(ProgrammeModel model)
        => model.Slots.Length == 0
            ? ProgrammeWriting.Write(model, [], 0)
            : new Programme { Items = [], Points = 0, Bound = 0, Missed = [.. model.Missed] };

    /// <summary>The decision made last that is not let go yet; null when only what she forbade is left.</summary>
    internal static int? LastDecision(ProgrammeQuestion question, HashSet<int> letGo)
    {
        for (int i = question.Pins.Count - 1; i >= 0; i--)
        {
            if (question.Pins[i] is not (ProgrammePin.Never or ProgrammePin.Song) && !letGo.Contains(i))
            {
                return i;
            }
        }

        return null;
    }

    /// <summary>A good choice; null when none was found that holds.</summary>
    /// <param name="model">The question.</param>
    /// <param name="moves">How much each run tries.</param>
    /// <param name="rounds">How often it is begun anew, each time with other luck.</param>
    /// <param name="spent">What part of the time is spent, from 0 to 1.</param>
    internal static int[]? Find(ProgrammeModel model, int moves, int rounds, Func<double> spent)
    {
        List<int[]> found = [];
        for (int round = 0; round < rounds && (round == 0 || spent() < 1); round++)
        {
            // each round has its part of the time, so that the first is not all there is
            double begun = spent();
            double part = (1 - begun) / (rounds - round);
            int[]?[] runs = new int[Runs][];
            int first = round * Runs;
            Parallel.For(0, Runs, run => runs[run] = ProgrammeAnnealing.Run(model, first + run, moves, () => part <= 0 ? 1 : (spent() - begun) / part));
            found.AddRange(runs.OfType<int[]>());
        }

        return found.MaxBy(f => ProgrammeScore.Of(model, f));
    }

    /// <summary>
    /// What no programme can exceed, roughly: in each place the best that may stand there, each dance wherever it brings most. Far above what can be reached, and
    /// said so.
    /// </summary>
    internal static int BoundOf(ProgrammeModel model)
    {
        int bound = 0;
        for (int slot = 0; slot < model.Slots.Length; slot++)
        {
            int best = 0;
            for (int o = 0; o < model.Options.Length; o++)
            {
                best = model.MayStand(o, slot) ? Math.Max(best, model.PointsAt(o, slot)) : best;
            }

            bound += best;
        }

        return bound;
    }
}
