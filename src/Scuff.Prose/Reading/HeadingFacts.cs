using System.Collections.Frozen;
using System.Globalization;
using System.Text.RegularExpressions;
using Scuff.Diagnostics;
using Scuff.Dances;
using Scuff.Prose.Reading.Sentences;

namespace Scuff.Prose.Reading;

/// <summary>
/// What the lines at the head of a sheet tell without keys: "32 counts, 4 walls, improver", "48c 2w Int.", "Start after 16 counts", "Choreographed by ...".
/// </summary>
internal static partial class HeadingFacts
{
    // longest first, so that "high beginner" is not taken for "beginner"; the last are short forms, which tell a level beside other facts only
    private static readonly string[] Levels =
    [
        "absolute beginner", "ultra beginner", "high beginner", "advanced beginner", "easy intermediate", "low intermediate", "high intermediate",
        "phrased intermediate", "intermediate", "improver", "advanced", "newcomer", "beginner",
    ];

    private static readonly (string Short, string Level)[] ShortLevels =
    [
        ("abs beg", "absolute beginner"), ("ab", "absolute beginner"), ("beg", "beginner"), ("imp", "improver"), ("int", "intermediate"), ("adv", "advanced"),
    ];

    private static readonly string[] Authors =
    [
        "choreographed by", "choreographer", "choreography by", "choreography", "choreo by", "choreo", "chor by", "chor. by", "chor.", "dance by",
        "devised by", "made up by", "written by", "by",
    ];

    private static readonly Dictionary<string, int> Numbers = new(StringComparer.OrdinalIgnoreCase)
    {
        ["one"] = 1,
        ["two"] = 2,
        ["four"] = 4,
        ["eight"] = 8,
        ["sixteen"] = 16,
        ["twenty"] = 20,
        ["thirty"] = 30,
        ["forty"] = 40,
        ["sixty"] = 60,
        ["single"] = 1,
    };

    /// <summary>
    /// The facts of a line, whole and in its pieces ("24 counts, 4 walls. Intro 12 counts.", "32 count intro - no tags"); none when it is a line of another
    /// kind.
    /// </summary>
    public static IReadOnlyList<HeaderField> Of(string text, TextLine line)
    {
        List<HeaderField> found = [.. OfPiece(text, line)];
        if (found is [{ Key: "by" } author])
        {
            return WithFactsBehind(text, line, author);
        }

        if (line.End - line.Start > 400 || IsOfPattern(Words(text, line))
            || CountLabel.Read(text, line.Start, line.End) is { Places.Count: > 1 })
        {
            return found;
        }

        string lower = text[line.Start..line.End].ToLowerInvariant();
        bool denied = lower.Contains("no ", StringComparison.Ordinal) || lower.Contains("0 ", StringComparison.Ordinal)
            || lower.Contains("without", StringComparison.Ordinal);
        if (!denied && (SentenceReader.HasWord(lower, "restart") || SentenceReader.HasWord(lower, "tag") || SentenceReader.HasWord(lower, "bridge")))
        {
            // "... one tag after wall 2": the sentence is read as one
            return found;
        }

        foreach (TextLine piece in SmallPieces(text, line))
        {
            foreach (HeaderField fact in OfPiece(text, piece).Where(f => f.Key is not "by"))
            {
                int told = found.FindIndex(o => o.Key == fact.Key);
                if (told < 0)
                {
                    found.Add(fact);
                }
                else if (fact.Key == "intro" && fact.Value.Length < found[told].Value.Length)
                {
                    // "32c 4w improver. Song: Oyster Bed. Intro 24 counts": the piece tells it without the rest
                    found[told] = fact;
                }
            }
        }

        return found;
    }

