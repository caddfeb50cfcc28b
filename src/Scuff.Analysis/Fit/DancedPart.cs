using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Fit;

/// <summary>A part of a dance, danced once, with what is true between its counts.</summary>
internal sealed class DancedPart
{
    private readonly List<(TimedStep Step, Counts Section)> _steps = [];
    private readonly Dictionary<WrittenStep, WrittenMove> _moves = new(ReferenceEqualityComparer.Instance);
    private readonly Lazy<LeavingPlace[]> _places;

    public DancedPart(Dance dance, Part part)
    {
        Part = part;
        Length = (int)Math.Ceiling(part.Length.Value.ToDouble());
        foreach (WrittenMove move in part.Sections.SelectMany(s => s.Lines).SelectMany(l => l.Moves))
        {
            foreach (WrittenStep step in move.Steps)
            {
                _moves.TryAdd(step, move);
            }
        }

        Begin = LeavingPlace.NeedOf(part.Sections.SelectMany(s => s.Steps).Select(s => s.Action));
        Weight start = Begin is { } foot ? foot.Other().ToWeight() : dance.Start;
        Timeline timeline = Once(dance with { Start = start }, part);
        Start = start;
        Dictionary<Section, Counts> starts = new(ReferenceEqualityComparer.Instance);
        Counts at = Counts.Zero;
        foreach (Section section in part.Sections)
        {
            starts[section] = at;
            at += section.Length;
        }

        _steps.AddRange(timeline.Steps.Select(s => (s, starts[s.Section])));
        _places = new Lazy<LeavingPlace[]>(() => [.. Enumerable.Range(0, Length + 1).Select(PlaceAt)]);
        IsBoundary = BoundariesOf(dance, part, Length);
    }

    /// <summary>The part.</summary>
    public Part Part { get; }

    /// <summary>Whole counts.</summary>
    public int Length { get; }

    /// <summary>The foot that has to be free to begin; null when any will do.</summary>
    public Foot? Begin { get; }

    /// <summary>Where the weight is when it begins.</summary>
    public Weight Start { get; }

    /// <summary>For each count whether a section begins there, or an eight of a longer section, or the part ends.</summary>
    public ValueList<bool> IsBoundary { get; }

    /// <summary>What is true between counts, from before count 1 to after the last.</summary>
    public ReadOnlySpan<LeavingPlace> Places => _places.Value;

    /// <summary>The actions of so many counts from a place on, in danced order.</summary>
    public IEnumerable<StepAction> Actions(int from, int to) => _steps
        .Where(s => !IsDanced(s, from) && IsDanced(s, to))
        .Select(s => s.Step.Action);

    private static Timeline Once(Dance dance, Part part) => Unroller.Unroll(dance, new Plan(
        [new PlanStretch(StretchKind.Wall, 1, part.Sections, part.Name, new CountSpan(Counts.Zero, part.Length), default, StartsWall: true)],
        1,
        ""));

    private static ValueList<bool> BoundariesOf(Dance dance, Part part, int length)
    {
        bool[] boundaries = new bool[length + 1];
        boundaries[0] = boundaries[length] = true;
        int eight = dance.BeatsPerBar == 3 ? 6 : 8;
        Counts at = Counts.Zero;
        foreach (Section section in part.Sections)
        {
            for (Counts place = at; place < at + section.Length; place += Counts.FromWhole(eight))
            {
                if (place.IsWhole)
                {
                    boundaries[place.Value.Floor] = true;
                }
            }

            at += section.Length;
        }

        return [.. boundaries];
    }

    // A pick-up belongs to the section that it leads into, and is danced only if that section is.
    private static bool IsDanced((TimedStep Step, Counts Section) step, int upto)
        => step.Step.At < Counts.FromWhole(upto) && step.Section < Counts.FromWhole(upto);

    private LeavingPlace PlaceAt(int count)
    {
        Weight weight = Start;
        Turn? turn = Turn.None;
        TimedStep? last = null;
        HashSet<WrittenMove> begun = new(ReferenceEqualityComparer.Instance);
        HashSet<WrittenMove> within = new(ReferenceEqualityComparer.Instance);
        HashSet<WrittenMove> left = new(ReferenceEqualityComparer.Instance);
        Counts place = Counts.FromWhole(count);
        foreach ((TimedStep Step, Counts Section) step in _steps)
        {
            WrittenMove? move = _moves.GetValueOrDefault(step.Step.Written);
            if (!IsDanced(step, count))
            {
                if (move is not null)
                {
                    left.Add(move);
                }

                continue;
            }

            weight = step.Step.WeightAfter;
            turn = step.Step.Action.Kind == ActionKind.Unknown ? null : turn + step.Step.Action.Turn;
            last = step.Step;
            if (move is not null)
            {
                begun.Add(move);
                if (!step.Step.At.IsWhole && step.Step.At > place - Counts.One)
                {
                    within.Add(move);
                }
            }
        }

        begun.IntersectWith(left);
        within.IntersectWith(left);
        bool canChange = last is not null && last.At == place - Counts.One && last.Action.Turn.Sign == 0
            && last.Action is { Kind: ActionKind.Step, Effect: WeightEffect.Takes } or { Kind: ActionKind.Touch, Effect: WeightEffect.Keeps };
        Foot? next = LeavingPlace.NeedOf(Actions(count, Length));
        return new LeavingPlace(weight, turn, next, within.Count > 0, begun.Count > 0, canChange ? last : null);
    }
}
