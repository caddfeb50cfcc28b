using System.Runtime.CompilerServices;
using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Timelines;

/// <summary>
/// The written actions of a stretch, in danced order, with their places in the stretch's own counting. One reader for the builder
/// of plans and for the unroller, so that both mean the same by a cut, a pick-up and a changed count. Sections are prepared once
/// and kept, so that the cost of a plan is that of its danced actions.
/// </summary>
internal sealed class StretchScript
{
    // What a section comes to follows from it alone, and a dance is unrolled half a dozen times: kept as long as the section itself, by reference, since
    // comparing sections by value would cost their whole length.
    private static readonly ConditionalWeakTable<Section, Line[]> Kept = [];

    // The table is asked once for each script.
    private readonly Dictionary<Section, Line[]> _lines = new(ReferenceEqualityComparer.Instance);

    /// <summary>The actions that the stretch dances.</summary>
    public IEnumerable<Line> LinesOf(PlanStretch stretch)
    {
        if (stretch.Changes.Count == 0)
        {
            return PlainLines(stretch);
        }

        List<Line> lines = [];
        foreach (Line line in PlainLines(stretch))
        {
            if (!IsReplaced(stretch.Changes, line.Place))
            {
                lines.Add(line with { End = EndBeforeChange(stretch.Changes, line) });
            }
        }

        foreach (ChangedCounts change in stretch.Changes)
        {
            AddChange(stretch, change, lines);
        }

        return InOrder(lines);
    }

    /// <summary>How many actions the sections hold.</summary>
    public int CountOf(ValueList<Section> sections)
    {
        int count = 0;
        foreach (Section section in sections)
        {
            count += Prepared(section).Length;
        }

        return count;
    }

    private static bool IsReplaced(ValueList<ChangedCounts> changes, Counts place)
    {
        foreach (ChangedCounts change in changes)
        {
            if (change.Replaces.Contains(place))
            {
                return true;
            }
        }

        return false;
    }

    private static Counts EndBeforeChange(ValueList<ChangedCounts> changes, Line line)
    {
        Counts end = line.End;
        foreach (ChangedCounts change in changes)
        {
            if (change.Replaces.Start > line.Place)
            {
                end = Counts.Min(end, change.Replaces.Start);
            }
        }

        return end;
    }

    private static void AddChange(PlanStretch stretch, ChangedCounts change, List<Line> lines)
    {
        Counts start = Counts.Zero;
        Counts next = Counts.Zero;
        Section? home = null;
        foreach (Section section in stretch.Sections)
        {
            home = section;
            start = next;
            next += section.Length;
            if (change.Replaces.Start < next)
            {
                break;
            }
        }

        if (home is null)
        {
            return;
        }

        foreach (WrittenStep step in change.Steps)
        {
            Counts place = start + step.Count.Place;
            bool leadsIn = stretch.Counts.Start == Counts.Zero && place < Counts.Zero;
            if (place < stretch.Counts.End && (place >= stretch.Counts.Start || leadsIn))
            {
                lines.Add(new Line(step, home, place, place + step.Duration, CountGrid.LabelOf(step.Count.Place)));
            }
        }
    }

    private static IEnumerable<Line> InOrder(List<Line> lines)
    {
        for (int i = 1; i < lines.Count; i++)
        {
            if (lines[i].Place < lines[i - 1].Place)
            {
                return lines.OrderBy(l => l.Place);
            }
        }

        return lines;
    }

    private IEnumerable<Line> PlainLines(PlanStretch stretch)
    {
        CountSpan counts = stretch.Counts;
        Counts start = Counts.Zero;
        foreach (Section section in stretch.Sections)
        {
            if (start >= counts.End)
            {
                // also the pick-up of a section that is not danced any more stays undanced
                yield break;
            }

            Counts end = start + section.Length;
            if (end > counts.Start)
            {
                // what leads into the first count belongs to it; a quotation is taken at its word
                bool takesPickUp = start >= counts.Start && stretch.Kind != StretchKind.Quote;
                foreach (Line line in Prepared(section))
                {
                    Counts place = start + line.Place;
                    if (place < counts.End && (place >= counts.Start || takesPickUp))
                    {
                        yield return line with { Place = place, End = start + line.End };
                    }
                }
            }

            start = end;
        }
    }

    private Line[] Prepared(Section section)
    {
        if (!_lines.TryGetValue(section, out Line[]? lines))
        {
            lines = Kept.GetValue(section, Prepare);
            _lines.Add(section, lines);
        }

        return lines;
    }

    private static Line[] Prepare(Section section)
    {
        List<Line> made = [];
        foreach (WrittenStep step in section.Steps)
        {
            Counts place = step.Count.Place;
            made.Add(new Line(step, section, place, place + step.Duration, CountGrid.LabelOf(place)));
        }

        return [.. InOrder(made)];
    }

    /// <summary>One written action at its place.</summary>
    /// <param name="Step">The written action.</param>
    /// <param name="Section">The section in which it is danced.</param>
    /// <param name="Place">Where it begins, in the counting of the stretch.</param>
    /// <param name="End">Where it ends.</param>
    /// <param name="Label">Its printed count.</param>
    internal readonly record struct Line(WrittenStep Step, Section Section, Counts Place, Counts End, string Label);
}
