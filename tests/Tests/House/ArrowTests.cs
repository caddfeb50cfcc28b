using System.Xml.Linq;
using ArchUnitNET.Domain;
using ArchUnitNET.Domain.Dependencies;
using ArchUnitNET.Loader;

namespace Tests.House;

/// <summary>Who may use whom. A new room gets its line here before its first type.</summary>
public sealed class ArrowTests
{
    private const string Core = "Scuff";

    private static readonly Dictionary<string, string[]> ProjectsMayUse = new()
    {
        ["Scuff"] = [],
        ["Scuff.Prose"] = ["Scuff"],
        ["Scuff.Analysis"] = ["Scuff"],
        ["Scuff.Audio"] = ["Scuff"],
        ["Scuff.Sheets"] = ["Scuff", "Scuff.Prose", "Scuff.Analysis"],
        ["Scuff.Repertoire"] = ["Scuff"],
        ["Scuff.Solving"] = ["Scuff", "Scuff.Analysis"],
        ["Scuff.App"] = ["Scuff", "Scuff.Prose", "Scuff.Analysis", "Scuff.Audio", "Scuff.Sheets", "Scuff.Repertoire", "Scuff.Solving"],
    };

    // Types at the root of Scuff (the value list) are for every room and so may use none.
    private static readonly Dictionary<string, string[]> RoomsOfScuffMayUse = new()
    {
        ["Scuff"] = [],
        ["Scuff.Timing"] = [],
        ["Scuff.Diagnostics"] = [],
        ["Scuff.Stance"] = ["Scuff.Timing"],
        ["Scuff.Music"] = ["Scuff.Timing"],
        ["Scuff.Music.Corrections"] = ["Scuff.Music"],
        ["Scuff.Music.Labels"] = ["Scuff.Music"],
        ["Scuff.Steps"] = ["Scuff.Timing", "Scuff.Stance", "Scuff.Diagnostics"],
        ["Scuff.Dances"] = ["Scuff.Timing", "Scuff.Stance", "Scuff.Steps", "Scuff.Diagnostics"],
        ["Scuff.Timelines"] = ["Scuff.Timing", "Scuff.Stance", "Scuff.Steps", "Scuff.Dances", "Scuff.Diagnostics"],
    };

    // What stands at the root of Analysis (the front door and what it hands to its rooms) is free to use and be used.
    private static readonly Dictionary<string, string[]> RoomsOfAnalysisMayUse = new()
    {
        ["Scuff.Analysis.Floor"] = [],
        ["Scuff.Analysis.Fit"] = [],
        ["Scuff.Analysis.Compare"] = [],
        ["Scuff.Analysis.Checks"] = ["Scuff.Analysis.Floor", "Scuff.Analysis.Fit"],
        ["Scuff.Analysis.Likeness"] = [],
        ["Scuff.Analysis.Memory"] = [],
        ["Scuff.Analysis.Planning"] = [],
        ["Scuff.Analysis.Lessons"] = ["Scuff.Analysis.Floor", "Scuff.Analysis.Fit", "Scuff.Analysis.Likeness"],
    };

    private static readonly Architecture Loaded = new ArchLoader().LoadAssemblies([.. Repository.Assemblies]).Build();

    [Fact]
    public void Projects_refer_only_to_projects_on_their_left()
    {
        string[] files = [.. Repository.Files.Where(f => f.StartsWith("src/", StringComparison.Ordinal) && f.EndsWith(".csproj", StringComparison.Ordinal))];

        Assert.Equal(ProjectsMayUse.Keys.Order(StringComparer.Ordinal), files.Select(NameOf).Order(StringComparer.Ordinal));
        Repository.AssertNone("forbidden project references:", files.SelectMany(Referred)
            .Where(r => !ProjectsMayUse[r.From].Contains(r.To))
            .Select(r => $"{r.From} -> {r.To}"));

        static IEnumerable<(string From, string To)> Referred(string file) => XDocument.Parse(Repository.Read(file))
            .Descendants("ProjectReference")
            .Select(r => (NameOf(file), NameOf((string)r.Attribute("Include")!)));
    }

    [Fact]
    public void Assemblies_use_only_assemblies_on_their_left()
        => Repository.AssertNone("forbidden assembly references:", Repository.Assemblies.SelectMany(from => from.GetReferencedAssemblies()
            .Where(to => ProjectsMayUse.ContainsKey(to.Name!) && !ProjectsMayUse[from.GetName().Name!].Contains(to.Name))
            .Select(to => $"{from.GetName().Name} -> {to.Name}")));

    [Fact]
    public void The_trade_itself_needs_no_package()
    {
        Assert.Empty(XDocument.Parse(Repository.Read("src/Scuff/Scuff.csproj")).Descendants("PackageReference"));
        Assert.All(Repository.Scuff.GetReferencedAssemblies(), a => Assert.StartsWith("System.", a.Name, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_room_of_Scuff_has_its_place_in_the_order()
        => Repository.AssertNone("rooms without a line in the table above:", Repository.Scuff.GetTypes()
            .Where(t => t.Namespace is not null && (t.Namespace == Core || t.Namespace.StartsWith("Scuff.", StringComparison.Ordinal)))
            .Select(t => t.Namespace!)
            .Where(room => !RoomsOfScuffMayUse.ContainsKey(room)));

    [Fact]
    public void Rooms_of_Scuff_use_only_rooms_on_their_left()
    {
        // the loader must have seen the rooms, or an empty answer would pass
        Assert.Contains(Loaded.Types, t => RoomOf(t) == "Scuff.Timing");
        Repository.AssertNone("forbidden uses inside Scuff:", Uses()
            .Where(u => RoomsOfScuffMayUse.TryGetValue(RoomOf(u.Origin), out string[]? left)
                && RoomOf(u.Target) is var to
                && to != RoomOf(u.Origin)
                && to != Core
                && !left.Contains(to))
            .Select(Named));
    }

    [Fact]
    public void Rooms_of_the_analysis_use_only_rooms_on_their_left()
        => Repository.AssertNone("forbidden uses inside Scuff.Analysis:", Uses()
            .Where(u => RoomsOfAnalysisMayUse.TryGetValue(RoomOf(u.Origin), out string[]? left)
                && RoomOf(u.Target) is var to
                && to != RoomOf(u.Origin)
                && RoomsOfAnalysisMayUse.ContainsKey(to)
                && !left.Contains(to))
            .Select(Named));

    [Fact]
    public void Syntax_nodes_stay_inside_the_prose_room()
        => Repository.AssertNone("public syntax nodes:", Repository.Assemblies
            .SelectMany(a => a.GetExportedTypes())
            .Where(t => t.Name.EndsWith("Syntax", StringComparison.Ordinal))
            .Select(t => t.FullName!));

    // Dependencies of compiled code: signatures, fields, bodies; a nested type answers in its own name.
    private static IEnumerable<ITypeDependency> Uses() => Loaded.Types
        .SelectMany(t => t.Dependencies)
        .Where(d => RoomOf(d.Target).StartsWith(Core, StringComparison.Ordinal));

    private static string RoomOf(IType type) => type.Namespace?.FullName ?? "";

    private static string Named(ITypeDependency use) => $"{use.Origin.FullName} -> {use.Target.FullName}";

    private static string NameOf(string projectFile) => projectFile.Replace('\\', '/').Split('/')[^1].Replace(".csproj", "", StringComparison.Ordinal);
}
