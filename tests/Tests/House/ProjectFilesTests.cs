using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Tests.House;

/// <summary>The files around the code: whole, and free of the machine they were written on.</summary>
public sealed partial class ProjectFilesTests
{
    private static readonly string[] NotText = [".png", ".jpg", ".ico", ".pdf", ".ttf", ".woff2", ".wav", ".mp3", ".ogg", ".flac", ".bin"];

    private static IEnumerable<string> Projects => Repository.Files.Where(f => f.EndsWith(".csproj", StringComparison.Ordinal));

    private static IEnumerable<(string Id, string Version)> Packages => XDocument.Parse(Repository.Read("Directory.Packages.props"))
        .Descendants()
        .Where(e => e.Name.LocalName is "PackageVersion" or "GlobalPackageReference")
        .Select(e => ((string)e.Attribute("Include")!, (string)e.Attribute("Version")!));

    [Fact]
    public void Every_project_is_in_the_solution()
        => Assert.Equal(
            Projects.Order(StringComparer.Ordinal),
            XDocument.Parse(Repository.Read("Scuff.slnx")).Descendants("Project").Select(p => (string)p.Attribute("Path")!).Order(StringComparer.Ordinal));

    [Fact]
    public void Every_project_has_its_lock_file()
        => Repository.AssertNone("projects without a lock file:", Projects
            .Where(p => !Repository.Files.Contains(p[..(p.LastIndexOf('/') + 1)] + "packages.lock.json")));

    [Fact]
    public void Versions_are_named_in_one_place()
        => Repository.AssertNone("package versions outside Directory.Packages.props:", Projects
            .Where(p => XDocument.Parse(Repository.Read(p)).Descendants("PackageReference").Any(r => r.Attribute("Version") is not null)));

    [Fact]
    public void Every_package_is_used_and_named_in_the_notices()
    {
        string notices = Repository.Read("docs/third-party.md");
        string[] used =
        [
            .. Projects.SelectMany(p => XDocument.Parse(Repository.Read(p)).Descendants("PackageReference")).Select(r => (string)r.Attribute("Include")!),
            .. XDocument.Parse(Repository.Read("Directory.Packages.props")).Descendants("GlobalPackageReference").Select(r => (string)r.Attribute("Include")!),
        ];

        Assert.NotEmpty(Packages);
        Repository.AssertNone("packages that no project uses:", Packages.Select(p => p.Id).Except(used));
        Repository.AssertNone("packages missing from docs/third-party.md:", Packages
            .Where(p => !notices.Contains($"| {p.Id} | {p.Version} |", StringComparison.Ordinal))
            .Select(p => $"{p.Id} {p.Version}"));
    }

    [Fact]
    public void No_project_file_says_where_to_download_from()
        => Repository.AssertNone("addresses in project files:", Repository.Files
            .Where(IsProjectFile)
            .Where(f => Funding().Replace(Repository.Read(f), "").Contains("://", StringComparison.Ordinal)));

    // where makers of a package ask for gifts, which npm writes into its lock file: nothing is fetched from there
    [GeneratedRegex("\"funding\": (\\{[^}]*\\}|\\[[^\\]]*\\]|\"[^\"]*\")")]
    private static partial Regex Funding();

    [Fact]
    public void No_file_knows_the_machine_it_was_written_on()
        => Repository.AssertNone("paths of one machine:", Repository.Files
            .Where(f => !NotText.Contains(Path.GetExtension(f)))
            .SelectMany(f => PathOfAMachine().Matches(Repository.Read(f)).Select(m => $"{f}: {m.Value}")));

    [Theory]
    [InlineData("work/main", true)]
    [InlineData("home/anna/dances", true)]
    [InlineData("tmp/x", true)]
    [InlineData("api/dances", false)]
    public void A_path_of_a_machine_is_told_from_other_paths(string path, bool ofAMachine)
    {
        Assert.Equal(ofAMachine, PathOfAMachine().IsMatch($"see /{path}."));
        Assert.DoesNotMatch(PathOfAMachine(), $"see docs/{path}.");
    }

    [Fact]
    public void Text_files_end_their_lines_with_a_line_feed_and_nothing_else()
        => Repository.AssertNone("files with carriage returns:", Repository.Files
            .Where(f => !NotText.Contains(Path.GetExtension(f)))
            .Where(f => Repository.Read(f).Contains('\r', StringComparison.Ordinal)));

    [Fact]
    public void Every_data_file_travels_inside_the_assembly()
        => Assert.Equal(
            Repository.Files.Where(f => f.StartsWith("data/steps/", StringComparison.Ordinal) || f.StartsWith("data/languages/", StringComparison.Ordinal)),
            Repository.Scuff.GetManifestResourceNames().Where(n => n.StartsWith("data/", StringComparison.Ordinal)).Order(StringComparer.Ordinal));

    private static bool IsProjectFile(string path)
        => Path.GetExtension(path) is ".csproj" or ".props" or ".targets" or ".slnx" or ".config"
            || path is "scuff" or "test" or ".ci/run"
            || Path.GetFileName(path) is "packages.lock.json" or "global.json" or ".npmrc" or "package.json" or "package-lock.json" or "dotnet-tools.json";

    // an absolute path into a home, temporary or working folder; the names are kept apart from their slash,
    // or this very line would be found
    [GeneratedRegex(@"(?<![\w.:/*-])(?:/(?:work|tmp|root|home|Users)/|[A-Z]:\\Users\\)\w+", RegexOptions.CultureInvariant)]
    private static partial Regex PathOfAMachine();
}
