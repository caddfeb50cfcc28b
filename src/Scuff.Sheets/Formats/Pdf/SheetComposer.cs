using System.Globalization;
using Scuff.Sheets.Drawings;

namespace Scuff.Sheets.Formats.Pdf;

/// <summary>Sets everything that stands on a sheet, block by block, for a column of the paper.</summary>
internal sealed class SheetComposer
{
    // Distance of lines of one paragraph, from baseline to baseline, in parts of the size.
    private const double Leading = 1.3;
    private const double PictureRoom = 140;
    private const double PictureGap = 18;

    private readonly SheetModel _sheet;
    private readonly PageShape _shape;
    private readonly double _body;
    private readonly double _small;
    private readonly double _pictures;
    private readonly double _air;
    private readonly bool _isBeside;
    private readonly double _counts;
    private readonly double _box;
    private readonly double _facing;
    private int _turn;
    private bool _lacksLetters;

    public SheetComposer(SheetModel sheet, PageShape shape, PrintSize size)
    {
        _sheet = sheet;
        _shape = shape;
        _body = size.Body;
        _small = size.Body * 0.9;
        _pictures = size.Pictures;
        _air = size.Body * size.Air;
        _isBeside = size.IsBeside;
        double widest = AllSections().SelectMany(s => s.Lines).Select(l => TypeSetter.One(l.Counts, _body, isBold: true).Width).DefaultIfEmpty(0).Max();
        _box = AllSections().SelectMany(s => s.Lines).Any(l => l.HasBox) ? 1.5 * _body : 0;
        double head = sheet.IsCard ? 0 : TypeSetter.One(sheet.Labels.Counts, HeadSize).Width;
        _counts = _box + Math.Clamp(Math.Max(widest, head) + _body, 3.6 * _body, 7 * _body);
        double facing = AllSections().SelectMany(s => s.Lines).Select(l => l.Facing).OfType<string>().Append("10:30").Max(f => TypeSetter.One(f, _body, isBold: true).Width);
        _facing = ClockSize + (0.35 * _body) + facing;
    }

    /// <summary>The root of the tags.</summary>
    public Tag Document { get; } = new(null, "Document");

    private double Width => _shape.ColumnWidth;

    // What the feet have when they stand beside their section.
    private double SideWidth => Width * 0.42;

    private double ClockSize => 0.95 * _body;

    private double HeadSize => 0.78 * _body;

    private double FootSize => _sheet.IsLarge ? 11 : 8;

    /// <summary>The blocks in the order of reading.</summary>
    public IEnumerable<Block> Compose()
    {
        yield return Head();
        if (_sheet.Tracks.Count > 0)
        {
            yield return Music();
        }

        if (_sheet.Sequence.Count > 0)
        {
            yield return Paragraphs(_sheet.Labels.OrderOfParts, [[new Wording(string.Join(" · ", _sheet.Sequence))]]);
        }

        foreach (SheetPart part in _sheet.Parts)
        {
            string heading = part.Heading;
            foreach (SheetSection section in part.Sections)
            {
                yield return Section(section, heading, part.Heading.Length > 0 ? "H3" : "H2");
                heading = "";
            }

            if (heading.Length > 0)
            {
                yield return new Block(Heading(heading, "H2", 1.35, keepsNext: false));
            }
        }

        foreach (SheetSection tag in _sheet.Tags)
        {
            yield return Section(tag, "", "H2");
        }

        if (_sheet.Breaks.Count > 0)
        {
            yield return Breaks(_sheet.Labels.Breaks, _sheet.Breaks);
        }

        foreach (SheetTrack track in _sheet.Tracks.Where(t => t.Breaks.Count > 0))
        {
            yield return Breaks(string.Format(CultureInfo.InvariantCulture, _sheet.Labels.OnTrack, track.Name), track.Breaks);
        }

        if (_sheet.Endings.Count > 0)
        {
            yield return Breaks(_sheet.Labels.Ending, _sheet.Endings);
        }

        foreach (SheetSection move in _sheet.Moves)
        {
            yield return Section(move, "", "H2");
        }

        if (_sheet.Notes.Count > 0)
        {
            yield return Paragraphs(_sheet.Labels.Notes, _sheet.Notes.Select(Note));
        }

        if (_sheet.Cautions.Count > 0)
        {
            yield return List(_sheet.Labels.Cautions, _sheet.Cautions.Select(c => (Wording[])[new Wording(c)]));
        }

        if (_sheet.Changes.Count > 0)
        {
            yield return List(_sheet.Labels.Changes, _sheet.Changes.Select(c => (Wording[])[new Wording(c)]));
        }

        if (_sheet.DiagramKey.Count > 0)
        {
            yield return DiagramKey();
        }

        if (_sheet.PageSign is { } sign)
        {
            yield return PageSign(sign);
        }

        // all blocks are set by now
        if (_lacksLetters)
        {
            yield return new Block(Lines(Document.Add("P"), [new Wording(_sheet.Labels.LettersMissing)], _small, 0, Width, _air));
        }
    }

