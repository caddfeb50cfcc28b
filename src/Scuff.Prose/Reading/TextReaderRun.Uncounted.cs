using System.Globalization;
using Scuff.Diagnostics;
using Scuff.Prose.Words;

namespace Scuff.Prose.Reading;

// Dances that are told by the names of their moves alone.
internal sealed partial class TextReaderRun
{
    private const int MostUncounted = 8;

    private readonly List<(SectionBuilder Section, TextSpan Span, string Counts)> _uncounted = [];

    private bool? _printsCounts;

    /// <summary>Says which counts were taken; asks where they do not come to eights, or to sixes of a waltz.</summary>
    private void TellUncounted()
    {
        foreach ((SectionBuilder section, TextSpan span, string counts) in _uncounted)
        {
            int length = section.Length.Value.Floor;
            Diagnostic told = ReadingRules.UsualCounts.At(span, ("counts", counts));
            _state.Add(length % 8 == 0 || (_state.IsWaltz && length % 6 == 0) ? told with { Severity = Severity.Hint } : told);
        }
    }

    /// <summary>
    /// "R vine with touch, L vine with 1/4 turn L and scuff" in a text that prints no counts anywhere: each move takes its usual ones, and it is said which.
    /// False when it is no line of moves only.
    /// </summary>
    private bool ReadUncounted(TextLine line)
    {
        if (_section is null || _tag is not null || PrintsCounts || !IsOfMoves(line)
            || new LineReader(_state).UsualCounts(line.Start, line.End, MostUncounted) is not int many)
        {
            return false;
        }

        int first = _section.Length.Value.Floor + 1;
        string taken = many == 1 ? first.ToString(CultureInfo.InvariantCulture) : string.Create(CultureInfo.InvariantCulture, $"{first}-{first + many - 1}");
        _uncounted.Add((_section, line.Span, taken));
        ReadOpen(line, first, first + many - 1);
        return true;
    }

    /// <summary>Whether any line of the text stands on counts of its own.</summary>
    private bool PrintsCounts => _printsCounts ??= _lines.Exists(l =>
    {
        TextLine line = l.Trimmed(_text);
        if (line.Start == line.End || IsRule(line))
        {
            return false;
        }

        bool before = CountLabel.Read(_text, line.Start, line.End) is CountLabel label && label.End < line.End && !_heading.IsFacts(line);
        return before || TrailingLabels(line) is { Count: > 0 } || CountsBehind(line, out _).Count > 0 || CountsInBrackets(line) is { Count: > 0 };
    });

    // a move or a place, and whose or which way unless it is the name of a figure
    private bool IsOfMoves(TextLine line)
    {
        List<Term> terms = TermReader.Read(_text, line.Start, line.End, _state.Lexicon);
        bool moves = terms.Exists(t => t.Kind is TermKind.Move or TermKind.Dir or TermKind.Repeat);
        bool whose = terms.Exists(t => t.Kind is TermKind.Foot or TermKind.Side or TermKind.Lead or TermKind.BothFeet || t.Meaning.Side is not null
            || t.Meaning.Figures.Any(f => f.Rows.Count > 1));
        return moves && whose && !terms.Exists(t => t.Kind is TermKind.Unknown or TermKind.Style);
    }
}
