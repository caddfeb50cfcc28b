namespace Scuff.Prose.Words;

/// <summary>English words put as another tongue puts its own: "turn 1/4 in right", "weight in the left", "next R heel strut".</summary>
internal static class BorrowedWords
{
    /// <summary>Puts the usual word in place of each.</summary>
    /// <param name="tokens">The tokens of a line, changed in place.</param>
    public static void Mend(List<WordToken> tokens)
    {
        for (int i = tokens.Count - 2; i > 0; i--)
        {
            if (tokens[i].Text is "of" && IsMoved(tokens[i - 1].Text) && IsFoot(tokens[i + 1].Text))
            {
                // "touch of R heel forward", "kick of the left"
                tokens.RemoveAt(i);
            }
        }

        for (int i = tokens.Count - 3; i >= 0; i--)
        {
            if (WayBack(tokens, i) is int words)
            {
                tokens.RemoveRange(i, words);
            }
        }

        for (int i = 0; i < tokens.Count; i++)
        {
            string? meant = tokens[i].Kind is not WordTokenKind.Word ? null : tokens[i].Text switch
            {
                "in" => Meant(tokens, i),
                "next" => IsNextMove(tokens, i) ? "then" : null,
                "before" => IsOver(tokens, i) ? "over" : ComesFirst(tokens, i) ? "then" : null,
                "point" => IsToe(tokens, i) ? "toe" : null,
                "for" => IsToSide(tokens, i) ? "to" : null,
                "on" => i > 0 && tokens[i - 1].Text is "rf" or "lf" && i + 2 < tokens.Count && tokens[i + 1].Text is "the"
                    && tokens[i + 2].Text == (tokens[i - 1].Text is "rf" ? "right" : "left") ? "to" : null,
                "after" => i > 0 && Stops(tokens, i + 1) ? "afterwards" : null,
                _ => null,
            };
            tokens[i] = meant is null ? tokens[i] : tokens[i] with { Text = meant };
        }
    }

    // "the weight is in R", "weight in the left": on it; "turn 1/4 in right", "kick in right": to that side
    private static string? Meant(List<WordToken> tokens, int at)
    {
        int foot = at + 1 < tokens.Count && tokens[at + 1].Text is "the" ? at + 2 : at + 1;
        if (foot >= tokens.Count || !IsFoot(tokens[foot].Text))
        {
            return null;
        }

        for (int i = at - 1; i >= 0 && i > at - 5 && tokens[i].Kind is WordTokenKind.Word; i--)
        {
            if (tokens[i].Text is "weight" or "wt")
            {
                return "on";
            }
        }

        bool turned = at > 0 && (tokens[at - 1].Kind is WordTokenKind.Fraction
            || tokens[at - 1].Text is "turn" or "quarter" or "half" or "point" or "kick" or "vine" or "grapevine" or "chasse" or "shuffle" or "look");
        return turned && tokens[foot].Text is not ("rf" or "lf") ? "to" : null;
    }

    // "turn 1/4 for the right", "pass the right foot for the right", "chassé for the left": to that side
    private static bool IsToSide(List<WordToken> tokens, int at)
    {
        int side = at + 1 < tokens.Count && tokens[at + 1].Text is "the" ? at + 2 : at + 1;
        bool ends = side + 1 >= tokens.Count || tokens[side + 1].Kind is WordTokenKind.Mark or WordTokenKind.Fraction or WordTokenKind.Clock
            || tokens[side + 1].Text is "side" or "diagonal" or "and" or "then" or "with" or "on" or "while" or "turning" or "in";
        return at > 0 && side < tokens.Count && tokens[side].Text is "right" or "left" && (ends || side > at + 1)
            && !(side + 1 < tokens.Count && tokens[side + 1].Text is "foot" or "leg" or "heel" or "toe" or "knee" or "hip" or "hand" or "to" or "too")
            && tokens[at - 1].Text is not ("room" or "ready" or "free" or "same" or "again" or "repeat" or "space" or "as" or "time" or "likewise" or "done"
                or "danced" or "prepare" or "prep" or "prepared" or "weight" or "good" or "way" or "start" or "now");
    }

