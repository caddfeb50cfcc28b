namespace Scuff.App.Handouts;

/// <summary>Finds the forms that the makers know.</summary>
internal static class FoundHandouts
{
    /// <summary>All forms in which something can be taken out, in order of their names.</summary>
    /// <typeparam name="T">What is taken out.</typeparam>
    public static ValueList<Handout<T>> Of<T>() => typeof(FoundHandouts).Assembly.GetTypes()
        .Where(t => t is { IsClass: true, IsAbstract: false } && t.IsAssignableTo(typeof(IHandoutMaker<T>)))
        .SelectMany(t => ((IHandoutMaker<T>)Activator.CreateInstance(t)!).Handouts)
        .OrderBy(h => h.Name, StringComparer.Ordinal)
        .ToValueList();
}
