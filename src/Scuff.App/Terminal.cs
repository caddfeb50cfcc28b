using System.Text;

namespace Scuff.App;

/// <summary>Everything outside the program that a command may use, so that tests can stand in for it.</summary>
internal sealed class Terminal
{
    /// <summary>Where answers go.</summary>
    public required TextWriter Out { get; init; }

    /// <summary>Where troubles go.</summary>
    public required TextWriter Error { get; init; }

    /// <summary>Opens standard input.</summary>
    public required Func<Stream> OpenInput { get; init; }

    /// <summary>Opens standard output for what is no text.</summary>
    public required Func<Stream> OpenOutput { get; init; }

    /// <summary>Whether standard output is a file or a pipe, not a screen.</summary>
    public required bool OutputIsPiped { get; init; }

    /// <summary>Whether standard input is a file or a pipe, not a person.</summary>
    public required bool InputIsPiped { get; init; }

    /// <summary>The folder that names of files start from.</summary>
    public required string Folder { get; init; }

    /// <summary>Whether standard error is a screen, where a line can be written over.</summary>
    public bool ErrorIsScreen { get; init; }

    /// <summary>What an environment variable holds, or null.</summary>
    public Func<string, string?> Variable { get; init; } = _ => null;

    /// <summary>The home folder of the user; empty where nothing of theirs may be touched.</summary>
    public string Home { get; init; } = "";

    /// <summary>Colours of <see cref="Out"/>.</summary>
    public Paint Paint { get; init; }

    /// <summary>Colours of <see cref="Error"/>.</summary>
    public Paint ErrorPaint { get; init; }

    /// <summary>Width of a line on the screen, in characters.</summary>
    public int Width { get; init; } = 80;

    /// <summary>The terminal that this process was started in.</summary>
    public static Terminal OfThisProcess()
    {
        UTF8Encoding utf8 = new(encoderShouldEmitUTF8Identifier: false);
        bool mayColour = string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"))
            && Environment.GetEnvironmentVariable("TERM") is not "dumb";
        return new Terminal
        {
            // Writing line by line would cost a system call each; the end of a run flushes.
            Out = new StreamWriter(Console.OpenStandardOutput(), utf8, bufferSize: 32 * 1024),
            Error = new StreamWriter(Console.OpenStandardError(), utf8) { AutoFlush = true },
            OpenInput = Console.OpenStandardInput,
            OpenOutput = Console.OpenStandardOutput,
            OutputIsPiped = Console.IsOutputRedirected,
            InputIsPiped = Console.IsInputRedirected,
            ErrorIsScreen = !Console.IsErrorRedirected && Environment.GetEnvironmentVariable("TERM") is not "dumb",
            Variable = Environment.GetEnvironmentVariable,
            Home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile),
            Folder = Environment.CurrentDirectory,
            Paint = new Paint(mayColour && !Console.IsOutputRedirected),
            ErrorPaint = new Paint(mayColour && !Console.IsErrorRedirected),
            Width = Console.IsOutputRedirected ? 80 : WindowWidth(),
        };
    }

    /// <summary>A name of a file or folder as a full path.</summary>
    public string FullPath(string name) => Path.GetFullPath(name, Folder);

    /// <summary>Tells a trouble in one sentence, after what was answered so far.</summary>
    public void Tell(string sentence)
    {
        Out.Flush();
        Error.WriteLine(ErrorPaint.Of(Tone.Bad, "scuff: ") + Plain.Line(sentence));
    }

    private static int WindowWidth()
    {
        try
        {
            return Math.Clamp(Console.WindowWidth, 40, 200);
        }
        catch (IOException)
        {
            return 80;
        }
    }
}
