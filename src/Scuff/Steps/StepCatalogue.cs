using System.Reflection;
using System.Text;

namespace Scuff.Steps;

/// <summary>The moves of the trade, read from the data files. Immutable.</summary>
public sealed class StepCatalogue
{
    private const string Folder = "data/steps/";

    private static readonly Lazy<StepCatalogue> Embedded = new(() => Read(EmbeddedFiles(), judges: false).Catalogue);

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
    public static StepCatalogue Default => Embedded.Value;

    /// <summary>Faults in the data files that come with Scuff, read anew; a test keeps this empty.</summary>
    public static ValueList<CatalogueComplaint> DefaultComplaints => Read(EmbeddedFiles()).Complaints;

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
        => Read(files, judges: true);

    private static (StepCatalogue Catalogue, ValueList<CatalogueComplaint> Complaints) Read(
        IEnumerable<(string File, string Text)> files,
        bool judges)
    {
        StepCatalogueReader reader = new(judges);
        foreach ((string file, string text) in files)
        {
            reader.ReadFile(file, text);
        }

        return reader.Finish();
    }

    private static List<(string File, string Text)> EmbeddedFiles()
    {
        Assembly assembly = typeof(StepCatalogue).Assembly;
        string[] names = assembly.GetManifestResourceNames();
        Array.Sort(names, StringComparer.Ordinal);
        List<(string File, string Text)> files = new(names.Length);
        byte[] bytes = [];
        foreach (string name in names)
        {
            if (IsStepFile(name))
            {
                // a reader of text would copy everything once more, and this is on the way to every start
                using Stream stream = assembly.GetManifestResourceStream(name)!;
                int length = (int)stream.Length;
                bytes = bytes.Length < length ? new byte[length] : bytes;
                stream.ReadExactly(bytes, 0, length);
                files.Add((name, Encoding.UTF8.GetString(bytes, 0, length)));
            }
        }

        return files;
    }

    private static bool IsStepFile(string name)
        => name.StartsWith(Folder, StringComparison.Ordinal) && name.EndsWith(".steps", StringComparison.Ordinal);
}
