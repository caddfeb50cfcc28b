using System.Text.RegularExpressions;
using Tests.App;

namespace Tests.House;

/// <summary>README and docs stay true: what they show is what the program says, and what they point at is there.</summary>
public sealed partial class WrittenHouseTests
{
    private const string Dance = "demo/dances/tin-lantern.dance";

    [Fact]
    public void The_readme_shows_what_the_program_says()
    {
        string dance = Repository.Read(Dance);
        string[][] shown = Excerpts(Repository.Read("README.md"));
        Assert.Equal(4, shown.Length);
        using ProgramRun run = new();

        run.Put(Dance, dance);
        run.Run("check", Dance);
        AssertSaid(shown[0], run.Out);
        run.Run("explain", Dance);
        AssertSaid(shown[2], run.Out);
        run.Run("sheet", Dance);
        AssertSaid(shown[3], run.Out);

        // the change that the page tells its reader to make: the first 9:00 is in section 2
        int at = dance.IndexOf("[9:00]", StringComparison.Ordinal);
        run.Put(Dance, string.Concat(dance.AsSpan(0, at), "[3:00]", dance.AsSpan(at + "[9:00]".Length)));
        run.Run("check", Dance);
        AssertSaid(shown[1], run.Out);
    }

    [Fact]
    public void What_the_pages_point_at_is_there()
    {
        string[] pages = [.. Repository.Files.Where(f => f.EndsWith(".md", StringComparison.Ordinal))];
        Assert.Contains("README.md", pages);
        Repository.AssertNone("dead ends:", pages.SelectMany(page => Link().Matches(Repository.Read(page))
            .Select(m => Path.GetFullPath(Path.Combine(Repository.Root, Path.GetDirectoryName(page)!, m.Groups[1].Value)))
            .Concat(Named().Matches(Repository.Read(page)).Select(m => Path.Combine(Repository.Root, m.Groups[1].Value)))
            .Where(path => !File.Exists(path) && !Directory.Exists(path))
            .Select(path => $"{page} -> {Path.GetRelativePath(Repository.Root, path)}")));
    }

    private static void AssertSaid(string[] lines, string output)
    {
        string[] said = [.. output.ReplaceLineEndings("\n").Split('\n').Select(l => l.Trim())];

        // "clean" may go on with the number of hints, which come and go with the rules of style
        Assert.All(lines, l => Assert.Contains(said, s => s.StartsWith(l, StringComparison.Ordinal)));
    }

    // Runs of indented lines; a blank line between two of them belongs to the run.
    private static string[][] Excerpts(string page)
    {
        List<List<string>> runs = [];
        bool open = false;
        foreach (string line in page.ReplaceLineEndings("\n").Split('\n'))
        {
            if (line.StartsWith("    ", StringComparison.Ordinal))
            {
                if (!open)
                {
                    runs.Add([]);
                }

                runs[^1].Add(line.Trim());
                open = true;
            }
            else
            {
                open &= line.Length == 0;
            }
        }

        return [.. runs.Select(r => r.ToArray())];
    }

    [GeneratedRegex(@"\]\((?!https?:)([^)#]+)\)")]
    private static partial Regex Link();

    // a path in code marks that has no pattern in it
    [GeneratedRegex(@"`((?:src|tests|data|docs|demo|bench|\.ci)/[^`*<>\s]+)`")]
    private static partial Regex Named();
}
