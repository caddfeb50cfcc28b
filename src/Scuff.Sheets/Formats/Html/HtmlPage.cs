using System.Globalization;

namespace Scuff.Sheets.Formats.Html;

/// <summary>Draws one sheet as a page. What is written by hand may run either way: each such text finds its own direction.</summary>
internal sealed class HtmlPage
{
    // three digits and two letters, on a phone
    private const int MostUnbroken = 5;

    // a facing and no more; a level is longer
    private const int UsualFacing = 8;

    private readonly TextWriter _writer;
    private readonly SheetModel _sheet;
    private readonly SheetLabels _labels;
    private readonly SvgWriter _pictures = new("picture-");

    /// <summary>A page for a sheet.</summary>
    /// <param name="writer">Where it goes.</param>
    /// <param name="sheet">The sheet.</param>
    public HtmlPage(TextWriter writer, SheetModel sheet) => (_writer, _sheet, _labels) = (writer, sheet, sheet.Labels);

    /// <summary>Draws it.</summary>
    public void Draw()
    {
        string[] kinds = [.. _sheet.IsLarge ? (ReadOnlySpan<string>)["large"] : [], .. _sheet.IsCard ? (ReadOnlySpan<string>)["card"] : [], .. _sheet.IsNotice ? (ReadOnlySpan<string>)["notice"] : []];
        Line("<!DOCTYPE html>");
        Line($"<html lang=\"{Safe(_sheet.Language)}\"{(kinds.Length > 0 ? $" class=\"{string.Join(' ', kinds)}\"" : "")}>");
        Line("<head>");
        Line("<meta charset=\"utf-8\">");
        Line("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">");
        Line($"<title>{Safe(_sheet.Title)}</title>");
        Line("<style>");
        Line(HtmlStyle.Of(_sheet));
        Line("</style>");
        Line("</head>");
        Line("<body>");
        Line("<main>");
        Head();
        Sentences(_labels.Changes, _sheet.Changes);
        Sentences(_labels.Cautions, _sheet.Cautions);
        Music();
        Line("<div class=\"steps\">");
        Steps();
        Line("</div>");
        Breaks();
        foreach (SheetSection move in _sheet.Moves)
        {
            Section(move, 2, withFacing: false);
        }

        if (_sheet.Notes.Count > 0)
        {
            Block(_labels.Notes, () => Notes(_sheet.Notes));
        }

        Signs();
        PageSign();
        Foot();
        Line("</main>");
        Line("</body>");
        Line("</html>");
    }

    private static string Safe(string words) => HtmlText.Safe(words);

    private void Head()
    {
        Line("<header>");
        Line("<div class=\"told\">");
        Line($"<h1 dir=\"auto\">{Safe(_sheet.Title)}</h1>");
        if (_sheet.ByLine.Length > 0)
        {
            Paragraph("by", _sheet.ByLine);
        }

        Paragraph("facts", SheetWords.WithUnits(string.Join(' ', _sheet.Facts)));
        if (_sheet.Key.Length > 0)
        {
            Paragraph("key", _sheet.Key);
        }

        Line("</div>");
        if (_sheet.WallPicture is { } walls)
        {
            Line($"<figure class=\"walls\"><figcaption class=\"away\">{Safe(_labels.Walls)}</figcaption>{_pictures.Whole(walls)}</figure>");
        }

        Line("</header>");
    }

    private void Music()
    {
        if (_sheet.Tracks.Count == 0)
        {
            return;
        }

        Block(_labels.Music, () =>
        {
            foreach (SheetTrack track in _sheet.Tracks)
            {
                Line($"<p class=\"track\" dir=\"auto\"><b>{Safe(track.Name)}</b></p>");
                if (track.Facts.Length > 0)
                {
                    Paragraph("", SheetWords.WithUnits(track.Facts));
                }

                if (track.Sequence.Count > 0)
                {
                    Paragraph("", _labels.LeadOf(_labels.Order) + " " + string.Join(" · ", track.Sequence));
                }

                Notes(track.Notes);
            }
        });
    }

    private void Steps()
    {
        if (_sheet.Sequence.Count > 0)
        {
            Block(_labels.OrderOfParts, () => Paragraph("", string.Join(" · ", _sheet.Sequence)));
        }

        foreach (SheetPart part in _sheet.Parts)
        {
            if (part.Heading.Length > 0)
            {
                Line($"<h2 class=\"part\" dir=\"auto\">{Safe(part.Heading)}</h2>");
            }

            int level = part.Heading.Length > 0 ? 3 : 2;
            foreach (SheetSection section in part.Sections)
            {
                Section(section, level, withFacing: true);
            }
        }

        foreach (SheetSection tag in _sheet.Tags)
        {
            Section(tag, 2, withFacing: false);
        }
    }

