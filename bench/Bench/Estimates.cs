using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Scuff.Audio;
using Scuff.Audio.Decoding;
using Scuff.Audio.Evaluation;
using Scuff.Music;

namespace Bench;

/// <summary>Hears every song of a corpus and writes what was heard, a file a song, in the form that is scored.</summary>
internal static class Estimates
{
    /// <summary>
    /// Options: <c>--group NAME</c> only that part of the corpus, <c>--jobs N</c> at once (all cores). False if they make no sense, or a song could
    /// not be heard: it has no file then, and its trouble is told.
    /// </summary>
    public static bool Write(TextWriter output, string corpus, string folder, string[] options)
    {
        int jobs = Environment.ProcessorCount;
        string? group = null;
        for (int i = 0; i < options.Length; i += 2)
        {
            string? value = i + 1 < options.Length ? options[i + 1] : null;
            switch (options[i])
            {
                case "--group" when value is not null:
                    group = value;
                    break;
                case "--jobs" when int.TryParse(value, CultureInfo.InvariantCulture, out jobs) && jobs > 0:
                    break;
                default:
                    output.WriteLine($"estimate CORPUS OUT [--group NAME] [--jobs N]: what is {options[i]}?");
                    return false;
            }
        }

        using JsonDocument manifest = JsonDocument.Parse(File.ReadAllText(Path.Combine(corpus, "manifest.json")));
        (string Id, string Audio)[] songs =
        [
            .. manifest.RootElement.GetProperty("songs").EnumerateArray()
                .Where(s => group is null || s.GetProperty("group").GetString() == group)
                .Select(s => (s.GetProperty("id").GetString()!, s.GetProperty("audio").GetString()!)),
        ];
        Directory.CreateDirectory(folder);
        Stopwatch watch = Stopwatch.StartNew();
        Lock gate = new();
        List<TrackAnswer> answers = [];
        int troubles = 0;

        // the first song meets code that is not compiled yet; it is heard twice, so that its figures are like the others'
        if (songs.Length > 0)
        {
            _ = Heard(Path.Combine(corpus, songs[0].Audio), out _);
        }

        Parallel.ForEach(songs, new() { MaxDegreeOfParallelism = jobs }, song =>
        {
            TrackAnswer? answer = Heard(Path.Combine(corpus, song.Audio), out string trouble);
            if (answer is not null)
            {
                File.WriteAllText(Path.Combine(folder, song.Id + ".json"), answer.Write() + "\n");
            }

            lock (gate)
            {
                if (answer is null)
                {
                    troubles++;
                    output.WriteLine($"{song.Id}: {trouble}");
                }
                else
                {
                    answers.Add(answer);
                }
            }
        });
        double minutes = answers.Sum(a => a.AudioSeconds ?? 0) / 60;
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{answers.Count} songs, {minutes:F0} minutes, in {watch.Elapsed.TotalSeconds:F0} s; of the processor a minute {answers.Sum(a => a.CpuSeconds ?? 0) / minutes:F3} s"
                + $" to analyse and {answers.Sum(a => a.DecodeSeconds ?? 0) / minutes:F3} s to decode"));
        return troubles == 0;
    }

    private static TrackAnswer? Heard(string path, out string trouble)
    {
        try
        {
            trouble = "";
            double start = ThreadClock.Seconds();
            long began = Stopwatch.GetTimestamp();
            HeardFile file = AudioFile.Read(path);
            double decoded = ThreadClock.Seconds();
            TrackMap map = TrackListener.Listen(file.Audio);
            double end = ThreadClock.Seconds();
            return TrackAnswer.Of(map) with
            {
                Seconds = Math.Round(Stopwatch.GetElapsedTime(began).TotalSeconds, 4),
                CpuSeconds = Math.Round(end - decoded, 4),
                DecodeSeconds = Math.Round(decoded - start, 4),
            };
        }
        catch (AudioException e)
        {
            trouble = e.Message;
            return null;
        }
    }
}
