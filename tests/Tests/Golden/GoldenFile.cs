namespace Tests.Golden;

/// <summary>
/// Expected outputs as files beside the tests. <c>SCUFF_UPDATE=1</c> writes what is made now in their place; the change is
/// then read like code.
/// </summary>
internal static class GoldenFile
{
    /// <summary>Compares a text with the expected file of a name.</summary>
    public static void Matches(string name, string made)
    {
        string path = Path.Combine(Folder(), name);
        string text = made.ReplaceLineEndings("\n");
        if (Environment.GetEnvironmentVariable("SCUFF_UPDATE") == "1")
        {
            File.WriteAllText(path, text);
            return;
        }

        Assert.True(File.Exists(path), $"There is no expected output {name}; run the test once with SCUFF_UPDATE=1 and read the file.");
        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), text);
    }

    private static string Folder()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Scuff.slnx")))
        {
            folder = folder.Parent;
        }

        Assert.True(folder is not null, "The tests do not run inside the repository.");
        return Path.Combine(folder.FullName, "tests", "Tests", "Golden");
    }
}
