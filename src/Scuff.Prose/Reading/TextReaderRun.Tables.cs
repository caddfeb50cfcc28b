using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

// Tables pasted from a spreadsheet or a mail: a line that names the columns, and rows whose cells are apart by tabs or bars.
internal sealed partial class TextReaderRun
{
    private static readonly System.Buffers.SearchValues<char> Edges = System.Buffers.SearchValues.Create("|\t");

    // what the columns hold, once a line has named them
    private readonly List<ColumnKind> _columns = [];

    private enum ColumnKind
    {
        Counts,
        Steps,
        Feet,
        Facing,
        Other,
    }

    /// <summary>Where the words of a row begin and end, and the cells behind them that say it once more; empty spans where there are none.</summary>
    private readonly record struct TableRow(int WordsStart, int WordsEnd, TextSpan Feet, TextSpan Facing);

    /// <summary>Takes the names of the columns of a table; false when a line is none of names.</summary>
    private bool ReadColumns(TextLine line)
    {
        if (!char.IsLetter(_text[line.Start]))
        {
            return false;
        }

        List<TextSpan> cells = Cells(line.Start, line.End);
        if (cells.Count < 2 || line.End - line.Start > 160)
        {
            return false;
        }

        List<ColumnKind> columns = [];
        foreach (TextSpan cell in cells)
        {
            if (KindOf(_text.AsSpan(cell.Start, cell.Length).Trim().ToString().ToLowerInvariant()) is not ColumnKind known)
            {
                return false;
            }

            columns.Add(known);
        }

        if (columns[0] == ColumnKind.Steps && columns.LastIndexOf(ColumnKind.Steps) > 0)
        {
            // "STEPS   ACTUAL FOOTWORK": the first are the counts
            columns[0] = ColumnKind.Counts;
        }

        if (columns[0] != ColumnKind.Counts)
        {
            return false;
        }

        _columns.Clear();
        _columns.AddRange(columns);
        return true;
    }

    // the cells of a line: apart by tabs, bars or two blanks and more
    private List<TextSpan> Cells(int from, int end)
    {
        List<TextSpan> cells = [];
        int start = from;
        int at = from;
        while (at < end)
        {
            bool edge = Edges.Contains(_text[at]);
            bool gap = _text[at] == ' ' && at + 1 < end && _text[at + 1] == ' ';
            if (!edge && !gap)
            {
                at++;
                continue;
            }

            cells.Add(TextSpan.FromBounds(start, at));
            bool passed = false;
            while (at < end && (_text[at] == ' ' || (Edges.Contains(_text[at]) && !passed)))
            {
                passed |= Edges.Contains(_text[at]);
                at++;
            }

            start = at;
        }

        cells.Add(TextSpan.FromBounds(start, end));
        return cells;
    }

    private static ColumnKind? KindOf(string name)
    {
        string[] words = name.Split([' ', '/', '.', ':', '(', ')', '-'], StringSplitOptions.RemoveEmptyEntries);
        return words switch
        {
            [] => ColumnKind.Other,
            [.., "count" or "counts" or "beat" or "beats" or "ct" or "cts"] when words.Length < 3 => ColumnKind.Counts,
            [.., "foot" or "feet"] or ["foot" or "feet", ..] when words.Length < 3 => ColumnKind.Feet,
            [.., "facing" or "face" or "clock"] or ["facing" or "face" or "wall" or "walls", ..] when words.Length < 4 => ColumnKind.Facing,
            [.., "step" or "steps" or "footwork" or "action" or "actions" or "movement" or "movements" or "description" or "moves"] when words.Length < 4
                => ColumnKind.Steps,
            ["step" or "steps" or "footwork" or "what", ..] when words.Length < 5 => ColumnKind.Steps,
            [.., "note" or "notes" or "direction" or "call" or "calls" or "cue" or "cues" or "say" or "suggestion" or "remarks" or "styling" or "style"
                or "after" or "section" or "ends" or "end"]
                when words.Length < 4 => ColumnKind.Other,
            _ => null,
        };
    }

    private TableRow RowOf(TextLine line, int wordsStart)
    {
        TableRow whole = new(wordsStart, line.End, default, default);
        int steps = _columns.IndexOf(ColumnKind.Steps);
        if (steps < 0 || _columns.IndexOf(ColumnKind.Counts) != 0)
        {
            return whole;
        }

        // the label and the edge behind it are over where the words begin
        int start = wordsStart;
        while (start < line.End && (Edges.Contains(_text[start]) || char.IsWhiteSpace(_text[start])))
        {
            start++;
        }

        List<TextSpan> cells = Cells(start, line.End);
        TextSpan Cell(ColumnKind kind) => _columns.IndexOf(kind) is > 0 and int column && column - 1 < cells.Count ? cells[column - 1] : default;
        TextSpan told = Cell(ColumnKind.Steps);
        if (told.Length == 0)
        {
            return whole;
        }

        TextSpan feet = Cell(ColumnKind.Feet);
        bool named = TermReader.Read(_text, told.Start, told.End, _state.Lexicon).Exists(t => t.Kind is TermKind.Foot or TermKind.Side);

        // "walk forward | R, L": the feet belong to the words
        return feet.Length > 0 && !named && _columns.IndexOf(ColumnKind.Feet) == steps + 1
            ? new TableRow(told.Start, feet.End, default, Cell(ColumnKind.Facing))
            : new TableRow(told.Start, told.End, feet, Cell(ColumnKind.Facing));
    }

    /// <summary>Holds the cells of feet and facing against what was read of the words.</summary>
    private void CheckRow(TableRow row, WrittenLine made, string printed)
    {
        if (row.Facing.Length > 0)
        {
            ClaimIn(row.Facing.Start, row.Facing.End);
        }

        if (row.Feet.Length == 0 || made.Steps.Any(s => s.Action.Kind == ActionKind.Unknown))
        {
            return;
        }

        Foot[] acting = [.. made.Steps.OrderBy(s => s.Count.Place).Select(s => s.Action.Foot.ToFoot()).OfType<Foot>()];
        int at = 0;
        foreach (Foot told in TermReader.Read(_text, row.Feet.Start, row.Feet.End, _state.Lexicon).Where(t => t.Kind is TermKind.Foot or TermKind.Side)
            .Select(t => t.Meaning.Side).OfType<Foot>())
        {
            at = Array.IndexOf(acting, told, Math.Min(at, acting.Length)) + 1;
            if (at == 0)
            {
                string read = string.Join(", ", acting.Select(f => f == Foot.Left ? "L" : "R"));
                _state.Add(ReadingRules.WordsUnused.At(row.Feet, ("counts", printed), ("words", _text.Substring(row.Feet.Start, row.Feet.Length).Trim()),
                    ("unused", "foot"), ("read", read)));
                return;
            }
        }
    }
}
