using System.Globalization;
using System.Text;

namespace Scuff.Sheets.Formats;

/// <summary>
/// CommonMark with the tables of GitHub's flavour, for pages of clubs and for messages. Whatever she writes comes out as the letters it is.
/// </summary>
public sealed class MarkdownSheetFormat : ISheetFormat
{
    public string Name => "markdown";

    public string Extension => ".md";

    public string MediaType => "text/markdown; charset=utf-8";

    public bool IsText => true;

    public void Write(SheetModel sheet, Stream stream)
    {
        using StreamWriter writer = TextOutput.Open(stream);
        new Page(writer, sheet.Labels).Draw(sheet);
    }

    private sealed class Page(TextWriter writer, SheetLabels labels)
    {
        private bool _isFirst = true;

        public void Draw(SheetModel sheet)
        {
            Heading(1, sheet.Title);
            Paragraph(Text(sheet.ByLine));

            Paragraph(Text(string.Join(' ', sheet.Facts)));
            List("", sheet.Particulars.Select(p => Lead(SheetWords.Capital(p.Kind), p.Words)));
            List("", sheet.PageSign is { } sign ? [Lead(sign.Lead, sign.Address)] : []);
            Paragraph(Text(sheet.Key));
            if (sheet.WallPicture is { } walls)
            {
                Heading(2, labels.Walls);
                Paragraph(Text(walls.Words));
            }

            List(labels.Changes, sheet.Changes.Select(Text));
            List(labels.Cautions, sheet.Cautions.Select(Text));
            Music(sheet);
            if (sheet.Sequence.Count > 0)
            {
                Heading(2, labels.OrderOfParts);
                Paragraph(Text(string.Join(" · ", sheet.Sequence)));
            }

            foreach (SheetPart part in sheet.Parts)
            {
                if (part.Heading.Length > 0)
                {
                    Heading(2, part.Heading);
                }

                foreach (SheetSection section in part.Sections)
                {
                    Section(section, part.Heading.Length > 0 ? 3 : 2);
                }
            }

            foreach (SheetSection tag in sheet.Tags)
            {
                Section(tag, 2);
            }

            List(labels.Breaks, sheet.Breaks.Select(b => Lead(b.Where, b.What)));
            foreach (SheetTrack track in sheet.Tracks)
            {
                List(string.Format(CultureInfo.InvariantCulture, labels.OnTrack, track.Name), track.Breaks.Select(b => Lead(b.Where, b.What)));
            }

            List(labels.Ending, sheet.Endings.Select(b => Lead(b.Where, b.What)));
            foreach (SheetSection move in sheet.Moves)
            {
                Section(move, 2);
            }

            List(labels.Notes, sheet.Notes.Select(Note));
        }

        private void Music(SheetModel sheet)
        {
            if (sheet.Tracks.Count == 0)
            {
                return;
            }

            Heading(2, labels.Music);
            foreach (SheetTrack track in sheet.Tracks)
            {
                Paragraph($"{Bold(track.Name)} {Text(track.Facts)}".TrimEnd());
                if (track.Sequence.Count > 0)
                {
                    Paragraph(Lead(labels.Order, string.Join(" · ", track.Sequence)));
                }

                List("", track.Notes.Select(Note));
            }
        }

        private void Section(SheetSection section, int level)
        {
            Heading(level, section.Heading);
            if (section.Lines.Count > 0)
            {
                bool hasFacing = section.Lines.Any(l => l.Facing is not null);
                StringBuilder table = new();
                Row(table, [Text(labels.Counts), Text(labels.Steps), .. hasFacing ? (ReadOnlySpan<string>)[Text(labels.FacingAfter)] : []]);
                Row(table, ["---", "---", .. hasFacing ? (ReadOnlySpan<string>)["---"] : []]);
                foreach (SheetLine line in section.Lines)
                {
                    string facing = line.Facing is { } at ? line.Turns ? Bold(at) : Text(at) : "";
                    Row(table, [(line.HasBox ? "☐ " : "") + Text(line.Counts), (line.Title.Length > 0 ? Bold(line.Title) + line.Between : "") + Text(line.Words), .. hasFacing ? (ReadOnlySpan<string>)[facing] : []]);
                }

                Block(table.ToString().TrimEnd('\n'));
            }

            // a cell holds one line and no list, so what hangs on the steps stands under the table with its counts
            List("", section.Lines.SelectMany(Hanging).Concat(section.Notes.Select(Note)));
        }

