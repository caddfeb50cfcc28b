using System.Collections.Frozen;
using System.Text.RegularExpressions;
using Scuff.Prose.Words;

namespace Scuff.Prose.Reading;

/// <summary>
/// Tells the talk of a sheet (thanks, dedications, rights, class notes) from what may change the dance. Common practice, no source: a line that is told to
/// people ("please", "we", "thanks") and names neither a foot with a move, nor a turn, nor where the pattern breaks, changes nothing.
/// </summary>
internal static partial class TalkWords
{
    // what a line of talk begins with
    private static readonly string[] Openers =
    [
        "thank", "thanks", "many thanks", "special thanks", "big thanks", "huge thanks", "dedicated", "dedication", "for my", "for our",
        "for all my", "for all our", "for everyone", "for the", "written for", "made for", "created for", "choreographed for", "specially",
        "especially", "please", "copyright", "©", "(c)", "enjoy", "happy", "have fun", "contact", "email", "e-mail", "mail", "tel", "phone",
        "mobile", "questions", "video", "demo", "remember", "note", "notes", "hint", "tip", "nb", "n.b", "p.s", "ps", "keep smiling", "smile",
        "good luck", "see you", "this dance", "this sheet", "this step sheet", "this is", "these steps", "last update", "updated", "revised",
        "prepared", "printed", "first danced", "first taught", "taught", "may be", "permission", "sheet", "all rights", "copies", "feel free",
        "don't forget", "do not forget", "do not copy", "do not alter", "do not change", "you may", "any questions", "any track", "any song",
        "any other", "can be danced", "suitable", "bpm", "tempo", "merry", "season's greetings", "alternative music", "hold on to your", "mind the",
        "watch out", "take care", "be careful", "beware", "translated", "translation", "no liability", "all mistakes", "lots of", "also works",
        "works with", "works to", "hope", "love", "with love", "sorry", "welcome", "next week", "next month", "practise", "practice", "homework",
        "tell them", "teacher", "danced at", "made up", "no video", "keep it", "keep your", "let the", "let your", "move the", "move your",
        "use the", "use your", "think of", "imagine", "feel", "print", "posted", "share", "click", "download", "log in", "login", "subscribe", "related",
        "follow us", "leave a comment", "comments", "reply", "back to top", "search", "step sheet", "stepsheet", "typed", "transcribed", "written out",
        "recording", "uploaded", "published", "modified", "last modified", "last updated", "views", "rating", "advertisement", "cookie",
    ];

