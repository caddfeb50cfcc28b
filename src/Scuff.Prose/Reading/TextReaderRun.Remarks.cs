using System.Buffers;
using System.Collections.Frozen;
using Scuff.Dances;
using Scuff.Prose.Words;

namespace Scuff.Prose.Reading;

// Lines of a pasted sheet that tell nothing of what is danced: rules, closing words, addresses, remarks.
internal sealed partial class TextReaderRun
{
    // what people write under the last count
    private static readonly FrozenSet<string> Closing = new[]
    {
        "a", "again", "all", "and", "back", "begin", "beginning", "dance", "dancing", "danced", "do", "end", "enjoy", "from", "front", "fun", "good",
        "happy", "hand", "have", "hope", "in", "is", "it", "just", "keep", "let's", "lets", "lots", "luck", "much", "now", "of", "on", "over", "please",
        "repeat", "smile", "smiling", "start", "starting", "that's", "thats", "the", "then", "this", "to", "top", "we", "whole", "with", "you", "your",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    private static readonly string[] ClosingCore = ["again", "repeat", "enjoy", "fun", "happy", "smile", "smiling", "end"];

    private static readonly SearchValues<char> Drawn = SearchValues.Create("-–—=_*~•·. +|#");

    /// <summary>Whether a line is drawn, not written: "-----", "=====".</summary>
    private bool IsRule(TextLine line) => line.End - line.Start >= 2
        && _text.AsSpan(line.Start, line.End - line.Start).IndexOfAnyExcept(Drawn) < 0;

    /// <summary>A line of the heading without the bullets and stars about it.</summary>
    private TextLine WithoutMarks(TextLine line)
    {
        (int start, int end) = (line.Start, line.End);
        while (start < end && (_text[start] is '*' or '•' or '·' or '~' || (_text[start] == '-' && start + 1 < end && _text[start + 1] == ' ') || (start > line.Start && _text[start] == ' ')))
        {
            start++;
        }

        while (end > start && (_text[end - 1] is '*' or '•' or '~' || (end < line.End && _text[end - 1] == ' ')))
        {
            end--;
        }

        return start < end ? new TextLine(line.Number, start, end) : line;
    }

    // the names of the columns of a table
    private static bool IsColumnNames(string words) => words.Contains('|', StringComparison.Ordinal) || words.Contains('\t', StringComparison.Ordinal)
        ? words.Split(['|', '\t', ' ', '/'], StringSplitOptions.RemoveEmptyEntries).All(w => w.TrimEnd('s').ToLowerInvariant() is "count" or "step" or "facing"
            or "face" or "foot" or "feet" or "wall" or "action" or "movement" or "description" or "beat" or "ct" or "direction" or "clock" or "note" or "after")
        : false;

    /// <summary>A line that changes nothing of the dance, kept as a note; false when it may mean something.</summary>
    private bool ReadRemark(TextLine line)
    {
        string words = _text[line.Start..line.End];
        string? kind = IsClosing(words) || ClosesTheSheet(line, words) ? "closing" : IsColumnNames(words) ? "columns" : IsAddress(words) ? "contact" : IsTalk(line, words) ? "remark" : null;
        if (kind is not null)
        {
            _notes.Add(new Note(kind, words, line.Span));
        }

        return kind is not null;
    }

    private static bool IsClosing(string words)
    {
        string[] each = [.. words.Split([' ', ',', '.', '!', '-', '–', ':', ';', '*', '(', ')', '~', '…', '\t', '&'], StringSplitOptions.RemoveEmptyEntries)
            .Where(w => w.Any(char.IsLetterOrDigit))];
        return each.Length is > 0 and < 16 && Array.TrueForAll(each, Closing.Contains)
            && Array.Exists(each, w => ClosingCore.Contains(w, StringComparer.OrdinalIgnoreCase));
    }

    // words that may tell where the pattern breaks, which is asked about and not passed over
    private static readonly FrozenSet<string> OfPattern = new[]
    {
        "again", "beat", "beats", "break", "chorus", "count", "counts", "end", "ending", "ends", "except", "final", "finally", "first", "instead", "last",
        "leave", "omit", "once", "only", "part", "parts", "second", "section", "sections", "skip", "third", "time", "times", "twice", "unless", "verse",
        "wall", "walls", "without",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    // "Start over", "Repeat & enjoy the crossing", after which there are no more counts
    private bool ClosesTheSheet(TextLine line, string words)
    {
        string first = words.TrimStart('*', ' ', '~', '(').Split([' ', ',', '!', '.', '-', '&'], 2)[0];
        return (_sections.Count > 0 || _section is not null) && words.Length < 80 && !words.Any(char.IsAsciiDigit)
            && !TermReader.Read(_text, line.Start, line.End, _state.Lexicon).Exists(t => t.Kind is TermKind.Foot or TermKind.Side or TermKind.Amount
                or TermKind.Turn or TermKind.Move)
            && first.ToLowerInvariant() is "repeat" or "start" or "begin" or "again" or "keep" or "enjoy" or "that's" or "thats" or "have" or "happy" or "end"
            && !_lines.Exists(l => l.Start > line.End && l.Trimmed(_text) is { } later && later.Start < later.End
                && CountLabel.Read(_text, later.Start, later.End) is { } label && label.End < later.End);
    }

    private static bool IsAddress(string words) => words.Contains("www.", StringComparison.OrdinalIgnoreCase)
        || words.Contains("://", StringComparison.Ordinal)
        || (words.IndexOf('@', StringComparison.Ordinal) is > 0 and int at && words.IndexOf('.', at) > at);

    /// <summary>Whether it names no foot, no move, no turn, no count and nothing of the pattern.</summary>
    private bool IsTalk(TextLine line, string words) => words.Any(char.IsLetter) && !words.Any(char.IsAsciiDigit)
        && !words.Split([' ', ',', '.', '!', '?', ':', ';', '(', ')', '-', '\t'], StringSplitOptions.RemoveEmptyEntries).Any(OfPattern.Contains)
        && !TermReader.Read(_text, line.Start, line.End, _state.Lexicon).Exists(t => t.Kind is TermKind.Move or TermKind.Foot or TermKind.Side
            or TermKind.Dir or TermKind.Amount or TermKind.Turn or TermKind.Repeat or TermKind.RepeatMirrored or TermKind.Number);
}