    /// <summary>"by Ada Brack, 32 counts / 4 walls", "Dance by Petra Kneebone. 32 counts, absolute beginner": who made it, and the facts behind.</summary>
    private static List<HeaderField> WithFactsBehind(string text, TextLine line, HeaderField author)
    {
        int stop = -1;
        for (int at = author.Span.Start + 2; at + 2 < line.End; at++)
        {
            bool apart = (text[at] is '.' or ',' or ';' && text[at + 1] == ' ') || text[at] is '|' or '(' or '–' or '—' or '•' or '·' or '\t'
                || (text[at] is ' ' && text[at + 1] is ' ' or '-' or '/' or '*' or '~');
            if (!apart)
            {
                continue;
            }

            bool sentence = text[at] == '.' && at > author.Span.Start + 3 && char.IsLetter(text[at - 2]);
            stop = stop < 0 && sentence ? at : stop;
            TextLine rest = (line with { Start = at + 1 }).Trimmed(text);
            TextLine piece = SmallPieces(text, rest) is var pieces && pieces.Any() ? pieces.First() : rest;
            if (OfPiece(text, piece) is { Count: > 0 } facts && facts[0].Key != "by")
            {
                int end = stop < 0 ? at : stop;
                return [author with { Value = text[author.Span.Start..end].TrimEnd(), Span = TextSpan.FromBounds(author.Span.Start, end) },
                    .. Of(text, rest).Where(f => f.Key != "by")];
            }
        }

        return [author];
    }

    private static IReadOnlyList<HeaderField> OfPiece(string text, TextLine line)
    {
        if (line.End - line.Start > 160)
        {
            return [];
        }

        List<Word> words = Words(text, line);
        if (IsDanced(text, line, words) || IsOfPattern(words))
        {
            return [];
        }

        if (Author(text, line) is HeaderField author)
        {
            return [author];
        }

        if (words.Count == 0 || words[0].Text is "ending" or "finish" or "track" or "move" or "option" or "note"
            || (words.Exists(w => w.Text is "after") && words.Exists(w => w.Text is "wall" or "walls"))
            || words.Where((w, i) => w.Text is "restart" or "restarts" or "tag" or "tags" or "bridge" or "repeat" or "part" or "sequence"
                && !(i > 0 && words[i - 1] is { Number: not null } && words.Exists(c => c.Text is "count" or "counts"))).Any()
            || words.Count(w => w.Text is "wall" or "walls") > 1)
        {
            return [];
        }

        List<HeaderField> found = [];
        if (Start(text, line, words) is HeaderField start)
        {
            found.Add(start);
        }

        if (Intro(text, line, words) is HeaderField intro)
        {
            found.Add(intro);
        }

        HeaderField? counts = found.Exists(f => f.Key == "intro") ? null : Number(text, line, words, "counts", ["counts", "count", "cts", "ct", "c"]);
        HeaderField? walls = Number(text, line, words, "walls", ["walls", "wall", "w"]);
        HeaderField? level = Level(text, line, words, counts is not null || walls is not null);
        bool told = (counts is null ? 0 : 1) + (walls is null ? 0 : 1) + (level is null ? 0 : 1) >= 2
            || ((counts ?? walls ?? level) is not null && words.Count <= 3)
            || (level is not null && words.Exists(w => w.Text is "dance" or "level"));
        if (told && (!found.Exists(f => f.Key == "intro") || walls is not null))
        {
            found.AddRange(new[] { counts, walls, level }.OfType<HeaderField>());
            found.AddRange(new[] { Number(text, line, words, "restarts", ["restarts", "restart"]), Number(text, line, words, "tags", ["tags",
                "tag"]) }.OfType<HeaderField>());
        }

        return found;
    }

    /// <summary>How many restarts and tags a line says there are.</summary>
    public static IEnumerable<HeaderField> Breaks(string text, TextLine line)
    {
        List<Word> words = Words(text, line);
        words.RemoveAll(w => w.Text is "easy" or "simple" or "short" or "small" or "little");
        return new[] { Number(text, line, words, "restarts", ["restarts", "restart"]), Number(text, line, words, "tags", ["tags",
            "tag"]) }.OfType<HeaderField>();
    }

    /// <summary>The level that a line names in full, or null.</summary>
    public static HeaderField? LevelIn(string text, TextLine line) => Level(text, line, [], isBeside: false);

