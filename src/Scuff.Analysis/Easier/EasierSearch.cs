using Scuff.Analysis.Floor;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Analysis.Easier;

/// <summary>
/// Finds the rows of blocks that fill a window, cheapest first, exactly: what weight, facing and words cost from every place on is
/// reckoned backwards first (nothing can be cheaper), so that the search looks only where the floor still decides (A*: Hart, Nilsson,
/// Raphael 1968, "A formal basis for the heuristic determination of minimum cost paths"). The same question always gets the same answers.
/// </summary>
internal sealed class EasierSearch
{
    // Points (design values). Whoever dances the easier way wants to be where the others are on every count: on the same foot, facing
    // the same way, in the same place.
    private const int OtherWeight = 5;
    private const int OtherFacing = 2;
    private const double OfBodyMetre = 12;
    private const double OfFootMetre = 6;

    // where the feet of the others rest too, to hold is as good as anything
    private const int RestTogether = 2;

    // More than a step may bring nearer in a count, in metres: the longest of the floor's proportions, both feet.
    private const double MostInCount = 0.7;

    // A row that is that much beyond what has been looked at is of no use to anybody: the search gives up there.
    private const int MostLooks = 20000;
    private const int Never = int.MaxValue / 2;
    private const int Eighths = 8;
    private const int Weights = 4;

    private readonly EasierWindow _window;
    private readonly Dancer _start;
    private readonly Moment[] _original;
    private readonly bool _feetMatter;
    private readonly ValueList<EasierBlock> _blocks;
    private readonly Step[]?[] _steps;
    private readonly int[] _rest;

    public EasierSearch(EasierWindow window, Dancer start, ValueList<EasierBlock> blocks, Moment[] original, bool feetMatter)
    {
        _window = window;
        _start = start;
        _blocks = blocks;
        _original = original;
        _feetMatter = feetMatter;
        _steps = new Step[]?[(window.Length + 1) * Weights * Eighths];
        _rest = new int[(window.Length + 1) * Weights * Eighths];
        Reckon();
    }

    /// <summary>Rows of blocks that end where the original ends, cheapest first.</summary>
    public IEnumerable<(ValueList<EasierBlock> Row, int Points, double Away)> Run()
    {
        PriorityQueue<Node, (int Points, int Order)> open = new();
        int order = 0;
        int looks = 0;
        Node root = new(null, null, 0, _window.Before, 0, 0) { Dancer = _start };
        Push(root);
        while (open.TryDequeue(out Node? node, out (int Points, int Order) rank) && looks < MostLooks)
        {
            if (node.Dancer is null)
            {
                Dance(node);
                looks++;
                if (node.Points + Rest(node) > rank.Points)
                {
                    Push(node);
                    continue;
                }
            }

            if (node.Count == _window.Length)
            {
                Moment end = Moment.Of(node.Dancer!);
                double away = (end.Body - _original[^1].Body).Length;
                if (away <= EasierFinder.MostAway && (!_feetMatter || end.StandsLike(_original[^1])))
                {
                    yield return (RowOf(node), node.Points, away);
                }

                continue;
            }

            if ((Moment.Of(node.Dancer!).Body - _original[^1].Body).Length > EasierFinder.MostAway + (MostInCount * (_window.Length - node.Count)))
            {
                continue;
            }

            foreach (Step step in _steps[Index(node.Count, node.Weight, node.Turned)]!)
            {
                Push(new Node(node, step.Block, node.Count + step.Block.Length, step.Weight, step.Turned, node.Points + step.Points));
            }
        }

        void Push(Node node)
        {
            int rest = Rest(node);
            if (rest < Never)
            {
                open.Enqueue(node, (node.Points + rest, order++));
            }
        }
    }

    private static ValueList<EasierBlock> RowOf(Node node)
    {
        List<EasierBlock> row = [];
        for (Node? at = node; at?.Block is not null; at = at.Parent)
        {
            row.Add(at.Block);
        }

        row.Reverse();
        return row.ToValueList();
    }

    private static int Index(int count, Weight weight, int turned) => (((count * Weights) + (int)weight) * Eighths) + turned;

    private int Rest(Node node) => _rest[Index(node.Count, node.Weight, node.Turned)];

