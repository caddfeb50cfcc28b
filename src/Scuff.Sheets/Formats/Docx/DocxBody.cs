using System.Globalization;

namespace Scuff.Sheets.Formats.Docx;

/// <summary>Writes the content of a sheet as paragraphs and tables, in the order of reading.</summary>
internal sealed class DocxBody
{
    /// <summary>The relation to the foot of the page.</summary>
    public const string FooterId = "rId5";

    /// <summary>How many columns the explanation of the foot diagrams has.</summary>
    public const int KeyColumns = 4;

    /// <summary>Scale of the signs there.</summary>
    public const double SignScale = 0.85;

    /// <summary>A section of more lines than this does not fit a page anyway, so it may break between two rows.</summary>
    public const int MostKeptRows = 24;

    private const double PictureRoom = 130;

    // the box to tick and the blank after it
    private const int BoxLetters = 3;

    private readonly DocxXml _xml;
    private readonly SheetModel _sheet;
    private readonly SheetLabels _labels;
    private readonly DocxSize _size;
    private readonly DocxPicture _pictures;

    public DocxBody(DocxXml xml, SheetModel sheet, DocxSize size)
    {
        (_xml, _sheet, _labels, _size) = (xml, sheet, sheet.Labels, size);
        _pictures = new DocxPicture(xml);
    }

    /// <summary>Words, cut into runs where their direction changes.</summary>
    /// <param name="xml">Where they go.</param>
    /// <param name="words">The words.</param>
    /// <param name="isStrong">Whether they are bold.</param>
    /// <param name="size">Size in points, or null for that of the style.</param>
    public static void Run(DocxXml xml, string words, bool isStrong = false, double? size = null)
    {
        foreach ((string run, bool isRightToLeft) in DocxText.Runs(words))
        {
            xml.Open("w:r");
            if (isStrong || size is not null || isRightToLeft)
            {
                xml.Open("w:rPr");
                if (isStrong)
                {
                    xml.Empty("w:rStyle", ("val", "Strong"));
                }

                if (size is { } points)
                {
                    int half = (int)Math.Round(points * 2, MidpointRounding.AwayFromZero);
                    xml.Empty("w:sz", ("val", half)).Empty("w:szCs", ("val", half));
                }

                if (isRightToLeft)
                {
                    xml.Empty("w:rtl");
                }

                xml.Close();
            }

            xml.Words("w:t", run, ("xml:space", "preserve")).Close();
        }
    }

    /// <summary>Writes it.</summary>
    public void Draw()
    {
        _xml.Open("w:body");
        Head();
        List(_labels.Changes, _sheet.Changes);
        List(_labels.Cautions, _sheet.Cautions);
        Music();
        if (_sheet.Sequence.Count > 0)
        {
            Paragraph("Heading1", _labels.OrderOfParts);
            Paragraph("Normal", string.Join(" · ", _sheet.Sequence));
        }

        foreach (SheetPart part in _sheet.Parts)
        {
            if (part.Heading.Length > 0)
            {
                Paragraph("Heading1", part.Heading);
            }

            foreach (SheetSection section in part.Sections)
            {
                Section(section, part.Heading.Length > 0 ? "Heading2" : "Heading1");
            }
        }

        foreach (SheetSection tag in _sheet.Tags)
        {
            Section(tag, "Heading1");
        }

        Breaks(_labels.Breaks, _sheet.Breaks);
        foreach (SheetTrack track in _sheet.Tracks)
        {
            Breaks(string.Format(CultureInfo.InvariantCulture, _labels.OnTrack, track.Name), track.Breaks);
        }

        Breaks(_labels.Ending, _sheet.Endings);
        foreach (SheetSection move in _sheet.Moves)
        {
            Section(move, "Heading1");
        }

        if (_sheet.Notes.Count > 0)
        {
            Paragraph("Heading1", _labels.Notes);
            Notes(_sheet.Notes);
        }

        Signs();
        PageSign();

        // a document ends with a paragraph, also when its last thing is a table
        _xml.Open("w:p").Open("w:pPr").Empty("w:pStyle", ("val", "End")).Close().Close();
        Page();
        _xml.Close();
    }