    private void Section(SheetSection section, int level, bool withFacing)
    {
        Line("<section>");
        Line(section.Lines.Any(l => l.Facing is { Length: > UsualFacing }) ? "<table class=\"wide\">" : "<table>");
        Line($"<caption><h{level} dir=\"auto\">{Safe(section.Heading)}</h{level}></caption>");
        Line($"<thead><tr>{ColumnHead("counts", _labels.Counts)}{ColumnHead("words", _labels.Steps)}{(withFacing ? ColumnHead("facing", _labels.FacingAfter) : "")}</tr></thead>");
        Line("<tbody>");
        foreach (SheetLine line in section.Lines)
        {
            string box = line.HasBox ? "<span class=\"box\" aria-hidden=\"true\"></span>" : "";
            string title = line.Title.Length > 0 ? $"<b>{Safe(line.Title)}</b>{line.Between}" : "";
            _writer.Write($"<tr><th scope=\"row\">{box}{Counts(line.Counts)}</th><td dir=\"auto\">{title}{Safe(line.Words)}");
            Notes(line.Notes);
            foreach (SheetOption option in line.Options)
            {
                _writer.Write($"<p dir=\"auto\"><b>{Safe(_labels.LeadOf(option))}</b> {Safe(option.Words)}</p>");
            }

            _writer.Write("</td>");
            if (withFacing)
            {
                string facing = line.Facing is { } word ? FacingSign.Of(word) + Safe(word) : "";
                _writer.Write($"<td class=\"{(line.Turns ? "facing turns" : "facing")}\">{facing}</td>");
            }

            Line("</tr>");
        }

        Line("</tbody>");
        Line("</table>");
        Notes(section.Notes);
        if (section.Diagram is { } diagram)
        {
            Line(_pictures.InPieces(diagram));
        }

        Line("</section>");
    }

    // Counts are broken after a comma only, as long as the column is broad enough for what stands between two of them.
    private static string Counts(string counts) => string.Join("<wbr/>", counts
        .Replace(",", ",\n", StringComparison.Ordinal)
        .Split('\n', StringSplitOptions.RemoveEmptyEntries)
        .Select(c => c.Length <= MostUnbroken ? $"<span class=\"one\">{Safe(c)}</span>" : Safe(c)));

    // Seen, the columns explain themselves; heard, each cell is told with its head.
    private static string ColumnHead(string column, string words) => $"<th scope=\"col\" class=\"{column}\"><span class=\"away\">{Safe(words)}</span></th>";

    private void Breaks()
    {
        if (_sheet.Breaks.Count > 0)
        {
            Block(_labels.Breaks, () => Breaks(_sheet.Breaks));
        }

        foreach (SheetTrack track in _sheet.Tracks.Where(t => t.Breaks.Count > 0))
        {
            Block(string.Format(CultureInfo.InvariantCulture, _labels.OnTrack, track.Name), () => Breaks(track.Breaks));
        }

        if (_sheet.Endings is { Count: > 0 } endings)
        {
            Block(_labels.Ending, () => Breaks(endings));
        }
    }

    private void Breaks(ValueList<SheetBreak> breaks)
    {
        Line("<ul>");
        foreach (SheetBreak pause in breaks)
        {
            Line($"<li dir=\"auto\"><b>{Safe(_labels.LeadOf(pause.Where))}</b> {Safe(pause.What)}</li>");
        }

        Line("</ul>");
    }

    private void Sentences(string heading, ValueList<string> sentences)
    {
        if (sentences.Count == 0)
        {
            return;
        }

        Block(heading, () =>
        {
            Line("<ul>");
            foreach (string sentence in sentences)
            {
                Line($"<li dir=\"auto\">{Safe(sentence)}</li>");
            }

            Line("</ul>");
        });
    }

    private void Signs()
    {
        if (_sheet.DiagramKey.Count == 0)
        {
            return;
        }

        Block(_labels.DiagramKey, () =>
        {
            Line("<ul class=\"signs\">");
            foreach (SheetSign sign in _sheet.DiagramKey)
            {
                Line($"<li>{_pictures.Whole(sign.Picture, isToldBeside: true)}<span>{Safe(sign.Words)}</span></li>");
            }

            Line("</ul>");
        });
    }

    private void PageSign()
    {
        if (_sheet.PageSign is { } sign)
        {
            string address = Safe(sign.Address);
            Line($"<section class=\"scan\">{_pictures.Whole(sign.Picture, isToldBeside: true)}<p><b>{Safe(_labels.LeadOf(sign.Lead))}</b> <a href=\"{address}\">{address}</a></p></section>");
        }
    }

    private void Foot()
    {
        if (_sheet.Particulars.Count > 0)
        {
            Line("<footer class=\"foot\">");
            foreach (SheetNote particular in _sheet.Particulars)
            {
                Paragraph("", _labels.LeadOf(particular) + " " + particular.Words);
            }

            Line("</footer>");
        }
    }

    private void Notes(ValueList<SheetNote> notes)
    {
        foreach (SheetNote note in notes)
        {
            _writer.Write($"<p class=\"note\" dir=\"auto\"><b>{Safe(_labels.LeadOf(note))}</b> {Safe(note.Words)}</p>");
        }
    }

    private void Block(string heading, Action content)
    {
        Line("<section>");
        Line($"<h2 dir=\"auto\">{Safe(heading)}</h2>");
        content();
        Line("</section>");
    }

    private void Paragraph(string style, string words)
        => Line($"<p{(style.Length > 0 ? $" class=\"{style}\"" : "")} dir=\"auto\">{Safe(words)}</p>");

    private void Line(string html)
    {
        _writer.Write(html);
        _writer.Write('\n');
    }
}
