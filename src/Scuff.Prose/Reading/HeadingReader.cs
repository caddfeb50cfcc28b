using System.Globalization;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>Reads the title and the <c>key: value</c> lines.</summary>
internal sealed class HeadingReader(ReaderState state)
{
    private static readonly Dictionary<string, string> Keys = new(StringComparer.OrdinalIgnoreCase)
    {
        ["by"] = "by",
        ["choreographer"] = "by",
        ["choreographed by"] = "by",
        ["choreo"] = "by",
        ["chor"] = "by",
        ["dance by"] = "by",
        ["devised by"] = "by",
        ["written by"] = "by",
        ["choreography"] = "by",
        ["choreographers"] = "by",
        ["dance of"] = "by",
        ["choreographie"] = "by",
        ["choreografie"] = "by",
        ["choreograph"] = "by",
        ["choreography by"] = "by",
        ["choreo by"] = "by",
        ["level"] = "level",
        ["grade"] = "level",
        ["difficulty"] = "level",
        ["standard"] = "level",
        ["dance level"] = "level",
        ["level of difficulty"] = "level",
        ["counts"] = "counts",
        ["count"] = "counts",
        ["beats"] = "counts",
        ["number of counts"] = "counts",
        ["no of counts"] = "counts",
        ["no. of counts"] = "counts",
        ["count total"] = "counts",
        ["total counts"] = "counts",
        ["number of walls"] = "walls",
        ["no of walls"] = "walls",
        ["no. of walls"] = "walls",
        ["number of restarts"] = "restarts",
        ["number of tags"] = "tags",
        ["walls"] = "walls",
        ["wall"] = "walls",
        ["rhythm"] = "rhythm",
        ["motion"] = "rhythm",
        ["style of dance"] = "rhythm",
        ["start"] = "start",
        ["starts"] = "start",
        ["starting position"] = "start",
        ["weight"] = "start",
        ["restarts"] = "restarts",
        ["restart"] = "restarts",
        ["tags"] = "tags",
        ["tag"] = "tags",
        ["counted"] = "counted",
        ["title"] = "title",
        ["dance"] = "title",
        ["name"] = "title",
        ["dance title"] = "title",
        ["dance name"] = "title",
        ["name of dance"] = "title",
        ["name of the dance"] = "title",
        ["new dance"] = "title",
        ["dance of the week"] = "title",
        ["dance of the month"] = "title",
        ["this week"] = "title",
        ["this week's dance"] = "title",
        ["tonight's dance"] = "title",
        ["date"] = "date",
        ["version"] = "version",
        ["last changed"] = "changed",
        ["changed"] = "changed",
        ["place"] = "place",
        ["country"] = "country",
        ["music"] = "music",
        ["song"] = "music",
        ["tune"] = "music",
        ["suggested music"] = "music",
        ["suggested song"] = "music",
        ["suggested track"] = "music",
        ["music suggestion"] = "music",
        ["recommended music"] = "music",
        ["our music"] = "music",
        ["intro"] = "intro",
        ["lead"] = "intro",
        ["lead in"] = "intro",
        ["lead-in"] = "intro",
        ["count in"] = "intro",
        ["count-in"] = "intro",
        ["introduction"] = "intro",
        ["contact"] = "contact",
        ["permission"] = "permission",
        ["description"] = "description",
        ["about"] = "description",
        ["email"] = "contact",
        ["web"] = "contact",
        ["copyright"] = "permission",
        ["other music"] = "music",
        ["meter"] = "meter",
        ["time"] = "meter",
        ["bpm"] = "bpm",
        ["tempo"] = "bpm",
        ["for"] = "description",
        ["source"] = "description",
        ["type"] = "type",
        ["page"] = "page",
        ["student page"] = "page",
    };

    private static readonly Dictionary<string, string>.AlternateLookup<ReadOnlySpan<char>> KeysOfSpans = Keys.GetAlternateLookup<ReadOnlySpan<char>>();

    private readonly List<HeaderField> _fields = [];
    private string _title = "";
    private TextSpan _titleSpan;