    /// <summary>A page with the line at its foot: title, version and date to the left, number to the right.</summary>
    public PlacedPage WithFoot(PlacedPage page, int number, int count)
    {
        double y = _shape.Bottom + PageShape.Foot - (FootSize * TypeSetter.Height);
        SetLine pages = TypeSetter.One(string.Format(CultureInfo.InvariantCulture, _sheet.Labels.PageOf, number, count), FootSize);
        string name = _sheet.Edition.Length > 0 ? _sheet.Title + " · " + _sheet.Edition : _sheet.Title;
        SetLine title = TypeSetter.Short(name, FootSize, _shape.Breadth - pages.Width - PictureGap);
        return new PlacedPage(
        [
            .. page.Boxes,
            new PageBox.Type(null, _turn, PageShape.Margin, y, title),
            new PageBox.Type(null, _turn + 1, _shape.Width - PageShape.Margin - pages.Width, y, pages),
        ]);
    }

    private Wording[] Note(SheetNote note) => note.Kind.Length == 0
        ? [new Wording(note.Words)]
        : [new Wording(_sheet.Labels.LeadOf(note), IsBold: true), new Wording(" " + note.Words)];

    // The same words apart from what stands before them.
    private static IEnumerable<Wording> After(Wording[] words) => words.Select((w, i) => i == 0 ? w with { Words = " " + w.Words } : w);

    private IEnumerable<SheetSection> AllSections() => _sheet.Parts.SelectMany(p => p.Sections).Concat(_sheet.Tags).Concat(_sheet.Moves);

    private Block Head()
    {
        List<Slice> slices = [];
        Drawing? picture = _sheet.WallPicture;
        double scale = picture is null ? 0 : Math.Min(_sheet.IsLarge ? 1.25 : _pictures, Math.Min(Math.Min(PictureRoom, Width) / picture.Width, PictureRoom / picture.Height));
        bool isBeside = picture is not null && picture.Width * scale < Width * 0.4;
        double narrow = isBeside ? Width - (picture!.Width * scale) - PictureGap : Width;
        double room = isBeside ? picture!.Height * scale : 0;

        void Add(string tag, IEnumerable<Wording> words, double size, double gap)
        {
            double depth = slices.Sum(s => s.Gap + s.Height);
            slices.AddRange(Lines(Document.Add(tag), words, size, 0, depth < room ? narrow : Width, slices.Count == 0 ? 0 : gap, keepsNext: false));
        }

        Add("H1", [new Wording(_sheet.Title, IsBold: true)], _body * (_sheet.IsCard ? 1.7 : 2.2), 0);
        int pictureTurn = _turn++;
        if (_sheet.ByLine.Length > 0)
        {
            Add("P", [new Wording(_sheet.ByLine)], _body * 1.1, 0.1 * _air);
        }

        Add("P", [new Wording(string.Join(' ', _sheet.Facts))], _body * 1.1, 0.55 * _air);
        if (_sheet.Particulars.Count > 0)
        {
            Add("P", _sheet.Particulars.SelectMany((p, i) => i == 0 ? Note(p) : [new Wording(" ·"), .. After(Note(p))]), _small, 0.45 * _air);
        }

        if (_sheet.Key.Length > 0)
        {
            Add("P", [new Wording(_sheet.Key)], _small, 0.45 * _air);
        }

        if (picture is not null)
        {
            // in a narrow column it stands below the words
            Beside(slices, isBeside ? 0 : slices.Count, isBeside ? pictureTurn : _turn++, isBeside ? Width - (picture.Width * scale) : 0, picture, scale);
        }

        return new Block(slices);
    }

