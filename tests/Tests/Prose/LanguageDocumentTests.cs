using Scuff.Analysis;
using Scuff.Diagnostics;
using Scuff.Prose;
using Tests.Corpus;
using Tests.House;

namespace Tests.Prose;

/// <summary>
/// docs/language.md is read by people and run by this test: a block marked <c>dance</c> is a whole dance and must be clean, a block
/// marked <c>line</c> is read as the <c>reads</c> block after it says. Words after <c>line</c> say where it starts (<c>line L free, 9:00</c>).
/// </summary>
public sealed class LanguageDocumentTests
{
    private const string Page = "docs/language.md";

    private static readonly IReadOnlyList<Block> Blocks = BlocksOf(Repository.Read(Page));

    /// <summary>The whole dances, by the line of the page they start on.</summary>
    public static TheoryData<int> Dances => [.. Blocks.Where(b => b.Kind == "dance").Select(b => b.Line)];

    /// <summary>The single lines, by the line of the page they start on.</summary>
    public static TheoryData<int> Lines => [.. Blocks.Where(b => b.Kind == "line").Select(b => b.Line)];

    [Theory]
    [MemberData(nameof(Dances))]
    public void A_dance_of_the_page_is_clean(int line)
    {
        Block block = Blocks.Single(b => b.Line == line);

        Report report = DanceAnalysis.Of(DanceReader.Read(block.Text)).Report;

        Assert.True(report.IsClean, $"{Page}:{line}\n{string.Join('\n', report.Complaints.Select(c => $"  {c.Severity} {c.Rule.Id}: {c.Message} [{block.Text.Substring(c.Span.Start, c.Span.Length)}]"))}");
    }

    [Theory]
    [MemberData(nameof(Lines))]
    public void A_line_of_the_page_reads_as_the_page_says(int line)
    {
        int index = Blocks.ToList().FindIndex(b => b.Line == line);
        Block block = Blocks[index];
        Assert.True(index + 1 < Blocks.Count && Blocks[index + 1].Kind == "reads", $"{Page}:{line} has no reads block after it");
        CorpusCase example = new(
            Page,
            "language",
            line,
            block.Start.Length > 0 ? block.Start : "R free, 12:00",
            block.Text.Split('\n', StringSplitOptions.RemoveEmptyEntries),
            Blocks[index + 1].Text.ReplaceLineEndings(" ").Trim());

        (CorpusCase.Outcome outcome, string got, string why) = example.Run();

        Assert.True(outcome == CorpusCase.Outcome.Right, $"{Page}:{line} {block.Text.Trim()}\n  {outcome}: {why}\n  read as {got}");
    }

    [Fact]
    public void The_page_has_examples_of_both_kinds_and_no_reading_without_its_line()
    {
        Assert.True(Blocks.Count(b => b.Kind == "dance") >= 5);
        Assert.True(Blocks.Count(b => b.Kind == "line") >= 20);
        Assert.All(Blocks.Index().Where(b => b.Item.Kind == "reads"), b => Assert.True(b.Index > 0 && Blocks[b.Index - 1].Kind == "line", $"{Page}:{b.Item.Line} stands alone"));
    }

    private static List<Block> BlocksOf(string page)
    {
        List<Block> blocks = [];
        List<string>? open = null;
        string head = "";
        int start = 0;
        int number = 0;
        foreach (string line in page.ReplaceLineEndings("\n").Split('\n'))
        {
            number++;
            if (!line.StartsWith("```", StringComparison.Ordinal))
            {
                open?.Add(line);
            }
            else if (open is null)
            {
                (open, head, start) = ([], line[3..].Trim(), number);
            }
            else
            {
                string kind = head.Split(' ')[0];
                if (kind is "dance" or "line" or "reads")
                {
                    blocks.Add(new Block(kind, head[kind.Length..].Trim(), string.Join('\n', open) + "\n", start));
                }

                open = null;
            }
        }

        Assert.True(open is null, $"{Page}:{start} is a block without an end");
        return blocks;
    }

    private sealed record Block(string Kind, string Start, string Text, int Line);
}