        private IEnumerable<string> Hanging(SheetLine line) =>
        [
            .. line.Notes.Select(n => Lead(line.Counts + ", " + n.Kind, n.Words)),
            .. line.Options.Select(o => Lead(o.Counts + ", " + o.Name, o.Words)),
        ];

        private static void Row(StringBuilder table, ReadOnlySpan<string> cells)
        {
            table.Append('|');
            foreach (string cell in cells)
            {
                table.Append(' ').Append(cell).Append(cell.Length > 0 ? " |" : "|");
            }

            table.Append('\n');
        }

        private void List(string heading, IEnumerable<string> items)
        {
            string[] all = [.. items];
            if (all.Length == 0)
            {
                return;
            }

            if (heading.Length > 0)
            {
                Heading(2, heading);
            }

            Block(string.Join('\n', all.Select(i => "- " + i)));
        }

        private void Heading(int level, string words) => Block(new string('#', level) + " " + Text(words));

        private void Paragraph(string markdown)
        {
            if (markdown.Length > 0)
            {
                Block(markdown);
            }
        }

        private void Block(string markdown)
        {
            writer.Write(_isFirst ? "" : "\n");
            writer.Write(markdown);
            writer.Write('\n');
            _isFirst = false;
        }

        private string Note(SheetNote note) => Lead(SheetWords.Capital(note.Kind), note.Words);

        private string Lead(string lead, string words) => lead.Length > 0 ? $"{Bold(labels.LeadOf(lead))} {Text(words)}".TrimEnd() : Text(words);

        // Always at the beginning of something and before a space or an end, where stars open and close whatever stands inside them.
        private static string Bold(string words) => Text(words) is { Length: > 0 } text ? $"**{text}**" : "";

        /// <summary>
        /// Words that are nothing but words. Every sign that may mean something is escaped, and a number with a dot or bracket at the
        /// beginning as well. Source: CommonMark 0.31.2, section 2.4: any ASCII punctuation may be escaped by a backslash.
        /// </summary>
        private static string Text(string words)
        {
            StringBuilder safe = new(words.Length + 16);
            for (int i = 0; i < words.Length; i++)
            {
                char c = words[i];
                if (char.IsHighSurrogate(c) && i + 1 < words.Length && char.IsLowSurrogate(words[i + 1]))
                {
                    safe.Append(c).Append(words[++i]);
                }
                else if (c is '\t' or '\n' or '\r' or '\u0085' or '\u2028' or '\u2029' or ' ')
                {
                    // one space: two at the end of a line, or four at its beginning, would mean something
                    if (safe.Length > 0 && safe[^1] != ' ')
                    {
                        safe.Append(' ');
                    }
                }
                else if (!char.IsControl(c) && !char.IsSurrogate(c))
                {
                    if (IsMark(c) || (IsMarkInPlace(c) && Matters(words, i)))
                    {
                        safe.Append('\\');
                    }

                    safe.Append(c);
                }
            }

            return safe.ToString().TrimEnd(' ');
        }

        private static bool IsMark(char c)
            => c is '\\' or '`' or '*' or '_' or '[' or ']' or '<' or '>' or '|' or '~' or '#' or '$' or '^' or '{' or '}';

        // These mean something only somewhere; escaped everywhere they would make counts such as 1-2 and 3&4 hard to read.
        private static bool IsMarkInPlace(char c) => c is '&' or '-' or '+' or '=' or '"' or '.' or ')' or '!' or ':' or '@';

        private static bool Matters(string words, int at)
        {
            ReadOnlySpan<char> before = words.AsSpan(0, at).Trim();
            ReadOnlySpan<char> after = words.AsSpan(at + 1);
            return words[at] switch
            {
                // an entity: &amp; or &#38;
                '&' => after.IndexOf(';') is > 0 and var end && !after[..end].Contains(' '),
                '-' => before.IsEmpty,

                // doubled they are marks in some flavours
                '+' or '=' or '"' => before.IsEmpty || (at > 0 && words[at - 1] == words[at]) || (after.Length > 0 && after[0] == words[at]),

                // 1. or 1) at the beginning would be a list; readers that link by themselves link www.
                '.' => IsNumber(before) || before.EndsWith("www", StringComparison.OrdinalIgnoreCase),
                ')' => IsNumber(before),
                ':' => after.StartsWith("//", StringComparison.Ordinal) || (after.Length > 0 && char.IsAsciiLetter(after[0])),
                '!' => after.Length > 0 && after[0] == '[',
                _ => true,
            };
        }

        private static bool IsNumber(ReadOnlySpan<char> words) => !words.IsEmpty && !words.ContainsAnyExceptInRange('0', '9');
    }
}