    private void Head()
    {
        // a title that runs from right to left begins left of the picture; LibreOffice 7.4 would mirror a picture that hangs on it
        bool keepsAway = IsInCorner && DocxText.IsRightToLeft(_sheet.Title);
        Open("Title", _sheet.Title, start: keepsAway ? DocxSize.Twips((_sheet.WallPicture!.Width * WallScale(_sheet.WallPicture)) + 14) : 0);
        Run(_xml, _sheet.Title);
        if (IsInCorner && !keepsAway)
        {
            WallsInCorner();
        }

        _xml.Close();
        if (_sheet.ByLine.Length > 0)
        {
            Paragraph("Subtitle", _sheet.ByLine);
        }

        string facts = SheetWords.WithUnits(string.Join(' ', _sheet.Facts));
        Open("Facts", facts);
        Run(_xml, facts);
        if (keepsAway)
        {
            WallsInCorner();
        }

        _xml.Close();
        if (_sheet.WallPicture is { } walls && !IsInCorner)
        {
            Open("Diagram", "");
            _pictures.Inline(walls, WallScale(walls));
            _xml.Close();
        }

        if (_sheet.Particulars.Count > 0)
        {
            Open("Key", _sheet.Particulars[0].Words);
            for (int i = 0; i < _sheet.Particulars.Count; i++)
            {
                Run(_xml, (i > 0 ? " · " : "") + _labels.LeadOf(_sheet.Particulars[i]) + " ");
                Run(_xml, _sheet.Particulars[i].Words);
            }

            _xml.Close();
        }

        if (_sheet.Key.Length > 0)
        {
            Paragraph("Key", _sheet.Key);
        }
    }

    // A narrow column has no room beside its words.
    private bool IsInCorner => _sheet.WallPicture is not null && _size.Columns == 1;

    private double WallScale(Drawings.Drawing walls)
        => Math.Min(1, Math.Min(PictureRoom / walls.Width, PictureRoom / walls.Height)) * (_sheet.IsLarge ? 1.25 : 1);

    private void WallsInCorner()
        => _pictures.Corner(_sheet.WallPicture!, WallScale(_sheet.WallPicture!), _size.Width - DocxSize.Margin, DocxSize.Edge);

    private void Music()
    {
        if (_sheet.Tracks.Count == 0)
        {
            return;
        }

        Paragraph("Heading1", _labels.Music);
        foreach (SheetTrack track in _sheet.Tracks)
        {
            Open("Normal", track.Name);
            Run(_xml, track.Name, isStrong: true);
            Run(_xml, track.Facts.Length > 0 ? " · " + SheetWords.WithUnits(track.Facts) : "");
            _xml.Close();
            if (track.Sequence.Count > 0)
            {
                Lead("Normal", _labels.Order, string.Join(" · ", track.Sequence));
            }

            Notes(track.Notes);
        }
    }

    private void Section(SheetSection section, string style)
    {
        Paragraph(style, section.Heading);
        if (section.Lines.Count > 0)
        {
            Table(section);
        }

        Notes(section.Notes, keepsNext: section.Diagram is not null);
        if (section.Diagram is { } diagram)
        {
            Open("Diagram", "");
            _pictures.Inline(diagram, Math.Min(_size.Pictures, _size.ColumnWidth / diagram.Width));
            _xml.Close();
        }
    }

    /// <summary>Whether the columns of its table are named: a few counts and steps, as of a tag, tell themselves.</summary>
    public static bool HasHead(SheetSection section) => section.Lines.Any(l => l.Facing is not null) || section.Lines.Count > 4;

