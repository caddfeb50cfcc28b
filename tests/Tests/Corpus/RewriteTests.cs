using Tests.House;

namespace Tests.Corpus;

/// <summary>
/// A line that is read right is typed otherwise in a hundred ways that mean the same, and must be read so again. Fails when fewer come out right than did, or
/// more wrong without a question.
/// </summary>
public sealed class RewriteTests(ITestOutputHelper output)
{
    // every so many lines of the corpus: all of them take a minute
    private const int Stride = 6;

    private static readonly Lazy<List<CorpusCase>> ReadRight = new(() =>
    [
        .. Directory.EnumerateDirectories(Path.Combine(Repository.Root, "tests", "Tests", "Corpus"))
            .Where(f => !Path.GetFileName(f).StartsWith("unseen", StringComparison.Ordinal) && Path.GetFileName(f) != "generated")
            .Order(StringComparer.Ordinal).SelectMany(CorpusCase.Load)
            .Where(c => c.Start is not ("sentences" or "phrased") && !c.Want.StartsWith('?'))
            .Where((_, i) => i % Stride == 0).Where(c => c.Run().Outcome == CorpusCase.Outcome.Right),
    ]);

    /// <summary>The way, least share right in thousandths, most lines wrong without a question.</summary>
    public static TheoryData<string, int, int> Ways => [.. Reached.Select(r => (r.Way, r.LeastRight, r.MostWrong))];

    private static (string Way, int LeastRight, int MostWrong)[] Reached { get; } =
    [
    ];

    [Theory]
    [MemberData(nameof(Ways))]
    public void Typed_otherwise_it_is_read_as_before(string way, int leastRight, int mostWrong)
    {
        Func<string, string> rewrite = Rewrites.All[way];
        List<string> told = [];
        (int count, int right, int wrong) = (0, 0, 0);
        foreach (CorpusCase read in ReadRight.Value)
        {
            CorpusCase again = read with { Texts = [.. read.Texts.Select(rewrite)] };
            if (again.Texts.SequenceEqual(read.Texts))
            {
                continue;
            }

            count++;
            (CorpusCase.Outcome outcome, string got, string why) = again.Run();
            right += outcome == CorpusCase.Outcome.Right ? 1 : 0;
            wrong += outcome == CorpusCase.Outcome.Wrong ? 1 : 0;
            if (outcome != CorpusCase.Outcome.Right)
            {
                told.Add($"{outcome} {string.Join(" / ", again.Texts)}\n  want {again.Want}\n  got  {got}\n  {why}");
            }
        }

        string all = $"{way}: {right} of {count} right ({right * 1000 / Math.Max(1, count)} in 1000), {wrong} wrong";
        output.WriteLine(all + "\n" + string.Join('\n', told));
        Assert.True(count > 10, all);
        Assert.True(right * 1000 >= leastRight * count, all);
        Assert.True(wrong <= mostWrong, all);
    }

    [Fact]
    public void Every_way_is_counted() => Assert.Equal(Rewrites.All.Keys.Order(StringComparer.Ordinal), Reached.Select(r => r.Way).Order(StringComparer.Ordinal));
}
