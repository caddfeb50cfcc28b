using System.Reflection;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using Scuff.App.Web;
using Tests.House;

namespace Tests.Web;

/// <summary>What the page believes of the answers is written from the records that make them, so that the two cannot drift apart.</summary>
public sealed class ContractTests
{
    private const string PageFile = "web/src/lib/contract.ts";

    private static readonly Type[] Roots =
    [
        .. typeof(StudioJson).GetCustomAttributesData()
            .Where(a => a.AttributeType == typeof(JsonSerializableAttribute))
            .Select(a => (Type)a.ConstructorArguments[0].Value!),
    ];

    [Fact]
    public void The_page_knows_every_question_and_answer_as_it_is()
    {
        string expected = Written();
        string path = Path.Combine(Repository.Root, PageFile);
        if (Environment.GetEnvironmentVariable("SCUFF_UPDATE") == "1")
        {
            File.WriteAllText(path, expected);
        }

        Assert.Equal(expected, File.ReadAllText(path));
    }

    private static string Written()
    {
        StringBuilder file = new("// Written by tests/Tests/Web/ContractTests.cs from the records in src/Scuff.App/Web/Contract (SCUFF_UPDATE=1); not by hand.\n");
        foreach (Type type in Gathered().OrderBy(t => t.Name, StringComparer.Ordinal))
        {
            file.Append("\nexport interface ").Append(type.Name).Append(" {\n");
            foreach (PropertyInfo property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(IsWritten))
            {
                file.Append("  ").Append(JsonNamingPolicy.CamelCase.ConvertName(property.Name)).Append(": ").Append(NameOf(property)).Append(";\n");
            }

            file.Append("}\n");
        }

        return file.ToString();
    }

    private static bool IsWritten(PropertyInfo property) => property.Name != "EqualityContract" && property.GetCustomAttribute<JsonIgnoreAttribute>() is null;

    private static HashSet<Type> Gathered()
    {
        HashSet<Type> found = [];
        Queue<Type> rest = new(Roots);
        while (rest.TryDequeue(out Type? type))
        {
            type = ElementOf(type) ?? Nullable.GetUnderlyingType(type) ?? type;
            if (type.Namespace?.StartsWith("Scuff", StringComparison.Ordinal) == true && !type.IsEnum && found.Add(type))
            {
                foreach (PropertyInfo property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(IsWritten))
                {
                    rest.Enqueue(property.PropertyType);
                }
            }
        }

        return found;
    }

    private static Type? ElementOf(Type type) => type.IsArray ? type.GetElementType()
        : type.IsGenericType && type.GetGenericTypeDefinition() is { } open && (open == typeof(IReadOnlyList<>) || open == typeof(List<>)) ? type.GetGenericArguments()[0]
        : null;

    private static string NameOf(PropertyInfo property)
    {
        bool mayBeNull = Nullable.GetUnderlyingType(property.PropertyType) is not null
            || new NullabilityInfoContext().Create(property).ReadState == NullabilityState.Nullable;
        return NameOf(property.PropertyType) + (mayBeNull ? " | null" : "");
    }

    private static string NameOf(Type type)
    {
        type = Nullable.GetUnderlyingType(type) ?? type;
        return ElementOf(type) is { } element ? NameOf(element) + "[]"
            : type == typeof(string) || type == typeof(DateTimeOffset) ? "string"
            : type == typeof(bool) ? "boolean"
            : type == typeof(int) || type == typeof(long) || type == typeof(double) || type == typeof(float) ? "number"
            : type.Namespace?.StartsWith("Scuff", StringComparison.Ordinal) == true ? type.Name
            : throw new NotSupportedException($"The page has no name for {type}.");
    }
}
