using Scuff.Analysis;
using Scuff.Analysis.Floor;
using Scuff.Prose;
using Scuff.Sheets;
using Scuff.Sheets.Drawings;
using Scuff.Sheets.Formats.Html;
using Scuff.Stance;
using Tests.Golden;
using Tests.House;

namespace Tests.Sheets;

public sealed class FootDiagramTests
{
    private const double Length = 16;

    public static TheoryData<string> DemoDances => [.. DancesIn("demo/dances/")];

    public static TheoryData<string> AllDances => [.. DancesIn("demo/"), .. DancesIn("tests/browser/dances/")];

    [Fact]
    public void Every_state_of_a_foot_looks_different()
    {
        string[] drawn =
        [
            .. from foot in new[] { Foot.Left, Foot.Right }
               from contact in Enum.GetValues<Contact>()
               from carries in new[] { false, true }
               where contact != Contact.Air || !carries
               select Paths(new Sole(foot, contact, carries)),
        ];

        Assert.Equal(18, drawn.Length);
        Assert.Equal(drawn.Length, drawn.Distinct(StringComparer.Ordinal).Count());
        Assert.DoesNotContain("", drawn);
    }

    // What must be told apart without colour and across a hall: not only the side on which the big toe is.
    [Fact]
    public void Right_is_solid_left_is_outlined_and_a_foot_in_the_air_is_dashed()
    {
        Assert.Contains(Outlines(new Sole(Foot.Right, Contact.Flat, false)), o => o.Fill == Tint.Ink);
        Assert.DoesNotContain(Outlines(new Sole(Foot.Left, Contact.Flat, false)), o => o.Fill == Tint.Ink);
        Assert.Single(Outlines(new Sole(Foot.Left, Contact.Flat, true)), o => o.Fill == Tint.Ink);
        Assert.Contains(Outlines(new Sole(Foot.Left, Contact.Air, false)), o => o.IsDashed);
        Assert.Contains(Outlines(new Sole(Foot.Right, Contact.Air, false)), o => o.IsDashed);
        Assert.DoesNotContain(Outlines(new Sole(Foot.Right, Contact.Heel, true)), o => o.IsDashed);
    }

    [Theory]
    [InlineData(Contact.Ball)]
    [InlineData(Contact.Toe)]
    [InlineData(Contact.Heel)]
    public void Of_a_touching_foot_only_the_touching_part_is_drawn(Contact contact)
    {
        DrawnBox whole = DrawnBox.Of(Outlines(new Sole(Foot.Right, Contact.Flat, false)));
        DrawnBox part = DrawnBox.Of(Outlines(new Sole(Foot.Right, contact, false)));

        Assert.True(part.Bottom - part.Top < 0.7 * (whole.Bottom - whole.Top));
        if (contact == Contact.Heel)
        {
            Assert.Equal(whole.Bottom, part.Bottom, 1);
        }
        else
        {
            Assert.Equal(whole.Top, part.Top, 1);
        }
    }

    [Theory]
    [MemberData(nameof(AllDances))]
    public void Nothing_leaves_its_panel_and_no_words_lie_on_each_other(string file)
    {
        foreach (Drawing diagram in DiagramsOf(file))
        {
            Assert.InRange(diagram.Width, 1, FootDiagram.MostWidth + 0.1);
            Assert.InRange(diagram.Height, 20, 170);
            Assert.Equal(diagram.Shapes.Count, diagram.Pieces.Sum(p => p.Shapes));
            int from = 0;
            foreach (DrawnPiece piece in diagram.Pieces)
            {
                DrawnShape[] shapes = [.. diagram.Shapes.Skip(from).Take(piece.Shapes)];
                from += piece.Shapes;
                DrawnBox box = DrawnBox.Of(shapes);
                Assert.True(
                    box.Left >= piece.X - 0.5 && box.Right <= piece.X + piece.Width + 0.5 && box.Top >= piece.Y - 0.5 && box.Bottom <= piece.Y + piece.Height + 0.5,
                    $"{box} leaves {piece}");
                Assert.True(piece.X + piece.Width <= diagram.Width + 0.1 && piece.Y + piece.Height <= diagram.Height + 0.1);
            }

            DrawnBox[] words = [.. diagram.Shapes.OfType<DrawnShape.Label>().Select(l => DrawnBox.Of(l))];
            Assert.All(words, (a, i) => Assert.All(words.Skip(i + 1), b => Assert.False(a.Overlaps(b), $"{a} lies on {b}")));
        }
    }

