using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose.Words;
using Scuff.Timing;

namespace Scuff.Prose.Reading.Sentences;

/// <summary>Reads the order of the parts of a phrased dance: "sequence: A A B A tag B", "AAB AAB B", "2x A, A(16), B".</summary>
internal static class SequenceReader
{
    // how the line may be headed; what follows stands after a colon or a dash
    private static readonly string[] Keys = ["sequence", "order of the parts", "order of parts", "order", "phrasing", "dance sequence",
        "dance order", "part sequence", "dance seq", "seq", "order of the dance", "running order", "part order", "order of dance"];

    // words that name no part
    private static readonly HashSet<string> Passing = new(StringComparer.Ordinal)
    {
        "then", "and", "restart", "wall", "part", "parts", "x", "ending", "end", "finish", "count", "counts", "first", "only", "the", "of", "to",
    };

    /// <summary>Where the order begins in a line that tells it, or null.</summary>
    public static int? StartOf(ReadOnlySpan<char> words)
    {
        foreach (string key in Keys)
        {
            if (!words.StartsWith(key, StringComparison.OrdinalIgnoreCase))
            {
                continue;
            }

            int at = key.Length;
            while (at < words.Length && words[at] is ' ' or '.')
            {
                at++;
            }

            if (at < words.Length && words[at] == '.' && at == key.Length && IsLetters(words[(at + 1)..]))
            {
                // "Seq. A A B"
                return at + 1;
            }

            if (at < words.Length && (words[at] == ':' || (at > key.Length && words[at] is '-' or '–' or '—')))
            {
                return at + 1;
            }

            if (words[at..].StartsWith("is ", StringComparison.OrdinalIgnoreCase) && IsLetters(words[(at + 3)..Math.Min(words.Length, at + 12)]))
            {
                // "Sequence is A, A, B, tag, A (16 counts only)"
                return at + 3;
            }

            if (at > key.Length && IsLetters(words[at..]))
            {
                return at;
            }
        }

        // "Sequence for the track: A B", "Order of the dance: A B"
        return (words.StartsWith("sequence", StringComparison.OrdinalIgnoreCase) || words.StartsWith("order of", StringComparison.OrdinalIgnoreCase)
            || words.StartsWith("the order", StringComparison.OrdinalIgnoreCase) || words.StartsWith("the sequence", StringComparison.OrdinalIgnoreCase))
            && words.IndexOf(':') is > 0 and < 40 and int colon ? colon + 1 : null;
    }

    /// <summary>Whether nothing but single letters, numbers and tags stands there: "A A B tag B".</summary>
    private static bool IsLetters(ReadOnlySpan<char> words)
    {
        int letters = 0;
        foreach (Range range in words.SplitAny(" ,;-–()&+"))
        {
            ReadOnlySpan<char> word = words[range].Trim('.');
            bool passes = word.Length == 0 || word.Equals("tag", StringComparison.OrdinalIgnoreCase)
                || word.Equals("bridge", StringComparison.OrdinalIgnoreCase) || word.IndexOfAnyExceptInRange('0', '9') < 0
                || (letters > 0 && word.ToString().ToLowerInvariant() is "first" or "1st" or "counts" or "cts" or "only");
            if (!passes && (!char.IsLetter(word[0]) || word[1..].IndexOfAnyExceptInRange('0', '9') >= 0))
            {
                return false;
            }

            letters += passes ? 0 : 1;
        }

        return letters > 1;
    }

    /// <summary>The items of the order.</summary>
    /// <param name="state">What is known of the text.</param>
    /// <param name="line">The line from where the order begins.</param>
    /// <param name="dance">The dance with its parts and tags.</param>
    public static List<SequenceItem> Read(ReaderState state, TextLine line, Dance dance)
    {
        List<SequenceItem> items = [];
        SentenceWords words = new(WordScanner.Scan(state.Text, line.Start, line.End));
        int times = 1;
        int at = 0;
        while (at < words.Count)
        {
            int before = items.Count;
            int wanted = times;
            at += Math.Max(1, One(state, words, at, dance, items, ref times));
            if (items.Count > before && wanted > 1)
            {
                // "2x A": as often as was said before it
                List<SequenceItem> again = items[before..];
                for (int i = 1; i < wanted; i++)
                {
                    items.AddRange(again);
                }

                times = 1;
            }
        }

        return items;
    }

