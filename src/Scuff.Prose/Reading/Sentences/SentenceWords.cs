using Scuff.Prose.Words;

namespace Scuff.Prose.Reading.Sentences;

/// <summary>The words of sentences about the pattern, and how they are walked through.</summary>
internal sealed class SentenceWords(List<WordToken> told)
{
    // "W3", "aft 16 cts", "EOW 7" and "RS" in full
    private readonly List<WordToken> tokens = [.. told.SelectMany((t, i) => t.Text switch
    {
        "w" when i + 1 < told.Count && told[i + 1].Kind == WordTokenKind.Number => (WordToken[])[t with { Text = "wall" }],
        "cts" or "cnts" or "cnt" => [t with { Text = "counts" }],
        "c" when i > 0 && told[i - 1].Kind == WordTokenKind.Number => [t with { Text = "counts" }],
        "ct" => [t with { Text = "count" }],
        "." when i > 0 && told[i - 1].Text is "ct" or "cts" or "cnt" && i + 1 < told.Count && told[i + 1].Text is "tag" or "bridge" or "intro" => [],
        "n" when i + 1 < told.Count && told[i + 1].Text is not "." => [t with { Text = "and" }],
        "aft" => [t with { Text = "after" }],
        "bef" => [t with { Text = "before" }],
        "rs" => [t with { Text = "restart" }],
        "eow" => [t with { Text = "end" }, t with { Text = "of" }, t with { Text = "wall" }],
        _ => [t],
    })];

    private static readonly Dictionary<string, int> Numbers = new(StringComparer.Ordinal)
    {
        ["one"] = 1,
        ["two"] = 2,
        ["three"] = 3,
        ["four"] = 4,
        ["five"] = 5,
        ["six"] = 6,
        ["seven"] = 7,
        ["eight"] = 8,
        ["nine"] = 9,
        ["ten"] = 10,
        ["eleven"] = 11,
        ["twelve"] = 12,
        ["sixteen"] = 16,
        ["twenty"] = 20,
        ["thirty"] = 30,
        ["forty"] = 40,
    };

    private static readonly Dictionary<string, int> Ordinals = new(StringComparer.Ordinal)
    {
        ["first"] = 1,
        ["second"] = 2,
        ["third"] = 3,
        ["fourth"] = 4,
        ["fifth"] = 5,
        ["sixth"] = 6,
        ["seventh"] = 7,
        ["eighth"] = 8,
        ["ninth"] = 9,
        ["tenth"] = 10,
        ["eleventh"] = 11,
        ["twelfth"] = 12,
    };

    // words that change nothing of what is danced: who, when in the song, politeness
    private static readonly HashSet<string> Filling = new(StringComparer.Ordinal)
    {
        "a", "about", "above", "add", "added", "additional", "after", "again", "all", "also", "always", "an", "and", "approximately",
        "are", "as", "at", "back", "be", "beat", "beats", "been", "both", "beginning", "begins", "below", "break", "but", "by", "called", "can",
        "chorus", "come", "comes", "complete", "completed", "completing", "count", "counts", "dance", "danced", "dances", "dancing", "did",
        "do", "does", "done", "during", "easily", "easy", "end", "ended", "ending", "ends", "entire", "entirely", "extra", "face", "faces",
        "facing", "finish", "finished", "finishing", "following", "for", "from", "front", "full", "get", "gets", "goes", "going", "got",
        "had", "happen", "happens", "has", "have", "he", "here", "home", "if", "in", "insert", "inserted", "instrumental", "into", "intro",
        "is", "it", "its", "just", "little", "looking", "lyrics", "made", "make", "may", "minute", "minutes", "music", "must", "named",
        "nb", "nd", "new", "no", "note", "now", "nr", "occur", "occurs", "of", "on", "once", "only", "our", "own", "pattern", "perform",
        "performed", "place", "places", "please", "point", "rd", "reach", "regular", "see", "sequence", "she", "short", "should", "side",
        "simple", "simply", "sing", "singer", "sings", "small", "so", "song", "st", "start", "starting", "starts", "step", "steps",
        "still", "stop", "stopping", "stops", "take", "takes", "th", "that", "the", "then", "there", "theres", "these", "they", "this",
        "those", "through", "time", "to", "towards", "track", "up", "us", "verse", "vocal", "vocals", "wall", "walls", "we", "when",
        "where", "which", "while", "who", "whole", "will", "with", "would", "you", "youll", "your",
        "careful", "cut", "direction", "mate", "next", "off", "short", "straight", "very", "worries", "including", "easier", "hear", "heard", "hooray",
            "listen", "nice", "printed", "written", "shown", "described", "listed", "given", "explained", "noted", "underneath", "beneath", "overleaf",
            "sheet", "page", "bottom", "remember", "stand", "standing", "stands", "tricky", "look", "looks", "find", "yourself", "bring", "brings",
            "position", "land", "lands", "brought", "looked",
            "falls", "fall", "falling", "coming",
            "thing", "runs", "need", "needs", "throw", "throwing", "chuck", "tack", "slot", "smile", "smiles", "put", "puts", "putting",
    };

    /// <summary>Whether a list that was read had a facing for one of its numbers.</summary>
    public bool PassedClock { get; set; }

    /// <summary>How many there are.</summary>
    public int Count => tokens.Count;

