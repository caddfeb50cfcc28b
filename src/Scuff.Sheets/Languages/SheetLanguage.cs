using System.Collections.Frozen;
using System.Reflection;
using System.Text;
using Scuff.Sheets.Drawings;

namespace Scuff.Sheets.Languages;

/// <summary>
/// The words of sheets in one language, read once from its file in <c>data/languages</c>. A file there is a language: nothing else
/// names it. English is complete by test; where another language lacks an entry, the English words stand. Never changes.
/// </summary>
public sealed class SheetLanguage
{
    private const string Folder = "data/languages/";
    private const string Ending = ".sheet";

    private static readonly FrozenDictionary<string, Lazy<SheetLanguage>> Built = typeof(ValueList).Assembly
        .GetManifestResourceNames()
        .Where(n => n.StartsWith(Folder, StringComparison.Ordinal) && n.EndsWith(Ending, StringComparison.Ordinal))
        .Select(n => n[Folder.Length..^Ending.Length])
        .ToFrozenDictionary(code => code, code => new Lazy<SheetLanguage>(() => Load(code)), StringComparer.Ordinal);

    private readonly FrozenDictionary<string, LanguageEntry> _byKey;

    private SheetLanguage(string code, ValueList<LanguageEntry> entries, ValueList<LanguageSource> sources)
    {
        Code = code;
        Entries = entries;
        Sources = sources;
        _byKey = entries.ToFrozenDictionary(e => e.Key, StringComparer.Ordinal);
        Labels = Fill<SheetLabels>("label") with { Drawings = Fill<DrawingLabels>("drawing") };
        Cautions = Fill<CautionLabels>("caution");
        Changes = Fill<ChangeLabels>("change");
        Moves = new MovePhrasing(this);
    }

    /// <summary>The codes of all languages, in order.</summary>
    public static ValueList<string> Codes => [.. Built.Keys.Order(StringComparer.Ordinal)];

    /// <summary>English.</summary>
    public static SheetLanguage English => Built["en"].Value;

    /// <summary>Its ISO 639-1 code (<c>de</c>), which is the name of its file.</summary>
    public string Code { get; }

    /// <summary>Its name in itself (<c>Deutsch</c>).</summary>
    public string Name => Words("language.name");

    /// <summary>Its English name (<c>German</c>).</summary>
    public string EnglishName => Words("language.english");

    /// <summary>Its entries in the order of its file.</summary>
    public ValueList<LanguageEntry> Entries { get; }

    /// <summary>The pages its words were found on.</summary>
    public ValueList<LanguageSource> Sources { get; }

    /// <summary>Headings and other fixed words.</summary>
    public SheetLabels Labels { get; }

    /// <summary>The sentences of the cautions.</summary>
    public CautionLabels Cautions { get; }

    /// <summary>The sentences that tell what changed.</summary>
    public ChangeLabels Changes { get; }

    /// <summary>How it tells moves.</summary>
    public MovePhrasing Moves { get; }

    /// <summary>The keys that English has and every language needs, but this one lacks; its sheets are English there.</summary>
    public ValueList<string> Gaps => [.. English.Entries.Where(e => LanguageKeys.IsNeeded(e.Key) && !_byKey.ContainsKey(e.Key)).Select(e => e.Key)];

    /// <summary>The language of a code, or null when there is none.</summary>
    /// <exception cref="InvalidDataException">Its file is faulty.</exception>
    public static SheetLanguage? Find(string code) => Built.TryGetValue(code, out Lazy<SheetLanguage>? language) ? language.Value : null;

    /// <summary>Reads a language that is not built in.</summary>
    /// <param name="code">Its code.</param>
    /// <param name="text">Its file.</param>
    /// <exception cref="InvalidDataException">The file is faulty; the message says where and why.</exception>
    public static SheetLanguage Read(string code, TextReader text)
    {
        (ValueList<LanguageEntry> entries, ValueList<LanguageSource> sources) = SheetLanguageReader.Read(code + Ending, text);
        if (code != "en")
        {
            foreach (LanguageEntry entry in entries)
            {
                if (LanguageKeys.Fault(entry, English.FindOwn(entry.Key)) is { } why)
                {
                    throw new InvalidDataException($"{code}{Ending}: {why}.");
                }
            }
        }

        return new SheetLanguage(code, entries, sources);
    }

    /// <summary>The words of an entry; English where it has none of its own.</summary>
    /// <exception cref="InvalidOperationException">English has none either.</exception>
    public string Words(string key) => FindOwn(key)
        ?? (Code == "en" ? null : English.FindOwn(key))
        ?? throw new InvalidOperationException($"No language has words for {key}.");

    /// <summary>The words of an entry in this language alone, or null.</summary>
    public string? FindOwn(string key) => _byKey.TryGetValue(key, out LanguageEntry? entry) ? entry.Text : null;

    /// <summary>The words of an entry with its places filled.</summary>
    public string Say(string key, params ReadOnlySpan<(string Place, string Words)> parts) => WordTemplate.Fill(Words(key), parts);

    /// <summary>
    /// A record of fixed words: each of its texts is the entry named by the family and the property (<c>label.facing-after</c>).
    /// </summary>
    /// <typeparam name="T">A record whose public properties are all texts.</typeparam>
    /// <param name="family">First word of the keys.</param>
    public T Fill<T>(string family)
        where T : class, new()
    {
        T filled = new();
        foreach (PropertyInfo property in TextsOf(typeof(T)))
        {
            property.SetValue(filled, Words(family + "." + KeyOf(property.Name)));
        }

        return filled;
    }

    /// <summary>The keys that <see cref="Fill"/> asks for.</summary>
    public static ValueList<string> KeysOf(Type record, string family) => [.. TextsOf(record).Select(p => family + "." + KeyOf(p.Name))];

    /// <summary>A name of the code as it stands in a key: <c>DiagonalForward</c> is <c>diagonal-forward</c>.</summary>
    public static string KeyOf(string name)
    {
        StringBuilder key = new();
        foreach (char c in name)
        {
            if (char.IsAsciiLetterUpper(c) && key.Length > 0)
            {
                key.Append('-');
            }

            key.Append(char.ToLowerInvariant(c));
        }

        return key.ToString();
    }

    private static IEnumerable<PropertyInfo> TextsOf(Type record) => record
        .GetProperties(BindingFlags.Public | BindingFlags.Instance)
        .Where(p => p.PropertyType == typeof(string) && p.CanWrite);

    private static SheetLanguage Load(string code)
    {
        using Stream stream = typeof(ValueList).Assembly.GetManifestResourceStream(Folder + code + Ending)!;
        using StreamReader reader = new(stream);
        return Read(code, reader);
    }
}