    // whether the title is a line that nothing calls so
    private bool _isBareTitle;

    public bool HasTitle { get; private set; }

    /// <summary>The title, as far as read.</summary>
    public string Title => _title;

    /// <summary>How many characters of the text the title takes, for complaints about the whole text.</summary>
    public int TitleLength => HasTitle ? _titleSpan.End : 0;

    /// <summary>Where the weight starts, as far as read.</summary>
    public Weight Start { get; private set; } = Weight.Left;

    private bool StartIsStated { get; set; }

    /// <summary>The first line that is no field is the title.</summary>
    public bool ReadTitle(TextLine line)
    {
        if (FieldOf(line) is (string key, int start))
        {
            TextLine named = new TextLine(line.Number, start, line.End).Trimmed(state.Text);
            bool isSheet = _fields.Count == 0 && KeyOf(key) is null && named.Start < named.End && named.End - named.Start < 60
                && HeadingFacts.IsNameOfSheet(key) && !key.Contains("note", StringComparison.OrdinalIgnoreCase);

            // "CUE CARD: Corn Dolly"
            return isSheet && ReadTitle(named);
        }

        HasTitle = true;
        _isBareTitle = true;
        (string title, int end) = HeadingFacts.TitleOf(state.Text, line);
        _title = title;
        _titleSpan = TextSpan.FromBounds(line.Start, end);

        // "Tidewrack - 32c 4w Int. - intro 16c": what follows it are facts
        foreach (TextLine rest in HeadingFacts.Pieces(state.Text, line with { Start = end }))
        {
            if (!ReadField(rest))
            {
                _fields.Add(new HeaderField("description", state.Text[rest.Start..rest.End], rest.Span, rest.Number));
            }
        }

        return true;
    }

    /// <summary>A <c>key: value</c> line; false when the line is none.</summary>
    public bool ReadField(TextLine line)
    {
        if (FieldOf(line) is not (string key, int valueStart))
        {
            return ReadFacts(line);
        }

        TextLine value = WithoutStars(new TextLine(line.Number, valueStart, line.End).Trimmed(state.Text));
        string words = state.Text[value.Start..value.End];
        string? canonical = KeyOf(key);
        bool known = canonical is not null;
        if (!known && key.Length > 30)
        {
            return false;
        }

        HeaderField field = new(known ? canonical! : key, words, value.Span, line.Number, known);
        if (key.Contains('/', StringComparison.Ordinal) && SplitSlashes(key, value))
        {
            return true;
        }

        if (SplitSeveral(field, value, line))
        {
            return true;
        }

        if (field.Key is "description" or "type" or "title" or "for" && ReadFacts(value))
        {
            return true;
        }

        if (field.Key is "counts" or "walls" && HeadingFacts.LevelIn(state.Text, value) is HeaderField level && !_fields.Exists(f => f.Key == "level"))
        {
            // "Wall: 4, Count: 24, Improver"
            Take(level);
        }

        if ((!known || field.Key == "music") && !_fields.Exists(f => f.Key == "intro")
            && HeadingFacts.Of(state.Text, value).Where(f => f.Key == "intro").ToList() is [var told, ..]
            && (!known || told.Value.Contains("intro", StringComparison.OrdinalIgnoreCase) || told.Value.Contains("count", StringComparison.OrdinalIgnoreCase)))
        {
            // "Info: intro 16 counts, 1 restart", "Music: Kelp, intro 12 counts"
            Take(told);
            if (!known)
            {
                field = field with { IsKnown = true };
            }
        }

        if (field.Key == "start" && HeadingFacts.Of(state.Text, line).FirstOrDefault(f => f.Key == "intro") is HeaderField intro)
        {
            // "Start: after 32 counts" says when, and perhaps on which foot
            Take(intro);
            if (words.Contains("weight", StringComparison.OrdinalIgnoreCase) || words.Contains("foot", StringComparison.OrdinalIgnoreCase))
            {
                Take(field);
            }

            return true;
        }

        Take(field);
        return true;
    }