    private void Table(SheetSection section)
    {
        bool hasFacing = section.Lines.Any(l => l.Facing is not null);
        int widest = section.Lines.Max(l => l.Counts.Length + (l.HasBox ? BoxLetters : 0));
        double named = HasHead(section) && _size.Columns == 1 ? (_labels.Counts.Length * 0.5) + 0.8 : 0;
        double counts = Math.Clamp(Math.Max((widest * 0.74) + 0.8, named), 3.6, 7) * _size.Body;

        // a narrow column lets the words over the facings break
        double head = (_labels.FacingAfter.Length * 0.44 * _size.Body) + (0.8 * _size.Body);
        double facing = !hasFacing ? 0 : _size.Columns > 1 ? 3.6 * _size.Body : Math.Clamp(head, 5.2 * _size.Body, 10 * _size.Body) + _size.WideFacing(section);
        int[] widths =
        [
            DocxSize.Twips(counts),
            DocxSize.Twips(_size.ColumnWidth - counts - facing),
            .. hasFacing ? (ReadOnlySpan<int>)[DocxSize.Twips(facing)] : [],
        ];
        _xml.Open("w:tbl").Open("w:tblPr")
            .Empty("w:tblStyle", ("val", "SectionTable"))
            .Empty("w:tblW", ("w", widths.Sum()), ("type", "dxa"))
            .Empty("w:tblLayout", ("type", "fixed"))
            .Empty(
                "w:tblLook",
                ("val", HasHead(section) ? "00A0" : "0080"),
                ("firstRow", HasHead(section) ? 1 : 0),
                ("lastRow", 0),
                ("firstColumn", 1),
                ("lastColumn", 0),
                ("noHBand", 0),
                ("noVBand", 0))
            .Empty("w:tblCaption", ("val", DocxText.Safe(section.Heading)))
            .Close()
            .Open("w:tblGrid");
        foreach (int width in widths)
        {
            _xml.Empty("w:gridCol", ("w", width));
        }

        _xml.Close();
        if (HasHead(section))
        {
            Row(isHead: true);
            string[] heads = [_labels.Counts, _labels.Steps, .. hasFacing ? (ReadOnlySpan<string>)[_labels.FacingAfter] : []];
            for (int i = 0; i < heads.Length; i++)
            {
                Cell(widths[i]);
                Paragraph("TableHead", heads[i]);
                _xml.Close();
            }

            _xml.Close();
        }

        bool keepsTogether = section.Lines.Count <= MostKeptRows;
        for (int i = 0; i < section.Lines.Count; i++)
        {
            bool isFollowed = section.Diagram is not null || section.Notes.Count > 0 || i < section.Lines.Count - 1;
            Line(section.Lines[i], widths, keepsTogether && isFollowed);
        }

        _xml.Close();
    }

    private void Line(SheetLine line, int[] widths, bool keepsNext)
    {
        Row(isHead: false);
        Cell(widths[0]);

        // what does not fit breaks after a comma, not after the hyphen of a span, which a word joiner (U+2060) keeps together
        string counts = line.Counts.Length > 8
            ? line.Counts.Replace(",", ", ", StringComparison.Ordinal).Replace("-", "-\u2060", StringComparison.Ordinal)
            : line.Counts;
        Paragraph("Count", line.HasBox ? "☐ " + counts : counts, keepsNext);
        _xml.Close();
        Cell(widths[1]);
        Open("Steps", line.Title + line.Words, keepsNext);
        Run(_xml, line.Title, isStrong: true);
        Run(_xml, line.Between + line.Words);
        _xml.Close();
        Notes(line.Notes, keepsNext);
        foreach (SheetOption option in line.Options)
        {
            Lead("Option", SheetWords.Capital(option.Name) + ", " + option.Counts, option.Words, keepsNext);
        }

        _xml.Close();
        if (widths.Length > 2)
        {
            Cell(widths[2]);
            Open("Facing", "", keepsNext);
            Run(_xml, line.Facing ?? "", isStrong: line.Turns);
            _xml.Close().Close();
        }

        _xml.Close();
    }

    private void Row(bool isHead)
    {
        _xml.Open("w:tr").Open("w:trPr").Empty("w:cantSplit");
        if (isHead)
        {
            _xml.Empty("w:tblHeader");
        }

        _xml.Close();
    }

    private void Cell(int width, bool isCentred = false)
    {
        _xml.Open("w:tc").Open("w:tcPr").Empty("w:tcW", ("w", width), ("type", "dxa"));
        if (isCentred)
        {
            _xml.Empty("w:vAlign", ("val", "center"));
        }

        _xml.Close();
    }

    private void Breaks(string heading, ValueList<SheetBreak> breaks)
    {
        if (breaks.Count == 0)
        {
            return;
        }

        Paragraph("Heading1", heading);
        foreach (SheetBreak pause in breaks)
        {
            Lead("ListBullet", pause.Where, pause.What);
        }
    }

    private void List(string heading, ValueList<string> sentences)
    {
        if (sentences.Count == 0)
        {
            return;
        }

        Paragraph("Heading1", heading);
        foreach (string sentence in sentences)
        {
            Paragraph("ListBullet", sentence);
        }
    }

    private void Notes(ValueList<SheetNote> notes, bool keepsNext = false)
    {
        foreach (SheetNote note in notes)
        {
            Lead("Note", SheetWords.Capital(note.Kind), note.Words, keepsNext);
        }
    }

