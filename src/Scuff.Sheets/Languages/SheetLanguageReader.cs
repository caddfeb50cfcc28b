using Scuff.Steps;

namespace Scuff.Sheets.Languages;

/// <summary>Reads the file of a language: <c>key confidence words</c> on each line, and the pages its words come from.</summary>
internal static class SheetLanguageReader
{
    /// <summary>The words that stand for no words.</summary>
    private const string Nothing = "-";

    private const string Kept = "+kept";

    /// <summary>Reads a file.</summary>
    /// <param name="name">Its name, for complaints.</param>
    /// <param name="text">What is in it.</param>
    /// <exception cref="InvalidDataException">A line is wrong; the message names it and what would mend it.</exception>
    public static (ValueList<LanguageEntry> Entries, ValueList<LanguageSource> Sources) Read(string name, TextReader text)
    {
        List<LanguageEntry> entries = [];
        List<LanguageSource> sources = [];
        HashSet<string> keys = new(StringComparer.Ordinal);
        int number = 0;
        while (text.ReadLine() is string line)
        {
            number++;
            if (line.Length == 0 || line[0] == '#')
            {
                continue;
            }

            if (line.Contains('\t', StringComparison.Ordinal))
            {
                throw Wrong("a tab stands in it; use spaces");
            }

            string[] words = line.Split(' ', 3, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            if (words.Length < 3)
            {
                throw Wrong("it is not of the form: key, confidence, words (a - for no words)");
            }

            if (words[0] == "source")
            {
                int space = words[2].IndexOf(' ', StringComparison.Ordinal);
                if (space < 0)
                {
                    throw Wrong("it is not of the form: source, its key, its address, its title");
                }

                sources.Add(new LanguageSource(words[1], words[2][(space + 1)..].Trim(), words[2][..space]));
                continue;
            }

            if (!keys.Add(words[0]))
            {
                throw Wrong($"the key {words[0]} stands twice");
            }

            CheckBraces(words[2]);
            (Confidence confidence, string source, bool isKept) = ReadConfidence(words[1]);
            if (source.Length > 0 && !sources.Exists(s => s.Key == source))
            {
                throw Wrong($"the source {source} is not named above");
            }

            entries.Add(new LanguageEntry(words[0], TextOf(words[2]), confidence, source, isKept));
        }

        return ([.. entries], [.. sources]);

        // quotation marks hold the spaces at an end
        static string TextOf(string words) => words == Nothing ? ""
            : words.Length > 2 && words[0] == '"' && words[^1] == '"' ? words[1..^1]
            : words;

        InvalidDataException Wrong(string why) => new($"{name}, line {number}: {why}.");

        (Confidence Confidence, string Source, bool IsKept) ReadConfidence(string word)
        {
            bool isKept = word.EndsWith(Kept, StringComparison.Ordinal);
            string plain = isKept ? word[..^Kept.Length] : word;
            int colon = plain.IndexOf(':', StringComparison.Ordinal);
            string source = colon < 0 ? "" : plain[(colon + 1)..];
            return (colon < 0 ? plain : plain[..colon]) switch
            {
                "sourced" => (Confidence.Sourced, source, isKept),
                "practice" when colon < 0 => (Confidence.CommonPractice, "", isKept),
                "memory" when colon < 0 => (Confidence.FromMemory, "", isKept),
                _ => throw Wrong($"{word} is no confidence; write sourced, sourced:page, practice or memory, and +kept where the English word is kept"),
            };
        }

        void CheckBraces(string words)
        {
            bool isOpen = false;
            foreach (char c in words)
            {
                if (c is '{' or '}')
                {
                    if (isOpen != (c == '}'))
                    {
                        throw Wrong("its braces do not pair");
                    }

                    isOpen = c == '{';
                }
            }

            if (isOpen)
            {
                throw Wrong("its braces do not pair");
            }
        }
    }
}