    // The picture stands to the right of the strips, which stay on one page with it, and is told in its turn.
    private void Beside(List<Slice> slices, int first, int turn, double x, Drawing picture, double scale)
    {
        PageBox.Picture box = new(
            new Tag(Document, "Figure") { Alternative = picture.Words },
            turn,
            x,
            0,
            picture,
            scale);
        if (first == slices.Count)
        {
            slices.Add(new Slice(0.4 * _air, box.Height, false, [box]));
            return;
        }

        double depth = 0;
        slices[first] = slices[first] with { Boxes = [.. slices[first].Boxes, box] };
        for (int i = first; i < slices.Count && depth < box.Height; i++)
        {
            depth += (i == first ? 0 : slices[i].Gap) + slices[i].Height;
            slices[i] = slices[i] with { KeepsNext = slices[i].KeepsNext || depth < box.Height };
        }

        if (depth < box.Height)
        {
            slices.Add(new Slice(0, box.Height - depth, false, []));
        }
    }

    private Block Music()
    {
        List<Slice> slices = Heading(_sheet.Labels.Music, "H2", 1.15);
        foreach (SheetTrack track in _sheet.Tracks)
        {
            Wording[] facts = track.Facts.Length > 0 ? [new Wording(" · " + track.Facts)] : [];
            slices.AddRange(Lines(Document.Add("P"), [new Wording(track.Name, IsBold: true), .. facts], _body, 0, Width, 0.25 * _air));
            if (track.Sequence.Count > 0)
            {
                slices.AddRange(Lines(
                    Document.Add("P"),
                    [new Wording(_sheet.Labels.LeadOf(_sheet.Labels.Order), IsBold: true), new Wording(" " + string.Join(" · ", track.Sequence))],
                    _body,
                    0,
                    Width,
                    0.15 * _air));
            }

            foreach (SheetNote note in track.Notes)
            {
                slices.AddRange(Lines(Document.Add("P"), Note(note), _small, 0, Width, 0.15 * _air));
            }
        }

        return new Block(slices);
    }

    private Block Section(SheetSection section, string partHeading, string level)
    {
        List<Slice> slices = [];
        if (partHeading.Length > 0)
        {
            slices.AddRange(Heading(partHeading, "H2", 1.35));
        }

        Drawing? side = section.Diagram is { } drawn && _isBeside ? PieceRows.Fit(drawn, SideWidth / _pictures) : null;
        double sideScale = side is null ? 0 : Math.Min(_pictures, SideWidth / side.Width);
        double width = side is null ? Width : Width - SideWidth - PictureGap;
        int beside = slices.Count;
        slices.AddRange(Heading(section.Heading, level, 1.15, partHeading.Length > 0 ? 0.5 : 1.1, width: width));
        int headTurn = _turn;
        _turn += 3;
        Tag table = Document.Add("Table");
        bool hasFacing = section.Lines.Any(l => l.Facing is not null);
        foreach (SheetLine line in section.Lines)
        {
            slices.AddRange(Row(table, line, width, hasFacing).Select(s => s with { IsOfTable = true }));
        }

        foreach (SheetNote note in section.Notes)
        {
            slices.AddRange(Lines(Document.Add("P"), Note(note), _small, _counts, width - _counts, 0.3 * _air));
        }

        if (side is not null)
        {
            Beside(slices, beside, _turn++, Width - SideWidth, side, sideScale);
        }
        else if (section.Diagram is { } diagram)
        {
            slices.Add(Diagram(diagram));
        }

        return new Block(slices, _sheet.IsCard || section.Lines.Count == 0 ? null : isRepeated => TableHead(table, width, hasFacing, headTurn, isRepeated));
    }