    /// <summary>The title in a first line, without quotation marks and without the facts after it, and where it ends.</summary>
    public static (string Title, int End) TitleOf(string text, TextLine line)
    {
        int end = line.End;
        for (int at = line.Start + 1; at < line.End; at++)
        {
            // "Starboard Home (a waltz)"
            bool kind = text[at] == '(' && at > line.Start + 2 && line.End - at < 20
                && text.AsSpan(at, line.End - at).Contains("waltz", StringComparison.OrdinalIgnoreCase);
            if (kind)
            {
                return (text[line.Start..at].Trim(), at);
            }

            // "Bell Buoy Boogie, by Hugh Carlyon. 32 counts"
            if (text[at] == ' ' && ByName().IsMatch(text.AsSpan(at, line.End - at)))
            {
                int stop = text[at - 1] == ',' ? at - 1 : at;
                return (Closed(text[line.Start..stop].Trim().Trim('"', '“', '”')), stop);
            }

            bool stars = at + 2 < line.End && text[at] is '*' or '~' or '•' or '·' or '/' && text[at - 1] == ' ';
            bool parts = stars || text[at] is '(' or '[' or '|' or '–' or '—' || (text[at] == '-' && text[at - 1] == ' ' && at + 1 < line.End
                && text[at + 1] == ' ') || (text[at] == ' ' && at + 1 < line.End && text[at + 1] == ' ');
            if (parts && (Pieces(text, line with { Start = at }).Any(p => Of(text, p).Count > 0) || NamesTheSheet(text, line with { Start = at + 1 })
                || (text[at] is '-' or '–' or '—' or '(' && IsShoutedBefore(text, line, at))))
            {
                end = at;
                while (end > line.Start && text[end - 1] is ' ' or '*' or '~' or '•' or '·')
                {
                    end--;
                }

                break;
            }
        }

        string title = text[line.Start..end].Trim();
        if (title.Length > 2 && title[0] is '"' or '“' or '„' && title[^1] is '"' or '”' or '“')
        {
            title = title[1..^1].Trim();
        }

        return (Closed(title), end);
    }

    [GeneratedRegex(@"^ (?:by|choreographed by|choreo by) \p{Lu}[\p{L}'’.-]* (?:(?:&|and|von|van|de|der|di|la|le|ter) )*\p{Lu}")]
    private static partial Regex ByName();

    // "SPRAT SUPPER - Monday starters, lesson 3", "LES MOUETTES (The Gulls)"
    private static bool IsShoutedBefore(string text, TextLine line, int at)
    {
        ReadOnlySpan<char> before = text.AsSpan(line.Start, at - line.Start);
        ReadOnlySpan<char> after = text.AsSpan(at, line.End - at);
        return before.Length > 4 && before.ToString().All(c => !char.IsLower(c)) && after.ToString().Count(char.IsLower) > 4;
    }

    // "- crib card", "(step sheet)"
    private static bool NamesTheSheet(string text, TextLine line)
    {
        string rest = text[line.Start..line.End].Trim(' ', '-', ')', ']', '.').ToLowerInvariant();
        return rest is "line dance" or "a line dance" or "draft" or "final" or "revised" or "steps" or "the steps" || IsNameOfSheet(rest);
    }

    /// <summary>"CALLER'S CARD", "Wednesday improvers - handout no. 14", "crib sheet": what a paper is, and not what is danced.</summary>
    /// <param name="words">The line.</param>
    public static bool IsNameOfSheet(string words)
    {
        if (words.Length > 60)
        {
            return false;
        }

        string[] each = words.ToLowerInvariant().Split([' ', '-', '–', '—', ':', '.', ',', '/', '(', ')', '[', ']', '#', '*', '|', '&'],
            StringSplitOptions.RemoveEmptyEntries);
        return Array.Exists(each, Sheets.Contains) && Array.TrueForAll(each, w => Sheets.Contains(w) || OfSheets.Contains(w) || char.IsAsciiDigit(w[0]));
    }

    // what papers are called
    private static readonly FrozenSet<string> Sheets = new[]
    {
        "card", "cards", "sheet", "sheets", "stepsheet", "stepsheets", "handout", "handouts", "notes", "crib", "cribs", "cue", "cues", "prompt", "prompts",
        "script", "copy", "description", "lesson", "worksheet", "printout", "leaflet", "newsletter", "breakdown",
    }.ToFrozenSet(StringComparer.Ordinal);

