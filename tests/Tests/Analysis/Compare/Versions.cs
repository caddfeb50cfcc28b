using Scuff.Analysis;
using Scuff.Analysis.Compare;
using Scuff.Prose;
using Scuff.Sheets;
using Scuff.Sheets.Languages;

namespace Tests.Analysis.Compare;

/// <summary>Two versions of a dance, compared.</summary>
internal static class Versions
{
    /// <summary>The changes from one text to another.</summary>
    public static DanceChange[] Changes(string before, string after) => [.. Compare(before, after).Changes];

    /// <summary>The sentences from one text to another.</summary>
    public static string[] Sentences(string before, string after) => [.. ChangeWords.Of(Compare(before, after), SheetLanguage.English)];

    /// <summary>Compares two texts.</summary>
    public static DanceComparison Compare(string before, string after) => DanceComparison.Of(Read(before), Read(after));

    /// <summary>Reads a text.</summary>
    public static DanceAnalysis Read(string text) => DanceAnalysis.Of(DanceReader.Read(text));
}
