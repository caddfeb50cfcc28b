using System.Globalization;
using Tests.House;

namespace Tests.Corpus;

/// <summary>
/// The wording corpus, folder by folder. The cases of <c>open</c> were there while the reader was made, those of the other folders
/// were written later, some of them are only ever counted, and those of <c>generated</c> were put together from many ways of naming a move. Fails when accuracy drops below what was reached.
/// </summary>
public sealed class WordingCorpusTests(ITestOutputHelper output)
{
    // Their lines are not shown: whoever makes the reader better must not see what it is judged by.
    private static readonly string[] Hidden =
    [
        "unseen", "unseen-b", "unseen-g", "unseen-k", "unseen-l", "unseen-m",
        "unseen-n", "unseen-o", "unseen-p", "unseen-q", "unseen-r",
        "unseen-s", "unseen-t", "unseen-u", "unseen-v", "unseen-w", "unseen-x", "unseen-y", "unseen-z",
        "unseen-aa", "unseen-ab", "unseen-ac", "unseen-ad", "unseen-ae",
    ];

    /// <summary>Folder, least share read right in thousandths, most cases read wrong without a question, most questions not asked.</summary>
    public static TheoryData<string, int, int, int> Folders => new()
    {
        { "open", 995, 0, 0 },
        { "second", 979, 0, 0 },
        { "third", 992, 0, 0 },
        { "fourth", 1000, 0, 0 },
        { "fifth", 1000, 0, 0 },
        { "sixth", 980, 0, 1 },
        { "seventh", 985, 0, 0 },
        { "eighth", 981, 0, 0 },
        { "ninth", 1000, 0, 0 },
        { "tenth", 988, 0, 0 },
        { "eleventh", 968, 0, 0 },
        { "twelfth", 980, 0, 0 },
        { "generated", 995, 0, 0 },
        { "unseen", 987, 0, 0 },
        { "unseen-b", 978, 0, 0 },
        { "ninth-b", 1000, 0, 0 },
        { "eleventh-b", 973, 0, 0 },
        { "thirteenth", 981, 0, 0 },
        { "thirteenth-b", 1000, 0, 0 },
        { "fourteenth", 981, 0, 0 },
        { "fourteenth-b", 1000, 0, 0 },
        { "fifteenth", 1000, 0, 0 },
        { "sixteenth", 987, 0, 0 },
        { "seventeenth", 975, 0, 0 },
        { "eighteenth", 1000, 0, 0 },
        { "nineteenth", 1000, 0, 0 },
        { "unseen-g", 975, 1, 0 },
        { "sixteenth-b", 1000, 0, 0 },
        { "seventeenth-b", 987, 0, 0 },
        { "eighteenth-b", 1000, 0, 0 },
        { "unseen-k", 928, 0, 0 },
        { "twentieth", 985, 0, 0 },
        { "unseen-l", 971, 0, 0 },
        { "twenty-first", 1000, 0, 0 },
        { "unseen-m", 900, 1, 0 },
        { "twenty-second", 964, 0, 0 },
        { "unseen-n", 870, 1, 0 },
        { "twenty-third", 1000, 0, 0 },
        { "unseen-o", 763, 0, 1 },
        { "twenty-fourth", 1000, 0, 0 },
        { "unseen-p", 654, 1, 0 },
        { "twenty-fifth", 1000, 0, 0 },
        { "unseen-q", 781, 2, 0 },
        { "twenty-sixth", 925, 0, 0 },
        { "unseen-r", 821, 2, 0 },
        { "twenty-seventh", 981, 0, 0 },
        { "unseen-s", 963, 1, 0 },
        { "twenty-eighth", 1000, 0, 0 },
        { "unseen-t", 963, 0, 0 },
        { "twenty-ninth", 1000, 0, 0 },
        { "unseen-u", 836, 2, 0 },
        { "thirtieth", 981, 0, 0 },
        { "unseen-v", 781, 0, 0 },
        { "thirty-first", 1000, 0, 0 },
        { "unseen-w", 1000, 0, 0 },
        { "thirty-second", 1000, 0, 0 },
        { "unseen-x", 945, 0, 0 },
        { "thirty-third", 1000, 0, 0 },
        { "unseen-y", 833, 0, 0 },
        { "thirty-fourth", 981, 0, 0 },
        { "unseen-z", 833, 0, 1 },
        { "thirty-fifth", 851, 0, 0 },
        { "unseen-aa", 722, 3, 0 },
        { "thirty-sixth", 961, 6, 0 },
        { "unseen-ab", 856, 7, 1 },
        { "unseen-ac", 921, 3, 1 },
        { "thirty-seventh", 963, 2, 0 },
        { "thirty-eighth", 976, 0, 0 },
        { "unseen-ad", 950, 0, 1 },
        { "thirty-ninth", 950, 0, 0 },
        { "unseen-ae", 980, 0, 0 },
    };

