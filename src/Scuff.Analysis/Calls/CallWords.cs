using System.Collections.Frozen;
using System.Globalization;
using Scuff.Steps;

namespace Scuff.Analysis.Calls;

/// <summary>What a caller says besides the call words of the catalogue: sides, turns, warnings. One file a language: <c>data/languages/*.calls</c>.</summary>
public sealed class CallWords
{
    private readonly FrozenDictionary<string, string> _words;

    private CallWords(FrozenDictionary<string, string> words) => _words = words;

    /// <summary>English.</summary>
    public static CallWords English { get; } = Read("english");

    /// <summary>All that can be said, without numbers filled in: what a voice has to be able to say.</summary>
    public IEnumerable<string> All => _words.Values.Order(StringComparer.Ordinal);

    /// <summary>The words of a key.</summary>
    /// <exception cref="KeyNotFoundException">The file has no such key.</exception>
    public string this[string key] => _words[key];

    /// <summary>The words of a key with a number in them.</summary>
    public string With(string key, int number)
        => _words[key].Replace("{n}", number.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal);

    /// <summary>The words of a key with a name in them.</summary>
    public string With(string key, string name) => _words[key].Replace("{name}", name, StringComparison.Ordinal);

    /// <summary>What is said for one action of a kind.</summary>
    public string Of(ActionKind kind) => _words[KeyOf(kind)];

    // FanToe: fan-toe-do
    private static string KeyOf(ActionKind kind)
        => string.Concat(kind.ToString().Select((c, i) => char.IsAsciiLetterUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : c.ToString())) + "-do";

    private static CallWords Read(string language)
    {
        string name = "data/languages/" + language + ".calls";
        using Stream stream = typeof(ValueList).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException(name + " is not in the program.");
        using StreamReader reader = new(stream);
        Dictionary<string, string> words = new(StringComparer.Ordinal);
        while (reader.ReadLine() is { } line)
        {
            if (line.Length == 0 || line[0] == '#')
            {
                continue;
            }

            int equals = line.IndexOf('=', StringComparison.Ordinal);
            if (equals <= 0 || !words.TryAdd(line[..equals].Trim(), line[(equals + 1)..].Trim()))
            {
                throw new InvalidOperationException(name + ": '" + line + "' is no entry, or a second one of its key.");
            }
        }

        return new CallWords(words.ToFrozenDictionary(StringComparer.Ordinal));
    }
}
