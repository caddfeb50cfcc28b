using System.Runtime.InteropServices;
using Scuff.Analysis;
using Scuff.Analysis.Floor;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Timelines;

namespace Scuff.Sheets.Drawings;

/// <summary>Puts the pictures onto a sheet: walls, feet, and the signs explained.</summary>
internal static class SheetPictures
{
    /// <summary>The sheet with its pictures.</summary>
    /// <param name="sheet">The sheet of this dance without them.</param>
    /// <param name="analysis">The dance.</param>
    /// <param name="hasFeet">Whether the feet are wanted.</param>
    public static SheetModel AddTo(SheetModel sheet, DanceAnalysis analysis, bool hasFeet)
    {
        DrawingLabels labels = sheet.Labels.Drawings;
        SheetModel drawn = sheet with { WallPicture = WallPicture.Draw(analysis.PlainTimeline, analysis.Walls, labels) };
        if (!hasFeet)
        {
            return drawn;
        }

        FloorPath path = DanceAnalysis.FloorPathOf(analysis.WallTimeline, DancerSize.Default);
        Dictionary<Section, List<FootMoment>> moments = FootMoment.Of(analysis.WallTimeline, path);
        Dictionary<Section, Facing?> starts = StartsOf(analysis.PlainTimeline);
        List<FootMoment> shown = [];
        ValueList<SheetPart> parts = sheet.Parts
            .Select((part, p) => part with
            {
                Sections = part.Sections.Select((section, s) => Drawn(section, analysis.Dance.Parts[p].Sections[s])).ToValueList(),
            })
            .ToValueList();
        return drawn with { Parts = parts, DiagramKey = DiagramSigns.Of(shown, path.Size, labels) };

        SheetSection Drawn(SheetSection onSheet, Section section)
        {
            if (!moments.TryGetValue(section, out List<FootMoment>? danced)
                || FootDiagram.Draw(danced, path, onSheet.Heading, starts.GetValueOrDefault(section)?.ToString(), labels) is not { } diagram)
            {
                return onSheet;
            }

            shown.AddRange(danced);
            return onSheet with { Diagram = diagram };
        }
    }

    // The same facings as those beside the lines: of the first time that a section is danced.
    private static Dictionary<Section, Facing?> StartsOf(Timeline timeline)
    {
        Dictionary<Section, Facing?> starts = new(ReferenceEqualityComparer.Instance);
        foreach (TimedStep step in timeline.Steps)
        {
            ref Facing? start = ref CollectionsMarshal.GetValueRefOrAddDefault(starts, step.Section, out bool isThere);
            if (!isThere)
            {
                start = step.FacingBefore;
            }
        }

        return starts;
    }
}
