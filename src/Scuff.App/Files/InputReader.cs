namespace Scuff.App.Files;

/// <summary>Reads the texts a command is given: files, all dances of a folder, standard input.</summary>
internal static class InputReader
{
    /// <summary>Larger files are refused unread. A 10,000-line text is well below a tenth of it.</summary>
    public const int LargestBytes = 10 * 1024 * 1024;

    private const string Extension = ".dance";

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
                yield return ReadOne(name, terminal.OpenInput);
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
                    files.AddRange(Directory.EnumerateFiles(path, "*" + Extension).Select(f => Path.Combine(name, Path.GetFileName(f))));
                    files.Sort(StringComparer.Ordinal);
                    trouble = files.Count == 0 ? $"There is no {Extension} file in the folder {name}." : null;
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
                // A stream without a buffer of its own: the whole file is read at once.
                yield return ReadOne(file, () => new FileStream(terminal.FullPath(file), FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0));
            }
        }
    }

    private static DanceInput ReadOne(string name, Func<Stream> open)
    {
        string spoken = name == DanceInput.StandardInput ? "Standard input" : name;
        try
        {
            using Stream stream = open();
            if (stream.CanSeek && stream.Length > LargestBytes)
            {
                return Refused(name, $"{spoken} is {Megabytes(stream.Length)} MB; a dance is a short text, so a file above {Megabytes(LargestBytes)} MB is not read.");
            }

            byte[] buffer = new byte[stream.CanSeek ? (int)Math.Max(stream.Length, 1) + 1 : 16 * 1024];
            int length = 0;
            while (true)
            {
                int read = stream.Read(buffer, length, buffer.Length - length);
                if (read == 0)
                {
                    break;
                }

                length += read;
                if (length > LargestBytes)
                {
                    return Refused(name, $"{spoken} is above {Megabytes(LargestBytes)} MB; a dance is a short text, so it is not read.");
                }

                if (length == buffer.Length)
                {
                    Array.Resize(ref buffer, buffer.Length * 2);
                }
            }

            DecodedText decoded = TextDecoding.Decode(buffer.AsSpan(0, length));
            return decoded switch
            {
                { Trouble: { } trouble } => Refused(name, $"{spoken} {trouble}."),
                _ when string.IsNullOrWhiteSpace(decoded.Text) => Refused(name, $"{spoken} is empty: there is no dance in it."),
                _ => new DanceInput(name, decoded.Text, decoded.Form, null),
            };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Refused(name, FileWords.NotRead(name, e));
        }
    }

    private static DanceInput Refused(string name, string trouble) => new(name, "", TextForm.Utf8, trouble);

    private static long Megabytes(long bytes) => bytes / (1024 * 1024);
}
