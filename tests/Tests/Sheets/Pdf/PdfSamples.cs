using System.Collections.Concurrent;
using Scuff;
using Scuff.Analysis;
using Scuff.Prose;
using Scuff.Sheets;
using Scuff.Sheets.Drawings;
using Scuff.Sheets.Formats.Pdf;
using Tests.Prose;

namespace Tests.Sheets.Pdf;

/// <summary>Sheets to be laid out on paper.</summary>
internal static class PdfSamples
{
    // Sections as dances have them: with a turn, with half counts, with a note, with an option.
    private static readonly string[] Sections =
    [
        """
        1-2   step R to side, step L together
        3&4   shuffle R forward
        5-6   step L to side, step R together
        7&8   shuffle L back
              style: small steps; let the hip settle on the closing foot
        """,
        """
        1-2   rock R back, recover
        3-4   step R forward, pivot 1/2 left
        5-6   cross R over L, step L to side
        7&8   step R behind, step L to side, cross R over L
              option 7&8 "easier": triple R in place
        """,
        """
        1-4   vine left, touch R
        5&6   kick ball change R
        7-8   stomp R together, hold
        """,
        """
        1-4   rocking chair L
        5-6   step L forward, scuff R
        7-8   step R back, step L together
        """,
    ];

    private static readonly ConcurrentDictionary<(string Name, SheetChoices Choices), SheetLayout> Layouts = [];

    /// <summary>Every way of printing.</summary>
    public static IEnumerable<SheetChoices> Ways =>
        from paper in (Paper[])[Paper.A4, Paper.Letter]
        from way in (SheetChoices[])[new(), new() { IsLarge = true }, new() { IsCard = true }, new() { IsCard = true, IsLarge = true }, new() { HasDiagrams = false }]
        select way with { Paper = paper };

    /// <summary>Names of the dances of the demo club.</summary>
    public static TheoryData<string> Demo => [.. SeedTexts.Demo.Select(d => d.Name)];

    /// <summary>A dance of the demo club.</summary>
    public static SheetModel Club(string name, SheetChoices? choices = null) => Build(SeedTexts.Demo.Single(d => d.Name == name).Text, choices);

    /// <summary>The layout of a dance of the demo club; laid out once, since several tests look at it.</summary>
    public static SheetLayout Layout(string name, SheetChoices choices) => Layouts.GetOrAdd((name, choices), k => SheetLayout.Of(Club(k.Name, k.Choices)));

    /// <summary>A sheet of a text.</summary>
    public static SheetModel Build(string text, SheetChoices? choices = null)
        => SheetBuilder.Build(DanceAnalysis.Of(DanceReader.Read(text)), choices ?? SheetChoices.Usual);

    /// <summary>A text of so many eights.</summary>
    public static string Eights(int eights, string title = "Quay Wall")
    {
        List<string> text = [title, "", "by: Scuff demo", "level: improver", "walls: 2", "start: weight on L", ""];
        for (int i = 0; i < eights; i++)
        {
            text.Add($"section {i + 1}: part {i + 1} of the quay");
            text.Add(Sections[i % Sections.Length]);
            text.Add("");
        }

        text.Add("track: \"Low Water Lullaby\" by The Slipway Six, 100 bpm, intro 16, 2:58");
        return string.Join('\n', text);
    }

    /// <summary>A phrased dance of 300 counts and more: three parts, each of thirteen eights, a tag and a long order.</summary>
    public static string Phrased()
    {
        List<string> text = ["Three Harbours", "", "by: Scuff demo", "level: advanced", "sequence: A B A C tag \"Buoy\" A B C A", ""];
        foreach (string part in (string[])["A", "B", "C"])
        {
            text.Add($"part {part}");
            text.Add("");
            for (int i = 0; i < 13; i++)
            {
                text.Add($"section {i + 1}");
                text.Add(Sections[i % Sections.Length]);
                text.Add("");
            }
        }

        text.Add("tag \"Buoy\" 4 counts\n1-4   sway R, sway L, sway R, sway L\n");
        return string.Join('\n', text);
    }

