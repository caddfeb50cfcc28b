using System.Text;
using Scuff.App;

namespace Tests.App;

/// <summary>A folder of its own in which the program is run as from a shell, with everything it says captured.</summary>
public sealed class ProgramRun : IDisposable
{
    /// <summary>A dance without complaints.</summary>
    public const string CleanDance = """
        Harbour Box

        by: Scuff demo
        level: beginner
        counts: 16
        walls: 1

        section 1
        1-2  step R to side, step L together
        3-4  step R forward, touch L together
        5-6  step L to side, step R together
        7-8  step L back, touch R together

        section 2
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  rock R forward, recover
        7-8  step R together, step L in place
        """;

    /// <summary>A dance that stands on the foot it is told to step with.</summary>
    public const string FaultyDance = """
        Wrong Foot

        by: Scuff demo
        level: beginner
        counts: 8
        walls: 1

        section 1
        1-2  step R to side, step L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together
        """;

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scuff-test-");

    /// <summary>The folder.</summary>
    public string Folder => _folder.FullName;

    /// <summary>What the last run said on standard output.</summary>
    public string Out { get; private set; } = "";

    /// <summary>What the last run said on standard error.</summary>
    public string Error { get; private set; } = "";

    /// <summary>Puts a text into the folder.</summary>
    public string Put(string name, string text) => Put(name, Encoding.UTF8.GetBytes(text));

    /// <summary>Puts bytes into the folder.</summary>
    public string Put(string name, byte[] bytes)
    {
        string path = Path.Combine(Folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllBytes(path, bytes);
        return name;
    }

    /// <summary>Reads a file of the folder.</summary>
    public string Get(string name) => File.ReadAllText(Path.Combine(Folder, name));

    /// <summary>Runs the program; nothing is piped in.</summary>
    public int Run(params string[] args) => Run(args, input: null, colours: false);

    /// <summary>Runs the program with a text on standard input.</summary>
    public int RunWithInput(string input, params string[] args) => Run(args, Encoding.UTF8.GetBytes(input), colours: false);

    /// <summary>Runs the program with bytes on standard input, or with colours.</summary>
    public int Run(string[] args, byte[]? input, bool colours)
    {
        using StringWriter output = new();
        using StringWriter error = new();
        Terminal terminal = new()
        {
            Out = output,
            Error = error,
            OpenInput = () => new MemoryStream(input ?? []),
            OpenOutput = () => Stream.Null,
            OutputIsPiped = true,
            InputIsPiped = input is not null,
            Folder = Folder,
            Paint = new Paint(colours),
        };
        int code = CommandTree.Run(args, terminal);
        Out = output.ToString();
        Error = error.ToString();
        return code;
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
