using System.Collections.Concurrent;
using System.ComponentModel;
using System.Diagnostics;
using Scuff.Audio.Decoding;
using Scuff.Audio.Signals;

namespace Scuff.Audio.Voices;

/// <summary>
/// The voice of the machine: a program that is on it is started for each phrase and writes a sound file. The words reach it as one argument, or in its
/// environment, never through a shell.
/// </summary>
public sealed class SystemVoice : IVoice
{
    // a phrase takes a fraction of a second; a program that stands still is ended
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    // The speech of Windows is reached through its own scripting program; the words stand in its environment.
    private const string WindowsScript = "Add-Type -AssemblyName System.Speech; $s = New-Object System.Speech.Synthesis.SpeechSynthesizer; "
        + "$s.SetOutputToWaveFile($env:SCUFF_SAY_FILE); $s.Speak($env:SCUFF_SAY_WORDS); $s.Dispose()";

    private readonly string _program;
    private readonly Func<string, string, IEnumerable<string>> _arguments;
    private readonly ConcurrentDictionary<string, MonoAudio?> _said = new(StringComparer.Ordinal);

    private SystemVoice(string program, Func<string, string, IEnumerable<string>> arguments) => (_program, _arguments) = (program, arguments);

    /// <inheritdoc/>
    public string Name => "the voice of this machine";

    /// <summary>The voice of this machine; null where none of the programs that Scuff knows is on it.</summary>
    /// <param name="isThere">Gives the full path of a program on this machine, or null; null to look along the path.</param>
    public static SystemVoice? TryFind(Func<string, string?>? isThere = null)
    {
        Func<string, string?> find = isThere ?? AlongPath;
        (string Program, Func<string, string, IEnumerable<string>> Arguments)[] known =
        [
            .. OperatingSystem.IsMacOS() ? [("say", (w, f) => ["-o", f, "--file-format=WAVE", "--data-format=LEI16@22050", w])] : None,
            .. OperatingSystem.IsWindows() ? [("powershell.exe", (_, _) => ["-NoProfile", "-NonInteractive", "-Command", WindowsScript])] : None,
            ("espeak-ng", (w, f) => ["-w", f, "-s", "190", w]),
            ("flite", (w, f) => ["-voice", "slt", "-t", w, "-o", f]),
        ];
        foreach ((string program, Func<string, string, IEnumerable<string>> arguments) in known)
        {
            if (find(program) is { } path)
            {
                return new SystemVoice(path, arguments);
            }
        }

        return null;
    }

    /// <inheritdoc/>
    public MonoAudio? Say(string phrase) => _said.GetOrAdd(phrase, Render);

    /// <inheritdoc/>
    public double? SecondsOf(string phrase) => _said.TryGetValue(phrase, out MonoAudio? said) ? said?.Seconds : null;

    private static (string Program, Func<string, string, IEnumerable<string>> Arguments)[] None => [];

    private static string? AlongPath(string program)
        => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
            .Select(folder => Path.Combine(folder, program))
            .FirstOrDefault(File.Exists);

    private MonoAudio? Render(string phrase)
    {
        // letters and blanks only: nothing that a program could take for an option
        if (phrase.Length == 0 || !char.IsLetter(phrase[0]))
        {
            return null;
        }

        DirectoryInfo place = Directory.CreateTempSubdirectory("scuff-say-");
        try
        {
            string file = Path.Combine(place.FullName, "words.wav");
            ProcessStartInfo start = new(_program)
            {
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
                UseShellExecute = false,
                CreateNoWindow = true,
            };
            start.Environment["SCUFF_SAY_WORDS"] = phrase;
            start.Environment["SCUFF_SAY_FILE"] = file;
            foreach (string argument in _arguments(phrase, file))
            {
                start.ArgumentList.Add(argument);
            }

            return Ran(start) && File.Exists(file) ? VoiceTrim.Of(AudioFile.Read(file, "", IVoice.Rate).Audio) : null;
        }
        catch (AudioException)
        {
            // what it wrote is no sound: the next voice says the words
            return null;
        }
        finally
        {
            place.Delete(recursive: true);
        }
    }

    private static bool Ran(ProcessStartInfo start)
    {
        try
        {
            using Process? process = Process.Start(start);
            if (process is null)
            {
                return false;
            }

            // a full pipe would stop it
            process.OutputDataReceived += (_, _) => { };
            process.ErrorDataReceived += (_, _) => { };
            process.BeginOutputReadLine();
            process.BeginErrorReadLine();
            process.StandardInput.Close();
            if (process.WaitForExit(Patience))
            {
                return process.ExitCode == 0;
            }

            process.Kill(entireProcessTree: true);
            return false;
        }
        catch (Exception trouble) when (trouble is Win32Exception or InvalidOperationException or IOException)
        {
            return false;
        }
    }
}