    /// <summary>The key that words are, in the form all its names have in common, or null.</summary>
    /// <param name="words">The words before the colon.</param>
    public static string? KeyOf(ReadOnlySpan<char> words) => KeysOfSpans.TryGetValue(words, out string? key) ? key : IsKeyOfTitle(words) ? "title" : null;

    // "dance for tomorrow", "this week's new dance", "the dance of the evening"
    private static bool IsKeyOfTitle(ReadOnlySpan<char> words)
    {
        if (words.Length is < 8 or > 40 || !words.Contains("dance", StringComparison.OrdinalIgnoreCase))
        {
            return false;
        }

        bool dance = false;
        foreach (Range range in words.Split(' '))
        {
            ReadOnlySpan<char> word = words[range];
            dance |= word.Equals("dance", StringComparison.OrdinalIgnoreCase);
            if (!OfTitleSpans.Contains(word))
            {
                return false;
            }
        }

        return dance;
    }

    private static readonly HashSet<string>.AlternateLookup<ReadOnlySpan<char>> OfTitleSpans = new HashSet<string>(
    [
        "dance", "the", "our", "this", "next", "new", "last", "of", "for", "on", "in", "week", "week's", "weeks", "month", "month's", "day", "evening", "night",
        "tonight", "tonight's", "tomorrow", "tomorrow's", "today", "today's", "class", "lesson", "monday", "monday's", "tuesday", "tuesday's", "wednesday",
        "wednesday's", "thursday", "thursday's", "friday", "friday's", "saturday", "saturday's", "sunday", "sunday's", "beginners", "improvers", "first",
        "second",
    ], StringComparer.OrdinalIgnoreCase).GetAlternateLookup<ReadOnlySpan<char>>();

    // "**Counts:** 32" without the signs that make it bold
    private TextLine WithoutStars(TextLine value)
    {
        int start = value.Start;
        while (start < value.End && state.Text[start] is '*' or '_')
        {
            start++;
        }

        return start == value.Start ? value : (value with { Start = start }).Trimmed(state.Text);
    }

    /// <summary>Whether a line is a <c>key: value</c> line with a key that is known.</summary>
    public bool IsField(TextLine line) => FieldOf(line) is (string key, _)
        && (KeyOf(key) is not null || Array.TrueForAll(key.Split('/', StringSplitOptions.TrimEntries), Keys.ContainsKey));

    /// <summary>"2 restarts": how many the sheet says there are.</summary>
    public void KeepBreaks(TextLine line)
    {
        foreach (HeaderField field in HeadingFacts.Breaks(state.Text, line))
        {
            Take(field);
        }
    }

    public void KeepEnding(TextLine line) => _fields.Add(new HeaderField("ending", state.Text[line.Start..line.End], line.Span, line.Number));

    public Dance ToDance()
    {
        string rhythm = ValueOf("rhythm");
        Dance dance = new()
        {
            Title = _title,
            TitleSpan = _titleSpan,
            Header = _fields.ToValueList(),
            Rhythm = rhythm,
            BeatsPerBar = rhythm.Contains("waltz", StringComparison.OrdinalIgnoreCase) || ValueOf("meter").Contains("3/4", StringComparison.Ordinal)
                ? 3 : 4,
            Start = Start,
            StartIsStated = StartIsStated,
            BeatsPerCount = Counted(ValueOf("counted")),
            ClaimedCounts = NumberOf("counts"),
            ClaimedWalls = NumberOf("walls"),
            ClaimedRestarts = NumberOf("restarts"),
            ClaimedTags = NumberOf("tags"),
            ClaimedLevel = LevelOf(ValueOf("level")),
        };
        return dance;
    }