    // The count over the panel, the place of each foot in it, the turn: all as the floor has them.
    [Theory]
    [MemberData(nameof(DemoDances))]
    public void Every_panel_stands_for_what_is_danced_there(string file)
    {
        DanceAnalysis analysis = Analysed(file);
        FloorPath path = DanceAnalysis.FloorPathOf(analysis.WallTimeline, DancerSize.Default);
        Dictionary<Scuff.Dances.Section, List<FootMoment>> moments = FootMoment.Of(analysis.WallTimeline, path);
        SheetSection[] sections = [.. SheetBuilder.Build(analysis).Parts.SelectMany(p => p.Sections)];
        int checkedPanels = 0;
        foreach ((Scuff.Dances.Section section, SheetSection onSheet) in analysis.Dance.Sections.Zip(sections))
        {
            List<FootMoment> danced = moments[section];
            Drawing diagram = Assert.IsType<Drawing>(onSheet.Diagram);
            Assert.Equal(danced.Count + 1, diagram.Pieces.Count);
            Assert.Equal(
                section.Steps.Select(s => s.Count.Place).Distinct().Count(),
                danced.Count);
            Assert.Equal(
                section.Steps.Select(s => s.Action.Turn).Aggregate(Turn.None, (sum, t) => sum + t),
                danced.Select(m => m.Turn).Aggregate(Turn.None, (sum, t) => sum + t));
            foreach (FootMoment moment in danced)
            {
                Assert.Equal(path.At(Foot.Left, moment.After.Arrives).Place, moment.After.Left.Place);
                Assert.Equal(path.At(Foot.Right, moment.After.Arrives).Place, moment.After.Right.Place);
                checkedPanels++;
            }
        }

        Assert.NotEqual(0, checkedPanels);
    }

    [Fact]
    public void Feet_are_drawn_where_the_floor_has_them_after_the_last_count()
    {
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read("Box\n\nstart: weight on L\n\nsection 1\n1-2 step R to side, step L together\n3-4 step R forward, touch L together\n"));
        Drawing diagram = SheetBuilder.Build(analysis).Parts[0].Sections[0].Diagram!;
        FloorPath path = DanceAnalysis.FloorPathOf(analysis.WallTimeline, DancerSize.Default);
        FloorKey last = path.Keys[^1];
        FloorKey before = path.Keys[^2];

        DrawnPiece piece = diagram.Pieces[^1];
        DrawnShape.Outline[] soles = [.. diagram.Shapes.Skip(diagram.Shapes.Count - piece.Shapes).OfType<DrawnShape.Outline>().Where(o => o is { Stroke: Tint.Ink, Fill: not Tint.None })];

        // the touching left foot is one outlined part, the standing right foot two solid ones
        DrawnBox left = DrawnBox.Of(soles.Where(o => o.Fill == Tint.Paper));
        DrawnBox right = DrawnBox.Of(soles.Where(o => o.Fill == Tint.Ink));
        double scale = (right.Bottom - right.Top) / (DancerSize.Default.FootLength * FootDiagram.FootFactor * Math.Cos(last.Right.Angle * Math.PI / 180));
        Assert.Equal((last.Left.X - last.Right.X) * scale, Middle(left) - Middle(right), 0.1 * scale * 0.2);
        Assert.True(before.Left.Place != last.Left.Place);
        Assert.Equal(Weight.Right, last.Weight);