    private Slice TableHead(Tag table, double width, bool hasFacing, int turn, bool isRepeated)
    {
        double size = HeadSize;
        Tag row = table.Add("TR");
        SetLine facing = TypeSetter.Short(_sheet.Labels.FacingAfter, size, width / 2);
        SetLine counts = TypeSetter.Short(_sheet.Labels.Counts, size, _counts - (0.3 * _air));
        SetLine steps = TypeSetter.Short(_sheet.Labels.Steps, size, width - _counts - (hasFacing ? facing.Width + _body : 0));
        List<PageBox> boxes = [Cell(0, 0, counts), Cell(1, _counts, steps)];
        if (hasFacing)
        {
            boxes.Add(Cell(2, width - facing.Width, facing));
        }

        return new Slice(0.25 * _air, size * TypeSetter.Height, true, boxes);

        PageBox Cell(int place, double x, SetLine line)
            => new PageBox.Type(isRepeated ? null : new Tag(row, "TH") { Scope = "Column" }, turn + place, x, 0, line);
    }

    private List<Slice> Row(Tag table, SheetLine line, double width, bool hasFacing)
    {
        List<Slice> slices = [];
        Tag row = table.Add("TR");
        Tag counts = new(row, "TH") { Scope = "Row" };
        Tag words = row.Add("TD");
        double room = width - _counts - (hasFacing ? _facing + _body : 0);
        double gap = 0.32 * _air;
        List<SetLine> labels = Label(line.Counts);
        if (labels.Exists(l => l.Width > _counts - _box - (0.4 * _body)))
        {
            // counts too many for their column have lines of their own
            slices.AddRange(Lines(counts, [new Wording(line.Counts, IsBold: true)], _body, 0, width, gap, keepsNext: true));
            labels = [];
            gap = 0;
        }

        List<PageBox> beside = [.. labels.Where(l => l.Runs.Count > 0).Select(l => new PageBox.Type(counts, _turn++, _box, 0, l))];
        Tag told = line.Notes.Count + line.Options.Count > 0 ? words.Add("P") : words;
        Wording[] wordings = line.Title.Length > 0 ? [new Wording(line.Title, IsBold: true), new Wording(line.Between + line.Words)] : [new Wording(line.Words)];
        List<Slice> said = Lines(told, wordings, _body, _counts, room, gap, atCommas: line.Title.Length == 0);
        if (said.Count == 0)
        {
            said.Add(new Slice(gap, _body * TypeSetter.Height, false, []));
        }

        if (line.HasBox)
        {
            double size = 0.9 * _body;
            said[0] = said[0] with { Boxes = [new PageBox.Tick(_turn, 0, ((TypeSetter.Rise - 0.34) * _body) - (size / 2), size), .. said[0].Boxes] };
        }

        int last = said.Count - 1;
        for (int i = 0; i < beside.Count; i++)
        {
            if (i == said.Count)
            {
                said.Add(new Slice(_body * (Leading - TypeSetter.Height), _body * TypeSetter.Height, false, []));
            }

            said[i] = said[i] with { Boxes = [beside[i], .. said[i].Boxes], KeepsNext = said[i].KeepsNext || i < beside.Count - 1 };
        }

        double end = said[last].Boxes.Where(b => b.Owner == told).Select(b => b.X + b.Width).DefaultIfEmpty(_counts).Max();
        List<Slice> notes = [];
        foreach (SheetNote note in line.Notes)
        {
            notes.AddRange(Lines(words.Add("P"), Note(note), _small, _counts, room, 0.12 * _air));
        }

        foreach (SheetOption option in line.Options)
        {
            notes.AddRange(Lines(
                words.Add("P"),
                [new Wording(_sheet.Labels.LeadOf(option), IsBold: true), new Wording(" " + option.Words)],
                _small,
                _counts,
                room,
                0.12 * _air,
                atCommas: true));
        }

        if (line.Facing is { } facing)
        {
            said[last] = said[last] with { Boxes = [.. said[last].Boxes, .. Facing(row, facing, line.Turns, width, end)] };
        }

        // a line is not parted from its first note
        if (notes.Count > 0)
        {
            said[^1] = said[^1] with { KeepsNext = true };
        }

        // what is called from is not parted from any of them: nobody turns a page with dancers waiting
        if (line is { Title.Length: > 0, HasBox: true })
        {
            notes = [.. notes.Select((n, i) => i < notes.Count - 1 ? n with { KeepsNext = true } : n)];
        }

        return [.. slices, .. said, .. notes];
    }

