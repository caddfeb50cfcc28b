namespace Scuff.App.Files;

/// <summary>Reads the texts a command is given: files, all dances of a folder, standard input.</summary>
internal static class InputReader
{
    /// <summary>
    /// Reads one text after the other, only as the caller asks for them. Never throws for a trouble of the world:
    /// it is told in the input.
    /// </summary>
    /// <param name="names">Names as given; a folder stands for the dances in it; none or <c>-</c> for standard input.</param>
    /// <param name="terminal">Where names start from and standard input comes from.</param>
    public static IEnumerable<DanceInput> Read(IReadOnlyList<string> names, Terminal terminal)
    {
        if (names.Count == 0)
        {
            names = [DanceInput.StandardInput];
        }

        foreach (string name in names)
        {
            if (name == DanceInput.StandardInput)
            {
                yield return Told(name, TextFile.Read("Standard input", terminal.OpenInput));
                continue;
            }

            string path;
            string? trouble = null;
            List<string> files = [];
            try
            {
                path = terminal.FullPath(name);
                if (Directory.Exists(path))
                {
                    files.AddRange(Directory.EnumerateFiles(path, "*" + TextFile.DanceEnding).Select(f => Path.Combine(name, Path.GetFileName(f))));
                    files.Sort(StringComparer.Ordinal);
                    trouble = files.Count == 0 ? $"There is no {TextFile.DanceEnding} file in the folder {name}." : null;
                }
                else
                {
                    files.Add(name);
                }
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
            {
                trouble = FileWords.NotRead(name, e);
            }

            if (trouble is not null)
            {
                yield return new DanceInput(name, "", TextForm.Utf8, trouble);
                continue;
            }

            foreach (string file in files)
            {
                yield return Told(file, TextFile.Read(file, terminal.FullPath(file)));
            }
        }
    }

    private static DanceInput Told(string name, TextFile file) => new(name, file.Text, file.Form, file.Trouble);
}