    // From the end: what the rest costs at least, and which steps lead on from each place.
    private void Reckon()
    {
        Array.Fill(_rest, Never);
        Moment end = _original[^1];
        _rest[Index(_window.Length, _window.After, end.Turned)] = 0;
        Dictionary<(EasierBlock, Weight), (Weight Weight, int Eighths)[]?> after = new(ReferenceComparer.Instance);
        for (int count = _window.Length - 1; count >= 0; count--)
        {
            foreach (Weight weight in (ReadOnlySpan<Weight>)[Weight.Left, Weight.Right, Weight.Shared])
            {
                for (int turned = 0; turned < Eighths; turned++)
                {
                    List<Step> steps = [];
                    int least = Never;
                    foreach (EasierBlock block in _blocks)
                    {
                        if (count + block.Length > _window.Length || After(block, weight) is not { } path)
                        {
                            continue;
                        }

                        int points = block.Price - (block.IsHold && _original[count].IsStill ? RestTogether : 0);
                        for (int i = 0; i < path.Length; i++)
                        {
                            Moment original = _original[count + i];
                            points += path[i].Weight == original.Weight ? 0 : OtherWeight;
                            points += Reduced(turned + path[i].Eighths) == original.Turned ? 0 : OtherFacing;
                        }

                        int then = Reduced(turned + block.Eighths);
                        int rest = _rest[Index(count + block.Length, path[^1].Weight, then)];
                        if (rest < Never)
                        {
                            steps.Add(new Step(block, points, path[^1].Weight, then));
                            least = Math.Min(least, points + rest);
                        }
                    }

                    _steps[Index(count, weight, turned)] = [.. steps];
                    _rest[Index(count, weight, turned)] = least;
                }
            }
        }

        (Weight Weight, int Eighths)[]? After(EasierBlock block, Weight weight)
        {
            if (!after.TryGetValue((block, weight), out (Weight Weight, int Eighths)[]? path))
            {
                path = block.From(weight);
                after.Add((block, weight), path);
            }

            return path;
        }
    }

    // The place on the floor, count by count, against the original's.
    private void Dance(Node node)
    {
        Dancer dancer = node.Parent!.Dancer!.Copy();
        Weight weight = node.Parent.Weight;
        double away = 0;
        int row = 0;
        EasierBlock block = node.Block!;
        for (int i = 0; i < block.Length; i++)
        {
            while (row < block.Rows.Count && block.Rows[row].At < Counts.FromWhole(i + 1))
            {
                (Counts at, StepAction action) = block.Rows[row];
                weight = action.WeightAfter(weight);
                dancer.Dance(action, !at.IsWhole, weight, Opening.None, isWithLast: false);
                row++;
            }

            Moment here = Moment.Of(dancer);
            Moment there = _original[node.Parent.Count + i];
            away += (here.Body - there.Body).Length * OfBodyMetre;
            away += ((here.Left - there.Left).Length + (here.Right - there.Right).Length) * OfFootMetre;
        }

        node.Dancer = dancer;
        node.Points += (int)Math.Round(away);
    }

    private static int Reduced(int eighths) => ((eighths % Eighths) + Eighths) % Eighths;

    /// <summary>The dancer at the end of a count.</summary>
    /// <param name="Weight">Where the weight is.</param>
    /// <param name="Turned">Eighths turned since the window began, reduced to the clock; -1 between two eighths.</param>
    /// <param name="Body">The point below the hips.</param>
    /// <param name="Left">The left foot.</param>
    /// <param name="Right">The right foot.</param>
    /// <param name="IsStill">Whether the feet stay in this count.</param>
    internal readonly record struct Moment(Weight Weight, int Turned, FloorPoint Body, FloorPoint Left, FloorPoint Right, bool IsStill)
    {
        // feet that stand so much otherwise are another stance: half the breadth of a step to the side
        private const double SameStance = 0.2;

        public static Moment Of(Dancer dancer, Ratio turned = default, bool isStill = false)
        {
            FloorKey key = dancer.ToKey(0, 0, Turn.None);
            return new Moment(key.Weight, turned.IsWhole ? Reduced(turned.Numerator) : -1, key.Body, key.Left.Place, key.Right.Place, isStill);
        }

        /// <summary>Whether the feet stand to each other alike.</summary>
        public bool StandsLike(Moment other) => (Right - Left - (other.Right - other.Left)).Length <= SameStance;
    }

    private sealed record Step(EasierBlock Block, int Points, Weight Weight, int Turned);

    private sealed class Node(Node? parent, EasierBlock? block, int count, Weight weight, int turned, int points)
    {
        public Node? Parent { get; } = parent;

        public EasierBlock? Block { get; } = block;

        public int Count { get; } = count;

        public Weight Weight { get; } = weight;

        public int Turned { get; } = turned;

        public int Points { get; set; } = points;

        public Dancer? Dancer { get; set; }
    }

    // Two blocks that look the same are still two, and comparing them by value would cost their whole length.
    private sealed class ReferenceComparer : IEqualityComparer<(EasierBlock Block, Weight Weight)>
    {
        public static ReferenceComparer Instance { get; } = new();

        public bool Equals((EasierBlock Block, Weight Weight) x, (EasierBlock Block, Weight Weight) y)
            => ReferenceEquals(x.Block, y.Block) && x.Weight == y.Weight;

        public int GetHashCode((EasierBlock Block, Weight Weight) obj)
            => HashCode.Combine(System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(obj.Block), obj.Weight);
    }
}