    private static int One(ReaderState state, SentenceWords words, int at, Dance dance, List<SequenceItem> items, ref int times)
    {
        WordToken word = words[at];
        if (words.Is(at, "tag", "bridge"))
        {
            (string name, int used) = TagNameAt(state, words, at + 1, dance);
            items.Add(new SequenceItem(name, true, null, TextSpan.FromBounds(word.Span.Start, words[at + used].Span.End)));
            return used + 1;
        }

        if (words.Is(at, "twice", "x2") && items.Count > 0)
        {
            items.Add(items[^1]);
            return 1;
        }

        if (word.Kind == WordTokenKind.Number)
        {
            return NumberAt(words, at, items, ref times);
        }

        if (word.Kind != WordTokenKind.Word || Passing.Contains(word.Text))
        {
            return 1;
        }

        if (word.Text.Length > 1 && char.IsLower(state.Text[word.Span.Start]) && dance.FindPart(word.Text) is null
            && (SentenceWords.IsFilling(word.Text) || state.Lexicon.Word(word.Text) is
            {
                Kind: TermKind.Filler or TermKind.Dir or TermKind.Then or TermKind.Join
                or TermKind.With or TermKind.Style or TermKind.Size
            }))
        {
            // "A (only the first 16 counts of it)", "and on end B": words that name no part
            return 1;
        }

        string raw = state.Text.Substring(word.Span.Start, word.Span.Length);
        if (dance.FindPart(raw) is null && raw.Length > 1 && raw.All(c => dance.FindPart(char.ToString(c)) is not null))
        {
            // AABA without blanks
            for (int k = 0; k < raw.Length; k++)
            {
                items.Add(new SequenceItem(char.ToString(raw[k]), false, null, new TextSpan(word.Span.Start + k, 1)));
            }

            return 1;
        }

        items.Add(new SequenceItem(raw, false, null, word.Span));
        return 1;
    }

    /// <summary>A(16), A16, A 16 counts, A (first 16 counts), A (1-16): only so many counts; 2A and 2x A: twice.</summary>
    private static int NumberAt(SentenceWords words, int at, List<SequenceItem> items, ref int times)
    {
        int value = words[at].Value;
        int next = at + 1;
        if (value == 1 && words.Is(next, "st"))
        {
            // "1st 16 counts"
            return 2;
        }

        if (value is > 0 and < 9 && ((words.Is(next, "x", "times") && words[next + 1].Kind == WordTokenKind.Word)
            || (words[next].Kind == WordTokenKind.Word && !words[next].SpaceBefore && !words.Is(next, "counts", "count"))))
        {
            times = value;
            return words.Is(next, "x", "times") ? 2 : 1;
        }

        int opened = at - 1;
        while (words.Is(opened, "first", "only", "counts", "count", "the", "to", "up", "until", "till", "til", "just", "with", "st")
            || (words.Is(opened + 1, "st") && words[opened].Value == 1))
        {
            opened--;
        }

        bool upTo = words.Is(at - 1, "until", "till", "til") || (words.Is(at - 1, "to", "count") && words.Is(opened + 1, "up", "until", "till", "til", "to"));

        if (words.Is(next, "-", "to") && words[next + 1].Kind == WordTokenKind.Number && value == 1 && words[next + 1].Value > 1)
        {
            value = words[next + 1].Value;
            next += 2;
        }

        bool limits = upTo || words.Is(opened, "(") || !words[at].SpaceBefore || words.Is(next, "counts", "count");
        if (limits && items.Count > 0)
        {
            items[^1] = items[^1] with { Upto = Counts.FromWhole(Math.Clamp(value, 1, 1000)) };
        }

        return next - at;
    }

    private static (string Name, int Used) TagNameAt(ReaderState state, SentenceWords words, int at, Dance dance)
    {
        if (words.Is(at, "\""))
        {
            int close = at + 1;
            while (close < words.Count && !words.Is(close, "\""))
            {
                close++;
            }

            return close < words.Count ? (state.Text[words[at].Span.End..words[close].Span.Start].Trim(), close - at + 1) : ("", 0);
        }

        string text = words[at].Text;
        bool known = words[at].Kind is WordTokenKind.Word or WordTokenKind.Number
            && dance.Tags.Any(t => string.Equals(t.Name, text, StringComparison.OrdinalIgnoreCase));
        return known ? (text, 1) : ("", 0);
    }
}
