using System.Collections;
using System.Reflection;
using System.Runtime.CompilerServices;

namespace Tests.House;

/// <summary>Everything in Scuff is a value: nothing that was handed out changes afterwards.</summary>
public sealed class ImmutabilityTests
{
    private const BindingFlags Own = BindingFlags.Instance | BindingFlags.Static | BindingFlags.Public
        | BindingFlags.NonPublic | BindingFlags.DeclaredOnly;

    private static Type[] PublicTypes => [.. Repository.Scuff.GetExportedTypes().Where(t => !t.IsEnum && !t.IsInterface)];

    [Fact]
    public void There_are_public_types_to_look_at() => Assert.NotEmpty(PublicTypes);

    [Fact]
    public void No_field_of_a_public_type_changes_after_construction()
        => Repository.AssertNone("fields that can change:", PublicTypes
            .SelectMany(t => t.GetFields(Own))
            .Where(f => !f.IsInitOnly && !f.IsLiteral)
            .Select(Named));

    [Fact]
    public void No_property_of_a_public_type_can_be_set_after_construction()
        => Repository.AssertNone("properties that can be set:", PublicTypes
            .SelectMany(t => t.GetProperties(Own))
            .Where(p => p.SetMethod is { } set
                && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit)))
            .Select(Named));

    [Fact]
    public void No_public_member_hands_out_a_collection_that_can_be_changed()
    {
        IEnumerable<(MemberInfo Member, Type Type)> handed = PublicTypes.SelectMany(t =>
            t.GetFields(Own).Where(f => f.IsPublic).Select(f => ((MemberInfo)f, f.FieldType))
                .Concat(t.GetProperties(Own).Where(p => p.GetMethod is { IsPublic: true }).Select(p => ((MemberInfo)p, p.PropertyType)))
                .Concat(t.GetMethods(Own).Where(m => m.IsPublic && !m.IsSpecialName).Select(m => ((MemberInfo)m, m.ReturnType))));

        Repository.AssertNone("changeable collections handed out:", handed.Where(h => CanBeChanged(h.Type)).Select(h => Named(h.Member)));
    }

    [Theory]
    [InlineData(typeof(int[]), true)]
    [InlineData(typeof(List<int>), true)]
    [InlineData(typeof(IDictionary<string, int>), true)]
    [InlineData(typeof(IReadOnlyList<int>), false)]
    [InlineData(typeof(Scuff.ValueList<int>), false)]
    [InlineData(typeof(string), false)]
    public void A_collection_that_can_be_changed_is_told_from_one_that_cannot(Type type, bool changeable)
        => Assert.Equal(changeable, CanBeChanged(type));

    [Fact]
    public void No_static_field_of_any_type_changes()
        => Repository.AssertNone("static fields that can change:", Repository.Scuff.GetTypes()
            .Where(t => !IsWrittenByTheCompiler(t))
            .SelectMany(t => t.GetFields(Own))
            .Where(f => f.IsStatic && !f.IsInitOnly && !f.IsLiteral && !f.IsDefined(typeof(CompilerGeneratedAttribute)))
            .Select(Named));

    private static bool CanBeChanged(Type type)
    {
        Type shape = type.IsGenericType ? type.GetGenericTypeDefinition() : type;
        return type.IsArray
            || shape == typeof(IList<>)
            || shape == typeof(ICollection<>)
            || shape == typeof(IDictionary<,>)
            || shape == typeof(ISet<>)
            || (typeof(IList).IsAssignableFrom(type) && !shape.Name.StartsWith("Immutable", StringComparison.Ordinal))
            || (typeof(IDictionary).IsAssignableFrom(type) && !shape.Name.StartsWith("Immutable", StringComparison.Ordinal))
            || shape == typeof(HashSet<>)
            || shape == typeof(Queue<>)
            || shape == typeof(Stack<>);
    }

    private static bool IsWrittenByTheCompiler(Type? type)
        => type is not null && (type.IsDefined(typeof(CompilerGeneratedAttribute)) || IsWrittenByTheCompiler(type.DeclaringType));

    private static string Named(MemberInfo member) => $"{member.DeclaringType}.{member.Name}";
}
