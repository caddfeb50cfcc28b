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

    /// <summary>A line that changes nothing of the dance, kept as a note; false when it may mean something.</summary>
    private bool ReadRemark(TextLine line)
    {
        string words = _text[line.Start..line.End];
        string? kind = IsClosing(words) ? "closing" : IsAddress(words) ? "contact" : IsTalk(line, words) ? "remark" : null;
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

    private static bool IsAddress(string words) => words.Contains("www.", StringComparison.OrdinalIgnoreCase)
        || words.Contains("://", StringComparison.Ordinal)
        || (words.IndexOf('@', StringComparison.Ordinal) is > 0 and int at && words.IndexOf('.', at) > at);

    /// <summary>Whether it names no foot, no move, no turn, no count and no wall.</summary>
    private bool IsTalk(TextLine line, string words) => words.Any(char.IsLetter) && !words.Any(char.IsAsciiDigit)
        && !TermReader.Read(_text, line.Start, line.End, _state.Lexicon).Exists(t => t.Kind is TermKind.Move or TermKind.Foot or TermKind.Side
            or TermKind.Dir or TermKind.Amount or TermKind.Turn or TermKind.Repeat or TermKind.RepeatMirrored or TermKind.Number);
}
