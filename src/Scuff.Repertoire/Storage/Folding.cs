using System.Collections.Frozen;
using System.Globalization;
using System.Text;

namespace Scuff.Repertoire.Storage;

/// <summary>
/// How words are compared when case and accents do not matter: "Søren" is found by "soren". The program runs without the system's language tables,
/// so the letters stand here: those of Latin and Greek that the Unicode Character Database decomposes into a letter and marks, and a few that
/// people type without their stroke or as two letters.
/// </summary>
internal static class Folding
{
    private static readonly (string Plain, string Letters)[] Table =
    [
        ("a", "àáâãäåāăąǎǟǡǻȁȃȧḁạảấầẩẫậắằẳẵặ"),
        ("ae", "æǣǽ"),
        ("b", "ḃḅḇ"),
        ("c", "çćĉċčḉ"),
        ("d", "ðďđḋḍḏḑḓ"),
        ("e", "èéêëēĕėęěȅȇȩḕḗḙḛḝẹẻẽếềểễệ"),
        ("f", "ḟ"),
        ("g", "ĝğġģǧǵḡ"),
        ("h", "ĥħȟḣḥḧḩḫẖ"),
        ("i", "ìíîïĩīĭįıǐȉȋḭḯỉị"),
        ("j", "ĵǰ"),
        ("k", "ķǩḱḳḵ"),
        ("l", "ĺļľłḷḹḻḽ"),
        ("m", "ḿṁṃ"),
        ("n", "ñńņňŋǹṅṇṉṋ"),
        ("o", "òóôõöøōŏőơǒǫǭǿȍȏȫȭȯȱṍṏṑṓọỏốồổỗộớờởỡợ"),
        ("oe", "œ"),
        ("p", "ṕṗ"),
        ("r", "ŕŗřȑȓṙṛṝṟ"),
        ("s", "śŝşšſșṡṣṥṧṩ"),
        ("ss", "ß"),
        ("t", "ţťŧțṫṭṯṱẗ"),
        ("th", "þ"),
        ("u", "ùúûüũūŭůűųưǔǖǘǚǜȕȗṳṵṷṹṻụủứừửữự"),
        ("v", "ṽṿ"),
        ("w", "ŵẁẃẅẇẉẘ"),
        ("x", "ẋẍ"),
        ("y", "ýÿŷȳẏẙỳỵỷỹ"),
        ("z", "źżžƶẑẓẕ"),
        ("α", "άἀἁἂἃἄἅἆἇὰάᾀᾁᾂᾃᾄᾅᾆᾇᾰᾱᾲᾳᾴᾶᾷ"),
        ("ε", "έἐἑἒἓἔἕὲέ"),
        ("η", "ήἠἡἢἣἤἥἦἧὴήᾐᾑᾒᾓᾔᾕᾖᾗῂῃῄῆῇ"),
        ("ι", "ΐίϊἰἱἲἳἴἵἶἷὶίῐῑῒΐῖῗ"),
        ("ο", "όὀὁὂὃὄὅὸό"),
        ("ρ", "ῤῥ"),
        ("σ", "ς"),
        ("υ", "ΰϋύὐὑὒὓὔὕὖὗὺύῠῡῢΰῦῧ"),
        ("ω", "ώὠὡὢὣὤὥὦὧὼώᾠᾡᾢᾣᾤᾥᾦᾧῲῳῴῶῷ"),
    ];

    private static readonly FrozenDictionary<char, string> Plain = Table
        .SelectMany(row => row.Letters.Select(letter => (letter, row.Plain)))
        .ToFrozenDictionary(p => p.letter, p => p.Plain);

    /// <summary>The text in small letters without accents; everything else as it is.</summary>
    public static string Fold(string text)
    {
        if (System.Text.Ascii.IsValid(text))
        {
            return text.ToLowerInvariant();
        }

        StringBuilder folded = new(text.Length + 8);
        foreach (char c in text)
        {
            char small = char.ToLowerInvariant(c);
            if (Plain.TryGetValue(small, out string? plain))
            {
                folded.Append(plain);
            }
            else if (small is < '\u0300' or > '\u036F')
            {
                // the marks of that range belong to a letter written in two characters
                folded.Append(small);
            }
        }

        return folded.ToString();
    }

    /// <summary>The text folded, with every run of white space as one blank and none at the ends.</summary>
    public static string FoldLine(string text) => string.Join(' ', Fold(text).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>
    /// What a person typed as words to look for, folded: runs of letters and digits, and apart from them signs (an emoji, an arrow) that no index
    /// knows.
    /// </summary>
    public static (IReadOnlyList<string> Words, IReadOnlyList<string> Signs) Words(string typed)
    {
        List<string> words = [];
        List<string> signs = [];
        foreach (string part in Fold(typed).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            int before = words.Count;
            StringBuilder word = new();
            foreach (Rune rune in part.EnumerateRunes())
            {
                if (IsOfWord(rune))
                {
                    word.Append(rune.ToString());
                }
                else if (word.Length > 0)
                {
                    words.Add(word.ToString());
                    word.Clear();
                }
            }

            if (word.Length > 0)
            {
                words.Add(word.ToString());
            }
            else if (words.Count == before && !part.Contains('\0', StringComparison.Ordinal))
            {
                signs.Add(part);
            }
        }

        return (words, signs);
    }

    // Letters, numbers and characters for private use: what SQLite's unicode61 tokenizer takes for parts of a word
    // (https://sqlite.org/fts5.html#unicode61_tokenizer).
    private static bool IsOfWord(Rune rune) => Rune.GetUnicodeCategory(rune) is UnicodeCategory.UppercaseLetter or UnicodeCategory.LowercaseLetter
        or UnicodeCategory.TitlecaseLetter or UnicodeCategory.ModifierLetter or UnicodeCategory.OtherLetter or UnicodeCategory.DecimalDigitNumber
        or UnicodeCategory.LetterNumber or UnicodeCategory.OtherNumber or UnicodeCategory.PrivateUse;
}
