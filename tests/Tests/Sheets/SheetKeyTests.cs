using System.Text.RegularExpressions;
using Scuff.Analysis;
using Scuff.Prose;
using Scuff.Sheets;
using Scuff.Steps;
using Tests.House;

namespace Tests.Sheets;

/// <summary>Every abbreviation that Scuff prints is in the key of the same sheet (trade rule R36).</summary>
public sealed partial class SheetKeyTests
{
    public static TheoryData<string> Dances { get; } =
        [.. Directory.GetFiles(Path.Combine(Repository.Root, "demo", "dances"), "*.dance").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Dances))]
    public void The_printed_key_is_complete(string file)
    {
        SheetModel sheet = SheetBuilder.Build(DanceAnalysis.Of(DanceReader.Read(File.ReadAllText(Path.Combine(Repository.Root, "demo", "dances", file)))));
        SheetLine[] lines = [.. sheet.Parts.SelectMany(part => part.Sections).Concat(sheet.Tags).SelectMany(section => section.Lines)];
        string[] words = [.. lines.SelectMany(line => line.Options.Select(option => option.Words).Append(line.Words))];

        // capitals by themselves, and words that have no vowel, are abbreviations; but not the shape in a name (V step, suzy Q)
        string[] short_ = [.. words.SelectMany(line => Word().Matches(line)).Select(match => match.Value).Where(IsShort).Except(Shapes).Distinct()];
        Assert.All(short_, word => Assert.Contains(word, Word().Matches(sheet.Key).Select(match => match.Value)));
        foreach (char letter in "&ea")
        {
            bool isUsed = lines.Any(line => line.Counts.Contains(letter, StringComparison.Ordinal) || line.Options.Any(option => option.Counts.Contains(letter, StringComparison.Ordinal)));
            Assert.True(!isUsed || Regex.IsMatch(sheet.Key, $"(^|[; ]){letter} (is|comes) ", RegexOptions.IgnoreCase), $"The key does not explain {letter}: {sheet.Key}");
        }
    }

    private static IEnumerable<string> Shapes
        => StepCatalogue.Default.Definitions.SelectMany(step => Word().Matches(step.Name)).Select(match => match.Value).Where(word => word.Length == 1);

    private static bool IsShort(string word) => (word.Length <= 4 && word.All(char.IsUpper)) || (word.Length > 1 && !word.Any(letter => "aeiouyAEIOUY".Contains(letter, StringComparison.Ordinal)));

    [GeneratedRegex(@"\p{L}+")]
    private static partial Regex Word();
}
