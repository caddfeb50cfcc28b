namespace Scuff.Sheets.Captions;

/// <summary>The formats of captions there are.</summary>
public static class CaptionFormats
{
    /// <summary>All formats, in order of their names.</summary>
    public static ValueList<ICaptionFormat> All { get; } = typeof(CaptionFormats).Assembly.GetTypes()
        .Where(t => t is { IsClass: true, IsAbstract: false } && t.IsAssignableTo(typeof(ICaptionFormat)))
        .Select(t => (ICaptionFormat)Activator.CreateInstance(t)!)
        .OrderBy(f => f.Name, StringComparer.Ordinal)
        .ToValueList();

    /// <summary>The format of a name, or null.</summary>
    public static ICaptionFormat? Find(string name) => All.FirstOrDefault(f => f.Name == name);
}
