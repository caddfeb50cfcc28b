using System.Globalization;
using System.Text;

namespace Scuff.Sheets.Formats;

/// <summary>
/// A page that stands alone: no outside file, no script. Counts, steps and facing of a section are a real table, so that a screen
/// reader can walk it; print turns everything to ink.
/// </summary>
public sealed class HtmlSheetFormat : ISheetFormat
{
    public string Name => "html";

    public string Extension => ".html";

    public string MediaType => "text/html; charset=utf-8";

    public bool IsText => true;

    public void Write(SheetModel sheet, Stream stream)
    {
        using StreamWriter writer = TextOutput.Open(stream);
        new Page(writer, sheet.Labels).Draw(sheet);
    }

    // Sizes are the look's scale of 16 px and a ratio of 1.25; lines of words stay below 75 characters.
    private static string Style() => $$"""
        :root { color-scheme: light dark; {{Tokens(Look.Light)}} }
        @media (prefers-color-scheme: dark) { :root { {{Tokens(Look.Dark)}} } }
        @media (prefers-contrast: more) { :root { --soft: var(--ink); --line: var(--ink); --tide: var(--ink); --floor: var(--paper); } }
        * { box-sizing: border-box; }
        body { margin: 0; background: var(--paper); color: var(--ink);
          font: 1.0625rem/1.5 "Atkinson Hyperlegible Next", "Atkinson Hyperlegible", Verdana, "DejaVu Sans", sans-serif; }
        main { max-width: 50rem; margin: 0 auto; padding: 2.5rem 1.25rem 4rem; }
        h1 { font-size: 2.4375rem; line-height: 1.15; margin: 0; }
        h2 { font-size: 1.25rem; line-height: 1.3; margin: 2.25rem 0 0.5rem; }
        h2.part { font-size: 1.5625rem; margin-top: 3rem; }
        p { margin: 0.5rem 0; max-width: 44rem; }
        .by, .key, .note { color: var(--soft); }
        .by { font-size: 1.25rem; margin-top: 0.25rem; }
        .facts { font-size: 1.25rem; margin-top: 1rem; }
        .key { font-size: 0.875rem; margin-top: 1rem; }
        table { width: 100%; border-collapse: collapse; }
        caption { text-align: left; }
        caption h2, caption h3 { display: inline-block; }
        h3 { font-size: 1.25rem; line-height: 1.3; margin: 1.75rem 0 0.5rem; }
        thead th { font-size: 0.875rem; font-weight: normal; color: var(--soft); text-align: left; padding: 0 0 0.25rem; }
        tbody th, td { vertical-align: top; text-align: left; padding: 0.375rem 0; border-top: 1px solid var(--line); }
        tbody th { width: 6.5rem; padding-right: 1rem; font-weight: bold; font-variant-numeric: tabular-nums; }
        th.facing, td.facing { width: 6.5rem; text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; }
        td.facing { color: var(--soft); }
        td.turns { color: var(--ink); font-weight: bold; }
        td.facing svg { width: 1.25rem; height: 1.25rem; vertical-align: -0.25rem; margin-right: 0.375rem; }
        td p { margin: 0.125rem 0 0; }
        .option b, .note b { font-weight: bold; }
        @media (max-width: 34rem) { tbody th { width: 4rem; padding-right: 0.5rem; } th.facing, td.facing { width: 4rem; } td.facing svg { display: none; } h1 { font-size: 1.9375rem; } }
        ul { margin: 0.5rem 0; padding: 0; list-style: none; max-width: 44rem; }
        li { margin: 0.375rem 0; }
        @media print {
          @page { margin: 16mm; }
          :root { --paper: #FFFFFF; --floor: #FFFFFF; --ink: #000000; --soft: #000000; --line: #000000; --lamp: #000000; --buoy: #000000; --tide: #000000; }
          body { font-size: 11pt; line-height: 1.35; }
          main { max-width: none; padding: 0; }
          h1 { font-size: 22pt; } .facts, .by { font-size: 12pt; } h2, h3 { font-size: 12pt; margin-top: 12pt; } h2.part { font-size: 15pt; }
          tr, li, h2, h3, caption { break-inside: avoid; } h2, h3, caption, thead { break-after: avoid; } section.block { break-inside: avoid; }
        }
        """;

