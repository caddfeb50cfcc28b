using System.Globalization;

namespace Scuff.Sheets.Formats;

/// <summary>Plain text for a printer, a message or a terminal: 80 columns, counts to the left, facing to the right.</summary>
public sealed class TextSheetFormat : ISheetFormat
{
    private const int Width = 80;

    // 10:30 and a space before it.
    private const int FacingWidth = 6;
    private const int LeastCountsWidth = 7;
    private const int MostCountsWidth = 14;

    public string Name => "text";

    public string Extension => ".txt";

    public string MediaType => "text/plain; charset=utf-8";

    public bool IsText => true;

    public void Write(SheetModel sheet, Stream stream)
    {
        using StreamWriter writer = TextOutput.Open(stream);
        new Page(writer, sheet.Labels, sheet.IsCard).Draw(sheet);
    }

    private sealed class Page(TextWriter writer, SheetLabels labels, bool isCard)
    {
        public void Draw(SheetModel sheet)
        {
            foreach (string line in Wrap(sheet.Title, Width))
            {
                Line(line);
            }

            Line(new string('=', Math.Clamp(Length(sheet.Title), 1, Width)));
            if (sheet.ByLine.Length > 0)
            {
                Paragraph(sheet.ByLine, 0);
            }

            Line("");
            Paragraph(string.Join(' ', sheet.Facts), 0);
            foreach (SheetNote particular in sheet.Particulars)
            {
                Paragraph(labels.LeadOf(particular) + " " + particular.Words, 0);
            }

            if (sheet.PageSign is { } sign)
            {
                Paragraph(labels.LeadOf(sign.Lead) + " " + sign.Address, 0);
            }

            if (sheet.Changes.Count > 0)
            {
                Line("");
                Heading(labels.Changes, '-');
                foreach (string change in sheet.Changes)
                {
                    Paragraph("- " + change, 0, 2);
                }
            }

            if (sheet.Key.Length > 0)
            {
                Line("");
                Paragraph(sheet.Key, 0);
            }

            for (int i = 0; i < sheet.Tracks.Count; i++)
            {
                // a card has no line to lose
                if (i == 0 || !isCard)
                {
                    Line("");
                }

                Draw(sheet.Tracks[i]);
            }

            if (sheet.Sequence.Count > 0)
            {
                Line("");
                Heading(labels.OrderOfParts, '-');
                Paragraph(string.Join(" · ", sheet.Sequence), 0);
            }

            foreach (SheetPart part in sheet.Parts)
            {
                if (part.Heading.Length > 0)
                {
                    Line("");
                    Heading(part.Heading, '=');
                }

                foreach (SheetSection section in part.Sections)
                {
                    Draw(section);
                }
            }

            foreach (SheetSection tag in sheet.Tags)
            {
                Draw(tag);
            }

            if (sheet.Breaks.Count > 0)
            {
                Line("");
                Heading(labels.Breaks, '-');
                Draw(sheet.Breaks, 0);
            }

            foreach (SheetTrack track in sheet.Tracks.Where(t => t.Breaks.Count > 0))
            {
                Line("");
                Heading(string.Format(CultureInfo.InvariantCulture, labels.OnTrack, track.Name), '-');
                Draw(track.Breaks, 0);
            }

            Endings(sheet);
            foreach (SheetSection move in sheet.Moves)
            {
                Draw(move);
            }

            if (sheet.Cautions.Count > 0)
            {
                Line("");
                Heading(labels.Cautions, '-');
                foreach (string caution in sheet.Cautions)
                {
                    Paragraph(caution, 0, 2);
                }
            }

            foreach (SheetNote note in sheet.Notes)
            {
                Line("");
                Draw(note, 0);
            }
        }

        private void Draw(SheetTrack track)
        {
            Paragraph(labels.LeadOf(labels.Music) + " " + track.Name, 0);
            if (track.Facts.Length > 0)
            {
                Paragraph(track.Facts, 2);
            }

            if (track.Sequence.Count > 0)
            {
                Paragraph(labels.LeadOf(labels.Order) + " " + string.Join(" · ", track.Sequence), 2);
            }

            foreach (SheetNote note in track.Notes)
            {
                Draw(note, 2);
            }
        }

