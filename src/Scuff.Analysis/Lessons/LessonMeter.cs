using System.Text;
using Scuff.Analysis.Levels;
using Scuff.Analysis.Loads;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Lessons;

/// <summary>Measures what each move asks of a class. Cost grows with the actions of one repetition.</summary>
internal sealed class LessonMeter
{
    private readonly Level _class;
    private readonly HashSet<string>? _known;
    private readonly HashSet<string> _shapes = new(StringComparer.Ordinal);
    private readonly HashSet<string> _met = new(StringComparer.Ordinal);
    private readonly Dictionary<WrittenStep, Told> _told = new(ReferenceEqualityComparer.Instance);

    private LessonMeter(DanceAnalysis analysis, LessonOptions options, Level level, Ratio tempo)
    {
        _class = level;
        _known = options.Known is { } known ? new HashSet<string>(known, StringComparer.Ordinal) : null;
        Ratio? last = null;
        foreach (TimedStep step in analysis.OnceTimeline.Steps)
        {
            bool changes = step.WeightAfter != step.WeightBefore && step.WeightAfter != Weight.Unknown && step.WeightBefore != Weight.Unknown;
            Ratio gap = changes && last is { } before ? step.At.Value - before : 0;
            last = changes ? step.At.Value : last;
            _told.TryAdd(step.Written, new Told(LoadMeter.TurnsOnOneFoot(step), gap.Sign > 0 ? tempo / (gap * 60) : 0));
        }
    }

    /// <summary>The moves of every part in order, and of the tags' bodies, each of these from zero.</summary>
    public static (ValueList<ValueList<LessonMove>> Parts, ValueList<ValueList<LessonMove>> Tags) Measure(
        DanceAnalysis analysis,
        LessonOptions options,
        Level level,
        Ratio tempo)
    {
        LessonMeter meter = new(analysis, options, level, tempo);
        List<ValueList<LessonMove>> parts = [];
        Counts start = Counts.Zero;
        foreach (Part part in analysis.Dance.Parts)
        {
            List<LessonMove> moves = [];
            foreach (Section section in part.Sections)
            {
                moves.AddRange(meter.Of(section, start));
                start += section.Length;
            }

            parts.Add(moves.ToValueList());
        }

        return (parts.ToValueList(), [.. analysis.Dance.Tags.Select(t => meter.Of(t.Body, Counts.Zero).ToValueList())]);
    }

    private IEnumerable<LessonMove> Of(Section section, Counts start)
    {
        foreach (WrittenLine line in section.Lines)
        {
            for (int i = 0; i < line.Moves.Count; i++)
            {
                WrittenMove move = line.Moves[i];
                Counts head = line.Counts.Start;
                Counts end = head;
                bool isFirst = true;
                foreach (WrittenStep step in move.Steps)
                {
                    head = isFirst ? step.Count.Place : Counts.Min(head, step.Count.Place);
                    end = Counts.Max(end, step.Count.Place + step.Duration);
                    isFirst = false;
                }

                // what leads into the first count of a line is a pick-up, and is taught with it
                if (i == 0 && !head.IsWhole && end.Value > head.Value.Floor + 1)
                {
                    head = Counts.FromWhole(head.Value.Floor + 1);
                }

                end = Counts.Max(head, Counts.Min(end, Counts.Max(line.Counts.End, head)));
                bool isNew = IsNew(move.Definition) && _met.Add(move.Definition!.Id);
                yield return new LessonMove(move, line, start + head, start + end, [.. Reasons(move, end - head, isNew)], isNew);
            }
        }
    }

    // A figure is something with several actions; single steps need no teaching alone.
    private bool IsNew(StepDefinition? figure)
    {
        if (figure is not { Rows.Count: > 1 } || _known?.Contains(figure.Id) == true)
        {
            return false;
        }

        return LevelPhrases.Find(figure.Level) is not { } met || (_known is null ? met > _class : met >= _class);
    }