    private static string Tokens(Look look) => string.Join(
        ' ',
        $"--paper: {look.Paper};",
        $"--floor: {look.Floor};",
        $"--ink: {look.Ink};",
        $"--soft: {look.Soft};",
        $"--line: {look.Line};",
        $"--lamp: {look.Lamp};",
        $"--buoy: {look.Buoy};",
        $"--tide: {look.Tide};");

    private sealed class Page(TextWriter writer, SheetLabels labels)
    {
        public void Draw(SheetModel sheet)
        {
            Line("<!DOCTYPE html>");
            Line($"<html lang=\"{Text(sheet.Language)}\">");
            Line("<head>");
            Line("<meta charset=\"utf-8\">");
            Line("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">");
            Line($"<title>{Text(sheet.Title)}</title>");
            Line("<style>");
            Line(Style());
            Line("</style>");
            Line("</head>");
            Line("<body>");
            Line("<main>");
            Head(sheet);
            Music(sheet);
            foreach (SheetPart part in sheet.Parts)
            {
                if (part.Heading.Length > 0)
                {
                    Line($"<h2 class=\"part\">{Text(part.Heading)}</h2>");
                }

                int level = part.Heading.Length > 0 ? 3 : 2;
                foreach (SheetSection section in part.Sections)
                {
                    Section(section, level, withFacing: true);
                }
            }

            foreach (SheetSection tag in sheet.Tags)
            {
                Section(tag, 2, withFacing: false);
            }

            if (sheet.Sequence.Count > 0)
            {
                Block(labels.OrderOfParts, () => Paragraph("", string.Join("  ", sheet.Sequence)));
            }

            if (sheet.Breaks.Count > 0)
            {
                Block(labels.Breaks, () => Breaks(sheet.Breaks));
            }

            foreach (SheetTrack track in sheet.Tracks.Where(t => t.Breaks.Count > 0))
            {
                Block(string.Format(CultureInfo.InvariantCulture, labels.OnTrack, track.Name), () => Breaks(track.Breaks));
            }

            if (sheet.Endings is { Count: > 0 } endings)
            {
                Block(labels.Ending, () => Breaks(endings));
            }

            foreach (SheetSection move in sheet.Moves)
            {
                Section(move, 2, withFacing: false);
            }

            if (sheet.Notes.Count > 0)
            {
                Block(labels.Notes, () => Notes(sheet.Notes));
            }

            Line("</main>");
            Line("</body>");
            Line("</html>");
        }

        private void Head(SheetModel sheet)
        {
            Line("<header>");
            Line($"<h1>{Text(sheet.Title)}</h1>");
            if (sheet.Author.Length > 0)
            {
                Paragraph("by", labels.By + " " + sheet.Author);
            }

            Paragraph("facts", string.Join(' ', sheet.Facts));
            foreach (SheetNote particular in sheet.Particulars)
            {
                Paragraph("", SheetWords.Capital(particular.Kind) + ": " + particular.Words);
            }

            if (sheet.Key.Length > 0)
            {
                Paragraph("key", sheet.Key);
            }

            Line("</header>");
        }

        private void Music(SheetModel sheet)
        {
            if (sheet.Tracks.Count == 0)
            {
                return;
            }

            Block(labels.Music, () =>
            {
                foreach (SheetTrack track in sheet.Tracks)
                {
                    Line($"<p><b>{Text(track.Name)}</b>{(track.Facts.Length > 0 ? "<br>" + Text(track.Facts) : "")}</p>");
                    if (track.Sequence.Count > 0)
                    {
                        Paragraph("", labels.Order + ": " + string.Join("  ", track.Sequence));
                    }

                    Notes(track.Notes);
                }
            });
        }

        private void Section(SheetSection section, int level, bool withFacing)
        {
            Line("<section>");
            Line("<table>");
            Line($"<caption><h{level}>{Text(section.Heading)}</h{level}></caption>");
            Line($"<thead><tr><th scope=\"col\">{Text(labels.Counts)}</th><th scope=\"col\">{Text(labels.Steps)}</th>"
                + (withFacing ? $"<th scope=\"col\" class=\"facing\">{Text(labels.FacingAfter)}</th>" : "") + "</tr></thead>");
            Line("<tbody>");
            foreach (SheetLine line in section.Lines)
            {
                writer.Write($"<tr><th scope=\"row\">{Text(line.Counts)}</th><td>{Text(line.Words)}");
                Notes(line.Notes);
                foreach (SheetOption option in line.Options)
                {
                    writer.Write($"<p class=\"option\"><b>{Text(SheetWords.Capital(option.Name))}, {Text(option.Counts)}:</b> {Text(option.Words)}</p>");
                }

                writer.Write("</td>");
                if (withFacing)
                {
                    writer.Write($"<td class=\"{(line.Turns ? "facing turns" : "facing")}\">{Clock(line.Facing)}</td>");
                }

                Line("</tr>");
            }

            Line("</tbody>");
            Line("</table>");
            Notes(section.Notes);
            Line("</section>");
        }

        private void Breaks(ValueList<SheetBreak> breaks)
        {
            Line("<ul>");
            foreach (SheetBreak pause in breaks)
            {
                Line($"<li><b>{Text(pause.Where)}:</b> {Text(pause.What)}</li>");
            }

            Line("</ul>");
        }

        private void Notes(ValueList<SheetNote> notes)
        {
            foreach (SheetNote note in notes)
            {
                writer.Write($"<p class=\"note\"><b>{Text(SheetWords.Capital(note.Kind))}:</b> {Text(note.Words)}</p>");
            }
        }

        private void Block(string heading, Action content)
        {
            Line("<section class=\"block\">");
            Line($"<h2>{Text(heading)}</h2>");
            content();
            Line("</section>");
        }

        private void Paragraph(string style, string words)
            => Line($"<p{(style.Length > 0 ? $" class=\"{style}\"" : "")}>{Text(words)}</p>");