    // and what is said of them beside it
    private static readonly FrozenSet<string> OfSheets = new[]
    {
        "a", "the", "our", "my", "this", "of", "for", "and", "no", "nr", "number", "week", "week's", "caller's", "callers", "caller", "teacher's", "teachers",
        "teacher", "teaching", "teach", "class", "classes", "step", "steps", "dance", "dances", "dance's", "dancers", "line", "linedance", "short", "full",
        "quick", "printable", "club", "group", "evening", "night", "morning", "afternoon", "term", "session", "page", "monday", "tuesday", "wednesday",
        "thursday", "friday", "saturday", "sunday", "mondays", "tuesdays", "wednesdays", "thursdays", "fridays", "saturdays", "sundays", "beginners",
        "beginner", "improvers", "improver", "intermediates", "intermediate", "starters", "newcomers", "learners", "absolute", "easy", "new", "tonight's",
        "today's", "workshop", "helper's", "helpers", "instructor's", "instructor", "instructors", "student", "student's", "students", "reminder",
    }.ToFrozenSet(StringComparer.Ordinal);

    /// <summary>The pieces of a line between dashes, bars and brackets, and its sentences.</summary>
    public static IEnumerable<TextLine> Pieces(string text, TextLine line)
    {
        int start = line.Start;
        for (int at = line.Start; at <= line.End; at++)
        {
            bool ends = at == line.End || text[at] is '(' or ')' or '[' or ']' or '|' or '–' or '—' or '*' or '~' or '•' or '·'
                || (text[at] == '/' && at > line.Start && text[at - 1] == ' ')
                || (text[at] == '-' && at > line.Start && text[at - 1] == ' ' && at + 1 < line.End && text[at + 1] == ' ');
            if (!ends)
            {
                continue;
            }

            TextLine piece = new TextLine(line.Number, start, at).Trimmed(text);
            if (piece.Start < piece.End)
            {
                yield return piece;
            }

            start = at + 1;
        }
    }

    // sentences, what stands between dashes, bars and strokes, and what stands between commas; none when the line is one piece
    private static IEnumerable<TextLine> SmallPieces(string text, TextLine line)
    {
        int start = line.Start;
        bool any = false;
        for (int at = line.Start; at <= line.End; at++)
        {
            bool next = at + 1 < line.End && text[at + 1] == ' ';
            bool ends = at == line.End || text[at] is '|' or '–' or '—' or ';' or '•' or '·' or '\t' or '(' or ')'
                || (text[at] is '.' or ',' or '!' && next) || (text[at] is '-' or '/' && next && at > line.Start && text[at - 1] == ' ');
            if (!ends || (at == line.End && !any))
            {
                continue;
            }

            any = true;
            TextLine piece = new TextLine(line.Number, start, at).Trimmed(text);
            start = at + 1;
            if (piece.Start < piece.End)
            {
                yield return piece;
            }
        }
    }

    /// <summary>The sentences of a line.</summary>
    public static IEnumerable<TextLine> Sentences(string text, TextLine line)
    {
        int start = line.Start;
        for (int at = line.Start; at < line.End; at++)
        {
            if (text[at] == '.' && at + 1 < line.End && text[at + 1] == ' ' && at > line.Start + 4)
            {
                yield return new TextLine(line.Number, start, at).Trimmed(text);
                start = at + 1;
            }
        }

        if (start > line.Start)
        {
            yield return new TextLine(line.Number, start, line.End).Trimmed(text);
        }
    }

    /// <summary>Whether a line is a sentence about a wall rather than facts of the dance.</summary>
    public static bool IsOfPattern(string text, TextLine line) => IsOfPattern(Words(text, line));

    // "on wall 3 you dance only 16 counts and begin again": a sentence about a wall is none of facts; "2 walls - 1 restart" is no sentence
    private static bool IsOfPattern(List<Word> words)
    {
        int wall = words.FindIndex(w => w.Text is "wall" or "walls" or "repetition" or "time");
        bool told = words.Exists(w => w.Text is "restart" or "restarts" or "tag" or "tags" or "bridge" or "again" or "repeat");
        return wall >= 0 && ((wall > 0 && words[wall - 1].Text is "on" or "in" or "during" or "after" or "of" or "the" or "each" or "every" or "rd" or "th"
            or "nd" or "st"
            or "third" or "second" or "fourth" or "fifth" or "sixth") || (told && wall + 1 < words.Count && words[wall + 1].Number is not null
                && !(wall > 0 && wall + 2 < words.Count && words[wall - 1].Number is not null
                    && words[wall + 2].Text is "restart" or "restarts" or "tag" or "tags" or "bridge" or "easy")));
    }