    // Counts that do not fit beside each other are broken after a comma.
    private List<SetLine> Label(string counts)
    {
        SetLine whole = TypeSetter.One(counts, _body, isBold: true);
        double room = _counts - _box - (0.4 * _body);
        return whole.Width <= room || !counts.Contains(',', StringComparison.Ordinal)
            ? [whole]
            : TypeSetter.Set([new Wording(counts.Replace(",", ", ", StringComparison.Ordinal), IsBold: true)], _body, room);
    }

    private IEnumerable<PageBox> Facing(Tag row, string facing, bool turns, double width, double end)
    {
        double x = width - _facing;
        if (turns && x - end > 2 * _body)
        {
            yield return new PageBox.Leader(_turn, end + (0.5 * _body), (TypeSetter.Rise * _body) - 1, x - end - _body);
        }

        if (Degrees(facing) is { } degrees)
        {
            yield return new PageBox.Clock(_turn, x, (TypeSetter.Rise * _body) - (0.34 * _body) - (ClockSize / 2), ClockSize, degrees, turns);
        }

        SetLine word = TypeSetter.One(facing, _body, isBold: turns);

        // what is no clock word stands under the end of its heading
        double left = Degrees(facing) is null ? width - word.Width : x + ClockSize + (0.35 * _body);
        yield return new PageBox.Type(row.Add("TD"), _turn++, left, 0, word);
    }

