using System.Globalization;
using Scuff.Prose.Words;
using Tests.Corpus;

namespace Bench;

/// <summary>The wording corpus (tests/Tests/Corpus) while the reader is worked on: counts a folder, shows what was not read right, reads a line by itself.</summary>
internal static class Wordings
{
    /// <summary>Counts each folder; what was not read right is shown but for folders named <c>unseen…</c>, which nobody may look at.</summary>
    public static void Count(TextWriter output, IReadOnlyList<string> folders)
    {
        int[] sum = new int[5];
        foreach (string folder in folders)
        {
            List<(CorpusCase Case, CorpusCase.Outcome Outcome, string Got, string Why)> all = [];
            foreach (CorpusCase read in CorpusCase.Load(folder))
            {
                (CorpusCase.Outcome outcome, string got, string why) = read.Run();
                all.Add((read, outcome, got, why));
            }

            int[] row =
            [
                all.Count, all.Count(c => c.Outcome == CorpusCase.Outcome.Right), all.Count(c => c.Outcome == CorpusCase.Outcome.Asked),
                all.Count(c => c.Outcome == CorpusCase.Outcome.Wrong && !c.Case.Want.StartsWith('?')),
                all.Count(c => c.Outcome == CorpusCase.Outcome.Wrong && c.Case.Want.StartsWith('?')),
            ];
            sum = [.. sum.Zip(row, (a, b) => a + b)];
            output.WriteLine(Row(Path.GetFileName(folder.TrimEnd('/')), row));
            if (!Path.GetFileName(folder.TrimEnd('/')).StartsWith("unseen", StringComparison.Ordinal))
            {
                foreach ((CorpusCase read, CorpusCase.Outcome outcome, string got, string why) in all.Where(c => c.Outcome != CorpusCase.Outcome.Right).OrderByDescending(c
                    => c.Outcome))
                {
                    output.WriteLine($"{outcome} {read.File}:{read.Line} [{read.Start}] {string.Join(" / ", read.Texts)}\n  want {read.Want}\n  got  {got}\n  {why}");
                }
            }
        }

        output.WriteLine(Row("all", sum));
    }

    /// <summary>Every so many lines that are read right, typed otherwise in each of the ways of the tests: what is no longer read right is shown.</summary>
    public static void Rewritten(TextWriter output, int every, IReadOnlyList<string> folders)
    {
        List<CorpusCase> right =
        [
            .. folders.SelectMany(f => CorpusCase.Load(f).Where(c => c.Start is not ("sentences" or "phrased") && !c.Want.StartsWith('?')).Where((_, i) => i % every == 0))
                .Where(c => c.Run().Outcome == CorpusCase.Outcome.Right),
        ];
        (int lines, int same, int silent) = (0, 0, 0);
        foreach ((string way, Func<string, string> rewrite) in Rewrites.All)
        {
            (int count, int good, int wrong) = (0, 0, 0);
            List<string> told = [];
            foreach (CorpusCase read in right)
            {
                CorpusCase again = read with { Texts = [.. read.Texts.Select(rewrite)] };
                if (again.Texts.SequenceEqual(read.Texts))
                {
                    continue;
                }

                count++;
                (CorpusCase.Outcome outcome, string got, string why) = again.Run();
                good += outcome == CorpusCase.Outcome.Right ? 1 : 0;
                wrong += outcome == CorpusCase.Outcome.Wrong ? 1 : 0;
                if (outcome != CorpusCase.Outcome.Right)
                {
                    told.Add($"  {outcome} {string.Join(" / ", again.Texts)}\n    want {again.Want}\n    got  {got}\n    {why}");
                }
            }

            lines += count;
            same += good;
            silent += wrong;
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{way,-28} {good * 1000 / Math.Max(1, count),5} {wrong,3} of {count}"));
            told.ForEach(output.WriteLine);
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"all {same} of {lines} right, {silent} wrong"));
    }

    /// <summary>What is read from lines: each for itself, its steps or the question; or all as one block after <c>-</c>.</summary>
    public static void Show(TextWriter output, string start, IReadOnlyList<string> lines)
    {
        IEnumerable<string[]> blocks = lines is ["-", ..] ? [[.. lines.Skip(1)]] : lines.Select(l => new[] { l });
        foreach (string[] block in blocks)
        {
            CorpusCase read = new("", "", 1, start, block, "?");
            (CorpusCase.Outcome outcome, string got, string why) = (read with { Want = "0 ->L nothing" }).Run();
            output.WriteLine($"{string.Join(" / ", block)}\n   {(outcome == CorpusCase.Outcome.Asked ? "ASKED " + why : "silent")}\n   {got}");
        }
    }

    /// <summary>What each word of a line is taken for, before anything is made of it.</summary>
    public static void Terms(TextWriter output, IReadOnlyList<string> lines)
    {
        foreach (string line in lines)
        {
            output.WriteLine(line + "\n   " + string.Join(" ", TermReader.Read(line, 0, line.Length, Lexicon.Default).Select(t
                => $"{t.Kind}'{t.Text}'{(t.Meaning.Side is { } side ? ":" + side : "")}{(t.Meaning.Verb is { } verb ? ":" + verb : "")}")));
        }
    }

    private static string Row(string name, int[] row)
        => string.Create(CultureInfo.InvariantCulture, $"{name,-16} {row[0],5} cases {row[1],5} right {row[2],4} asked {row[3],4} wrong {row[4],3} not asked");
}