    // "return by turning vine: ...", "come back with a weave": what is danced on the way back to the side, and no recovering
    private static int? WayBack(List<WordToken> tokens, int at)
    {
        int by = at + 1 < tokens.Count && tokens[at].Text is "come" or "coming" or "go" or "going" or "get" or "getting"
            && tokens[at + 1].Text is "back" ? at + 2
            : tokens[at].Text.StartsWith("return", StringComparison.Ordinal) ? at + 1 : tokens.Count;
        int next = by + 1 < tokens.Count && tokens[by + 1].Text is "a" or "the" or "another" ? by + 2 : by + 1;
        bool told = next < tokens.Count && tokens[by].Text is "by" or "via" or "with" or "in" or "through" or "using"
            && tokens[next].Text is "turning" or "rolling"
            or "vine" or "grapevine" or "vines" or "weave" or "weaving" or "side" or "three" or "syncopated" or "full";
        return told && (at == 0 || tokens[at - 1].Kind is WordTokenKind.Mark || tokens[at - 1].Text is "and" or "then") ? by + 1 - at : null;
    }

    private static bool IsFoot(string word) => word is "r" or "l" or "right" or "left" or "rf" or "lf";

    private static bool IsMoved(string word) => word is "touch" or "tap" or "point" or "kick" or "stomp" or "stamp" or "scuff" or "brush" or "step" or "rock"
        or "hook" or "hitch" or "flick" or "dig" or "cross";

    // "cross left before right unwind half right": over it
    private static bool IsOver(List<WordToken> tokens, int at)
    {
        for (int i = at - 1; at + 1 < tokens.Count && IsFoot(tokens[at + 1].Text) && i >= 0 && i > at - 4; i--)
        {
            if (tokens[i].Text.StartsWith("cross", StringComparison.Ordinal))
            {
                return true;
            }
        }

        return false;
    }

    // "1/2 right before R steps next to L", "turn 1/2 right before stepping R back": what stands before it is danced first
    private static bool ComesFirst(List<WordToken> tokens, int at)
    {
        if (at == 0 || tokens[at - 1].Kind is WordTokenKind.Mark)
        {
            return false;
        }

        int next = at + 1;
        while (next < tokens.Count && tokens[next].Text is "the" or "your" or "you")
        {
            next++;
        }

        int verb = next;
        while (verb < tokens.Count && (IsFoot(tokens[verb].Text) || tokens[verb].Text is "foot"))
        {
            verb++;
        }

        if (verb >= tokens.Count || tokens[verb].Kind is not WordTokenKind.Word)
        {
            return false;
        }

        string word = tokens[verb].Text;
        string bare = word.EndsWith("ing", StringComparison.Ordinal) ? word[..^3] : word.EndsWith('s') ? word[..^1] : "";
        bool done = IsMoved(bare) || IsMoved(bare + "e") || IsMoved(bare.TrimEnd('e'))
            || (bare.Length > 2 && bare[^1] == bare[^2] && IsMoved(bare[..^1]))
            || bare is "clos" or "close" or "plac" or "place" or "put" or "putt" or "go" or "goe" or "join" or "walk" or "bring" or "recover" or "sweep"
                or "slid" or "slide" or "drag" or "dragg" or "pivot" or "turn";
        return done && (verb > next || word.EndsWith("ing", StringComparison.Ordinal));
    }

    // "mark the point R behind", "touch point of LF": the tip of the foot
    private static bool IsToe(List<WordToken> tokens, int at)
    {
        int verb = at > 0 && tokens[at - 1].Text is "the" ? at - 2 : at - 1;
        return verb >= 0 && tokens[verb].Text is "mark" or "touch" or "touches" or "tap" or "taps" or "put" or "pose" && at + 1 < tokens.Count
            && tokens[at + 1].Text is "of" or "r" or "l" or "right" or "left" or "rf" or "lf";
    }

    // at the head of its words, before a foot that acts: "next R heel strut", but "L next to R" and "step R, next L"
    private static bool IsNextMove(List<WordToken> tokens, int at)
        => (at == 0 || tokens[at - 1] is { Kind: WordTokenKind.Mark, Text: "." or "," or ";" or ":" }) && at + 2 < tokens.Count
        && tokens[at + 1].Text is "r" or "l" or "right" or "left" or "rf" or "lf" or "step" or "cross" or "rock" or "turn" or "walk"
        && tokens[at + 2].Kind is WordTokenKind.Word;

    private static bool Stops(List<WordToken> tokens, int at)
        => at >= tokens.Count || tokens[at] is { Kind: WordTokenKind.Mark, Text: "." or "," or ";" or ")" };
}
