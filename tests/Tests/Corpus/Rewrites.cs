using System.Text.RegularExpressions;

namespace Tests.Corpus;

/// <summary>
/// Ways to type a count line otherwise and mean the same: other words, other marks between the moves, other places for the counts. Each takes one line of the
/// corpus and gives it back changed, or as it was where it has nothing to change. Common practice, no source.
/// </summary>
internal static partial class Rewrites
{
    private const string Side = "(R|L|right|left)";

    private const string Amount = "(1/[248]|3/[48]|[¼½¾])";

    /// <summary>The ways by name.</summary>
    public static IReadOnlyDictionary<string, Func<string, string>> All { get; } = new Dictionary<string, Func<string, string>>(StringComparer.Ordinal)
    {
        ["capitals"] = line => line.ToUpperInvariant(),
        ["small letters"] = line => line.ToLowerInvariant(),
        ["each word with a capital"] = line => Words(line, words => FirstLetter().Replace(words, m => m.Value.ToUpperInvariant())),
        ["right and left in full"] = line => Words(line, words => BareLeft().Replace(BareRight().Replace(words, "right"), "left")),
        ["Rt and Lt"] = line => Words(line, words => BareLeft().Replace(BareRight().Replace(words, "Rt"), "Lt")),
        ["r. and l."] = line => Words(line, words => BareLeft().Replace(BareRight().Replace(words, "r."), "l.")),
        ["R and L"] = line => Words(line, words => Change(Change(words, "right", "R"), "left", "L")),
        ["fwd"] = line => Words(line, words => Change(words, "forward", "fwd")),
        ["forwards"] = line => Words(line, words => Change(words, "(forward|fwd)", "forwards")),
        ["f'wd"] = line => Words(line, words => Change(words, "(forward|fwd)", "f'wd")),
        ["bk"] = line => Words(line, words => Change(words, "back", "bk")),
        ["to the side"] = line => Words(line, words => Change(words, "to side", "to the side")),
        ["out to the side"] = line => Words(line, words => Change(words, "to (?:the )?side", "out to the side")),
        ["next to"] = line => Words(line, words => Change(words, "beside", "next to")),
        ["alongside"] = line => Words(line, words => Change(words, "(beside|next to)", "alongside")),
        ["besides"] = line => Words(line, words => Change(words, "(beside|next to)", "besides")),
        ["tog"] = line => Words(line, words => Change(words, "together", "tog")),
        ["across"] = line => Words(line, words => Change(words, $@"over (?={Side}\b)", "across ")),
        ["in front of"] = line => Words(line, words => Change(words, $@"(?:over|across) (?={Side}\b)", "in front of ")),
        ["replace"] = line => Words(line, words => Change(words, "recover", "replace")),
        ["recover weight onto"] = line => Words(line, words => Change(words, $"recover (?:on |onto )?{Side}", "recover weight onto $1")),
        ["return weight to"] = line => Words(line, words => Change(words, $"recover (?:on |onto )?{Side}", "return weight to $1")),
        ["tap"] = line => Words(line, words => Change(words, "touch", "tap")),
        ["touch the toe"] = line => Words(line, words => Change(words, $@"touch {Side}\b(?! (?:toe|foot|heel))", "touch $1 toe")),
        ["¼"] = line => Words(line, words => words.Replace("1/4", "¼", StringComparison.Ordinal).Replace("1/2", "½", StringComparison.Ordinal)
            .Replace("3/4", "¾", StringComparison.Ordinal)),
        ["quarter"] = line => Words(line, words => words.Replace("1/4", "quarter", StringComparison.Ordinal)),
        ["degrees"] = line => Words(line, words => words.Replace("1/4", "90°", StringComparison.Ordinal).Replace("1/2", "180°", StringComparison.Ordinal)),
        ["a quarter turn"] = line => Words(line, words => Change(words, "1/4 turn", "a quarter turn")),
        ["without the word turn"] = line => Words(line, words => Change(words, Amount + " turn", "$1")),
        ["with the word turn"] = line => Words(line, words => Change(words, Amount + " " + Side, "$1 turn $2")),
        ["to the right"] = line => Words(line, words => Change(words, Amount + "( turn)? " + Side, "$1$2 to the $3")),
        ["clockwise"] = line => Words(line, words => Change(Change(words, Amount + "( turn)? (?:right|R)", "$1$2 clockwise"),
            Amount + "( turn)? (?:left|L)", "$1$2 anticlockwise")),
        ["semicolons"] = line => Words(line, words => words.Replace(",", ";", StringComparison.Ordinal)),
        ["strokes"] = line => Words(line, words => words.Replace(", ", " / ", StringComparison.Ordinal)),
        ["dashes"] = line => Words(line, words => words.Replace(", ", " - ", StringComparison.Ordinal)),
        ["plus signs"] = line => Words(line, words => words.Replace(", ", " + ", StringComparison.Ordinal)),
        ["arrows"] = line => Words(line, words => words.Replace(", ", " → ", StringComparison.Ordinal)),
        ["then"] = line => Words(line, words => words.Replace(", ", ", then ", StringComparison.Ordinal)),
        ["and"] = line => Words(line, words => words.Replace(", ", ", and ", StringComparison.Ordinal)),
        ["followed by"] = line => Words(line, words => words.Replace(", ", " followed by ", StringComparison.Ordinal)),
        ["sentences"] = line => Words(line, words => words.Replace(", ", ". ", StringComparison.Ordinal)),
        ["no blank after the comma"] = line => Words(line, words => words.Replace(", ", ",", StringComparison.Ordinal)),
        ["full stop"] = line => line.TrimEnd('.') + ".",
        ["exclamation"] = line => line + "!",
        ["two blanks"] = line => line.Replace(" ", "  ", StringComparison.Ordinal),
        ["blanks that do not break"] = line => line.Replace(' ', '\u00A0'),
        ["a hyphen before"] = line => "- " + line,
        ["a dot before"] = line => "• " + line,
        ["1-2:"] = line => Counts(line, counts => counts.TrimEnd(':') + ":"),
        ["1-2."] = line => Counts(line, counts => counts.TrimEnd(':', '.') + "."),
        ["(1-2)"] = line => Counts(line, counts => "(" + counts.Trim(':', '.', '(', ')') + ")"),
        ["[1-2]"] = line => Counts(line, counts => "[" + counts.Trim(':', '.', '(', ')') + "]"),
        ["Counts 1-2:"] = line => Counts(line, counts => "Counts " + counts.TrimEnd(':') + ":"),
        ["#1-2"] = line => Counts(line, counts => "#" + counts),
        ["1 - 2"] = line => Counts(line, counts => counts.Replace("-", " - ", StringComparison.Ordinal)),
        ["1 to 2"] = line => Counts(line, counts => counts.Replace("-", " to ", StringComparison.Ordinal)),
        ["1 & 2"] = line => Counts(line, counts => counts.Replace("&", " & ", StringComparison.Ordinal)),
        ["1n2"] = line => Counts(line, counts => Between().Replace(counts, "n")),
        ["counts behind in brackets"] = line => Head().Match(line) is { } m && m.Groups[1].Length > 0
            ? $"{m.Groups[2].Value.TrimEnd('.')} ({m.Groups[1].Value.Trim().TrimEnd(':', '.')})" : line,
        ["then at the start"] = line => Words(line, words => "Then " + words),
        ["next at the start"] = line => Words(line, words => "Next, " + words),
        ["smiling"] = line => line.TrimEnd('.') + ", smiling",
        ["small steps"] = line => line.TrimEnd('.') + " (small steps)",
        ["knees soft"] = line => line.TrimEnd('.') + " (keep knees soft)",
        ["without the word step"] = line => Words(line, words => Change(words, $@"(^|, )step (?={Side}\b)", "$1")),
        ["step the"] = line => Words(line, words => Change(words, $@"step (?={Side}\b)", "step the ")),
        ["R step"] = line => Words(line, words => Change(words, $@"(^|, )step {Side}\b(?! (?:foot|heel|toe))", "$1$2 step")),
        ["stepping"] = line => Words(line, words => Change(words, $@"step (?={Side}\b)", "stepping ")),
        ["R rocks"] = line => Words(line, words => Change(words, $@"(^|, )rock {Side}\b(?! foot)", "$1$2 rocks")),
        ["pivot turn"] = line => Words(line, words => Change(words, "pivot (?=1/|½|¼|half|quarter)", "pivot turn ")),
        ["pause"] = line => Words(line, words => Change(words, "hold", "pause")),
        ["R-L-R"] = line => Words(line, words => Row().Replace(words, "$1-$2-$3")),
        ["RLR"] = line => Words(line, words => Row().Replace(words, "$1$2$3")),
    };

