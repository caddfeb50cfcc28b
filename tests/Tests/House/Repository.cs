using System.Reflection;

namespace Tests.House;

/// <summary>The folder all of this lives in, and the assemblies made from it.</summary>
internal static class Repository
{
    /// <summary>Our own assemblies, from the trade outwards.</summary>
    public static IReadOnlyList<Assembly> Assemblies { get; } =
    [
        .. new[] { "Scuff", "Scuff.Prose", "Scuff.Analysis", "Scuff.Audio", "Scuff.Sheets", "Scuff.Repertoire", "Scuff.Solving", "Scuff.App" }.Select(Assembly.Load),
    ];

    /// <summary>The trade itself.</summary>
    public static Assembly Scuff => Assemblies[0];

    /// <summary>Full path of the folder that holds the solution.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>
    /// Files that belong to the project, as paths from the root with forward slashes: all but what is built,
    /// restored or kept by version control. A fresh clone and a working tree give the same answer.
    /// </summary>
    public static IReadOnlyList<string> Files { get; } =
    [
        .. FilesBelow(new DirectoryInfo(Root))
            .Select(f => Path.GetRelativePath(Root, f.FullName).Replace('\\', '/'))
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>The text of a file of the project.</summary>
    public static string Read(string path) => File.ReadAllText(Path.Combine(Root, path));

    /// <summary>Fails with one offender a line, so that a run shows all of them.</summary>
    public static void AssertNone(string complaint, IEnumerable<string> offenders)
    {
        string[] found = [.. offenders.Distinct().Order(StringComparer.Ordinal)];
        Assert.True(found.Length == 0, $"{complaint}\n  {string.Join("\n  ", found)}");
    }

    private static string FindRoot()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Scuff.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("The tests run outside the repository's folder.");
    }

    private static IEnumerable<FileInfo> FilesBelow(DirectoryInfo folder)
    {
        foreach (FileInfo file in folder.EnumerateFiles().Where(f => f.LinkTarget is null && f.Extension != ".log"))
        {
            yield return file;
        }

        foreach (DirectoryInfo inner in folder.EnumerateDirectories())
        {
            if (inner.Name is not (".git" or "artifacts" or "bin" or "obj" or "node_modules" or "dist"
                or "BenchmarkDotNet.Artifacts" or "TestResults" or ".vs" or ".vscode" or ".idea"))
            {
                foreach (FileInfo file in FilesBelow(inner))
                {
                    yield return file;
                }
            }
        }
    }
}