    /// <summary>The level named by words, or null when they are the writer's own.</summary>
    private static Level? LevelOf(string words)
    {
        string lower = words.ToLowerInvariant();
        return lower switch
        {
            _ when lower.Contains("absolute", StringComparison.Ordinal) || lower.Contains("ultra", StringComparison.Ordinal) =>
                Level.AbsoluteBeginner,
            _ when lower.Contains("improver", StringComparison.Ordinal) || lower.Contains("advanced beginner", StringComparison.Ordinal)
                || lower.Contains("high beginner", StringComparison.Ordinal) => Level.Improver,
            _ when lower.Contains("intermediate", StringComparison.Ordinal) => Level.Intermediate,
            _ when lower.Contains("advanced", StringComparison.Ordinal) => Level.Advanced,
            _ when lower.Contains("beginner", StringComparison.Ordinal) => Level.Beginner,
            _ => null,
        };
    }

    private static Ratio Counted(string words) => words.Contains("half", StringComparison.OrdinalIgnoreCase) ? 2
        : words.Contains("double", StringComparison.OrdinalIgnoreCase) ? new Ratio(1, 2) : 1;

    private (string Key, int ValueStart)? FieldOf(TextLine line)
    {
        int colon = state.Text.IndexOf(':', line.Start, line.End - line.Start);
        int leader = state.Text.IndexOf("..", line.Start, line.End - line.Start, StringComparison.Ordinal);
        if (leader > line.Start && (colon < 0 || leader < colon))
        {
            // "Level.......... Beginner"
            int end = leader;
            while (end < line.End && state.Text[end] is '.' or ' ')
            {
                end++;
            }

            string led = state.Text[line.Start..leader].Trim();
            return end < line.End && Keys.ContainsKey(led) ? (led, end) : null;
        }

        if (colon < 0)
        {
            return FieldWithoutColon(line);
        }

        if (colon - line.Start > 40 || colon == line.Start)
        {
            return null;
        }

        // a clock time or a title with a colon far in is no field
        if (colon + 1 < line.End && char.IsAsciiDigit(state.Text[colon - 1]) && char.IsAsciiDigit(state.Text[colon + 1]))
        {
            return null;
        }

        string key = state.Text[line.Start..colon].Trim().TrimEnd('.');
        bool wordy = key.All(c => char.IsLetter(c) || c is ' ' or '-' or '/' or '\'') && key.Length > 0;
        if (!wordy || (key.Split(' ').Length > 3 && KeyOf(key) is null))
        {
            return null;
        }

        return (key, colon + 1);
    }

    // "Music    Hemp and Tar", "Level - Beginner", with a tab or blanks or a dash for the colon
    private (string Key, int ValueStart)? FieldWithoutColon(TextLine line)
    {
        for (int at = line.Start + 2; at < Math.Min(line.End - 1, line.Start + 24); at++)
        {
            bool blank = state.Text[at] is '\t' or '|' or '\n' or '\r' || (state.Text[at] == ' ' && state.Text[at + 1] == ' ');
            bool dash = !blank && state.Text[at] == ' ' && at + 2 < line.End && state.Text[at + 1] is '-' or '–' or '=' && state.Text[at + 2] == ' ';
            if (blank || dash)
            {
                string key = state.Text[line.Start..at].Trim();
                if (key.Contains('/', StringComparison.Ordinal) && blank && Array.TrueForAll(key.Split('/', StringSplitOptions.TrimEntries), Keys.ContainsKey))
                {
                    return (key, at + 1);
                }

                bool isField = KeyOf(key) is string canonical && canonical is not ("tags" or "restarts" or "start")
                    && (blank || key.Length > 3);
                return isField ? (key, dash ? at + 3 : at + 1) : null;
            }
        }

        return null;
    }

    /// <summary>"Count/Wall/Level: 32/4/Improver".</summary>
    private bool SplitSlashes(string key, TextLine value)
    {
        string[] keys = key.Split('/', StringSplitOptions.TrimEntries);
        string words = state.Text[value.Start..value.End];
        string[] values = words.Split('/');
        if (values.Length != keys.Length || !Array.TrueForAll(keys, Keys.ContainsKey))
        {
            return false;
        }

        int at = value.Start;
        for (int i = 0; i < keys.Length; i++)
        {
            TextLine part = new TextLine(value.Number, at, at + values[i].Length).Trimmed(state.Text);
            Take(new HeaderField(Keys[keys[i]], state.Text[part.Start..part.End], part.Span, value.Number));
            at += values[i].Length + 1;
        }

        return true;
    }

