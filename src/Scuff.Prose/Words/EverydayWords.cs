using System.Collections.Frozen;

namespace Scuff.Prose.Words;

/// <summary>
/// Words of everyday talk that tell nothing of a dance (<c>data/languages/english.talk</c>): "rock forward like a gull on a windy pier". A word that the
/// language file does not know is asked about; one of these is not, where it stands as talk does.
/// </summary>
internal static class EverydayWords
{
    // a text without a word that is unknown never asks for them
    private static readonly Lazy<FrozenSet<string>> Words = new(() => LanguageFile.Words("english.talk").ToFrozenSet(StringComparer.OrdinalIgnoreCase));

    /// <summary>Whether a word is one of them.</summary>
    public static bool Contains(string word) => Words.Value.Contains(word);

    /// <summary>"Like a swan", "a windy pier": whether what could be a slip for a word of the dance is talk, by the word before it.</summary>
    /// <param name="before">The word before it, in small letters.</param>
    /// <param name="word">The word, in small letters.</param>
    /// <param name="lexicon">The words of the language.</param>
    public static bool IsTalkAfter(string before, string word, Lexicon lexicon)
        => (before is "a" or "an" or "like" or "of" or "your" or "my" or "our" or "his" or "her" or "very" or "as"
            || lexicon.Word(before)?.Kind is TermKind.Style || Contains(before)) && Contains(word);

    /// <summary>
    /// Takes unknown words that are talk for styling. After "a", "like" or a word of styling, in front of a move, or beside each other they are talk; one
    /// that stands alone or by a foot may be the name of a figure ("R dolphin") and stays unknown.
    /// </summary>
    public static void Mark(List<Term> terms)
    {
        for (int i = 0; i < terms.Count; i++)
        {
            if (terms[i].Kind is not TermKind.Unknown || !Contains(terms[i].Text))
            {
                continue;
            }

            bool begins = i == 0 || terms[i - 1].Kind is TermKind.Separator or TermKind.Open or TermKind.Then or TermKind.Join or TermKind.With or TermKind.Amp;
            // "a yee-hah"
            bool after = i > 0 && (terms[i - 1].Kind is TermKind.Style || IsSmall(terms[i - 1])
                || (i > 1 && terms[i - 1].Kind is TermKind.Dash && terms[i - 2].Kind is TermKind.Style));
            bool before = begins && i + 1 < terms.Count && (terms[i + 1].Kind is TermKind.Style or TermKind.Move || IsSmall(terms[i + 1])
                || (terms[i + 1].Kind is TermKind.Unknown && Contains(terms[i + 1].Text)));
            if (after || before)
            {
                terms[i] = terms[i] with { Meaning = Talk };
            }
        }
    }

    private static readonly Meaning Talk = new(TermKind.Style);

    // "the foot dolphin": a foot is no article
    private static bool IsSmall(Term term) => term.Kind is TermKind.Filler
        && term.Text.ToLowerInvariant() is not ("foot" or "feet" or "leg" or "legs" or "on" or "onto" or "at" or "to");
}
