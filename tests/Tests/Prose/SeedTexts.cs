using Tests.Corpus;
using Tests.House;

namespace Tests.Prose;

/// <summary>Real texts that the properties are tried on: the demo club, its faulty dances, and lines of the wording corpus.</summary>
internal static class SeedTexts
{
    /// <summary>The demo dances by file name: all of them check clean.</summary>
    public static IReadOnlyList<(string Name, string Text)> Demo { get; } = Folder("demo/dances");

    /// <summary>The faulty dances by file name.</summary>
    public static IReadOnlyList<(string Name, string Text)> Faulty { get; } = Folder("demo/faulty");

    /// <summary>The cases of the corpus that the reader was made with; its unseen parts are only ever counted.</summary>
    public static IReadOnlyList<CorpusCase> Cases { get; } = [.. Corpus("open"), .. Corpus("second")];

    /// <summary>The cases of a folder of the corpus.</summary>
    public static List<CorpusCase> Corpus(string folder) => CorpusCase.Load(Path.Combine(Repository.Root, "tests", "Tests", "Corpus", folder));

    /// <summary>A corpus case as a whole text, as the corpus itself reads it.</summary>
    public static string TextOf(CorpusCase one)
    {
        string stand = one.Start.StartsWith("both", StringComparison.Ordinal) ? "weight on both"
            : one.Start.StartsWith("L free", StringComparison.Ordinal) ? "weight on R"
            : "weight on L";
        return $"Corpus\n\nstart: {stand}\n\nsection 1\n{string.Join('\n', one.Texts)}\n";
    }

    private static List<(string Name, string Text)> Folder(string path) =>
    [
        .. Directory.EnumerateFiles(Path.Combine(Repository.Root, path), "*.dance")
            .Order(StringComparer.Ordinal)
            .Select(f => (Path.GetFileNameWithoutExtension(f), File.ReadAllText(f))),
    ];
}
