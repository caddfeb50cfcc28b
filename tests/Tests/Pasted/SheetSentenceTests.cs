using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Tests.Corpus;
using Tests.House;

namespace Tests.Pasted;

/// <summary>
/// Single lines of sheets beside the steps, by hands that knew nothing of the reader: where the pattern breaks, what is mere talk, and what is said without
/// counts and matters. Every second line of each is only ever counted. Fails when fewer come out right than did, or more are wrong in silence.
/// </summary>
public sealed class SheetSentenceTests(ITestOutputHelper output)
{
    private const string Eights = "section 1\n1-4 vine R, touch L\n5-8 vine L, touch R\n\nsection 2\n1-4 vine R, touch L\n5-8 vine L, touch R\n\n"
        + "section 3\n1-4 vine R, touch L\n5-8 vine L, touch R\n\nsection 4\n1-4 vine R, touch L\n5-8 vine L, touch R\n";

    // The first word is what is wanted: "3/16 restart | Restart on wall 3 after 16 counts".
    [Theory]
    [InlineData("seen", 63, 1)]
    [InlineData("unseen", 52, 6)]
    public void A_break_of_the_pattern_is_understood(string file, int leastRight, int mostSilent)
    {
        List<string> notRight = [];
        int right = 0;
        int silent = 0;
        foreach (string[] line in Lines(file).Select(l => l.Split(" | ", 2)))
        {
            bool namesTag = line[1].Contains("tag", StringComparison.OrdinalIgnoreCase) && !line[1].Contains("sway", StringComparison.OrdinalIgnoreCase);
            DanceAnalysis read = Read($"Breaks\n{line[1]}\n\n{Eights}{(namesTag ? "\ntag\n1-4 sway R, L, R, L\n" : "")}");
            string got = PlanFrame.ByWall("plan " + Told(read.Dance))[5..];
            List<string> asked = [.. Asked(read).Where(c => c.Rule.Id.Split('/')[0] is "reading" or "interruption"
                && c.Rule.Id is not ("interruption/facing-differs" or "interruption/foot-not-free")).Select(c => c.Message)];
            bool isRight = line[0] == "?" ? asked.Count > 0 : asked.Count == 0 && got == PlanFrame.ByWall("plan " + line[0])[5..];
            right += isRight ? 1 : 0;
            silent += !isRight && asked.Count == 0 ? 1 : 0;
            if (!isRight)
            {
                notRight.Add($"{line[1]}\n  want {line[0]}, got {got} {string.Join(" / ", asked)}");
            }
        }

        Tell(file, right, silent, notRight);
        Assert.True(right >= leastRight && silent <= mostSilent, $"{right} right, {silent} wrong in silence");
    }

    [Theory]
    [InlineData("talk-seen", 76)]
    [InlineData("talk-unseen", 70)]
    public void Talk_changes_nothing_and_asks_nothing(string file, int leastRight)
    {
        List<string> notRight = [.. Lines(file).Where(l => Read($"Talk\n\n{Eights}\n{l}\n") is var read && (Effect(read.Dance) || Asked(read).Any()))];
        int right = Lines(file).Count() - notRight.Count;
        Tell(file, right, 0, notRight);
        Assert.True(right >= leastRight, $"{right} right");
    }

    [Theory]
    [InlineData("matters-seen", 45)]
    [InlineData("matters-unseen", 37)]
    public void What_matters_is_read_or_asked_about(string file, int leastRight)
    {
        List<string> notRight = [.. Lines(file).Where(l => Read($"Matters\n\n{Eights}\n{l}\n") is var read && !Effect(read.Dance) && !Asked(read).Any())];
        int right = Lines(file).Count() - notRight.Count;
        Tell(file, right, notRight.Count, notRight);
        Assert.True(right >= leastRight, $"{right} right");
    }

    private static DanceAnalysis Read(string text) => DanceAnalysis.Of(DanceReader.Read(text));

    private static IEnumerable<Diagnostic> Asked(DanceAnalysis read)
        => read.Report.Complaints.Where(c => c.Severity >= Severity.Warning && c.Rule.Id != "facing/walls-differ");

    private static bool Effect(Dance dance) => dance.Interruptions.Count > 0 || dance.Ending is not null || dance.Tags.Count > 0 || dance.Sections.Count() != 4
        || dance.Sections.Any(s => s.Lines.Any(l => l.Options.Count > 0));

    private static string Told(Dance dance) => string.Join("; ", dance.Interruptions.Select(i => $"{string.Join(',', i.Walls)}/{i.AfterCounts ?? dance.Length} "
        + string.Join(' ', i.Acts.Select(a => a switch
        {
            InterruptionAct.PlayTag { Times: 1 } => "tag",
            InterruptionAct.PlayTag tag => $"tag x{tag.Times}",
            InterruptionAct.Restart => "restart",
            _ => a.GetType().Name,
        }))));

    private static IEnumerable<string> Lines(string file)
        => File.ReadLines(Path.Combine(Repository.Root, "tests", "Tests", "Pasted", "sentences", file + ".txt")).Where(l => l.Length > 0);

    private void Tell(string file, int right, int silent, List<string> notRight)
    {
        output.WriteLine($"{file}: {right} right, {notRight.Count} not, {silent} of them in silence");
        if (!file.EndsWith("unseen", StringComparison.Ordinal))
        {
            // what the unseen are judged by is not shown to whoever makes the reader better
            output.WriteLine(string.Join('\n', notRight));
        }
    }
}
