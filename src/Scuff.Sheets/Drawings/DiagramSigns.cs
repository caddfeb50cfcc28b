using Scuff.Stance;

namespace Scuff.Sheets.Drawings;

/// <summary>The signs of the foot diagrams that stand on a sheet, explained.</summary>
internal static class DiagramSigns
{
    private const double Size = 24;
    private const double Length = 16;

    /// <summary>The signs that occur in these moments, in the order in which a reader meets them.</summary>
    public static ValueList<SheetSign> Of(IReadOnlyCollection<FootMoment> moments, Analysis.Floor.DancerSize size, DrawingLabels labels)
    {
        if (moments.Count == 0)
        {
            return [];
        }

        HashSet<Sole> soles = [];
        bool travels = false;
        bool turns = false;
        bool isDoubtful = false;
        foreach (FootMoment moment in moments)
        {
            if (!moment.IsCertain)
            {
                isDoubtful = true;
                continue;
            }

            turns |= moment.Turn != Turn.None;
            foreach (Foot foot in (ReadOnlySpan<Foot>)[Foot.Left, Foot.Right])
            {
                soles.Add(new Sole(foot, moment.After.Of(foot).Contact, moment.Carries(foot)));
                travels |= moment.Travels(foot) || moment.Twists(foot, size);
            }
        }

        List<SheetSign> signs =
        [
            Sign(labels.SignUp, DrawUp),
            Sign(labels.SignRight, s => DrawSole(s, new Sole(Foot.Right, Contact.Flat, false))),
            Sign(labels.SignLeft, s => DrawSole(s, new Sole(Foot.Left, Contact.Flat, false))),
        ];
        Add(labels.SignWeight, s => s.Contact == Contact.Flat && s.CarriesWeight);
        Add(labels.SignFree, s => s.Contact == Contact.Flat && !s.CarriesWeight);
        Add(labels.SignBall, s => s is { Contact: Contact.Ball });
        Add(labels.SignHeel, s => s is { Contact: Contact.Heel });
        Add(labels.SignToe, s => s is { Contact: Contact.Toe });
        Add(labels.SignPartWeight, s => s is { CarriesWeight: true, Contact: Contact.Ball or Contact.Heel or Contact.Toe });
        Add(labels.SignAir, s => s.Contact == Contact.Air);
        if (travels)
        {
            signs.Add(Sign(labels.SignTravel, DrawTravel));
        }

        if (turns)
        {
            signs.Add(Sign(labels.SignTurn, DrawTurn));
        }

        if (isDoubtful)
        {
            signs.Add(Sign(labels.SignNotUnderstood, s => s.Word(Size / 2, 16, "?", 12, isBold: true)));
        }

        return signs.ToValueList();

        // shown on the left foot where it occurs there, since an outline shows a part more plainly
        void Add(string words, Func<Sole, bool> isMeant)
        {
            Sole[] found = [.. soles.Where(isMeant).OrderBy(s => s.Foot).ThenBy(s => s.Contact).ThenBy(s => s.CarriesWeight)];
            if (found.Length > 0)
            {
                signs.Add(Sign(words, s => DrawSole(s, found[0])));
            }
        }
    }

    private static SheetSign Sign(string words, Action<Sketch> draw)
    {
        Sketch sketch = new();
        draw(sketch);
        return new SheetSign(new Drawing(Size, Size, sketch.Shapes, words), words);
    }

    private static void DrawSole(Sketch sketch, Sole sole)
        => SoleDrawing.Draw(sketch, sole, Size / 2, (Size / 2) + (Length * (SoleDrawing.ToeEnd + SoleDrawing.HeelEnd) / 2), 0, Length);

    private static void DrawUp(Sketch sketch)
    {
        sketch.Line([(Size / 2, 19), (Size / 2, 9)], Tint.Ink, 0.8);
        sketch.Head(Size / 2, 5, 0, -1, 4);
    }

    private static void DrawTravel(Sketch sketch)
    {
        SoleDrawing.DrawGhost(sketch, Foot.Right, 6, 9, 0, 13);
        sketch.Line([(9, 12), (18, 12)], Tint.Ink, 0.8);
        sketch.Head(21.5, 12, 1, 0, 4);
    }

    private static void DrawTurn(Sketch sketch)
    {
        FootDiagram.DrawTurnArc(sketch, 7.5, 12, 4, 1);
        sketch.Word(14, 15.2, "½", 9, Anchor.Start);
    }
}
