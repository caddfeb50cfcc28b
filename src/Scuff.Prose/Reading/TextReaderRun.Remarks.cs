using System.Buffers;
using System.Collections.Frozen;
using System.Text.RegularExpressions;
using Scuff.Dances;
using Scuff.Prose.Reading.Sentences;
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
        "repeat", "restart", "smile", "smiling", "start", "starting", "that's", "thats", "the", "then", "this", "to", "top", "we", "whole", "with", "you",
        "your", "are", "at", "face", "facing", "new", "next", "o'clock", "oclock", "till", "until", "music", "stops", "song", "finishes", "ends", "going",
            "dancers",
        "everybody", "everyone", "you'll", "you’ll", "up", "nice", "begins", "repeats", "starts", "will", "direction", "first", "time", "counts", "wall",
        "be", "should", "for", "every", "go", "once", "more", "anew", "recommence", "continue",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    [GeneratedRegex(@"\b(1[0-2]|[1-9])([:.](00|30)\b| ?o'?clock\b)", RegexOptions.IgnoreCase)]
    private static partial Regex ClockTime();

    private static readonly string[] ClosingCore = ["again", "repeat", "enjoy", "fun", "happy", "smile", "smiling", "end", "over", "restart", "anew",
        "recommence"];

    private static readonly SearchValues<char> Drawn = SearchValues.Create("-–—=_*~•·. +|#");

    /// <summary>Whether a line is drawn, not written: "-----", "=====".</summary>
    private bool IsRule(TextLine line) => line.End - line.Start >= 2
        && _text.AsSpan(line.Start, line.End - line.Start).IndexOfAnyExcept(Drawn) < 0;

    /// <summary>A line of the heading without the bullets and stars about it.</summary>
    private TextLine WithoutMarks(TextLine line)
    {
        (int start, int end) = (line.Start, line.End);
        while (start < end && (_text[start] is '*' or '•' or '·' or '~' || (_text[start] == '-' && start + 1 < end && _text[start + 1] == ' ')
            || (start > line.Start && _text[start] == ' ')))
        {
            start++;
        }

        while (end > start && (_text[end - 1] is '*' or '•' or '~' || (end < line.End && _text[end - 1] == ' ')))
        {
            end--;
        }

        return start < end ? new TextLine(line.Number, start, end) : line;
    }

    /// <summary>A line that changes nothing of the dance, kept as a note; false when it may mean something.</summary>
    private bool ReadRemark(TextLine line)
    {
        string words = _text[line.Start..line.End];
        string? kind = IsClosing(words) || ClosesTheSheet(line, words) ? "closing" : IsAddress(words) ? "contact"
            : IsKey(words) ? "key" : IsTalk(line, words) ? "remark" : null;
        if (kind is not null)
        {
            _notes.Add(new Note(kind, words, line.Span));
            return true;
        }

        return ReadTalk(line);
    }

    /// <summary>A line that is told to people, kept with a hint; false when it may change the dance.</summary>
    private bool ReadTalk(TextLine line)
    {
        string words = _text[line.Start..line.End];
        if (!TalkWords.IsRemark(words, _state.Lexicon, IsOutside(line)))
        {
            return false;
        }

        return ReadAsRemark(line);
    }

    private bool ReadAsRemark(TextLine line)
    {
        string words = _text[line.Start..line.End];
        _notes.Add(new Note("remark", words, line.Span));
        _state.Add(ReadingRules.KeptAsRemark.At(line.Span, ("words", words.Length > 80 ? words[..80] + "..." : words)));
        return true;
    }

    // told at a glance, since every line of counts is asked
    private static bool MayClose(ReadOnlySpan<char> words)
    {
        foreach (string core in ClosingCore)
        {
            if (words.Contains(core, StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return words.Contains("facing", StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>"Start again (9:00)": closing words, whose clock is held against the turns up to there.</summary>
    private bool ReadClosing(TextLine line)
    {
        if (_section is not { Lines.Count: > 0 } || !MayClose(_text.AsSpan(line.Start, line.End - line.Start)))
        {
            return false;
        }

        string words = _text[line.Start..line.End];
        bool counted = CountLabel.Read(_text, line.Start, line.End) is CountLabel label && label.End < line.End;
        if ((HasCountsAfter(line) && !IsBeforeTag(line)) || CountsBehind(line, out _).Count > 0
            || !(IsClosing(words) || (!counted && IsClosingWithTalk(words))))
        {
            // "repeat 1-4 : 5-8" goes on
            return false;
        }

        if (_tag is null)
        {
            ClaimIn(line.Start, line.End);
        }
        else if (SentenceReader.HasWord(words, "restart"))
        {
            return false;
        }

        _notes.Add(new Note("closing", words, line.Span));
        return true;
    }

    [GeneratedRegex(@"^(?:(?:from|to|cc|sent|date|subject|re|fw|fwd): .*|(?:hello|hi|hiya|dear|hey|ahoy|good (?:morning|evening|afternoon))"
        + @"(?: (?:all|everyone|everybody|folks|ladies|dancers|friends|there))?(?:\b.*,|!)|\p{Ll}[^:\d()/|=-]{20,}\.(?: .*)?)$")]
    private static partial Regex Letter();

    private static bool IsOfALetter(string words) => Letter().IsMatch(words.Length > 2
        && char.IsUpper(words[0]) ? char.ToLowerInvariant(words[0]) + words[1..] : words)
        && !(char.IsUpper(words[0]) && words.IndexOf(':') < 0 && !words.EndsWith(',') && !words.EndsWith('!'));

    /// <summary>A line of prose together with the lines it is wrapped to.</summary>
    /// <param name="line">The line, without blanks at its ends.</param>
    /// <param name="index">Its index; moved on to the last line that was taken.</param>
    private TextLine Unwrapped(TextLine line, ref int index)
    {
        while (index + 1 < _lines.Count && line.End - line.Start is >= 45 and < 600 && CountLabel.Read(_text, line.Start, line.End) is null
            && (char.IsLetterOrDigit(_text[line.End - 1]) || _text[line.End - 1] == ',') && TrailingLabels(line).Count == 0)
        {
            TextLine next = _lines[index + 1].Trimmed(_text);
            if (next.Start == next.End || IsRule(next) || _lines[index].End - _lines[index].Start < 45)
            {
                break;
            }

            if (BeginsALine().IsMatch(_text.AsSpan(next.Start, next.End - next.Start)))
            {
                break;
            }

            bool goesOn = !char.IsDigit(_text[line.End - 1]) && char.IsLower(_text[next.Start]) && CountLabel.Read(_text, next.Start, next.End) is null
                && !_heading.IsField(next) && TrailingLabels(next).Count == 0 && !(_section is null && StartsWithWord(_text.AsSpan(next.Start), "wait"));
            bool counts = CountsOfWords().IsMatch(_text.AsSpan(next.Start, next.End - next.Start))
                && WaitsForCounts().IsMatch(_text.AsSpan(line.Start, line.End - line.Start));
            if (!goesOn && !counts)
            {
                break;
            }

            line = line with { End = next.End };
            index++;
        }

        return line;
    }

    // what has a line of its own, in small letters too
    [GeneratedRegex(@"^(?:walls? \d|wall:|w\d|restart|tag|bridge|ending|finish|section|part |track|sequence|intro|note|style|arms|option|call|tip"
        + @"|caution|to finish)\b|^[\p{L} ]{2,20}:\s*\S",
        RegexOptions.IgnoreCase)]
    private static partial Regex BeginsALine();

    [GeneratedRegex(@"\b(?:after|for|wait|first|the|of|count|is)$", RegexOptions.IgnoreCase)]
    private static partial Regex WaitsForCounts();

    // "16 counts." at the beginning of the next line
    [GeneratedRegex(@"^\d{1,3} (?:counts?|beats?)\b(?! (?:intro|\d))", RegexOptions.IgnoreCase)]
    private static partial Regex CountsOfWords();

    /// <summary>"On the last wall dance to count 12 and stomp": an ending that does not begin with that word.</summary>
    private bool IsEnding(TextLine line)
    {
        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start);
        return EndOfSong().IsMatch(words) && !SentenceReader.HasWord(words, "restart") && !SentenceReader.HasWord(words, "tag") && _endings.Count == 0
            && TermReader.Read(_text, line.Start, line.End, _state.Lexicon).Exists(t => t.Kind is TermKind.Move);
    }

    [GeneratedRegex(@"^\W*(?:(?:on|during|in) the (?:last|final|very last) wall\b|(?:last|final) wall\b"
        + @"|at the (?:very )?end(?! of (?:the )?(?:\d|wall|walls|second|third|first|fourth"
        + @"|fifth|sixth|each|every))\b|for (?:a|the|your) (?:\p{L}+ )?(?:finish|ending|finale)\b"
        + @"|(?:big |grand |nice )?(?:finale|finish)\b)", RegexOptions.IgnoreCase)]
    private static partial Regex EndOfSong();

    // "fwd = forward, tch = touch"
    private static bool IsKey(string words) => words.Contains('=', StringComparison.Ordinal)
        && words.Split([',', ';', '|', '/'], StringSplitOptions.RemoveEmptyEntries).All(p => p.Split('=') is [var is1, var is2]
        && is1.Trim().Length is > 0 and < 12
            && is2.Trim().Length is > 0 and < 30);

    // "Restart:" alone, over the sentence that tells it
    private static bool IsHeadOfSentence(string words) => words.EndsWith(':')
        && words.TrimEnd(':', ' ').ToLowerInvariant() is "restart" or "restarts" or "tags" or "tag & restart"
        or "tags & restarts" or "tag/restart" or "tags/restarts" or "restarts & tags" or "tags and restarts";

    // "1 restart", "2 easy tags" at the head of a sheet are no counts
    [GeneratedRegex(@"^\d{1,2}x? (\p{L}+ ){0,2}?(restart|tag|bridge)(e?s)?\b", RegexOptions.IgnoreCase)]
    private static partial Regex HowManyBreaks();

    /// <summary>Whether a line stands before the first counts or after the last.</summary>
    private bool IsOutside(TextLine line) => (_section is null && _sections.Count == 0) || !HasCountsAfter(line);

    // whether the next line is the heading of a tag, a bridge or the ending
    private bool IsBeforeTag(TextLine line)
    {
        for (int i = line.Number; i < _lines.Count; i++)
        {
            TextLine next = _lines[i].Trimmed(_text);
            if (_lines[i].Start > line.End && next.Start < next.End && !IsRule(next))
            {
                ReadOnlySpan<char> words = _text.AsSpan(next.Start, next.End - next.Start).TrimStart("*#~ ");
                return StartsWithWord(words, "tag") || StartsWithWord(words, "bridge") || StartsWithWord(words, "tags") || StartsWithWord(words, "ending");
            }
        }

        return false;
    }

    private bool HasCountsAfter(TextLine line) => (_lastCounted ??= LastCounted()) > line.End;

    // where the last line of counts begins: asked of every line of talk, and the same for all
    private int? _lastCounted;

    private int LastCounted() => _lines.FindLast(l => l.Trimmed(_text) is { } counted && counted.Start < counted.End
        && CountLabel.Read(_text, counted.Start, counted.End) is { } label && label.End < counted.End) is { Number: > 0 } last ? last.Start : -1;

    private static bool IsClosing(string words)
    {
        // the clock at which it begins again is no word
        string[] each = [.. ClockTime().Replace(words, " ").Split(
            [' ', ',', '.', '!', '-', '–', ':', ';', '*', '(', ')', '[', ']', '~', '…', '\t', '&', '='],
            StringSplitOptions.RemoveEmptyEntries)
            .Where(w => w.Any(char.IsLetterOrDigit))];
        if (each.Length > 2 && each[0].All(char.IsAsciiDigit))
        {
            // "32  BEGIN DANCE AGAIN": how many counts are over
            each = each[1..];
        }

        return each.Length is > 0 and < 16 && Array.TrueForAll(each, Closing.Contains)
            && Array.Exists(each, w => ClosingCore.Contains(w, StringComparer.OrdinalIgnoreCase) || (w.Equals("facing", StringComparison.OrdinalIgnoreCase)
            && ClockTime().IsMatch(words)));
    }

    /// <summary>"Keep the lantern lit - start again at 3:00", "and again from the new wall :-) see you at 19.30": closing words with talk before or
    /// behind.</summary>
    private bool IsClosingWithTalk(string words)
    {
        for (int at = 4; at < words.Length - 4; at++)
        {
            bool parts = (words[at] is '.' or '!' or ',' or ';' or ':' && words[at + 1] == ' ') || (words[at] is '-' or '–' or '—' && words[at - 1] == ' ')
                || char.IsSurrogate(words[at]) || words[at] is '(' or '…';
            if (!parts)
            {
                continue;
            }

            string before = words[..at];
            string behind = words[at..];
            if (IsClosing(before) ? IsTold(behind) : IsClosing(behind) && IsTold(before))
            {
                return true;
            }
        }

        return false;
    }

    // what may say how much of the dance is danced, and when
    [GeneratedRegex(@"\b(?:half|only|first|second|third|fourth|fifth|sixth|seventh|eighth|\d(?:st|nd|rd|th)|times?|leave|skip|omit|twice"
        + @"|instead)\b", RegexOptions.IgnoreCase)]
    private static partial Regex MayLimit();

    private bool IsTold(string words)
    {
        int start = 0;
        while (start < words.Length && !char.IsLetterOrDigit(words[start]))
        {
            start++;
        }

        return start < words.Length && !SentenceReader.LooksLikeSentence(words.AsSpan(start)) && !MayLimit().IsMatch(words)
            && TalkWords.IsRemark(words[start..], _state.Lexicon, outside: true);
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
            && !HasCountsAfter(line);
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
