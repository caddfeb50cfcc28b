using System.Text;

namespace Scuff.Sheets.Formats.Pdf;

/// <summary>
/// Joins Arabic letters by putting the presentation form of each in its place. What needs more than these forms (stacked marks,
/// optional ligatures) is left plain. Source: Unicode 16, blocks Arabic Presentation Forms-A and -B, ArabicShaping.txt.
/// </summary>
internal static class ArabicForms
{
    // First letter of a run of neighbours, its isolated form, and how many forms each of them has: 1 joins to nothing,
    // 2 to the letter before it, 4 to both sides. The forms follow each other as isolated, final, initial, medial.
    private static readonly (int Letter, int Form, string Sizes)[] Rows =
    [
        (0x0621, 0xFE80, "12222424244444222244444444"),
        (0x0641, 0xFED1, "4444444224"),
        (0x0679, 0xFB66, "4"),
        (0x067E, 0xFB56, "4"),
        (0x0686, 0xFB7A, "4"),
        (0x0688, 0xFB88, "2"),
        (0x0691, 0xFB8C, "2"),
        (0x0698, 0xFB8A, "2"),
        (0x06A9, 0xFB8E, "4"),
        (0x06AF, 0xFB92, "4"),
        (0x06BA, 0xFB9E, "2"),
        (0x06BE, 0xFBAA, "4"),
        (0x06C1, 0xFBA6, "4"),
        (0x06CC, 0xFBFC, "4"),
        (0x06D2, 0xFBAE, "2"),
    ];

    private static readonly Dictionary<char, (char Form, int Size)> Forms = Rows
        .SelectMany(r => r.Sizes.Select((size, i) => (
            Letter: (char)(r.Letter + i),
            Form: (char)(r.Form + r.Sizes.Take(i).Sum(s => s - '0')),
            Size: size - '0')))
        .ToDictionary(l => l.Letter, l => (l.Form, l.Size));

    // An alef after a lam is written with it as one sign: isolated, and final one further.
    private static readonly Dictionary<char, char> LamWith = new()
    {
        ['\u0622'] = '\uFEF5',
        ['\u0623'] = '\uFEF7',
        ['\u0625'] = '\uFEF9',
        ['\u0627'] = '\uFEFB',
    };

    /// <summary>Whether a letter of the word has forms.</summary>
    public static bool Concern(string word)
    {
        foreach (char c in word)
        {
            if (c is >= '\u0621' and <= '\u06D2')
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The word in the order it is spoken, with its letters joined.</summary>
    public static string Join(string word)
    {
        StringBuilder joined = new(word.Length);
        bool joinsBefore = false;
        for (int i = 0; i < word.Length; i++)
        {
            char c = word[i];
            if (IsMark(c))
            {
                joined.Append(c);
                continue;
            }

            int next = Next(word, i);
            if (c == '\u0644' && next < word.Length && LamWith.TryGetValue(word[next], out char pair))
            {
                joined.Append(joinsBefore ? (char)(pair + 1) : pair).Append(word, i + 1, next - i - 1);
                joinsBefore = false;
                i = next;
                continue;
            }

            bool joinsAfter = JoinsOn(c) && next < word.Length && JoinsBack(word[next]);
            joined.Append(Forms.TryGetValue(c, out (char Form, int Size) forms)
                ? (char)(forms.Form + ((joinsBefore && forms.Size > 1 ? 1 : 0) + (joinsAfter ? 2 : 0)))
                : c);
            joinsBefore = joinsAfter;
        }

        return joined.ToString();
    }

    // The lengthening stroke joins to both sides and has one form.
    private static bool JoinsOn(char c) => c == '\u0640' || (Forms.TryGetValue(c, out (char Form, int Size) f) && f.Size == 4);

    private static bool JoinsBack(char c) => c == '\u0640' || (Forms.TryGetValue(c, out (char Form, int Size) f) && f.Size > 1);

    private static int Next(string word, int i)
    {
        do
        {
            i++;
        }
        while (i < word.Length && IsMark(word[i]));
        return i;
    }

    private static bool IsMark(char c) => c is (>= '\u064B' and <= '\u065F') or '\u0670';
}
