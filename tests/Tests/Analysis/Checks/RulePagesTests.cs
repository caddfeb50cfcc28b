using System.Runtime.CompilerServices;
using System.Text;
using Scuff.Diagnostics;

namespace Tests.Analysis.Checks;

/// <summary>
/// The pages in docs/rules are made from the rules. With the environment variable <c>SCUFF_UPDATE=1</c> they are written anew;
/// without it they are compared.
/// </summary>
public sealed class RulePagesTests
{
    [Fact]
    public void Every_rule_has_its_page_and_every_page_its_rule()
    {
        Dictionary<string, string> pages = RuleBook.All.ToDictionary(FileOf, PageOf, StringComparer.Ordinal);
        pages["README.md"] = Index();
        string folder = Folder();
        if (Environment.GetEnvironmentVariable("SCUFF_UPDATE") == "1")
        {
            Directory.CreateDirectory(folder);
            foreach (string old in Directory.EnumerateFiles(folder, "*.md").Where(file => !pages.ContainsKey(Path.GetFileName(file))))
            {
                File.Delete(old);
            }

            foreach ((string name, string page) in pages)
            {
                File.WriteAllText(Path.Combine(folder, name), page);
            }
        }

        Assert.Equal(
            pages.Keys.Order(StringComparer.Ordinal),
            Directory.EnumerateFiles(folder, "*.md").Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal));
        foreach ((string name, string page) in pages)
        {
            Assert.Equal(page, File.ReadAllText(Path.Combine(folder, name)));
        }
    }

    private static string FileOf(Rule rule) => rule.Id.Replace('/', '-') + ".md";

    private static string PageOf(Rule rule) => $"""
        # {rule.Id}

        {Kind(rule.Severity)}. Source: {rule.Source}.

        > {rule.Message}

        {rule.Reason}
        {MusicOf(rule)}
        ## Breaks it

        ```dance
        {Trimmed(rule.Breaks)}
        ```

        ## Keeps it

        ```dance
        {Trimmed(rule.Keeps)}
        ```

        """;

    private static string MusicOf(Rule rule) => rule.Music.Length == 0
        ? ""
        : $"""

            The examples are danced to this track, written by hand:

            ```
            {Trimmed(rule.Music).ReplaceLineEndings("\n")}
            ```

            """;

    private static string Index()
    {
        StringBuilder page = new();
        page.Append("# Rules\n\nEverything Scuff complains about, one page each, made from the rules themselves ");
        page.Append("(run the tests with `SCUFF_UPDATE=1` to write them anew).\n\n");
        page.Append("- **error**: it cannot be danced as written\n- **question**: the words could not be read, or have two readings\n");
        page.Append("- **warning**: it probably is not what was meant\n- **hint**: house style, or kindness to learners\n");
        foreach (IGrouping<string, Rule> group in RuleBook.All.GroupBy(rule => rule.Id.Split('/')[0]))
        {
            page.Append("\n## ").Append(group.Key).Append("\n\n| rule | kind | what it says |\n| --- | --- | --- |\n");
            foreach (Rule rule in group)
            {
                page.Append("| [").Append(rule.Id).Append("](").Append(FileOf(rule)).Append(") | ")
                    .Append(Kind(rule.Severity).ToLowerInvariant()).Append(" | ").Append(rule.Message.Replace("|", "\\|", StringComparison.Ordinal)).Append(" |\n");
            }
        }

        return page.ToString();
    }

    private static string Kind(Severity severity) => severity.ToString();

    private static string Trimmed(string text) => text.TrimEnd();

    private static string Folder([CallerFilePath] string here = "")
        => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "..", "docs", "rules"));
}