    private List<LessonReason> Reasons(WrittenMove move, Counts length, bool isNew)
    {
        List<LessonReason> reasons = [];
        if (isNew)
        {
            Add(LessonReasonKind.NewFigures, 1, LessonLimits.NewFigurePoints);
        }

        int between = 0;
        int quarters = 0;
        int crossing = 0;
        int brisk = 0;
        int fast = 0;
        int landings = 0;
        int unknown = 0;
        Ratio turn = 0;
        Ratio oneFoot = 0;
        foreach (WrittenStep step in move.Steps)
        {
            StepAction action = step.Action;
            Ratio place = step.Count.Place.Value;
            between += place.IsWhole ? 0 : 1;
            quarters += (place * 2).IsWhole ? 0 : 1;
            crossing += Crosses(action.Direction) ? 1 : 0;
            landings += action.Kind is ActionKind.Jump or ActionKind.Leap or ActionKind.Hop or ActionKind.Scoot ? 1 : 0;
            unknown += action.Kind == ActionKind.Unknown ? 1 : 0;
            turn += action.Turn.Amount;
            if (_told.TryGetValue(step, out Told? told))
            {
                oneFoot += told.IsOnOneFoot ? action.Turn.Amount : 0;
                fast += told.Rate > LessonLimits.FastSteps ? 1 : 0;
                brisk += told.Rate > LessonLimits.BriskSteps && told.Rate <= LessonLimits.FastSteps ? 1 : 0;
            }
        }

        Add(LessonReasonKind.OffBeats, between, between * LessonLimits.OffBeatPoints);
        Add(LessonReasonKind.QuarterBeats, quarters, quarters * LessonLimits.QuarterBeatPoints);
        Add(LessonReasonKind.Turns, turn, Ceiling(turn * LessonLimits.QuarterTurnPoints / 2));
        Add(LessonReasonKind.OneFoot, oneFoot, Ceiling(oneFoot * LessonLimits.OneFootPoints / 2));
        Add(LessonReasonKind.Crossing, crossing, crossing * LessonLimits.CrossingPoints);
        Add(LessonReasonKind.Speed, brisk + fast, (brisk * LessonLimits.BriskPoints) + (fast * LessonLimits.FastPoints));
        Add(LessonReasonKind.Landings, landings, landings * LessonLimits.LandingPoints);
        Add(LessonReasonKind.Unknown, Math.Min(unknown, 1), Math.Min(unknown, 1) * LessonLimits.UnknownPoints);
        if (move.Steps.Count > 1 && unknown == 0 && !_shapes.Add(Shape(move)))
        {
            // what the feet have done already, on this foot or the other, is half learned
            Add(LessonReasonKind.Repeats, 1, -(length.Value * LessonLimits.CountPoints / 2).Floor);
        }

        return reasons;

        void Add(LessonReasonKind kind, Ratio number, int points)
        {
            if (number.Sign > 0)
            {
                reasons.Add(new LessonReason(kind, number, points));
            }
        }
    }

    private static bool Crosses(Direction direction) => direction is Direction.CrossFront or Direction.CrossBehind or Direction.LockFront
        or Direction.LockBehind or Direction.Across or Direction.Behind or Direction.DiagonalForwardAcross or Direction.DiagonalBackAcross;

    private static int Ceiling(Ratio value) => -(-value).Floor;

    // Without regard to the foot and to turns, which are counted by themselves.
    private static string Shape(WrittenMove move)
    {
        StringBuilder shape = new();
        bool isMirrored = move.Steps.Select(s => s.Action.Foot.ToFoot()).FirstOrDefault(f => f is not null) == Foot.Left;
        Counts start = move.Steps[0].Count.Place;
        foreach (WrittenStep step in move.Steps)
        {
            StepAction action = isMirrored ? step.Action.Mirrored() : step.Action;
            shape.Append(step.Count.Place - start)
                .Append(' ').Append((int)action.Kind)
                .Append(' ').Append((int)action.Foot)
                .Append(' ').Append((int)action.Direction)
                .Append(' ').Append((int)action.Effect)
                .Append(';');
        }

        return shape.ToString();
    }

    private sealed record Told(bool IsOnOneFoot, Ratio Rate);
}
