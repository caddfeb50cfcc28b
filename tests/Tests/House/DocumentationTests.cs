using System.Reflection;
using System.Runtime.CompilerServices;
using System.Xml.Linq;

namespace Tests.House;

/// <summary>
/// Words where words are due: every public type and every public member that is not an operator, an override,
/// an implementation of an interface, a case of an enumeration or a value named in the head of a record.
/// </summary>
public sealed class DocumentationTests
{
    private const BindingFlags Own = BindingFlags.Instance | BindingFlags.Static | BindingFlags.Public | BindingFlags.DeclaredOnly;

    public static TheoryData<string> Assemblies => [.. Repository.Assemblies.Select(a => a.GetName().Name!)];

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void Every_public_type_says_what_it_is(string name)
    {
        Assembly assembly = Assembly.Load(name);
        HashSet<string> documented = DocumentedIn(assembly);

        Repository.AssertNone("public types without a summary:", assembly.GetExportedTypes()
            .Where(t => !documented.Contains("T:" + NameOf(t)))
            .Select(NameOf));
    }

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void Every_public_member_says_what_its_name_cannot(string name)
    {
        Assembly assembly = Assembly.Load(name);
        HashSet<string> documented = DocumentedIn(assembly);

        Repository.AssertNone("public members without a summary:", assembly.GetExportedTypes()
            .Where(t => !t.IsEnum && !typeof(Delegate).IsAssignableFrom(t))
            .SelectMany(t => MembersDueIn(t).Select(m => $"{NameOf(t)}.{m}"))
            .Where(m => !documented.Contains(m)));
    }

    private static IEnumerable<string> MembersDueIn(Type type)
    {
        HashSet<string> named = [.. type.GetConstructors().SelectMany(c => c.GetParameters()).Select(p => p.Name!)];
        HashSet<MethodInfo> promised =
        [
            .. type.IsInterface ? [] : type.GetInterfaces().SelectMany(i => type.GetInterfaceMap(i).TargetMethods),
        ];
        return type.GetProperties(Own)
            .Where(p => !named.Contains(p.Name) && p.GetMethod is { } get && !promised.Contains(get) && get.GetBaseDefinition() == get)
            .Select(p => p.Name)
            .Concat(type.GetMethods(Own)
                .Where(m => !m.IsSpecialName
                    && !m.IsDefined(typeof(CompilerGeneratedAttribute))
                    && !promised.Contains(m)
                    && m.GetBaseDefinition() == m)
                .Select(m => m.Name))
            .Concat(type.GetFields(Own).Select(f => f.Name));
    }

    // Types and members with a summary, each member by its name alone (one of several forms is enough).
    private static HashSet<string> DocumentedIn(Assembly assembly)
    {
        XDocument file = XDocument.Load(Path.ChangeExtension(assembly.Location, ".xml"));
        return
        [
            .. file.Descendants("member")
                .Where(m => m.Elements().Any(e => e.Name.LocalName is "summary" or "inheritdoc"))
                .Select(m => (string)m.Attribute("name")!)
                .Select(id => id.StartsWith("T:", StringComparison.Ordinal) ? id : id[2..].Split('(')[0].Split("``")[0]),
        ];
    }

    private static string NameOf(Type type) => type.FullName!.Replace('+', '.');
}
