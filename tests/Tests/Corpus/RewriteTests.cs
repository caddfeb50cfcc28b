using Tests.House;

namespace Tests.Corpus;

/// <summary>
/// A line that is read right is typed otherwise in many ways (<see cref="Rewrites"/>) that mean the same, and must be read so again. Fails when fewer come
/// out right than did, or more wrong without a question.
/// </summary>
public sealed class RewriteTests(ITestOutputHelper output)
{
    // every so many lines of each folder: more would tell little more
    private const int Stride = 6;

    private static readonly Lazy<List<CorpusCase>> ReadRight = new(() =>
    [
        .. Directory.EnumerateDirectories(Path.Combine(Repository.Root, "tests", "Tests", "Corpus"))
            .Where(f => !Path.GetFileName(f).StartsWith("unseen", StringComparison.Ordinal) && Path.GetFileName(f) != "generated")
            .Order(StringComparer.Ordinal)
            .SelectMany(f => CorpusCase.Load(f).Where(c => c.Start is not ("sentences" or "phrased") && !c.Want.StartsWith('?'))
                .Where((_, i) => i % Stride == 0))
            .Where(c => c.Run().Outcome == CorpusCase.Outcome.Right),
    ]);

    /// <summary>The way, least share right in thousandths, most lines wrong without a question.</summary>
    public static TheoryData<string, int, int> Ways => [.. Reached.Select(r => (r.Way, r.LeastRight, r.MostWrong))];

    private static (string Way, int LeastRight, int MostWrong)[] Reached { get; } =
    [
        ("capitals", 998, 1),
        ("small letters", 997, 0),
        ("each word with a capital", 997, 1),
        ("right and left in full", 1000, 0),
        ("Rt and Lt", 989, 0),
        ("r. and l.", 980, 0),
        ("R and L", 983, 1),
        ("fwd", 1000, 0),
        ("forwards", 1000, 0),
        ("f'wd", 1000, 0),
        ("bk", 1000, 0),
        ("to the side", 1000, 0),
        ("out to the side", 990, 1),
        ("next to", 1000, 0),
        ("alongside", 1000, 0),
        ("besides", 1000, 0),
        ("tog", 1000, 0),
        ("across", 989, 0),
        ("in front of", 991, 0),
        ("replace", 1000, 0),
        ("recover weight onto", 1000, 0),
        ("return weight to", 1000, 0),
        ("tap", 991, 0),
        ("touch the toe", 1000, 0),
        ("¼", 1000, 0),
        ("quarter", 1000, 0),
        ("degrees", 1000, 0),
        ("a quarter turn", 1000, 0),
        ("without the word turn", 985, 0),
        ("with the word turn", 1000, 0),
        ("to the right", 1000, 0),
        ("clockwise", 1000, 0),
        ("semicolons", 996, 0),
        ("strokes", 1000, 0),
        ("dashes", 982, 2),
        ("plus signs", 957, 3),
        ("arrows", 995, 0),
        ("then", 994, 1),
        ("and", 993, 1),
        ("followed by", 988, 2),
        ("sentences", 975, 3),
        ("no blank after the comma", 1000, 0),
        ("full stop", 995, 0),
        ("exclamation", 993, 0),
        ("two blanks", 996, 0),
        ("blanks that do not break", 996, 0),
        ("a hyphen before", 994, 0),
        ("a dot before", 998, 0),
        ("1-2:", 996, 0),
        ("1-2.", 996, 0),
        ("(1-2)", 994, 0),
        ("[1-2]", 994, 0),
        ("Counts 1-2:", 991, 0),
        ("#1-2", 997, 0),
        ("1 - 2", 1000, 0),
        ("1 to 2", 998, 0),
        ("1 & 2", 1000, 0),
        ("1n2", 1000, 0),
        ("counts behind in brackets", 937, 0),
        ("then at the start", 993, 0),
        ("next at the start", 993, 0),
        ("smiling", 990, 0),
        ("small steps", 983, 0),
        ("knees soft", 989, 0),
        ("without the word step", 995, 0),
        ("step the", 1000, 0),
        ("R step", 987, 0),
        ("stepping", 976, 0),
        ("R rocks", 975, 0),
        ("pivot turn", 1000, 0),
        ("pause", 981, 0),
        ("R-L-R", 1000, 0),
        ("RLR", 1000, 0),
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
    public void Every_way_is_counted() => Assert.Equal(
        Rewrites.All.Keys.Order(StringComparer.Ordinal), Reached.Select(r => r.Way).Order(StringComparer.Ordinal));
}
