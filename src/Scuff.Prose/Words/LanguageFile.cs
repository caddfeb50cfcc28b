namespace Scuff.Prose.Words;

/// <summary>Reads the word files built into the program.</summary>
internal static class LanguageFile
{
    /// <summary>The entries of a file: kind, value, forms.</summary>
    /// <exception cref="InvalidDataException">The file is not there or a line is not of the form <c>kind value = forms</c>.</exception>
    public static IEnumerable<(string Kind, string Value, string Forms)> Entries(string name)
    {
        using Stream stream = typeof(ValueList).Assembly.GetManifestResourceStream("data/languages/" + name)
            ?? throw new InvalidDataException($"The word file {name} is not built in.");
        using StreamReader reader = new(stream);
        while (reader.ReadLine() is string line)
        {
            if (line.Length == 0 || line[0] == '#')
            {
                continue;
            }

            int equals = line.IndexOf('=', StringComparison.Ordinal);
            int space = line.IndexOf(' ', StringComparison.Ordinal);
            if (equals < 0 || space < 0 || space > equals)
            {
                throw new InvalidDataException($"A line of the word file {name} is not of the form kind value = forms: {line}");
            }

            yield return (line[..space], line[(space + 1)..equals].Trim(), line[(equals + 1)..]);
        }
    }

    /// <summary>The words of a file that is nothing but words.</summary>
    /// <exception cref="InvalidDataException">The file is not there.</exception>
    public static IEnumerable<string> Words(string name)
    {
        using Stream stream = typeof(ValueList).Assembly.GetManifestResourceStream("data/languages/" + name)
            ?? throw new InvalidDataException($"The word file {name} is not built in.");
        using StreamReader reader = new(stream);
        while (reader.ReadLine() is string line)
        {
            if (line.Length > 0 && line[0] != '#')
            {
                foreach (string word in line.Split(' ', StringSplitOptions.RemoveEmptyEntries))
                {
                    yield return word;
                }
            }
        }
    }
}
