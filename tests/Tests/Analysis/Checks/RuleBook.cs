using System.Reflection;
using Scuff.Analysis;
using Scuff.Analysis.Checks;
using Scuff.Diagnostics;
using Scuff.Music.Labels;
using Scuff.Prose;

namespace Tests.Analysis.Checks;

/// <summary>Every rule of every room, gathered by reflection, and what is said about a text.</summary>
internal static class RuleBook
{
    /// <summary>All rules, ordered by id.</summary>
    public static IReadOnlyList<Rule> All { get; } =
    [
        .. new[] { typeof(ICheck).Assembly, typeof(DanceReader).Assembly }
            .SelectMany(assembly => assembly.GetTypes())
            .SelectMany(RulesOf)
            .DistinctBy(rule => rule.Id)
            .OrderBy(rule => rule.Id, StringComparer.Ordinal),
    ];

    /// <summary>The rule of an id.</summary>
    public static Rule Of(string id) => All.Single(rule => rule.Id == id);

    /// <summary>What reader and checks say about a text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="music">A track written by hand that it is danced to, or nothing.</param>
    public static IReadOnlyList<Diagnostic> Complaints(string text, string music = "")
        => DanceAnalysis.Of(DanceReader.Read(text), [], music.Length == 0 ? [] : [TrackMapText.Read(music).Map!]).Report.Complaints;

    private static IEnumerable<Rule> RulesOf(Type type)
    {
        const BindingFlags Static = BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly;
        if (type.ContainsGenericParameters)
        {
            yield break;
        }

        foreach (PropertyInfo property in type.GetProperties(Static).Where(p => p.PropertyType == typeof(Rule) && p.GetIndexParameters().Length == 0))
        {
            yield return (Rule)property.GetValue(null)!;
        }

        foreach (FieldInfo field in type.GetFields(Static).Where(f => f.FieldType == typeof(Rule)))
        {
            yield return (Rule)field.GetValue(null)!;
        }
    }
}