    private void Lead(string style, string lead, string words, bool keepsNext = false)
    {
        // the direction is that of the words; a lead of ours goes along with it
        Open(style, words, keepsNext);
        if (lead.Length > 0)
        {
            Run(_xml, _labels.LeadOf(lead) + " ", isStrong: true);
        }

        Run(_xml, words);
        _xml.Close();
    }

    private void Paragraph(string style, string words, bool keepsNext = false)
    {
        Open(style, words, keepsNext);
        Run(_xml, words);
        _xml.Close();
    }

    private void Open(string style, string words, bool keepsNext = false, int start = 0)
    {
        _xml.Open("w:p").Open("w:pPr").Empty("w:pStyle", ("val", style));
        if (keepsNext)
        {
            _xml.Empty("w:keepNext");
        }

        if (DocxText.IsRightToLeft(words))
        {
            _xml.Empty("w:bidi");
        }

        if (start > 0)
        {
            _xml.Empty("w:ind", ("left", start));
        }

        _xml.Close();
    }

    private void PageSign()
    {
        if (_sheet.PageSign is { } sign)
        {
            Open("Diagram", "");
            _pictures.Inline(sign.Picture, 1, isToldBeside: true);
            _xml.Close();
            Lead("Normal", sign.Lead, sign.Address);
        }
    }

    private void Signs()
    {
        if (_sheet.DiagramKey.Count == 0)
        {
            return;
        }

        Paragraph("Heading1", _labels.DiagramKey);
        double picture = (_sheet.DiagramKey.Max(s => s.Picture.Width) * SignScale) + (0.6 * _size.Body);
        double words = (_size.ColumnWidth / KeyColumns) - picture;
        _xml.Open("w:tbl").Open("w:tblPr")
            .Empty("w:tblW", ("w", DocxSize.Twips(_size.ColumnWidth)), ("type", "dxa"))
            .Empty("w:tblLayout", ("type", "fixed"))
            .Open("w:tblCellMar")
            .Empty("w:left", ("w", 0), ("type", "dxa"))
            .Empty("w:right", ("w", DocxSize.Twips(0.6 * _size.Body)), ("type", "dxa"))
            .Close()
            .Empty("w:tblCaption", ("val", DocxText.Safe(_labels.DiagramKey)))
            .Close()
            .Open("w:tblGrid");
        for (int i = 0; i < KeyColumns; i++)
        {
            _xml.Empty("w:gridCol", ("w", DocxSize.Twips(picture))).Empty("w:gridCol", ("w", DocxSize.Twips(words)));
        }

        _xml.Close();
        for (int at = 0; at < _sheet.DiagramKey.Count; at += KeyColumns)
        {
            Row(isHead: false);
            bool isFollowed = at + KeyColumns < _sheet.DiagramKey.Count;
            for (int i = at; i < at + KeyColumns; i++)
            {
                SheetSign? sign = i < _sheet.DiagramKey.Count ? _sheet.DiagramKey[i] : null;
                Cell(DocxSize.Twips(picture), isCentred: true);
                Open("Sign", "", isFollowed);
                if (sign is not null)
                {
                    _pictures.Inline(sign.Picture, SignScale, isToldBeside: true);
                }

                _xml.Close().Close();
                Cell(DocxSize.Twips(words), isCentred: true);
                Paragraph("Sign", sign?.Words ?? "", isFollowed);
                _xml.Close();
            }

            _xml.Close();
        }

        _xml.Close();
    }

    private void Page()
    {
        int margin = DocxSize.Twips(DocxSize.Margin);
        int edge = DocxSize.Twips(DocxSize.Edge);
        _xml.Open("w:sectPr").Empty("w:footerReference", ("type", "default"), ("r:id", FooterId));
        _xml.Empty("w:pgSz", ("w", DocxSize.Twips(_size.Width)), ("h", DocxSize.Twips(_size.Height)))
            .Empty(
                "w:pgMar",
                ("top", edge),
                ("right", margin),
                ("bottom", edge),
                ("left", margin),
                ("header", edge / 2),
                ("footer", edge / 2),
                ("gutter", 0))
            .Empty("w:cols", ("num", _size.Columns), ("space", DocxSize.Twips(DocxSize.Gutter)))
            .Close();
    }
}
