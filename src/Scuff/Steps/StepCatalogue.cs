using System.Reflection;

namespace Scuff.Steps;

/// <summary>The moves of the trade, read from the data files. Immutable.</summary>
public sealed class StepCatalogue
{
    private const string Folder = "data/steps/";

    private static readonly Lazy<(StepCatalogue Catalogue, ValueList<CatalogueComplaint> Complaints)> Embedded = new(ReadEmbedded);

    private readonly Dictionary<string, StepDefinition> _byId;

    private readonly Dictionary<string, StepSource> _sources;

    internal StepCatalogue(ValueList<StepDefinition> definitions, Dictionary<string, StepSource> sources)
    {
        Definitions = definitions;
        _sources = sources;
        _byId = new Dictionary<string, StepDefinition>(definitions.Count, StringComparer.Ordinal);
        foreach (StepDefinition definition in definitions)
        {
            _byId.TryAdd(definition.Id, definition);
        }
    }

    /// <summary>The catalogue that comes with Scuff; read on first use.</summary>
    public static StepCatalogue Default => Embedded.Value.Catalogue;

    /// <summary>Faults in the data files that come with Scuff; a test keeps this empty.</summary>
    public static ValueList<CatalogueComplaint> DefaultComplaints => Embedded.Value.Complaints;

    /// <summary>All entries, in the order of the files (by name) and of their places in them.</summary>
    public IReadOnlyList<StepDefinition> Definitions { get; }

    /// <summary>The sources by their keys.</summary>
    public IReadOnlyDictionary<string, StepSource> Sources => _sources;

    /// <summary>The entry of a key, or null.</summary>
    public StepDefinition? Find(string id) => _byId.GetValueOrDefault(id);

    /// <summary>
    /// Reads data files. A faulty line is left out and told; an entry that lacks what every entry needs is left out as a whole.
    /// </summary>
    /// <param name="files">File names (for the complaints) and their texts.</param>
    public static (StepCatalogue Catalogue, ValueList<CatalogueComplaint> Complaints) Read(IEnumerable<(string File, string Text)> files)
    {
        StepCatalogueReader reader = new();
        foreach ((string file, string text) in files)
        {
            reader.ReadFile(file, text);
        }

        return reader.Finish();
    }

    private static (StepCatalogue Catalogue, ValueList<CatalogueComplaint> Complaints) ReadEmbedded()
    {
        Assembly assembly = typeof(StepCatalogue).Assembly;
        string[] names = [.. assembly.GetManifestResourceNames().Where(IsStepFile)];
        Array.Sort(names, StringComparer.Ordinal);
        List<(string File, string Text)> files = new(names.Length);
        foreach (string name in names)
        {
            using Stream stream = assembly.GetManifestResourceStream(name)!;
            using StreamReader text = new(stream);
            files.Add((name, text.ReadToEnd()));
        }

        return Read(files);
    }

    private static bool IsStepFile(string name)
        => name.StartsWith(Folder, StringComparison.Ordinal) && name.EndsWith(".steps", StringComparison.Ordinal);
}