    [Theory]
    [MemberData(nameof(Folders))]
    public void A_folder_is_read_as_well_as_it_was(string folder, int leastRight, int mostWrong, int mostNotAsked)
    {
        List<Read> all = [.. Load(folder).Select(c => new Read(c, c.Run()))];
        List<IGrouping<string, Read>> manners = [.. all.GroupBy(r => r.Case.Manner)];
        List<string> table = [$"{folder,-22} cases right asked wrong"];
        table.AddRange(manners.Select(m => Row(m.Key, m)));
        table.Add(Row("all", all));
        foreach (string row in table)
        {
            output.WriteLine(row);
        }

        // seen with -showLiveOutput, so that a round of mending needs no threshold raised
        output.WriteLine(Told(folder, all));
        string told = string.Join('\n', table);
        int right = all.Count(r => r.Outcome == CorpusCase.Outcome.Right);
        int wrong = all.Count(r => r.Outcome == CorpusCase.Outcome.Wrong && !WantsQuestion(r));
        int notAsked = all.Count(r => r.Outcome == CorpusCase.Outcome.Wrong && WantsQuestion(r));
        Assert.True(manners.Count >= (folder is "eighth" or "unseen-b" ? 8 : 10), $"{manners.Count} manners of writing in {folder}");
        Assert.True(right * 1000 >= leastRight * all.Count, $"{right} of {all.Count} right, at least {leastRight} in 1000 were\n{told}{Told(folder, all)}");
        Assert.True(wrong <= mostWrong, $"{wrong} read wrong without a question, at most {mostWrong} were\n{told}{Told(folder, all)}");
        Assert.True(notAsked <= mostNotAsked, $"{notAsked} silently taken where a question is wanted, at most {mostNotAsked} were\n{told}{Told(folder, all)}");
    }

    [Fact]
    public void Every_folder_is_counted_and_there_are_enough_cases()
    {
        string[] told = [.. Folders.Select(f => f.Data.Item1).Order(StringComparer.Ordinal)];
        string[] folders = [.. Directory.EnumerateDirectories(Path.Combine(Repository.Root, "tests", "Tests", "Corpus")).Select(d => Path.GetFileName(d)).Order(StringComparer.Ordinal)];

        Assert.Equal(folders, told);
        Assert.True(folders.Sum(f => Load(f).Count) >= 500);
    }

    private static bool WantsQuestion(Read read) => read.Case.Want.StartsWith('?');

    private static List<CorpusCase> Load(string folder) => CorpusCase.Load(Path.Combine(Repository.Root, "tests", "Tests", "Corpus", folder));

    private static string Row(string manner, IEnumerable<Read> read)
    {
        List<Read> cases = [.. read];
        int Of(CorpusCase.Outcome outcome) => cases.Count(r => r.Outcome == outcome);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{manner,-22} {cases.Count,5} {Of(CorpusCase.Outcome.Right),5} {Of(CorpusCase.Outcome.Asked),5} {Of(CorpusCase.Outcome.Wrong),5}");
    }

    private static string Told(string folder, List<Read> all) => Hidden.Contains(folder) ? "" : string.Concat(all
        .Where(r => r.Outcome != CorpusCase.Outcome.Right)
        .OrderByDescending(r => r.Outcome)
        .Select(r => $"\n{r.Outcome} {r.Case.File}:{r.Case.Line} {string.Join(" / ", r.Case.Texts)}\n  want {r.Case.Want}\n  got  {r.Got}\n  {r.Why}"));

    private sealed record Read(CorpusCase Case, (CorpusCase.Outcome Outcome, string Got, string Why) Run)
    {
        public CorpusCase.Outcome Outcome => Run.Outcome;

        public string Got => Run.Got;

        public string Why => Run.Why;
    }
}
