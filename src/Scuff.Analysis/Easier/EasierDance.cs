using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Analysis.Easier;

/// <summary>Puts easier ways in the place of what they replace.</summary>
public static class EasierDance
{
    /// <summary>
    /// The dance with the ways taken. A facing that is printed in the middle of replaced counts is left out, for the dancer may face
    /// elsewhere there; options and her own calls for replaced counts are left out too, for they are for something else.
    /// </summary>
    /// <param name="dance">The dance.</param>
    /// <param name="ways">Ways found for it, which do not overlap.</param>
    public static Dance Take(Dance dance, IEnumerable<EasierWay> ways)
    {
        ILookup<Section, EasierWay> bySection = ways.ToLookup(way => way.Section, (IEqualityComparer<Section>)ReferenceEqualityComparer.Instance);
        return dance with
        {
            Parts = dance.Parts.Select(part => part with { Sections = part.Sections.Select(Taken).ToValueList() }).ToValueList(),
            Tags = dance.Tags.Select(tag => tag with { Body = Taken(tag.Body) }).ToValueList(),
        };

        Section Taken(Section section) => bySection[section].Aggregate(section, Replaced);
    }

    private static Section Replaced(Section section, EasierWay way)
    {
        List<WrittenLine> lines = [];
        bool isIn = false;
        foreach (WrittenLine line in section.Lines)
        {
            if (!line.Steps.Any(step => way.Counts.Contains(step.Count.Place)) && !line.Places.Any(place => way.Counts.Contains(place.Place)))
            {
                lines.Add(line);
                continue;
            }

            List<WrittenMove> moves = [.. line.Moves.Where(move => move.Steps.Count == 0 || !way.Counts.Contains(move.Steps[0].Count.Place))];
            List<WrittenCount> places = [.. line.Places.Where(place => !way.Counts.Contains(place.Place))];
            if (!isIn)
            {
                isIn = true;
                // an option holds where the others step between two counts; a text of its own leaves that out
                int at = moves.FindIndex(move => move.Steps.Count > 0 && move.Steps[0].Count.Place > way.Counts.Start);
                moves.InsertRange(at < 0 ? moves.Count : at, way.Moves.Where(move => move.Steps[0].Count.Place >= Counts.Zero));
                places.InsertRange(places.FindIndex(place => place.Place > way.Counts.Start) is >= 0 and var next ? next : places.Count,
                    way.Places.Where(place => place >= Counts.Zero).Select(place => new WrittenCount(CountGrid.LabelOf(place), place)));
            }

            if (moves.Count == 0)
            {
                continue;
            }

            lines.Add(line with
            {
                Moves = moves.ToValueList(),
                Places = places.ToValueList(),
                Claims = line.Claims.Where(claim => claim.At <= way.Counts.Start || claim.At >= Last(way)).ToValueList(),
                Options = line.Options.Where(option => !option.Replaces.Overlaps(way.Counts)).ToValueList(),
            });
        }

        return section with
        {
            Lines = lines.ToValueList(),
            Calls = section.Calls.Where(call => call.Counts is not { } counts || !counts.Overlaps(way.Counts)).ToValueList(),
        };
    }

    // a claim stands at the action after which it is true
    private static Counts Last(EasierWay way) => Counts.FromWhole(way.Counts.End.Value.Floor - 1);
}