    private static double? Degrees(string facing)
    {
        string[] parts = facing.Split(':');
        return parts.Length == 2
            && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out int hour)
            && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out int minute)
                ? ((hour % 12) * 30) + (minute * 0.5)
                : null;
    }

    private Slice Diagram(Drawing diagram)
    {
        // what is nearly as broad as the page is made to fit, what is broader goes into rows
        Drawing rows = diagram.Width * _pictures > Width * 1.1 ? PieceRows.Fit(diagram, Width / _pictures) : diagram;
        double scale = Math.Min(_pictures, Math.Min(Width / rows.Width, _shape.Depth * 0.8 / rows.Height));
        PageBox.Picture box = new(new Tag(Document, "Figure") { Alternative = rows.Words }, _turn++, 0, 0, rows, scale);
        return new Slice(0.4 * _air, box.Height, false, [box]);
    }

    private Block Breaks(string heading, ValueList<SheetBreak> breaks)
        => List(heading, breaks.Select(b => (Wording[])[new Wording(_sheet.Labels.LeadOf(b.Where), IsBold: true), new Wording(" " + b.What)]));

    private Block List(string heading, IEnumerable<Wording[]> items)
    {
        List<Slice> slices = Heading(heading, "H2", 1.15);
        Tag list = Document.Add("L");
        foreach (Wording[] item in items)
        {
            slices.AddRange(Lines(list.Add("LI").Add("LBody"), item, _body, 0, Width, 0.25 * _air));
        }

        return new Block(slices);
    }

    private Block Paragraphs(string heading, IEnumerable<Wording[]> paragraphs)
    {
        List<Slice> slices = Heading(heading, "H2", 1.15);
        foreach (Wording[] paragraph in paragraphs)
        {
            slices.AddRange(Lines(Document.Add("P"), paragraph, _body, 0, Width, 0.25 * _air));
        }

        return new Block(slices);
    }

    // The words beside a sign say what it is, so the sign itself is ornament to a reader who does not see it.
    private Block DiagramKey()
    {
        List<Slice> slices = Heading(_sheet.Labels.DiagramKey, "H2", 1.15);
        Tag list = Document.Add("L");
        double size = _body * 0.82;
        int columns = Math.Max(1, (int)(Width / (14 * size)));
        double cell = (Width - ((columns - 1) * PictureGap)) / columns;
        double scale = Math.Min(_pictures, 1);
        double widest = _sheet.DiagramKey.Max(s => s.Picture.Width) * scale;
        double picture = Math.Min(widest, cell / 2);
        for (int first = 0; first < _sheet.DiagramKey.Count; first += columns)
        {
            List<PageBox> boxes = [];
            double height = 0;
            for (int i = first; i < Math.Min(first + columns, _sheet.DiagramKey.Count); i++)
            {
                SheetSign sign = _sheet.DiagramKey[i];
                double x = (i - first) * (cell + PictureGap);
                double shrunk = Math.Min(scale, picture / sign.Picture.Width);
                PageBox.Picture drawn = new(null, _turn, x + ((picture - (sign.Picture.Width * shrunk)) / 2), 0, sign.Picture, shrunk);
                List<Slice> words = Lines(list.Add("LI").Add("LBody"), [new Wording(sign.Words)], size, x + picture + (0.6 * size), cell - picture - (0.6 * size), 0);
                double depth = words.Sum(w => w.Gap + w.Height);
                double most = Math.Max(drawn.Height, depth);
                double y = (most - depth) / 2;
                boxes.Add(drawn with { Y = (most - drawn.Height) / 2 });
                foreach (Slice line in words)
                {
                    y += line.Gap;
                    boxes.AddRange(line.Boxes.Select(b => b with { Y = y }));
                    y += line.Height;
                }

                height = Math.Max(height, most);
            }

            slices.Add(new Slice(0.35 * _air, height, false, boxes));
        }

        return new Block(slices);
    }

    // The words say the address, so the picture is ornament to a reader who does not see it.
    private Block PageSign(SheetAddress sign)
    {
        double picture = sign.Picture.Width;
        double x = picture + (0.8 * _body);
        PageBox.Picture drawn = new(null, _turn, 0, 0, sign.Picture, 1);
        Wording[] wordings = [new Wording(_sheet.Labels.LeadOf(sign.Lead), IsBold: true), new Wording(" " + sign.Address)];
        List<Slice> words = Lines(Document.Add("P"), wordings, _body, x, Width - x, 0);
        double depth = words.Sum(w => w.Gap + w.Height);
        double most = Math.Max(drawn.Height, depth);
        double y = (most - depth) / 2;
        List<PageBox> boxes = [drawn with { Y = (most - drawn.Height) / 2 }];
        foreach (Slice line in words)
        {
            y += line.Gap;
            boxes.AddRange(line.Boxes.Select(b => b with { Y = y }));
            y += line.Height;
        }

        return new Block([new Slice(0.8 * _air, most, false, boxes)]);
    }

    private List<Slice> Heading(string words, string tag, double scale, double gap = 1.1, bool keepsNext = true, double? width = null)
        => Lines(Document.Add(tag), [new Wording(words, IsBold: true)], _body * scale, 0, width ?? Width, gap * _air, keepsNext);

    // No line of a paragraph stands alone at the foot or at the head of a page.
    private List<Slice> Lines(Tag tag, IEnumerable<Wording> words, double size, double x, double width, double gap, bool keepsNext = false, bool atCommas = false)
    {
        Wording[] wordings = [.. words];
        _lacksLetters |= Array.Exists(wordings, w => TypeSetter.LacksLetters(w.Words));
        List<SetLine> lines = TypeSetter.Set(wordings, size, width, atCommas);
        return
        [
            .. lines.Select((line, i) => new Slice(
                i == 0 ? gap : size * (Leading - TypeSetter.Height),
                size * TypeSetter.Height,
                i < lines.Count - 1 ? i == 0 || i == lines.Count - 2 : keepsNext,
                [new PageBox.Type(tag, _turn++, x, 0, line)])),
        ];
    }
}
