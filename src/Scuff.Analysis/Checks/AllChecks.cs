using System.Reflection;

namespace Scuff.Analysis.Checks;

/// <summary>Every check there is, found once by <see cref="ICheck"/> and ordered by rule id.</summary>
public static class AllChecks
{
    /// <summary>The checks, ordered by rule id.</summary>
    public static IReadOnlyList<ICheck> Ordered { get; } = Find();

    private static ICheck[] Find() =>
    [
        .. typeof(AllChecks).Assembly.GetTypes()
            .Where(type => type is { IsClass: true, IsAbstract: false } && type.IsAssignableTo(typeof(ICheck)))
            .Select(type => (ICheck)Activator.CreateInstance(type, BindingFlags.Instance | BindingFlags.Public, null, null, null)!)
            .OrderBy(check => check.Rule.Id, StringComparer.Ordinal),
    ];
}
