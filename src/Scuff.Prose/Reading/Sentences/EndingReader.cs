using Scuff.Dances;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Prose.Reading.Sentences;

/// <summary>Reads how the dance finishes with the music: "ending: last wall, after 8 counts: step R forward, pivot to the front, stomp R".</summary>
/// <param name="state">What is known of the text.</param>
/// <param name="dance">The dance the sentence is about.</param>
/// <param name="sentenceSteps">Reads the steps of the ending.</param>
internal sealed class EndingReader(ReaderState state, Dance dance, SentenceSteps sentenceSteps)
{
    /// <summary>The ending told by a line; what is not understood of it is kept in its words.</summary>
    public Ending Read(TextLine line)
    {
        string words = state.Text[line.Start..line.End];
        int colon = words.IndexOf(':', StringComparison.Ordinal);
        int start = line.Start + (colon < 0 ? 0 : colon + 1);
        int steps = state.Text.IndexOf(':', start, line.End - start);
        if (steps >= 0 && steps + 1 < line.End && char.IsAsciiDigit(state.Text[steps + 1]) && steps > start
            && char.IsAsciiDigit(state.Text[steps - 1]))
        {
            steps = state.Text.IndexOf(':', steps + 1, line.End - steps - 1);
        }

        // what is said of wall and place stands before the steps
        List<WordToken> tokens = WordScanner.Scan(state.Text, start, steps >= 0 ? steps : line.End);
        SentencePart told = SentenceScan.Of(new SentenceWords(tokens), dance, "", _ => ("", 0))[0];
        int? wall = told.Walls.Count > 0 ? told.Walls[0] : null;
        Counts? after = told.After;
        Section? body = null;
        if (steps >= 0)
        {
            body = sentenceSteps.EndingBody(line, steps + 1, after);
        }
        else if (after is null && wall is null && colon >= 0)
        {
            body = sentenceSteps.EndingBody(line, start, null);
        }

        FacingClaim? claim = ClaimOf(WordScanner.Scan(state.Text, start, line.End), ofStart: false);
        bool front = Has(words, "front") || claim?.Facing == Facing.Front || Has(words, "12 o");
        return new Ending
        {
            Wall = wall,
            AfterCounts = after,
            Body = body,
            Claim = claim,
            SaysFront = front,
            MoveWords = steps >= 0 && steps + 1 < line.End ? state.Text[(steps + 1)..line.End].Trim() : "",
            WallFacing = ClaimOf(tokens, ofStart: true)?.Facing,
            Span = line.Span,
            Line = line.Number,
            Verbatim = words,
        };
    }

    private static bool Has(ReadOnlySpan<char> words, string word) => words.Contains(word, StringComparison.OrdinalIgnoreCase);

    // The last clock time that is said of the end; or of the start of its wall, which is no claim.
    private static FacingClaim? ClaimOf(List<WordToken> tokens, bool ofStart)
    {
        for (int i = tokens.Count - 1; i >= 0; i--)
        {
            if (tokens[i].Kind == WordTokenKind.Clock)
            {
                // "wall 3 (starts facing 6:00)"
                bool starts = tokens.Take(i).TakeLast(3).Any(t => t.Text.StartsWith("start", StringComparison.Ordinal)
                    || t.Text.StartsWith("begin", StringComparison.Ordinal));
                if (starts == ofStart)
                {
                    return new FacingClaim(Facing.FromEighths(tokens[i].Value), Counts.Zero, tokens[i].Span);
                }
            }
        }

        return null;
    }
}
