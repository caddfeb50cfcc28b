using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Tokens;

namespace Tests.Sheets.Pdf;

/// <summary>What an independent reader finds in a PDF.</summary>
internal sealed class PdfReading : IDisposable
{
    private readonly PdfDocument _document;

    public PdfReading(byte[] file) => _document = PdfDocument.Open(file);

    /// <summary>How many pages there are.</summary>
    public int Pages => _document.NumberOfPages;

    /// <summary>Its title.</summary>
    public string? Title => _document.Information.Title;

    /// <summary>The dictionary at the root.</summary>
    public DictionaryToken Catalog => _document.Structure.Catalog.CatalogDictionary;

    /// <summary>Names of the fonts, with the part before the plus that marks a subset.</summary>
    public IReadOnlyList<string> Fonts => [.. _document.GetPages().SelectMany(p => p.Letters).Select(l => l.FontName!).Distinct().Order(StringComparer.Ordinal)];

    public void Dispose() => _document.Dispose();

    /// <summary>Everything that is part of the content, in the order of the file; without pictures and ornament, and without white space.</summary>
    public string Content() => string.Concat(_document.GetPages().SelectMany(p => p.GetMarkedContents()).Select(m => Text(m, isOrnament: false)));

    /// <summary>What is only ornament or repetition: the heads that stand again and the feet of the pages.</summary>
    public string Ornament() => string.Concat(_document.GetPages().SelectMany(p => p.GetMarkedContents()).Select(m => Text(m, isOrnament: true)));

    /// <summary>Every letter of a page, whether marked or not, without white space.</summary>
    public string Everything() => Bare(string.Concat(_document.GetPages().SelectMany(p => p.Letters).Select(l => l.Value)));

    /// <summary>The tree of tags, outermost first, each with its depth.</summary>
    public IReadOnlyList<(int Depth, string Name, DictionaryToken Element)> Tree()
    {
        List<(int, string, DictionaryToken)> found = [];
        Walk(Get<DictionaryToken>(Catalog, "StructTreeRoot"), 0, found);
        return found;
    }

    /// <summary>A value of a dictionary, wherever in the file it stands.</summary>
    public T Get<T>(DictionaryToken dictionary, string name)
        where T : class, IToken
        => Resolve(dictionary.Data[name]) as T ?? throw new InvalidOperationException($"{name} is no {typeof(T).Name}.");

    /// <summary>Words without white space, as they are compared.</summary>
    public static string Bare(string words) => string.Concat(words.Where(c => !char.IsWhiteSpace(c)));

    private static string Text(MarkedContentElement element, bool isOrnament)
    {
        // the reader calls an element with a picture's tag by that tag
        if (element.IsArtifact != isOrnament || element.Tag == "Figure")
        {
            return "";
        }

        string actual = element.Children.Count == 0 ? "" : string.Concat(element.Children.Select(c => Text(c, isOrnament)));
        return Bare(string.Concat(element.Letters.Select(l => l.Value))) + actual;
    }

    private void Walk(DictionaryToken element, int depth, List<(int Depth, string Name, DictionaryToken Element)> found)
    {
        if (element.TryGet(NameToken.Create("S"), out NameToken name))
        {
            found.Add((depth, name.Data, element));
        }

        if (!element.Data.TryGetValue("K", out IToken? kids))
        {
            return;
        }

        IToken below = Resolve(kids);
        foreach (IToken kid in below is ArrayToken all ? all.Data : [below])
        {
            if (Resolve(kid) is DictionaryToken child && child.Data.ContainsKey("S"))
            {
                Walk(child, depth + 1, found);
            }
        }
    }

    private IToken Resolve(IToken token) => token is IndirectReferenceToken reference ? _document.Structure.GetObject(reference.Data).Data : token;
}