    /// <summary>"Count: 32  Wall: 4  Level: improver" on one line.</summary>
    private bool SplitSeveral(HeaderField field, TextLine value, TextLine line)
    {
        int colon = state.Text.IndexOf(':', value.Start, value.End - value.Start);
        if (colon < 0)
        {
            return false;
        }

        int wordStart = colon;
        while (wordStart > value.Start && (char.IsLetter(state.Text[wordStart - 1]) || (wordStart == colon && state.Text[wordStart - 1] == ' ')))
        {
            wordStart--;
        }

        string key = state.Text[wordStart..colon].Trim();
        if (wordStart == value.Start || !Keys.ContainsKey(key) || key.Equals("by", StringComparison.OrdinalIgnoreCase))
        {
            return false;
        }

        TextLine first = new TextLine(line.Number, value.Start, wordStart).Trimmed(state.Text);
        string words = state.Text[first.Start..first.End].TrimEnd(',', ';', '|', '-', ' ');
        Take(field with { Value = words, Span = new TextSpan(first.Start, words.Length) });
        ReadField(new TextLine(line.Number, wordStart, line.End));
        return true;
    }

    /// <summary>Whether a line is one of facts without keys: "32 counts, 4 walls, improver", "Intro 16 counts".</summary>
    public bool IsFacts(TextLine line) => HeadingFacts.Of(state.Text, line).Count > 0;

    /// <summary>"32 counts, 4 walls, improver" as a line of facts; false when it is none.</summary>
    public bool ReadFacts(TextLine line)
    {
        IReadOnlyList<HeaderField> facts = HeadingFacts.Of(state.Text, line);
        if (facts.Count == 0 && !HeadingFacts.IsOfPattern(state.Text, line))
        {
            // "Improver level. Choreographed by Ada Brack."
            facts = [.. HeadingFacts.Sentences(state.Text, line).SelectMany(s => HeadingFacts.Of(state.Text, s))];
        }

        foreach (HeaderField fact in facts)
        {
            Take(fact);
        }

        return facts.Count > 0;
    }

    /// <summary>Lines of the heading that tell where the pattern breaks: "Restart: wall 3 after 24 counts".</summary>
    public List<TextLine> OfPattern { get; } = [];

    private void Take(HeaderField field)
    {
        int stop = field.Key == "intro" ? field.Value.IndexOf(". ", StringComparison.Ordinal) : -1;
        if (stop > 0 && field.Value[stop..].Contains("wall", StringComparison.OrdinalIgnoreCase))
        {
            // "Intro: 16 counts. One tag, after wall 2"
            OfPattern.Add(new TextLine(field.Line, field.Span.Start + stop + 2, field.Span.End));
            field = field with { Value = field.Value[..stop], Span = new TextSpan(field.Span.Start, stop) };
        }

        if (field.Key is "restarts" or "tags" && field.Value.Contains("wall", StringComparison.OrdinalIgnoreCase))
        {
            int start = state.Text.LastIndexOf(':', field.Span.Start, field.Span.Start - state.Text.LastIndexOf('\n', field.Span.Start));
            int word = start;
            while (word > 0 && (char.IsLetter(state.Text[word - 1]) || state.Text[word - 1] == ' '))
            {
                word--;
            }

            OfPattern.Add(new TextLine(field.Line, start < 0 ? field.Span.Start : word, field.Span.End).Trimmed(state.Text));
            return;
        }

        if (field.Key == "title" && (!HasTitle || _isBareTitle))
        {
            if (HasTitle)
            {
                // the name of a paper or a club stood above it
                _fields.Add(new HeaderField("description", _title, _titleSpan, field.Line));
            }

            HasTitle = true;
            _isBareTitle = false;
            _title = field.Value;
            _titleSpan = field.Span;
        }

        _fields.Add(field);
        switch (field.Key)
        {
            case "counts" or "walls" or "restarts" or "tags" when FirstNumber(field.Value) is null && !IsNone(field.Value):
                state.Add(ReadingRules.HeaderValue.At(field.Span, ("key", field.Key), ("wanted", "a number"), ("value", field.Value)));
                break;
            case "start":
                ReadStart(field);
                break;
            case "page" when !HeadingWords.IsAddress(field.Value):
                state.Add(ReadingRules.HeaderValue.At(
                    field.Span,
                    ("key", "page"),
                    ("wanted", $"an address that begins with https:// or http:// and has at most {HeadingWords.LongestAddress} letters"),
                    ("value", field.Value)));
                break;
        }

        if (!field.IsKnown)
        {
            state.Add(ReadingRules.UnknownHeader.At(field.Span, ("key", field.Key)));
        }
    }

