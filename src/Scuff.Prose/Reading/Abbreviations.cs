using Scuff.Diagnostics;

namespace Scuff.Prose.Reading;

/// <summary>
/// Looks for the trade's abbreviations in her own notes. Footwork is printed anew, and the sheet's key explains what stands in it;
/// notes are printed as she wrote them, and no key knows what is in them.
/// </summary>
internal static class Abbreviations
{
    // Written by hand, in any case, and with or without a full stop; R and L are in every sheet's key.
    private static readonly Dictionary<string, string> Meanings = new(StringComparer.OrdinalIgnoreCase)
    {
        ["RF"] = "right foot",
        ["LF"] = "left foot",
        ["RH"] = "right hand",
        ["LH"] = "left hand",
        ["rt"] = "right",
        ["lt"] = "left",
        ["fwd"] = "forward",
        ["bwd"] = "back",
        ["bk"] = "back",
        ["tog"] = "together",
        ["diag"] = "diagonally",
        ["wt"] = "weight",
        ["WOL"] = "weight on left",
        ["WOR"] = "weight on right",
        ["CW"] = "clockwise",
        ["CCW"] = "anticlockwise",
        ["LOD"] = "line of dance",
    };

    /// <summary>Tells every one of them in a note.</summary>
    public static void Tell(ReaderState state, TextSpan note)
    {
        string text = state.Text;
        int at = note.Start;
        while (at < note.End)
        {
            if (!char.IsLetter(text[at]))
            {
                at++;
                continue;
            }

            int start = at;
            while (at < note.End && (char.IsLetterOrDigit(text[at]) || text[at] is '\'' or '’' or '-'))
            {
                at++;
            }

            if (Meanings.TryGetValue(text[start..at], out string? meaning))
            {
                // the full stop of an abbreviation goes with it, that of a sentence stays
                bool isStopped = at + 1 < note.End && text[at] == '.' && text[at + 1] == ' ' && at + 2 < note.End && char.IsLower(text[at + 2]);
                TextSpan span = TextSpan.FromBounds(start, isStopped ? at + 1 : at);
                state.Add(ReadingRules.AbbreviationUnexplained
                    .At(span, ("word", text[start..at]), ("meaning", meaning))
                    .WithFixes(new Fix($"write {meaning}", new TextRemedy([new TextEdit(span, meaning)]), IsSafe: true)));
            }
        }
    }
}
