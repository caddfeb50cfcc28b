using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose.Words;
using Scuff.Stance;

namespace Scuff.Prose.Reading;

// Tables pasted from a spreadsheet or a mail: a line that names the columns, and rows whose cells are apart by tabs or bars.
internal sealed partial class TextReaderRun
{
    private static readonly char[] Edges = ['|', '\t'];

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

    /// <summary>Where the words of a row end, and the cells behind them that say it once more; empty spans where there are none.</summary>
    private readonly record struct TableRow(int WordsEnd, TextSpan Feet, TextSpan Facing);

    /// <summary>Takes the names of the columns of a table; false when a line is none of names.</summary>
    private bool ReadColumns(string words)
    {
        if (words.IndexOfAny(Edges) < 0)
        {
            return false;
        }

        List<ColumnKind> columns = [];
        foreach (string cell in words.Split(Edges, StringSplitOptions.TrimEntries))
        {
            ColumnKind? kind = cell.Split([' ', '/'], StringSplitOptions.RemoveEmptyEntries) is [var first, ..] ? KindOf(first) : ColumnKind.Other;
            if (kind is not ColumnKind known)
            {
                return false;
            }

            columns.Add(known);
        }

        _columns.Clear();
        _columns.AddRange(columns);
        return true;
    }

    private static ColumnKind? KindOf(string name) => name.TrimEnd('.').ToLowerInvariant() switch
    {
        "count" or "counts" or "beat" or "beats" or "ct" or "cts" => ColumnKind.Counts,
        "step" or "steps" or "action" or "actions" or "movement" or "movements" or "description" or "what" or "footwork" => ColumnKind.Steps,
        "foot" or "feet" => ColumnKind.Feet,
        "facing" or "face" or "wall" or "walls" or "clock" or "direction" or "end" => ColumnKind.Facing,
        "note" or "notes" or "after" or "section" => ColumnKind.Other,
        _ => null,
    };

    private TableRow RowOf(TextLine line, int wordsStart)
    {
        TableRow whole = new(line.End, default, default);
        int steps = _columns.IndexOf(ColumnKind.Steps);
        if (steps < 0 || _columns.IndexOf(ColumnKind.Counts) != 0)
        {
            return whole;
        }

        // the label and the edge behind it are over where the words begin
        List<TextSpan> cells = [];
        int start = wordsStart;
        while (start < line.End && (Edges.Contains(_text[start]) || char.IsWhiteSpace(_text[start])))
        {
            start++;
        }

        for (int at = start; at <= line.End; at++)
        {
            if (at == line.End || Edges.Contains(_text[at]))
            {
                cells.Add(TextSpan.FromBounds(start, at));
                start = at + 1;
            }
        }

        TextSpan Cell(ColumnKind kind) => _columns.IndexOf(kind) is > 0 and int column && column - 1 < cells.Count ? cells[column - 1] : default;
        TextSpan told = Cell(ColumnKind.Steps);
        if (steps != 1 || told.Length == 0)
        {
            return whole;
        }

        TextSpan feet = Cell(ColumnKind.Feet);
        bool named = TermReader.Read(_text, told.Start, told.End, _state.Lexicon).Exists(t => t.Kind is TermKind.Foot or TermKind.Side);

        // "walk forward | R, L": the feet belong to the words
        return feet.Length > 0 && !named && feet.Start == told.End + 1
            ? new TableRow(feet.End, default, Cell(ColumnKind.Facing))
            : new TableRow(told.End, feet, Cell(ColumnKind.Facing));
    }

    /// <summary>Holds the cells of feet and facing against what was read of the words.</summary>
    private void CheckRow(TableRow row, WrittenLine made, string printed)
    {
        if (row.Facing.Length > 0)
        {
            ClaimIn(row.Facing.Start, row.Facing.End);
        }

        if (row.Feet.Length == 0)
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