    /// <summary>The word at a place, or an empty one beyond the end.</summary>
    public WordToken this[int at] => at >= 0 && at < tokens.Count ? tokens[at] : new WordToken(WordTokenKind.Mark, "", 0, default, false);

    /// <summary>Whether a word changes nothing of what is danced.</summary>
    public static bool IsFilling(string word) => Filling.Contains(word);

    /// <summary>Whether a word is a number or changes nothing, so that no slip has to be looked for in it.</summary>
    public static bool IsKnown(string word) => Filling.Contains(word) || Numbers.ContainsKey(word) || Ordinals.ContainsKey(word);

    /// <summary>Whether the word at a place is one of these.</summary>
    public bool Is(int at, params ReadOnlySpan<string> words)
    {
        string word = this[at].Text;
        return word.Length > 0 && words.Contains(word);
    }

    /// <summary>The place after all words of these from here on.</summary>
    public int Skip(int at, params ReadOnlySpan<string> words)
    {
        while (Is(at, words))
        {
            at++;
        }

        return at;
    }

    /// <summary>The number at a place, in digits or words, and how many words it takes.</summary>
    public (int Value, int Used)? NumberAt(int at)
    {
        if (this[at].Kind == WordTokenKind.Number)
        {
            return (this[at].Value, 1);
        }

        if (!Numbers.TryGetValue(this[at].Text, out int value))
        {
            return null;
        }

        // "twenty-four"
        int unit = at + (Is(at + 1, "-") ? 2 : 1);
        return value is 20 or 30 or 40 && Numbers.TryGetValue(this[unit].Text, out int ones) && ones < 10 ? (value + ones, unit - at + 1)
            : (value, 1);
    }

    /// <summary>The ordinal at a place ("3rd", "third"), and how many words it takes.</summary>
    public (int Value, int Used)? OrdinalAt(int at)
    {
        if (this[at].Kind == WordTokenKind.Number && Is(at + 1, "st", "nd", "rd", "th", "°", "º", "e", "er", "ª"))
        {
            return (this[at].Value, 2);
        }

        if (this[at].Kind == WordTokenKind.Number && Is(at + 1, ".") && (Is(at + 2, "wall", "round", "repetition", "rotation")
            || (Is(at + 2, "and", "&", "+", ",", "/") && Skip(at + 3, "of", "in", "the") is var other && this[other].Kind == WordTokenKind.Number
                && Is(other + 1, "."))))
        {
            // "in the 3. and 6. round"
            return (this[at].Value, 2);
        }

        return Ordinals.TryGetValue(this[at].Text, out int value) ? (value, 1) : null;
    }

    // "2 (facing 6:00) and 5": what is said of a wall in brackets
    private int PastClock(int at)
    {
        if (!Is(at, "("))
        {
            return at;
        }

        int close = at + 1;
        while (close < at + 7 && (this[close].Kind == WordTokenKind.Clock || Is(close, "facing", "face", "starts", "start", "at", "you", "on", "the")))
        {
            close++;
        }

        if (!Is(close, ")") || close == at + 1)
        {
            return at;
        }

        PassedClock = true;
        return close + 1;
    }

    /// <summary>A list of numbers ("2, 4 and 6") from a place on, and the place after it.</summary>
    /// <param name="at">Where it begins.</param>
    /// <param name="ordinals">Whether ordinals are meant.</param>
    public (List<int> Values, int End) ListAt(int at, bool ordinals)
    {
        List<int> values = [];
        int end = at;
        int next = at;
        while ((ordinals ? OrdinalAt(next) : NumberAt(next)) is (int value, int used))
        {
            // "walls 2, 16 counts": the second number is no wall
            if (values.Count > 0 && !ordinals && Is(next + used, "count", "counts", "beats", "x", "o'clock", "oclock", "o’clock", "times", "time", "restart",
                "restarts", "tag", "tags", "bridge"))
            {
                break;
            }

            if (values.Count > 0 && !ordinals && OrdinalAt(next) is not null)
            {
                break;
            }

            values.Add(value);
            end = next + used;
            if (Is(end, "-", "to") && NumberAt(end + 1) is (int last, int width) && !ordinals && last > value && last - value < 40
                && !Is(end + 1 + width, "count", "counts", "o'clock", "oclock", "o’clock", "h"))
            {
                // "walls 2-4"
                values.AddRange(Enumerable.Range(value + 1, last - value));
                end += 1 + width;
            }

            next = Skip(PastClock(end), ",", "and", "&", "+", "/", "the", "also", "#");
            int named = Skip(next, "in", "on", "the", "nr", "no", "number", ".");
            if (!ordinals && next > end && named > next && NumberAt(named) is not null && !Is(named + 1, "count", "counts", "beats"))
            {
                // "wall nr. 3 and nr. 6"
                next = named;
            }

            if (next == end && this[next].Kind == WordTokenKind.Word)
            {
                // "after wall 4 one tag"
                break;
            }

            next = ordinals ? Skip(next, "in", "on", "during", "at", "of", "the") : next;
            if (!ordinals && next > end && Is(next, "wall", "s", "section") && NumberAt(next + 1) is not null && (Is(next, "wall")
                || Is(at - 1, "s", "section", "sections")))
            {
                // "W3 and W6"
                next++;
            }
        }

        return (values, end);
    }
}
