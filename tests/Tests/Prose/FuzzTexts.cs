using System.Globalization;
using System.Text;
using Scuff.Repertoire.Files;
using Tests.Corpus;

namespace Tests.Prose;

/// <summary>
/// Texts that nobody would write, and some that a tired hand might: each follows from one number, so that a failure is had again.
/// </summary>
internal static class FuzzTexts
{
    private static readonly string[] Nasty =
    [
        "0", "1", "-1", "9", "17", "64", "999", "32768", "2147483647", "2147483648", "99999999999999999999", "1-2147483647", "1-999999",
        "7-3", "x0", "x2", "x64", "x2147483647", "1/0", "0/4", "1/3", "1/4", "7/8", "2 1/2", "99/8", "¼", "½", "⅞", "1½", "&", "&&", "e", "a", "&1",
        "1&", "1&a2", "1e&a2e&a3", "3:00", "12:00", "4:30", "25:99", "[9:00]", "[", "]", "(", ")", "{", "\"", "“", "”", "'", "’", ":", ";", ",", ".",
        "/", "//", "#", "-", "–", "—", "+", "=", "*", "\t", "\r", "\n", "\r\n", "\u2028", "\u0085", "\u200B", "\uFEFF", "\u00AD", "\u00A0", "\u0301",
        "\uD83D", "\uDE00", "\uFFFD", "İ", "ß", "ǅ", "٣", "Ⅳ", "repeat", "repeat 1-8", "repeat section 1", "x2", "twice", "other side", "option 1-8:",
        "option", "style:", "arms:", "with", "and", "or", "then", "restart", "tag", "tag \"A\" 4 counts", "bridge", "ending:", "wall 2: after 16 restart",
        "wall 2147483647: after 99999 restart", "every wall", "last wall", "sequence: A B A tag", "part A", "part B", "section 1", "section 99999",
        "S1", "[S3]", "move \"spin\" 1&2: step R, step L", "move \"\" 1:", "track: \"X\", 120 bpm, intro 32", "track:", "counts: 32", "walls: 4",
        "start: weight on both", "rhythm: waltz", "counted: half time", "hold", "hold 99", "left", "right", "L", "R", "both", "weight on L",
    ];