    // "1-2 start with the right foot, step R forward": a line of counts is danced, whatever it says besides
    private static bool IsDanced(string text, TextLine line, List<Word> words) => CountLabel.Read(text, line.Start, line.End) is { } label
        && (label.Places.Count > 1 || (label.Places[0].Number <= 1 && !(words.Count > 1 && words[1].Text is "wall" or "walls")));

    // "S L A C K   W A T E R": letters set apart are one word
    private static string Closed(string title)
    {
        string[] words = title.Split("  ", StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return words.Length > 0 && title.Length > 6 && Array.TrueForAll(words, w => w.Length > 2 && w.Split(' ').All(l => l.Length == 1))
            ? string.Join(' ', words.Select(w => w.Replace(" ", "", StringComparison.Ordinal)))
            : title;
    }

    private static HeaderField? Author(string text, TextLine line)
    {
        ReadOnlySpan<char> words = text.AsSpan(line.Start, line.End - line.Start);
        foreach (string author in Authors)
        {
            if (words.StartsWith(author, StringComparison.OrdinalIgnoreCase) && words.Length > author.Length + 2 && words[author.Length] == ' '
                && words.IndexOf(':') < 0 && (author.Length > 2 || char.IsUpper(words[author.Length..].TrimStart()[0])))
            {
                int start = line.Start + author.Length;
                while (text[start] == ' ')
                {
                    start++;
                }

                return new HeaderField("by", text[start..line.End], TextSpan.FromBounds(start, line.End), line.Number);
            }
        }

        return null;
    }

    // "Start weight on right", "The left foot begins", "begin with the left foot"
    private static HeaderField? Start(string text, TextLine line, List<Word> words)
    {
        bool sided = words.Exists(w => w.Text is "left" or "right" or "lf" or "rf" or "l" or "r");
        bool told = words.Exists(w => w.Text is "weight") || (words.Exists(w => w.Text is "foot" or "lf" or "rf")
            && words.Exists(w => w.Text is "begin" or "begins" or "start" or "starts" or "lead" or "leads" or "starting" or "first" or "free"));
        return sided && told && words.Count <= 12 ? new HeaderField("start", text[line.Start..line.End].TrimEnd('.'), line.Span, line.Number) : null;
    }

    // "Intro 32 counts", "16 count intro", "Lead-in 16 beats", "Start on the vocals after 32 counts", "Wait for 32 counts, then begin", "16 in"
    private static HeaderField? Intro(string text, TextLine line, List<Word> words)
    {
        int number = words.FindIndex(w => w.Number is > 0 and <= 256);
        bool told = words.Exists(w => w.Text is "intro" or "introduction" or "lead" or "leadin" or "wait" or "vocals" or "vocal" or "lyrics" or "singing");
        bool starts = words.Exists(w => w.Text is "start" or "starts" or "begin" or "begins" or "starting" or "commence" or "commences" or "count")
            && words.Exists(w => w.Text is "after" or "in" or "on" or "wait" or "from");
        bool first = words[0].Text is "intro" or "introduction" or "lead" or "start" or "starts" or "begin" or "begins" or "dance" or "the" or "wait"
            or "starting"
            or "count" or "commence" || words[0].Number is not null
            || (words[0].Text is "you" or "we" or "dancers" && words.Count > 1 && words[1].Text is "start" or "begin" or "wait");
        bool explicitly = words.Exists(w => w.Text is "starts" or "begins" or "start" or "begin") && number > 0 && words[number - 1].Text is "after" or "in"
            && number + 1 < words.Count && words[number + 1].Text is "counts" or "beats" or "count";

        // "Count 24 and begin with the left foot"
        explicitly |= number == 1 && words[0].Text is "count" or "wait" && words.Count > 2
            && words.Exists(w => w.Text is "begin" or "start" or "go" or "in" or "before" or "then");
        starts |= explicitly;
        bool footed = (words.Exists(w => w.Text is "weight" or "wall" or "walls") && !explicitly)
            || (!told && !explicitly && words.Exists(w => w.Text is "foot" or "left" or "right"));
        // "16 counts after the bell"
        starts |= words[0].Number is not null && words.Count > 2 && words[1].Text is "counts" or "beats" or "count"
            && words[2].Text is "after" or "from" or "in";

        // "..., 16 in"
        starts |= words is [{ Number: not null }, { Text: "in" }] or [{ Number: not null }, { Text: "counts" or "beats" }, { Text: "in" }];
        return number >= 0 && first && !footed && (told || starts) && words.Count <= 14
            ? new HeaderField("intro", text[line.Start..line.End].TrimEnd('.'), line.Span, line.Number)
            : null;
    }

    private static HeaderField? Number(string text, TextLine line, List<Word> words, string key, string[] names)
    {
        for (int i = 0; i < words.Count; i++)
        {
            if (!names.Contains(words[i].Text))
            {
                continue;
            }

            bool before = i > 0 && words[i - 1].Number is not null;
            // "wall 4" without a colon names one of them
            bool after = i + 1 < words.Count && words[i + 1].Number is not null && words[i].Text.Length > 1
                && (words[i].Text is not "wall" || text.AsSpan(words[i].End, words[i + 1].Start - words[i].End).IndexOfAny(':', '=', '|') >= 0);

            // "Counts 48 / Walls 2": there the numbers stand behind
            bool behind = after && (!before || i == 0 || (i > 1 && words[i - 2].Text is "counts" or "count" or "beats" or "walls" or "wall"
                && words.FindIndex(w => w.Number is not null) > words.FindIndex(w => w.Text is "counts" or "count" or "beats" or "walls" or "wall")));
            Word? number = behind ? words[i + 1] : before ? words[i - 1] : null;
            if (number is { } value)
            {
                string digits = value.Number!.Value.ToString(CultureInfo.InvariantCulture);
                return new HeaderField(key, digits, TextSpan.FromBounds(value.Start, value.End), line.Number);
            }
        }

        return null;
    }

    private static HeaderField? Level(string text, TextLine line, List<Word> words, bool isBeside)
    {
        string lower = text[line.Start..line.End].ToLowerInvariant();
        foreach (string level in Levels)
        {
            int at = lower.IndexOf(level, StringComparison.Ordinal);
            if (at >= 0)
            {
                return new HeaderField("level", text.Substring(line.Start + at, level.Length), new TextSpan(line.Start + at, level.Length), line.Number);
            }
        }

        foreach ((string told, string level) in ShortLevels)
        {
            string[] each = told.Split(' ');
            int at = isBeside ? words.FindIndex(w => w.Text == each[0]) : -1;
            if (at >= 0 && (each.Length == 1 || (at + 1 < words.Count && words[at + 1].Text == each[1])))
            {
                return new HeaderField("level", level, TextSpan.FromBounds(words[at].Start, words[at + each.Length - 1].End), line.Number);
            }
        }

        return null;
    }

    private static List<Word> Words(string text, TextLine line)
    {
        List<Word> words = [];
        int at = line.Start;
        while (at < line.End)
        {
            int start = at;
            if (char.IsAsciiDigit(text[at]))
            {
                while (at < line.End && char.IsAsciiDigit(text[at]))
                {
                    at++;
                }

                int? number = at - start <= 4 ? int.Parse(text.AsSpan(start, at - start), NumberStyles.None, CultureInfo.InvariantCulture) : null;
                words.Add(new Word(text[start..at], number, start, at));
            }
            else if (char.IsLetter(text[at]))
            {
                while (at < line.End && (char.IsLetter(text[at]) || text[at] == '\''))
                {
                    at++;
                }

                string word = text[start..at].ToLowerInvariant();
                int? number = Numbers.TryGetValue(word, out int value) ? value : null;
                if (number is not null && words.Count > 0 && words[^1] is { Number: 20 or 30 or 40 or 60, Text: [>= 'a', ..] } tens && number < 10)
                {
                    words[^1] = tens with { Number = tens.Number + number, End = at };
                }
                else
                {
                    words.Add(new Word(word, number, start, at));
                }
            }
            else
            {
                at++;
            }
        }

        return words;
    }

    private readonly record struct Word(string Text, int? Number, int Start, int End);
}