    private void ReadStart(HeaderField field)
    {
        string lower = " " + field.Value.ToLowerInvariant().Replace('.', ' ').Replace(',', ' ') + " ";
        bool right = lower.Contains(" r ", StringComparison.Ordinal) || lower.Contains("right", StringComparison.Ordinal)
            || lower.Contains(" rf ", StringComparison.Ordinal);
        bool left = lower.Contains(" l ", StringComparison.Ordinal) || lower.Contains("left", StringComparison.Ordinal)
            || lower.Contains(" lf ", StringComparison.Ordinal);
        bool both = lower.Contains("both", StringComparison.Ordinal) || lower.Contains("shared", StringComparison.Ordinal);
        bool weight = lower.Contains("weight", StringComparison.Ordinal) || lower.Contains(" wt", StringComparison.Ordinal);
        if (both)
        {
            Start = Weight.Shared;
            StartIsStated = true;
        }
        else if (right != left)
        {
            // "weight on L" or "right foot free", "start on right"
            Start = weight == right ? Weight.Right : Weight.Left;
            StartIsStated = true;
        }
        else if (right && left && weight)
        {
            int on = lower.IndexOf("weight", StringComparison.Ordinal);
            string rest = lower[on..];
            int r = IndexOrEnd(rest, "right", " r ");
            int l = IndexOrEnd(rest, "left", " l ");
            Start = r < l ? Weight.Right : Weight.Left;
            StartIsStated = true;
        }
        else if (weight)
        {
            state.Add(ReadingRules.HeaderValue.At(field.Span, ("key", "start"), ("wanted", "where the weight is, for example: weight on L"),
                ("value", field.Value)));
        }
    }

    private static int IndexOrEnd(string words, string a, string b)
    {
        int first = words.IndexOf(a, StringComparison.Ordinal);
        int second = words.IndexOf(b, StringComparison.Ordinal);
        return first < 0 ? second < 0 ? int.MaxValue : second : second < 0 ? first : Math.Min(first, second);
    }

    private static bool IsNone(string value) => value.Trim().ToLowerInvariant() is "none" or "no" or "nil" or "-" or "phrased";

    private static int? FirstNumber(string value)
    {
        int start = value.AsSpan().IndexOfAnyInRange('0', '9');
        if (start >= 0)
        {
            int stop = start;
            while (stop < value.Length && char.IsAsciiDigit(value[stop]))
            {
                stop++;
            }

            return int.TryParse(value.AsSpan(start, stop - start), NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : null;
        }

        string lower = value.ToLowerInvariant();
        foreach ((string word, int number) in ((string, int)[])[("one", 1), ("two", 2), ("three", 3), ("four", 4), ("eight", 8)])
        {
            if (lower.StartsWith(word, StringComparison.Ordinal))
            {
                return number;
            }
        }

        return IsNone(value) && lower.Trim() != "phrased" ? 0 : null;
    }

    private string ValueOf(string key) => _fields.Find(f => f.Key == key)?.Value ?? "";

    private NumberClaim? NumberOf(string key) => _fields.Find(f => f.Key == key) is HeaderField field && FirstNumber(field.Value) is int number
        ? new NumberClaim(number, field.Span)
        : null;
}