    private static string Words(string line, Func<string, string> change)
    {
        Match match = Head().Match(line);
        return match.Groups[1].Value + change(match.Groups[2].Value);
    }

    private static string Counts(string line, Func<string, string> change)
    {
        Match match = Head().Match(line);
        return match.Groups[1].Length == 0 ? line : change(match.Groups[1].Value.Trim()) + " " + match.Groups[2].Value;
    }

    private static string Change(string words, string from, string to)
        => Regex.Replace(words, (char.IsLetter(from[0]) || from[0] == '(' && from[1] != '^' ? @"\b" : "") + from + (char.IsLetter(from[^1]) ? @"\b" : ""), to,
            RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);

    [GeneratedRegex(@"^((?:[(\[]?[0-9&ea,+\-–. ]*[0-9&][)\]:.]*\s+)?)(.*)$")]
    private static partial Regex Head();

    [GeneratedRegex(@"\b[a-z]")]
    private static partial Regex FirstLetter();

    [GeneratedRegex(@"\bR\b")]
    private static partial Regex BareRight();

    [GeneratedRegex(@"\bL\b")]
    private static partial Regex BareLeft();

    [GeneratedRegex(@"(?<=\d)&(?=\d)")]
    private static partial Regex Between();

    [GeneratedRegex(@"\b([RL]), ([RL]), ([RL])\b")]
    private static partial Regex Row();
}