    /// <summary>Sheets that are hard to lay out, with what is hard about them.</summary>
    public static IEnumerable<(string Name, SheetModel Sheet)> Hard()
    {
        string longWord = new('w', 150);
        yield return ("a word longer than a line in every place", SheetSamples.FullOf(longWord));
        yield return ("thirty words in every place", SheetSamples.FullOf(string.Join(' ', Enumerable.Repeat("breakwater", 30))));
        yield return ("nothing in any place", SheetSamples.FullOf(""));
        yield return ("a title alone", new SheetModel { Title = "Bare" });
        yield return ("no title", new SheetModel { Title = "" });
        yield return ("a phrased dance of 312 counts", Build(Phrased()));
        SheetModel eights = Build(Eights(4));
        SheetNote forty = new("note", string.Join(' ', Enumerable.Repeat("the tide comes in over the stones and goes out again while we walk along the wall", 40)));
        yield return ("a note of forty lines", eights with { Notes = [forty] });
        yield return ("a note of forty lines on a line of steps", WithFirstLine(eights, l => l with { Notes = [forty, forty] }));
        yield return ("a hundred options on a line", WithFirstLine(eights, l => l with { Options = Enumerable.Range(1, 100).Select(i => new SheetOption("easier", "1-2", $"walk {i}")).ToValueList() }));
        yield return ("a line of two thousand words", WithFirstLine(eights, l => l with { Words = string.Join(' ', Enumerable.Repeat("walk R,", 1000)) }));
        yield return ("cautions, changes and a hundred parts", eights with
        {
            Cautions = ["Mind the wet stones.", forty.Words],
            Changes = ["Section 2: the rock became a mambo."],
            Sequence = Enumerable.Range(1, 100).Select(i => $"Part{i}").ToValueList(),
        });
        Drawing tall = TestDrawing(2000, 3000);
        Drawing wide = TestDrawing(9000, 10);
        yield return ("pictures larger than the page", eights with
        {
            WallPicture = tall,
            DiagramKey = [new SheetSign(wide, "a wide sign with many words to say what it means to the dancer"), new SheetSign(tall, longWord)],
            Parts = [new SheetPart("Part", [new SheetSection("Tall", [], []) { Diagram = tall }, new SheetSection("Wide", [], []) { Diagram = wide }])],
        });
    }

    /// <summary>A picture with everything in it that a picture can have.</summary>
    public static Drawing TestDrawing(double width, double height) => new(
        width,
        height,
        [
            new DrawnShape.Outline([new PenStep.MoveTo(0, 0), new PenStep.LineTo(width, 0), new PenStep.LineTo(width, height), new PenStep.Close()], Tint.Paper, Tint.Line),
            new DrawnShape.Outline([new PenStep.MoveTo(0, height), new PenStep.CurveTo(0, 0, width, 0, width, height)], Tint.None, Tint.Ink, 2, IsDashed: true),
            new DrawnShape.Outline([new PenStep.MoveTo(1, 1), new PenStep.LineTo(5, 1), new PenStep.LineTo(5, 5), new PenStep.Close()], Tint.Ink, Tint.None),
            new DrawnShape.Label(width / 2, height / 2, "1", 8),
        ],
        "A test of the pen.");

    /// <summary>The file of a sheet.</summary>
    public static byte[] Draw(SheetModel sheet)
    {
        using MemoryStream drawn = new();
        new PdfSheetFormat().Write(sheet, drawn);
        return drawn.ToArray();
    }

    private static SheetModel WithFirstLine(SheetModel sheet, Func<SheetLine, SheetLine> change)
    {
        SheetPart part = sheet.Parts[0];
        SheetSection section = part.Sections[0];
        SheetSection changed = section with { Lines = [change(section.Lines[0]), .. section.Lines.Skip(1)] };
        return sheet with { Parts = [part with { Sections = [changed, .. part.Sections.Skip(1)] }] };
    }
}
