using Scuff.Analysis.Floor;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Sheets.Drawings;

/// <summary>What happens to the feet at one place of a section: everything that is danced there at once.</summary>
/// <param name="Label">The count as printed over it (<c>3</c>, <c>&amp;</c>, <c>7-8</c>).</param>
/// <param name="IsOffBeat">Whether it lies between two counts.</param>
/// <param name="Before">The dancer before it.</param>
/// <param name="After">The dancer after it.</param>
/// <param name="Turn">How far the dance turns with it.</param>
internal sealed record FootMoment(string Label, bool IsOffBeat, FloorKey Before, FloorKey After, Turn Turn)
{
    // Below this a foot counts as staying: it is less than half the breadth of a foot.
    private const double Still = 0.05;

    /// <summary>Whether all words up to here could be read.</summary>
    public bool IsCertain => After.IsCertain;

    /// <summary>The moments of every section, in danced order, the first time that it is danced.</summary>
    /// <param name="timeline">The dance as danced.</param>
    /// <param name="path">The feet on it.</param>
    public static Dictionary<Section, List<FootMoment>> Of(Timeline timeline, FloorPath path)
    {
        Dictionary<Section, List<FootMoment>> moments = new(ReferenceEqualityComparer.Instance);
        Dictionary<Section, int> first = new(ReferenceEqualityComparer.Instance);
        for (int i = 0; i < timeline.Steps.Count; i++)
        {
            TimedStep step = timeline.Steps[i];
            if (first.TryAdd(step.Section, step.Stretch))
            {
                moments.Add(step.Section, []);
            }

            if (first[step.Section] != step.Stretch)
            {
                continue;
            }

            int last = i;
            Turn turn = step.Action.Turn;
            while (last + 1 < timeline.Steps.Count && timeline.Steps[last + 1].At == step.At)
            {
                last++;
                turn += timeline.Steps[last].Action.Turn;
            }

            FloorKey before = i == 0 ? path.Start : path.Keys[i - 1];
            moments[step.Section].Add(new FootMoment(LabelOf(step), !step.Written.Count.Place.IsWhole, before, path.Keys[last], turn));
            i = last;
        }

        return moments;
    }

    /// <summary>Whether the ball of a foot is elsewhere afterwards.</summary>
    public bool Travels(Foot foot) => (After.Of(foot).Place - Before.Of(foot).Place).Length > Still;

    /// <summary>Whether a foot twists where it stands, with the body as it was.</summary>
    public bool Twists(Foot foot, DancerSize size)
        => !Travels(foot) && Turn == Turn.None && (After.Of(foot).Heel(size) - Before.Of(foot).Heel(size)).Length > Still;

    /// <summary>Whether a foot carries weight afterwards.</summary>
    public bool Carries(Foot foot) => After.Weight == Weight.Shared || After.Weight.StandingFoot() == foot;

    // What lasts several counts names the first and the last; between counts the letter says enough.
    private static string LabelOf(TimedStep step)
    {
        WrittenCount count = step.Written.Count;
        if (count.Place.IsWhole)
        {
            return SheetWords.Label(new CountSpan(count.Place, Counts.Max(count.Place, count.Place + step.Written.Duration)));
        }

        string label = CountGrid.LabelOf(count.Place);
        return label.TrimStart('-', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9') is { Length: 1 } letter ? letter : label;
    }
}
