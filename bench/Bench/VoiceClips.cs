using System.Diagnostics;
using System.Globalization;
using Scuff.Analysis.Calls;
using Scuff.Audio.Decoding;
using Scuff.Audio.Signals;
using Scuff.Audio.Voices;
using Scuff.Steps;

namespace Bench;

/// <summary>
/// Renders the clips that come with Scuff: every call word of the catalogue with the sides it is called with, every warning, turn and count, and single
/// words. Needs the program flite (bench/voice/README.md). The same words give the same file.
/// </summary>
internal static class VoiceClips
{
    private const string Voice = "slt";

    // a caller speaks a little faster than a reader
    private const string Stretch = "duration_stretch=0.85";
    private static readonly string[] Sides = ["right", "left"];

    private static readonly string[] Turns =
    [
        "eighth", "quarter", "three eighths", "half", "five eighths", "three quarters", "seven eighths", "full turn", "quarter turn", "half turn",
        "three quarter turn", "one and a quarter", "one and a half", "one and a half turn", "two full turns",
    ];

    private static readonly string[] Said =
    [
        "five six seven eight", "four five six", "five six", "seven eight", "eight more", "four more", "two more", "one more", "ready", "and", "in place", "new wall",
        "tag", "tag coming", "bridge", "bridge coming", "restart", "restart coming", "last one", "last time", "ending", "ending coming", "hold", "wait", "from the top", "once more",
    ];

    /// <summary>Writes the pack and prints what is in it.</summary>
    public static void Write(TextWriter output, string folder, string to)
    {
        Dictionary<string, string> spelling = File.ReadLines(Path.Combine(folder, "spelling.txt"))
            .Where(l => l.Contains('=', StringComparison.Ordinal) && l[0] != '#')
            .Select(l => l.Split('=', StringSplitOptions.TrimEntries))
            .ToDictionary(p => p[0], p => p[1], StringComparer.Ordinal);
        List<string> phrases = Phrases(File.ReadLines(Path.Combine(folder, "words.txt")));
        (string Words, MonoAudio Sound)[] clips = [.. phrases.AsParallel().AsOrdered().Select(p => (p, Render(Respelled(p, spelling))))];
        using (FileStream file = File.Create(to))
        {
            VoicePack.Write(file, clips);
        }

        VoicePack pack = VoicePack.Read(File.ReadAllBytes(to));
        double seconds = phrases.Sum(p => pack.SecondsOf(p)!.Value);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{phrases.Count} clips, {seconds:F1} s, {new FileInfo(to).Length} bytes"));
    }

    private static List<string> Phrases(IEnumerable<string> lines)
    {
        HashSet<string> all = new(StringComparer.Ordinal);
        foreach (StepDefinition step in StepCatalogue.Default.Definitions.Where(d => d.Call.Length > 0))
        {
            string[] parts = step.Call.Split(',', StringSplitOptions.TrimEntries);
            Add(parts);
            if (step.NamedBy != NamedBy.None)
            {
                // travel is said behind, a foot in front
                Add(Sides.Select(s => step.NamedBy == NamedBy.Travel ? parts[^1] + " " + s : s + " " + parts[0]));
            }
        }

        Add(CallWords.English.All.Where(w => !w.Contains('{', StringComparison.Ordinal)));
        Add(Turns.SelectMany(t => (string[])[t, .. Sides.Select(s => t + " " + s)]));
        Add(Said);

        // whatever is said in a phrase can be said alone, so that other phrases can be put together
        Add([.. all.SelectMany(p => p.Split(' '))]);
        Add(lines.Where(l => !l.StartsWith('#')).SelectMany(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries)));
        return [.. all.Order(StringComparer.Ordinal)];

        void Add(IEnumerable<string> words) => all.UnionWith(words.Select(SpokenText.Phrase).Where(w => w.Length > 0));
    }

    private static string Respelled(string phrase, Dictionary<string, string> spelling)
        => spelling.TryGetValue(phrase, out string? whole) ? whole
            : string.Join(' ', phrase.Split(' ').Select((w, i) => w is "a" && i > 0 ? w : spelling.GetValueOrDefault(w, w)));

    private static MonoAudio Render(string words)
    {
        string file = Path.Combine(Path.GetTempPath(), string.Create(CultureInfo.InvariantCulture, $"scuff-clip-{Environment.CurrentManagedThreadId}.wav"));
        ProcessStartInfo start = new("flite");
        foreach (string argument in (string[])["-voice", Voice, "--setf", Stretch, "-t", words, "-o", file])
        {
            start.ArgumentList.Add(argument);
        }

        using (Process process = Process.Start(start)!)
        {
            process.WaitForExit();
            if (process.ExitCode != 0)
            {
                throw new InvalidOperationException("flite could not say: " + words);
            }
        }

        MonoAudio sound = AudioFile.Read(file, "", 16_000).Audio;
        File.Delete(file);
        return sound;
    }
}
