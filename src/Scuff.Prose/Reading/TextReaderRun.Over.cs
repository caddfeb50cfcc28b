using System.Globalization;
using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

// Counts that run over the bar, as cha cha sheets have them: "4&1" within a section, "8&1" from its end into the next one.
internal sealed partial class TextReaderRun
{
    // what the last line of the section before danced on count 1 of this one
    private WrittenLine? _carried;

    /// <summary>
    /// The places of a line in a section whose counts start again at 1 after "4&amp;1" or "8&amp;1". Where the section ends with that 1, and the next one
    /// begins with 2, the 1 is the first count of the next one, and <paramref name="beyond"/> is where this section ends; else it is null.
    /// </summary>
    private List<LabelPlace> RunOver(TextLine line, CountLabel label, List<LabelPlace> places, SectionBuilder section, out Counts? beyond)
    {
        beyond = null;
        int last = section.Lines.Count > 0 && section.Lines[^1].Places.Count > 0 ? section.Lines[^1].Places.Max(p => p.Place).Value.Floor + 1 : 0;
        if (section.Wrapped > 0 && FirstNumber(label) - (section.Offset ?? 0) + section.Wrapped == last + 1)
        {
            places = places.ConvertAll(p => Moved(p, section.Wrapped));
        }

        int over = places.FindIndex(1, p => p.Place.IsWhole && label.Places[places.IndexOf(p)].Number == 1);
        if (over < 2 || over != places.Count - 1 || places[over - 1].Place.IsWhole || label.Places[over - 2].Number is not (3 or 4 or 6 or 8))
        {
            return places;
        }

        int bar = places[over - 2].Number;
        bool leaves = LeavesSection(line, out bool startsAtTwo);
        if (leaves && !startsAtTwo)
        {
            return places;
        }

        section.Wrapped = leaves ? section.Wrapped : bar;
        beyond = leaves ? Counts.FromWhole(bar) : null;
        places[over] = Moved(places[over], bar + 1 - places[over].Number);
        return places;
    }

    private static LabelPlace Moved(LabelPlace place, int counts)
    {
        Counts moved = place.Place + Counts.FromWhole(counts);
        return place with { Number = place.Number + counts, Place = moved, Label = CountGrid.LabelOf(moved) };
    }

    /// <summary>Whether a heading comes before the next line of counts, and whether that one begins with count 2.</summary>
    private bool LeavesSection(TextLine line, out bool startsAtTwo)
    {
        startsAtTwo = false;
        bool heading = false;
        for (int i = line.Number; i < _lines.Count; i++)
        {
            TextLine next = _lines[i].Trimmed(_text);
            if (next.Start == next.End)
            {
                continue;
            }

            if (CountLabel.Read(_text, next.Start, next.End) is CountLabel label && label.End < next.End)
            {
                startsAtTwo = label.Places[0].Number == 2;
                return heading;
            }

            heading |= SectionHeading(_text.AsSpan(next.Start, next.End - next.Start)) is not null;
        }

        return true;
    }

    /// <summary>Takes what the last line dances beyond the end of its section over to the next one, where it is count 1.</summary>
    private void CarryOver(SectionBuilder section, Counts end)
    {
        WrittenLine whole = section.Lines[^1];
        List<WrittenMove> stays = [];
        List<WrittenMove> goes = [];
        foreach (WrittenMove move in whole.Moves)
        {
            Part(move, [.. move.Steps.Where(s => s.Count.Place < end)], stays);
            Part(move, [.. move.Steps.Where(s => s.Count.Place >= end).Select(s => s with { Count = new WrittenCount("1", s.Count.Place - end) })], goes);
        }

        if (goes.Count == 0 || stays.Count == 0)
        {
            return;
        }

        section.Lines[^1] = whole with
        {
            Counts = new CountSpan(whole.Counts.Start, end),
            Moves = stays.ToValueList(),
            Claims = whole.Claims.Where(c => c.At < end).ToValueList(),
            Places = whole.Places.Where(p => p.Place < end).ToValueList(),
            LeavesWordsOut = true,
        };
        _state.SectionLines[^1] = section.Lines[^1];
        _carried = whole with
        {
            Label = 1.ToString(CultureInfo.InvariantCulture),
            Counts = new CountSpan(Counts.Zero, Counts.One),
            Moves = goes.ToValueList(),
            Claims = whole.Claims.Where(c => c.At >= end).Select(c => c with { At = c.At - end }).ToValueList(),
            Places = [new WrittenCount("1", Counts.Zero)],
            Notes = [],
            Options = [],
            LeavesWordsOut = true,
        };

        static void Part(WrittenMove move, List<WrittenStep> steps, List<WrittenMove> into)
        {
            if (steps.Count == 0)
            {
                return;
            }

            bool isWhole = steps.Count == move.Steps.Count;
            WrittenMove part = isWhole ? move with { Steps = steps.ToValueList() }
                : move with { Steps = steps.ToValueList(), Definition = null, Named = null, StatedTurn = null };
            into.Add(isWhole ? part : part with { Words = Phrasing.Describe(part) });
        }
    }

    /// <summary>Begins a section with the count that was carried over to it.</summary>
    private void TakeCarried()
    {
        if (_carried is WrittenLine line)
        {
            _carried = null;
            _section!.Lines.Add(line);
            _state.SectionLines.Add(line);
        }
    }
}