    private static readonly string[] Words =
    [
        .. SeedTexts.Demo.Concat(SeedTexts.Faulty).Select(d => d.Text)
            .Concat(SeedTexts.Cases.SelectMany(c => c.Texts))
            .SelectMany(t => t.Split([' ', '\n', '\t', ','], StringSplitOptions.RemoveEmptyEntries))
            .Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal),
    ];

    private static readonly string[] Dances = [.. SeedTexts.Demo.Concat(SeedTexts.Faulty).Select(d => d.Text)];

    private static readonly CorpusCase[] Cases = [.. SeedTexts.Cases];

    /// <summary>The text of a number.</summary>
    public static string Make(int number)
    {
        Random random = new(number);
        return random.Next(20) switch
        {
            0 => FromBytes(random),
            1 => FromCharacters(random),
            < 6 => Soup(random),
            < 12 => Mutated(CorpusText(random), random),
            < 17 => Mutated(Excerpt(Pick(Dances, random), random), random),
            17 => Spliced(random),
            18 => Truncated(random),
            _ => Mutated(Pick(Dances, random), random),
        };
    }

    private static T Pick<T>(T[] items, Random random) => items[random.Next(items.Length)];

    private static string FromBytes(Random random)
    {
        byte[] bytes = new byte[random.Next(300)];
        random.NextBytes(bytes);
        if (random.Next(2) == 0)
        {
            // without zero bytes the file reader takes it for a text
            bytes = Array.ConvertAll(bytes, b => b == 0 ? (byte)'\n' : b);
        }

        DecodedText decoded = TextDecoding.Decode(bytes);
        return decoded.Text.Length > 0 ? decoded.Text : Encoding.UTF8.GetString(bytes);
    }

    private static string FromCharacters(Random random)
    {
        StringBuilder text = new();
        int length = random.Next(300);
        int top = Pick([0x80, 0x250, 0x3000, 0x10000], random);
        for (int i = 0; i < length; i++)
        {
            text.Append(random.Next(8) == 0 ? '\n' : (char)random.Next(top));
        }

        return text.ToString();
    }

    private static string Soup(Random random)
    {
        StringBuilder text = new(random.Next(3) == 0 ? "" : "Soup\n\nsection 1\n");
        int lines = random.Next(1, 6);
        int count = 1;
        for (int i = 0; i < lines; i++)
        {
            if (random.Next(4) > 0)
            {
                int last = count + random.Next(4);
                text.Append(CultureInfo.InvariantCulture, $"{count}{(random.Next(3) == 0 ? "&" : "-")}{last} ");
                count = last + 1;
            }

            int words = random.Next(1, 12);
            for (int w = 0; w < words; w++)
            {
                text.Append(random.Next(6) == 0 ? Pick(Nasty, random) : Pick(Words, random)).Append(random.Next(5) == 0 ? ", " : " ");
            }

            text.Append('\n');
        }

        return text.ToString();
    }

    private static string CorpusText(Random random)
    {
        string text = SeedTexts.TextOf(Pick(Cases, random));
        int more = random.Next(3);
        for (int i = 0; i < more; i++)
        {
            text += string.Join('\n', Pick(Cases, random).Texts) + "\n";
        }

        return text;
    }

    // a few lines, with or without the heading above them
    private static string Excerpt(string dance, Random random)
    {
        string[] lines = dance.Split('\n');
        int length = random.Next(1, 8);
        int start = random.Next(Math.Max(1, lines.Length - length));
        string heading = random.Next(2) == 0 ? "" : "Excerpt\n\nsection 1\n";
        return heading + string.Join('\n', lines.Skip(start).Take(length)) + "\n";
    }

    private static string Spliced(Random random)
    {
        string first = Excerpt(Pick(Dances, random), random);
        string second = Excerpt(Pick(Dances, random), random);
        return first[..random.Next(first.Length + 1)] + second[random.Next(second.Length + 1)..];
    }

    private static string Truncated(Random random)
    {
        string dance = Pick(Dances, random);
        return random.Next(2) == 0 ? dance[..random.Next(dance.Length + 1)] : dance[random.Next(dance.Length + 1)..];
    }

    private static string Mutated(string text, Random random)
    {
        StringBuilder made = new(text);
        int times = random.Next(1, 6);
        for (int i = 0; i < times; i++)
        {
            Mutate(made, random);
        }

        return made.ToString();
    }

    private static void Mutate(StringBuilder text, Random random)
    {
        if (text.Length == 0)
        {
            text.Append(Pick(Nasty, random));
            return;
        }

        int at = random.Next(text.Length);
        switch (random.Next(12))
        {
            case 0:
                text.Remove(at, Math.Min(text.Length - at, random.Next(1, 4)));
                break;
            case 1:
                text[at] = (char)random.Next(32, 127);
                break;
            case 2:
                text.Insert(at, (char)random.Next(0x10000));
                break;
            case 3:
            case 4:
                text.Insert(WordStart(text, at), Pick(Nasty, random) + " ");
                break;
            case 5:
                text.Insert(WordStart(text, at), Pick(Words, random) + " ");
                break;
            case 6:
            case 7:
                ReplaceWord(text, at, random.Next(2) == 0 ? Pick(Nasty, random) : Pick(Words, random));
                break;
            case 8:
                ReplaceNumber(text, at, Pick(Nasty, random));
                break;
            case 9:
                // a stretch twice, up to the whole text doubled
                string again = text.ToString(at, Math.Min(text.Length - at, random.Next(1, 200)));
                text.Insert(at, again);
                break;
            case 10:
                (text[at], text[random.Next(text.Length)]) = (text[random.Next(text.Length)], text[at]);
                break;
            default:
                text.Length = at;
                break;
        }
    }

    private static int WordStart(StringBuilder text, int at)
    {
        while (at > 0 && text[at - 1] is not (' ' or '\n'))
        {
            at--;
        }

        return at;
    }

    private static void ReplaceWord(StringBuilder text, int at, string word)
    {
        int start = WordStart(text, at);
        int end = start;
        while (end < text.Length && text[end] is not (' ' or '\n'))
        {
            end++;
        }

        text.Remove(start, end - start).Insert(start, word);
    }

    private static void ReplaceNumber(StringBuilder text, int at, string word)
    {
        while (at < text.Length && !char.IsAsciiDigit(text[at]))
        {
            at++;
        }

        int end = at;
        while (end < text.Length && char.IsAsciiDigit(text[end]))
        {
            end++;
        }

        text.Remove(at, end - at).Insert(at, word);
    }
}
