namespace Scuff.Sheets;

/// <summary>The lines of an evening under their headings.</summary>
internal static class EveningSections
{
    /// <summary>Makes the sections.</summary>
    /// <param name="paper">The evening.</param>
    /// <param name="first">What stands over lines that come before any heading.</param>
    /// <param name="draw">Draws a line.</param>
    public static ValueList<SheetSection> Of(EveningPaper paper, string first, Func<EveningLine, SheetLine> draw)
    {
        List<(string Heading, List<SheetLine> Lines)> sections = [];
        foreach (EveningLine line in paper.Lines)
        {
            if (sections.Count == 0 || (line.Heading.Length > 0 && line.Heading != sections[^1].Heading))
            {
                sections.Add((line.Heading.Length > 0 ? line.Heading : first, []));
            }

            sections[^1].Lines.Add(draw(line));
        }

        return [.. sections.Select(s => new SheetSection(s.Heading, s.Lines.ToValueList(), default))];
    }
}
