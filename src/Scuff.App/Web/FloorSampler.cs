using Scuff.Analysis;
using Scuff.Analysis.Floor;
using Scuff.App.Explaining;
using Scuff.App.Web.Contract;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.App.Web;

/// <summary>The dance at many moments, close enough together that the page may draw straight lines between them.</summary>
internal static class FloorSampler
{
    // At 130 counts a minute a moment lasts 38 ms; a foot that travels half a metre within a count is then at most 4 mm off a straight line.
    private const int PerCount = 12;

    /// <summary>The dance danced.</summary>
    /// <param name="analysis">The dance.</param>
    /// <param name="timeline">How it is danced.</param>
    /// <param name="size">The dancer.</param>
    /// <param name="perCount">Moments for each count; as usual those of the studio.</param>
    public static FloorAnswer Of(DanceAnalysis analysis, Timeline timeline, DancerSize size, int perCount = PerCount)
    {
        FloorPath path = DanceAnalysis.FloorPathOf(timeline, size);
        // a foot is under way for a count before it lands, and so the first step is seen danced, not only done
        double first = Math.Min(0, timeline.Steps.Count > 0 ? Math.Floor(timeline.Steps[0].At.Value.ToDouble()) : 0) - 1;
        double length = timeline.Length.Value.ToDouble();
        int moments = (int)Math.Round((length - first) * perCount) + 1;
        Feet left = new(moments);
        Feet right = new(moments);
        int[] x = new int[moments];
        int[] y = new int[moments];
        int[] hips = new int[moments];
        int[] facing = new int[moments];
        int[] turned = new int[moments];
        char[] weight = new char[moments];
        int key = -1;
        for (int i = 0; i < moments; i++)
        {
            double count = first + ((double)i / perCount);
            left.Put(i, path.At(Foot.Left, count));
            right.Put(i, path.At(Foot.Right, count));
            BodyPose body = path.BodyAt(count);
            x[i] = Millimetres(body.X);
            y[i] = Millimetres(body.Y);
            hips[i] = Millimetres(body.HipHeight);
            facing[i] = Tenths(body.Facing);
            turned[i] = Tenths(body.Angle);
            while (key + 1 < path.Keys.Count && path.Keys[key + 1].Arrives <= count + 1e-9)
            {
                key++;
            }

            weight[i] = Letter(key < 0 ? path.Start.Weight : path.Keys[key].Weight);
        }

        return new FloorAnswer
        {
            PerCount = perCount,
            First = first,
            Length = length,
            GoesRound = timeline.FacingAfter is { } end && end == Facing.Front && timeline.WeightAfter == analysis.Dance.Start,
            Height = size.Height,
            HeelToBall = size.HeelToBall,
            Leg = size.LegLength,
            Left = left.Answer,
            Right = right.Answer,
            Body = new FloorBody(x, y, hips, facing, turned, new string(weight)),
            Stretches = [.. timeline.Stretches.Select(Stretch)],
            Steps = [.. timeline.Steps.Select(Step)],
            Sections = [.. timeline.Stretches.SelectMany(Sections)],
            HasEasier = TakenOptions.IsOffered(analysis.Draft.Dance),
        };
    }

    private static FloorStretch Stretch(TimedStretch stretch) => new(
        stretch.Span.Start.Value.ToDouble(),
        stretch.Span.Length.Value.ToDouble(),
        stretch.Plan.Wall,
        Kind(stretch.Plan),
        stretch.Plan.Name,
        stretch.Facing?.ToString(),
        DancedPlace.Of(stretch),
        stretch.Plan.StartsWall);

    private static string Kind(PlanStretch stretch) => stretch.Kind switch
    {
        StretchKind.Wall => "wall",
        StretchKind.Tag => "tag",
        StretchKind.Quote => "quote",
        StretchKind.Wait => "wait",
        StretchKind.Ending => "ending",
        _ => throw new ArgumentOutOfRangeException(nameof(stretch)),
    };

    private static IEnumerable<FloorSection> Sections(TimedStretch stretch)
    {
        PlanStretch plan = stretch.Plan;
        Counts start = Counts.Zero;
        foreach (Section section in plan.Sections)
        {
            if (Danced(start, section.Length) is { } danced)
            {
                List<FloorLine> lines = [];
                foreach (WrittenLine line in section.Lines)
                {
                    if (Danced(start + line.Counts.Start, line.Counts.Length) is { } part)
                    {
                        lines.Add(new FloorLine(part.At, part.Counts, line.Label, line.Span.Start, line.Span.End, line.Number));
                    }
                }

                yield return new FloorSection(danced.At, danced.Counts, plan.Wall, Kind(plan), DancedPlace.NameOf(plan, section), section.Title, lines);
            }

            start += section.Length;
        }

        // what of some counts of the stretch's sections is danced; null for nothing
        (double At, double Counts)? Danced(Counts from, Counts length)
        {
            Counts begin = Counts.Max(from, plan.Counts.Start);
            Counts end = Counts.Min(from + length, plan.Counts.End);
            return begin >= end ? null : ((begin - plan.Counts.Start + stretch.Span.Start).Value.ToDouble(), (end - begin).Value.ToDouble());
        }
    }

    private static FloorStep Step(TimedStep step) => new(
        step.At.Value.ToDouble(),
        step.CountLabel,
        StanceWords.Of(step.Action.Foot),
        DancedWords.Of(step),
        StanceWords.Of(step.WeightAfter),
        step.FacingAfter?.ToString(),
        step.Written.Span.Start,
        step.Written.Span.End,
        step.Written.Line);

    private static char Letter(Weight weight) => weight switch
    {
        Weight.Left => 'L',
        Weight.Right => 'R',
        Weight.Shared => 'B',
        _ => '?',
    };

    private static int Millimetres(double metres) => (int)Math.Round(metres * 1000);

    private static int Tenths(double degrees) => (int)Math.Round(degrees * 10);

    private sealed class Feet(int moments)
    {
        private readonly int[] _x = new int[moments];
        private readonly int[] _y = new int[moments];
        private readonly int[] _angle = new int[moments];
        private readonly int[] _lift = new int[moments];
        private readonly char[] _contact = new char[moments];

        public FloorFoot Answer => new(_x, _y, _angle, _lift, new string(_contact));

        public void Put(int i, FootPose pose)
        {
            _x[i] = Millimetres(pose.X);
            _y[i] = Millimetres(pose.Y);
            _angle[i] = Tenths(pose.Angle);
            _lift[i] = Millimetres(pose.Height);
            _contact[i] = pose.Contact switch
            {
                Contact.Flat => 'f',
                Contact.Ball => 'b',
                Contact.Heel => 'h',
                Contact.Toe => 't',
                Contact.Air => 'a',
                _ => 'f',
            };
        }
    }
}
