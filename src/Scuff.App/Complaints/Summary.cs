using System.Globalization;
using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Diagnostics;

namespace Scuff.App.Complaints;

/// <summary>One line that says what a dance is and how it stands.</summary>
internal static class Summary
{
    /// <summary>For example <c>Tin Lantern: 32 counts, 4 walls, clean</c>.</summary>
    /// <param name="name">The file, used when the dance has no title.</param>
    /// <param name="analysis">The dance.</param>
    public static string Of(string name, DanceAnalysis analysis)
    {
        Dance dance = analysis.Dance;
        List<string> facts = [Number(dance.Length.Value.Floor, "count")];
        if (dance.IsPhrased)
        {
            facts.Add(Number(dance.Parts.Count, "part"));
        }
        else
        {
            facts.Add(analysis.Walls is { } walls ? Number(walls, "wall") : "walls unknown");
        }

        facts.Add(Standing(analysis.Report));
        return $"{(dance.Title.Length > 0 ? dance.Title : name)}: {string.Join(", ", facts)}";
    }

    /// <summary>For example <c>clean</c>, <c>clean with 1 hint</c> or <c>2 errors and 1 question</c>.</summary>
    public static string Standing(Report report)
    {
        List<string> found = [];
        foreach (Severity severity in SeverityWords.WorstFirst)
        {
            int count = report.Complaints.Count(d => d.Severity == severity);
            if (count > 0)
            {
                found.Add(Number(count, SeverityWords.Of(severity)));
            }
        }

        string words = found.Count < 2
            ? string.Concat(found)
            : string.Join(", ", found.Take(found.Count - 1)) + " and " + found[^1];
        return !report.IsClean ? words : found.Count == 0 ? "clean" : "clean with " + words;
    }

    /// <summary>A number and its noun: <c>1 wall</c>, <c>4 walls</c>.</summary>
    public static string Number(int number, string noun)
        => number.ToString(CultureInfo.InvariantCulture) + " " + noun + (number == 1 ? "" : "s");
}