        private void Endings(SheetModel sheet)
        {
            ValueList<SheetBreak> endings = sheet.Endings;
            if (endings.Count > 0)
            {
                Line("");
                Heading(labels.Ending, '-');
                Draw(endings, 0);
            }
        }

        private void Draw(ValueList<SheetBreak> breaks, int indent)
        {
            foreach (SheetBreak pause in breaks)
            {
                Paragraph($"{labels.LeadOf(pause.Where)} {pause.What}", indent, indent + 2);
            }
        }

        private void Draw(SheetSection section)
        {
            Line("");
            if (isCard)
            {
                DrawInARow(section);
                return;
            }

            Heading(section.Heading, '-');
            int counts = Math.Clamp(section.Lines.Select(l => Length(LabelOf(l))).DefaultIfEmpty(0).Max() + 2, LeastCountsWidth, MostCountsWidth);
            foreach (SheetLine line in section.Lines)
            {
                Draw(line, counts, Math.Max(FacingWidth, section.Lines.Max(l => Length(l.Facing ?? "")) + 1));
            }

            foreach (SheetNote note in section.Notes)
            {
                Draw(note, counts);
            }
        }

        // A card has one side: its lines follow each other like words.
        private void DrawInARow(SheetSection section)
        {
            Paragraph(section.Heading, 0);
            Paragraph(
                string.Join("; ", section.Lines.Select(l => $"{l.Counts} {l.Title}{l.Between}{l.Words}{(l.Facing is { } facing ? $" [{facing}]" : "")}")),
                2);
        }

        private static string LabelOf(SheetLine line) => line.HasBox ? "[ ] " + line.Counts : line.Counts;

        private void Draw(SheetLine line, int counts, int facingWidth)
        {
            int room = Width - counts - facingWidth;
            List<string> words = [.. Wrap(line.Title + line.Between + line.Words, room)];
            string label = LabelOf(line);
            if (Length(label) > counts - 1)
            {
                // counts too many for their column have a line of their own
                Paragraph(label, 0);
                label = "";
            }

            for (int i = 0; i < words.Count; i++)
            {
                string left = Pad(i == 0 ? label : "", counts) + words[i];
                bool isLast = i == words.Count - 1;
                Line(isLast && line.Facing is { } facing
                    ? Pad(left, Width - Length(facing)) + facing
                    : left);
            }

            foreach (SheetNote note in line.Notes)
            {
                Draw(note, counts);
            }

            foreach (SheetOption option in line.Options)
            {
                Paragraph($"{labels.LeadOf(option)} {option.Words}", counts, counts + 2);
            }
        }

        private void Draw(SheetNote note, int indent)
            => Paragraph($"{labels.LeadOf(note)} {note.Words}", indent, indent + 2);

        private void Heading(string words, char rule)
        {
            Paragraph(words, 0);
            if (!isCard)
            {
                Line(new string(rule, Math.Clamp(Length(words), 1, Width)));
            }
        }

        private void Paragraph(string words, int indent) => Paragraph(words, indent, indent);

        private void Paragraph(string words, int first, int next)
        {
            int indent = first;
            foreach (string line in Wrap(words, Width - Math.Max(first, next)))
            {
                Line(new string(' ', indent) + line);
                indent = next;
            }
        }

        private void Line(string words)
        {
            writer.Write(words.TrimEnd());
            writer.Write('\n');
        }

        // Characters as a reader counts them: an accent put on afterwards takes no column.
        private static int Length(string words) => new StringInfo(words).LengthInTextElements;

        private static string Pad(string words, int width) => words + new string(' ', Math.Max(0, width - Length(words)));

        private static IEnumerable<string> Wrap(string words, int width)
        {
            string line = "";
            foreach (string word in words.Split([' ', '\t', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries))
            {
                if (line.Length > 0 && Length(line) + 1 + Length(word) > width)
                {
                    yield return line;
                    line = "";
                }

                line = line.Length == 0 ? word : line + " " + word;
                while (Length(line) > width)
                {
                    // a word longer than the room is cut rather than lost
                    int cut = new StringInfo(line).SubstringByTextElements(0, width).Length;
                    yield return line[..cut];
                    line = line[cut..];
                }
            }

            yield return line;
        }
    }
}