        static double Middle(DrawnBox box) => (box.Left + box.Right) / 2;
    }

    [Fact]
    public void The_words_of_a_diagram_tell_what_it_shows()
    {
        Drawing diagram = SheetSamples.Build(SheetSamples.Lantern).Parts[0].Sections[1].Diagram!;

        Assert.Equal(
            "The feet in “Section 2: rock, quarter, behind side cross”, seen from above; up is 12:00. "
            + "1: right foot back, weight on the right foot. 2: weight on the left foot. 3: right foot forward, weight on the right foot. "
            + "4: turn ¼ to the left, left foot in place on the ball, weight on the left foot. "
            + "5: right foot forward to the left, weight on the right foot. 6: left foot forward to the left, weight on the left foot. "
            + "7: right foot back to the left, weight on the right foot. &: left foot back to the left, weight on the left foot. "
            + "8: right foot forward to the left, weight on the right foot.",
            diagram.Words);
    }

    [Fact]
    public void What_could_not_be_read_is_not_drawn_as_if_it_had_been()
    {
        SheetModel sheet = SheetSamples.Build("Half\n\nstart: weight on L\n\nsection 1\n1-2 walk R, walk L\n3-4 wibble wobble\n5-8 vine right, touch L\n\nsection 2\n1-4 vine left, touch R\n");

        Drawing first = sheet.Parts[0].Sections[0].Diagram!;
        Assert.Contains(first.Shapes.OfType<DrawnShape.Label>(), l => l.Words == "?");
        Assert.Contains("not understood", first.Words, StringComparison.Ordinal);
        Assert.Contains(sheet.DiagramKey, s => s.Words == DrawingLabels.English.SignNotUnderstood);

        // after them nobody knows where the feet are
        Assert.Null(sheet.Parts[0].Sections[1].Diagram);
    }

    [Fact]
    public void Only_the_signs_that_stand_on_the_sheet_are_explained()
    {
        SheetModel plain = SheetSamples.Build("Plain\n\nstart: weight on L\n\nsection 1\n1-2 walk R, walk L\n");
        SheetModel full = SheetSamples.Build(SheetSamples.Lantern);

        string[] words = [.. plain.DiagramKey.Select(s => s.Words)];
        Assert.DoesNotContain(DrawingLabels.English.SignTurn, words);
        Assert.DoesNotContain(DrawingLabels.English.SignAir, words);
        Assert.Contains(DrawingLabels.English.SignWeight, words);
        Assert.Contains(DrawingLabels.English.SignTurn, full.DiagramKey.Select(s => s.Words));
        Assert.Contains(DrawingLabels.English.SignAir, full.DiagramKey.Select(s => s.Words));
        Assert.All(full.DiagramKey, s => Assert.True(DrawnBox.Of(s.Picture.Shapes).IsInside(s.Picture)));
    }

    [Fact]
    public void Without_diagrams_there_are_none_and_no_key_to_them()
    {
        SheetModel sheet = SheetBuilder.Build(DanceAnalysis.Of(DanceReader.Read(SheetSamples.Lantern)), new SheetChoices { HasDiagrams = false });

        Assert.All(sheet.Parts[0].Sections, s => Assert.Null(s.Diagram));
        Assert.Empty(sheet.DiagramKey);
        Assert.NotNull(sheet.WallPicture);
    }

    [Fact]
    public void A_dense_section_takes_a_second_row_rather_than_tiny_feet()
    {
        const string Dense = """
            Dense

            start: weight on L

            section 1
            1-2   step R forward, pivot 1/4 right
            3e&a4e&a kick R forward, step R back, kick L forward, step L back, kick R forward, step R back, kick L forward, step L back
            5e&a6e&a kick R forward, step R back, kick L forward, step L back, kick R forward, step R back, kick L forward, step L back
            7-8   walk R, walk L
            """;
        Drawing diagram = SheetSamples.Build(Dense).Parts[0].Sections[0].Diagram!;

        Assert.Equal(21, diagram.Pieces.Count);
        Assert.Equal(2, diagram.Pieces.Select(p => p.Y).Distinct().Count());
        Assert.InRange(diagram.Width, 400, FootDiagram.MostWidth + 0.1);
    }

    [Fact]
    public void A_diagram_is_drawn_as_it_was_last_looked_at_and_approved()
    {
        SvgWriter writer = new("sample-");
        Drawing diagram = SheetSamples.Build(SheetSamples.Lantern).Parts[0].Sections[2].Diagram!;

        GoldenFile.Matches("tin-lantern-feet.svg.html", writer.InPieces(diagram).Replace("><", ">\n<", StringComparison.Ordinal) + "\n");
    }

    internal static DanceAnalysis Analysed(string file) => DanceAnalysis.Of(DanceReader.Read(Repository.Read(file)));

    private static IEnumerable<string> DancesIn(string folder)
        => Repository.Files.Where(f => f.StartsWith(folder, StringComparison.Ordinal) && f.EndsWith(".dance", StringComparison.Ordinal));

    private static IEnumerable<Drawing> DiagramsOf(string file)
        => SheetBuilder.Build(Analysed(file)).Parts.SelectMany(p => p.Sections).Select(s => s.Diagram).OfType<Drawing>();

    private static DrawnShape.Outline[] Outlines(Sole sole)
    {
        Sketch sketch = new();
        SoleDrawing.Draw(sketch, sole, 0, 0, 0, Length);
        return [.. sketch.Shapes.Cast<DrawnShape.Outline>()];
    }

    private static string Paths(Sole sole) => string.Join('\n', Outlines(sole).Select(o => o.ToString() + string.Join(' ', o.Steps)));
}