        // The hand repeats what the word says, for eyes at a distance; a screen reader gets the word.
        private static string Clock(string? facing)
        {
            if (facing is null)
            {
                return "";
            }

            string[] parts = facing.Split(':');
            double degrees = ((int.Parse(parts[0], CultureInfo.InvariantCulture) % 12) * 30)
                + (int.Parse(parts[1], CultureInfo.InvariantCulture) * 0.5);
            return string.Create(
                CultureInfo.InvariantCulture,
                $"<svg viewBox=\"0 0 20 20\" aria-hidden=\"true\"><circle cx=\"10\" cy=\"10\" r=\"8.5\" fill=\"none\" stroke=\"var(--line)\" stroke-width=\"1.5\"/><path d=\"M10 11.5V3.5\" transform=\"rotate({degrees} 10 10)\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"2.5\" stroke-linecap=\"round\"/></svg>{Text(facing)}");
        }

        private void Line(string html)
        {
            writer.Write(html);
            writer.Write('\n');
        }

        /// <summary>Text made safe: nothing in it can be taken for markup, in an element or in an attribute.</summary>
        private static string Text(string words)
        {
            StringBuilder safe = new(words.Length);
            for (int i = 0; i < words.Length; i++)
            {
                char c = words[i];
                switch (c)
                {
                    case '&':
                        safe.Append("&amp;");
                        break;
                    case '<':
                        safe.Append("&lt;");
                        break;
                    case '>':
                        safe.Append("&gt;");
                        break;
                    case '"':
                        safe.Append("&quot;");
                        break;
                    case '\'':
                        safe.Append("&#39;");
                        break;
                    case '\t' or '\n':
                        safe.Append(c);
                        break;
                    default:
                        Append(safe, words, ref i);
                        break;
                }
            }

            return safe.ToString();
        }

        // Control characters and halves of a pair are no text in HTML.
        private static void Append(StringBuilder safe, string words, ref int i)
        {
            char c = words[i];
            if (char.IsHighSurrogate(c) && i + 1 < words.Length && char.IsLowSurrogate(words[i + 1]))
            {
                safe.Append(c).Append(words[++i]);
            }
            else if (!char.IsControl(c) && !char.IsSurrogate(c) && c is not ('\uFFFE' or '\uFFFF'))
            {
                safe.Append(c);
            }
        }
    }
}
