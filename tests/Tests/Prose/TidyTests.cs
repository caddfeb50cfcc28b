using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Tests.Corpus;

namespace Tests.Prose;

/// <summary>Tidying: twice is once, the dance stays the same, and no word that was not understood is lost.</summary>
public sealed class TidyTests
{
    public static TheoryData<string> Dances => [.. SeedTexts.Demo.Concat(SeedTexts.Faulty).Select(d => d.Name)];

    [Theory]
    [MemberData(nameof(Dances))]
    public void A_demo_dance_keeps_its_meaning(string name)
    {
        string text = SeedTexts.Demo.Concat(SeedTexts.Faulty).First(d => d.Name == name).Text;

        Assert.Null(Fault(text));
    }

    [Theory]
    [InlineData("open")]
    [InlineData("second")]
    public void A_line_of_the_corpus_keeps_its_meaning(string folder)
    {
        List<CorpusCase> cases = SeedTexts.Corpus(folder);
        List<string> faults = [];
        foreach (CorpusCase one in cases)
        {
            if (Fault(SeedTexts.TextOf(one)) is string fault)
            {
                faults.Add($"{folder}/{one.File}:{one.Line} {fault}");
            }
        }

        Assert.NotEmpty(cases);
        Assert.True(faults.Count == 0, $"{faults.Count} of {cases.Count}\n{string.Join('\n', faults)}");
    }

    [Fact]
    public void Words_that_nobody_understands_stay_through_any_damage()
    {
        List<string> faults = [];
        for (int number = 0; number < 1_500; number++)
        {
            string text = FuzzTexts.Make(number);
            Draft draft = DanceReader.Read(text);
            string tidy = DanceWriter.Tidy(draft);
            if (Lost(draft, tidy) is string lost)
            {
                faults.Add($"text {number} loses '{lost}'\n---\n{text}\n--- became\n{tidy}\n---");
            }
        }

        Assert.True(faults.Count == 0, $"{faults.Count} faults\n{string.Join('\n', faults.OrderBy(f => f.Length).Take(5))}");
    }

    [Theory]
    [InlineData("S1: 1-4 vine right, touch L\n5-8 vine left, touch R\n")]
    [InlineData("S1: 1-4 vine right, touch L, 5-8 vine left, touch R\nS2: 1-4 vine right, touch L, 5-8 vine left, touch R\n")]
    [InlineData("section 1: 1-4 vine right, flummox the wotsit\n5-8 vine left, touch R\n")]
    [InlineData("section 1 (8 counts)\n1-4 vine right, touch L\n5-8 vine left, touch R\n")]
    [InlineData("[1-8] vines\n1-4 vine right, touch L\n5-8 vine left, touch R\n")]
    [InlineData("section 1: vines (8 counts)\n1-4 vine right, touch L\n5-8 vine left, touch R\n")]
    public void A_heading_in_any_form_keeps_its_meaning(string section) => Assert.Null(Fault("Heading\n\nstart: weight on L\n\n" + section));

    [Fact]
    public void What_arms_and_head_do_stays_in_her_words()
    {
        const string line = "1     step R forward and raise arms\n2     look left\n3-4   pose\n";

        Assert.Contains(line, DanceWriter.Tidy(DanceReader.Read("Arms\n\nsection 1\n" + line + "5-8   hold\n")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("step R fwd on ball of foot", "step R forward on the ball")]
    [InlineData("step R heel forward", "step R forward on the heel")]
    [InlineData("stepping forward on right", "step R forward")]
    public void The_part_of_the_foot_that_she_names_stays(string words, string tidy)
    {
        string text = DanceWriter.Tidy(DanceReader.Read($"Parts\n\nsection 1\n1     {words}\n2-8   hold\n"));

        Assert.Contains($"1     {tidy}\n", text, StringComparison.Ordinal);
        Assert.Equal(text, DanceWriter.Tidy(DanceReader.Read(text)));
    }

    /// <summary>What tidying did wrong to a text; null for nothing.</summary>
    internal static string? Fault(string text)
    {
        Draft draft = DanceReader.Read(text);
        string once = DanceWriter.Tidy(draft);
        Draft again = DanceReader.Read(once);
        string twice = DanceWriter.Tidy(again);
        if (once != twice)
        {
            return $"is not tidied once for all\n--- once\n{once}\n--- twice\n{twice}";
        }

        List<string> before = Danced.Of(draft.Dance);
        List<string> after = Danced.Of(again.Dance);
        if (!before.SequenceEqual(after))
        {
            (string? a, string? b) = before.Cast<string?>().Append(null).Zip(after.Cast<string?>().Append(null)).First(p => p.First != p.Second);
            return $"means something else\n  before {a}\n  after  {b}\n---\n{text}\n--- became\n{once}";
        }

        return Lost(draft, once) is string lost ? $"loses '{lost}'\n---\n{text}\n--- became\n{once}" : null;
    }

    /// <summary>A word that was not understood and is not in the tidied text as often; null when all are.</summary>
    private static string? Lost(Draft draft, string tidy)
    {
        List<TextSpan> unknown = NotUnderstood(draft);
        Dictionary<string, int> there = Words(tidy).GroupBy(w => w.Word).ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
        return Words(draft.Text)
            .Where(w => unknown.Exists(u => u.Start < w.Start + w.Word.Length && w.Start < u.End))
            .GroupBy(w => w.Word, StringComparer.Ordinal)
            .FirstOrDefault(g => there.GetValueOrDefault(g.Key) < g.Count())?.Key;
    }

    private static List<TextSpan> NotUnderstood(Draft draft) =>
    [
        .. draft.Report.Complaints
            .Where(c => c.Rule.Id is "reading/unknown-words" or "reading/unknown-line" or "reading/unknown-sentence" or "reading/unknown-heading")
            .Select(c => c.Span),
        .. draft.Dance.Sections.Concat(draft.Dance.Tags.Select(t => t.Body))
            .SelectMany(s => s.Lines).SelectMany(l => l.Moves).Where(m => m.IsUnknown).Select(m => m.Span),
    ];

    // whole runs of letters and digits, as one would look for them
    private static IEnumerable<(string Word, int Start)> Words(string text)
    {
        int start = 0;
        for (int i = 0; i <= text.Length; i++)
        {
            if (i < text.Length && char.IsLetterOrDigit(text[i]))
            {
                continue;
            }

            if (i > start)
            {
                yield return (text[start..i], start);
            }

            start = i + 1;
        }
    }
}
