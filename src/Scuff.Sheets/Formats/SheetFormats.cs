namespace Scuff.Sheets.Formats;

/// <summary>The formats there are.</summary>
public static class SheetFormats
{
    /// <summary>All formats, in order of their names.</summary>
    public static ValueList<ISheetFormat> All { get; } = typeof(SheetFormats).Assembly.GetTypes()
        .Where(t => t is { IsClass: true, IsAbstract: false } && t.IsAssignableTo(typeof(ISheetFormat)))
        .Select(t => (ISheetFormat)Activator.CreateInstance(t)!)
        .OrderBy(f => f.Name, StringComparer.Ordinal)
        .ToValueList();

    /// <summary>The format of a name, or null.</summary>
    public static ISheetFormat? Find(string name) => All.FirstOrDefault(f => f.Name == name);
}