    // who is spoken to or speaks
    private static readonly FrozenSet<string> People = new[]
    {
        "you", "you'll", "always", "yours", "mate", "xx", "xxx", "you're", "your", "i", "i'm", "i've", "i'll", "me", "my", "mine", "we", "we're",
        "we've", "we'll", "us", "our", "ours", "they", "they'll", "them", "their", "she", "her", "he", "his", "who", "everybody", "everyone",
        "anyone", "anybody", "folks", "friends", "friend", "ladies", "dancers", "class", "club", "mum", "dad", "please", "thanks", "thank", "monday",
        "mondays", "tuesday", "tuesdays", "wednesday", "wednesdays", "thursday", "thursdays", "friday", "fridays", "saturday", "saturdays", "sunday",
        "sundays", "love", "hope", "enjoy", "smile", "sorry", "cheers", "sheet", "music", "song", "band", "written", "newsletter", "copyright",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    // where the pattern breaks
    private static readonly FrozenSet<string> Pattern = new[]
    {
        "wall", "walls", "restart", "restarts", "tag", "tags", "bridge", "bridges", "count", "counts", "beat", "beats", "section", "sections",
        "part", "parts", "chorus", "verse", "verses", "repetition", "sequence", "skip", "omit", "phrase", "phrases", "ending", "eight", "eights",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    // what may tell of it, beside other such words
    private static readonly FrozenSet<string> OfPattern = new[]
    {
        "again", "break", "end", "ends", "except", "final", "finally", "first", "instead", "last", "leave", "once", "only", "second", "third",
        "fourth", "fifth", "time", "times", "twice", "unless", "without", "then", "repeat", "repeats", "start", "starts", "begin", "begins",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    private static readonly FrozenSet<string> Breaks = new[]
    {
        "restart", "restarts", "tag", "tags", "bridge", "bridges", "skip", "omit", "repeat", "repetition", "sequence",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    // compounds of step words and of words of the pattern that mean neither
    private static readonly string[] Neutral =
    [
        "step sheet", "stepsheet", "dance steps", "line dance", "beats per minute", "per minute", "these steps", "small steps", "step by step",
        "first time", "last week", "last month", "last year", "in any way", "all right", "alright", "left over", "right now", "way back",
    ];

    // "tell them:", ">> we did this twice"
    private static readonly string[] Asides = [">>", "(nb", "(note", "(tip"];

    /// <summary>Whether a line that holds no counts can be kept as a remark without asking.</summary>
    /// <param name="words">The line.</param>
    /// <param name="lexicon">The words that are danced.</param>
    /// <param name="outside">Whether it stands before the first or after the last counts, where dates, prices and telephone numbers are usual.</param>
    public static bool IsRemark(string words, Lexicon lexicon, bool outside)
    {
        string lower = words.ToLowerInvariant();
        string told = lower;
        bool aside = false;
        foreach (string mark in Asides)
        {
            aside |= told.TrimStart().StartsWith(mark, StringComparison.Ordinal);
        }

        told = told.TrimStart('*', '>', '-', '=', '~', ' ', '(', '"', '“', '!', '\'', '•');
        bool opens = Array.Exists(Openers, o => told.StartsWith(o, StringComparison.Ordinal) && (told.Length == o.Length || !char.IsLetter(told[o.Length])));
        foreach (string neutral in Neutral)
        {
            lower = lower.Replace(neutral, "", StringComparison.Ordinal);
        }

        string[] each = lower.Split([' ', ',', '.', '!', '?', ':', ';', '(', ')', '-', '–', '"', '“', '”', '\t', '/', '&', '*', '>'],
            StringSplitOptions.RemoveEmptyEntries);
        bool people = Array.Exists(each, People.Contains);
        bool digits = lower.AsSpan().IndexOfAnyInRange('0', '9') >= 0;
        bool conditional = lower.Contains("if you like", StringComparison.Ordinal) || lower.Contains("if you want", StringComparison.Ordinal)
            || lower.Contains("if you wish", StringComparison.Ordinal);
        int pattern = each.Count(Pattern.Contains);
        int weak = each.Count(OfPattern.Contains);
        List<Term> terms = TermReader.Read(lower, 0, lower.Length, lexicon);
        if (opens || people)
        {
            // a name that looks like a slip of a step word is none where people are spoken of
            terms.RemoveAll(t => t.Corrected);
        }

        bool moves = terms.Exists(t => t.Kind is TermKind.Move);
        bool feet = terms.Exists(t => t.Kind is TermKind.Foot or TermKind.Side or TermKind.BothFeet or TermKind.Lead);
        bool turns = terms.Exists(t => t.Kind is TermKind.Amount) || (terms.Exists(t => t.Kind is TermKind.Turn) && (feet
            || terms.Exists(t => t.Kind is TermKind.Dir)));
        bool again = terms.Exists(t => t.Kind is TermKind.Repeat or TermKind.RepeatMirrored);
        if (pattern > 0)
        {
            // "on wall 3", "the last part again"; but ">> look at the new wall before the 8" is said to the class
            bool breaks = digits || weak > 0 || again || (moves && feet) || turns;
            return aside ? !Array.Exists(each, Breaks.Contains) && !IsWallNumbered(each) : (opens || people) && !breaks;
        }

        if ((moves && feet) || turns || (feet && (digits || weak > 0)))
        {
            // what a foot does; an aside that is marked as one is hers to keep
            return aside || (opens && !turns && (people || each.Length > 8));
        }

        if (moves || feet)
        {
            // "(let the arms hang like weed)"
            bool bracketed = words.Length > 12 && words[0] == '(' && words[^1] == ')';
            return aside || opens || people || conditional || ((bracketed || AfterClosing().IsMatch(words)) && !feet);
        }

        return digits || weak > 1 || again ? (aside || opens || people || outside) && !(weak > 1 && !opens && !people) : weak == 0 || opens || people
            || outside;
    }

    // "Begin again! Keep it smooth and let the arms float"
    [GeneratedRegex(@"^\W*(?:begin|start|repeat|dance|do it)(?: it| all)?(?: all)?(?: over)?(?: again)?\s?[!.:]+ .{8,}", RegexOptions.IgnoreCase)]
    private static partial Regex AfterClosing();

    /// <summary>
    /// Whether a line only speaks of a tag or a restart ("listen for the words and you'll never miss the tag"), and tells neither wall nor count.
    /// </summary>
    /// <param name="words">The line.</param>
    public static bool SpeaksOfBreak(string words)
    {
        string[] each = words.ToLowerInvariant().Split([' ', ',', '.', '!', '?', ':', ';', '(', ')', '-', '–', '"', '“', '”', '\t', '/', '&', '*'],
            StringSplitOptions.RemoveEmptyEntries);
        return each.Length > 6 && words.AsSpan().IndexOfAnyInRange('0', '9') < 0 && Array.Exists(each, People.Contains)
            && !Array.Exists(each, w => w is "wall" or "walls" or "after"
            or "end" or "here" or "first" or "second" or "third" or "fourth" or "fifth" or "sixth" or "last" or "one" or "two" or "three" or "four"
                or "five" or "six" or "add"
            or "do" or "dance" or "dances" or "then" or "restart" or "start" or "begin" or "each" or "every" or "once" or "twice" or "no" or "time");
    }

    // "wall 3", "3rd wall"
    private static bool IsWallNumbered(string[] words)
    {
        for (int i = 0; i < words.Length; i++)
        {
            bool numbered = (i > 0 && char.IsAsciiDigit(words[i - 1][0])) || (i + 1 < words.Length && char.IsAsciiDigit(words[i + 1][0]));
            if (numbered && words[i] is "wall" or "walls")
            {
                return true;
            }
        }

        return false;
    }
}
