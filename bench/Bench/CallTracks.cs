using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using Scuff.Audio.Decoding;
using Scuff.Audio.Mixing;
using Scuff.Audio.Songs;
using Scuff.Audio.Stretching;
using Scuff.Audio.Voices;

namespace Bench;

/// <summary>
/// How long the call track of a song of four minutes takes, step by step, beside ffmpeg's own stretching (atempo) of the same file in the same run.
/// </summary>
internal static class CallTracks
{
    private const double Seconds = 240;
    private const double Speed = 0.8;
    private const int Times = 3;

    private static readonly string[] Words =
        ["vine right", "coaster", "pivot quarter", "rock, recover", "kick ball change", "shuffle", "jazz box quarter", "sailor", "tag coming", "new wall"];

    /// <summary>Prints the table: the best of three.</summary>
    public static void Measure(TextWriter output)
    {
        DirectoryInfo place = Directory.CreateTempSubdirectory("scuff-bench-");
        try
        {
            string song = Path.Combine(place.FullName, "song.wav");
            using (FileStream file = File.Create(song))
            {
                Made().WriteWav(file);
            }

            Dictionary<string, double> best = [];
            for (int i = 0; i < Times; i++)
            {
                foreach ((string step, double seconds) in Run(song, Path.Combine(place.FullName, "calls.wav")))
                {
                    best[step] = Math.Min(best.GetValueOrDefault(step, double.MaxValue), seconds);
                }
            }

            double? reference = Reference(song, Path.Combine(place.FullName, "reference.wav"));
            output.WriteLine(Line($"a song of {Seconds:F0} s at {Speed * 100:F0} %, a call every 1.9 s, {Environment.ProcessorCount} cores, best of {Times}"));
            output.WriteLine();
            foreach ((string step, double seconds) in best)
            {
                output.WriteLine(Line($"{step,-34}{seconds,8:F2} s{(reference is { } r ? Line($"{seconds / r,8:F2}") : "")}"));
            }

            output.WriteLine(reference is { } taken ? Line($"{"reference: ffmpeg atempo",-34}{taken,8:F2} s{1,8:F2}") : "ffmpeg is not on this machine: no reference");
        }
        finally
        {
            place.Delete(recursive: true);
        }
    }

    private static List<(string Step, double Seconds)> Run(string song, string to)
    {
        List<(string, double)> steps = [];
        long start = Stopwatch.GetTimestamp();
        long last = start;
        StereoSound music = AudioFile.ReadSides(song).Sound;
        Done("read both channels");
        StereoSound slow = MusicStretch.Stretch(music, TimeMap.AtSpeed(Speed));
        Done("stretch");
        Speaker speaker = new(new ShippedVoice());
        CallTime[] calls = [.. Enumerable.Range(1, (int)(slow.Seconds / 1.9) - 1).Select(i => new CallTime(i * 1.9, Words[i % Words.Length], (i * 1.9) + 1.2))];
        CallTrack made = CallTrackMixer.Mix(new CallTrackPlan { Calls = [.. calls], Music = slow }, speaker);
        Done("speak and mix");
        using (FileStream file = File.Create(to))
        {
            SoundWriter.Write(made.Sound, SoundFormat.Wav, file);
        }

        Done("write");
        steps.Add(("the whole call track", Stopwatch.GetElapsedTime(start).TotalSeconds));
        return steps;

        void Done(string step)
        {
            steps.Add((step, Stopwatch.GetElapsedTime(last).TotalSeconds));
            last = Stopwatch.GetTimestamp();
        }
    }

    private static double? Reference(string song, string to)
    {
        double best = double.MaxValue;
        for (int i = 0; i < Times; i++)
        {
            ProcessStartInfo start = new("ffmpeg") { RedirectStandardError = true };
            foreach (string argument in (string[])["-nostdin", "-v", "quiet", "-y", "-i", song, "-filter:a", string.Create(CultureInfo.InvariantCulture, $"atempo={Speed}"), to])
            {
                start.ArgumentList.Add(argument);
            }

            long began = Stopwatch.GetTimestamp();
            try
            {
                using Process process = Process.Start(start)!;
                process.WaitForExit();
            }
            catch (Win32Exception)
            {
                return null;
            }

            best = Math.Min(best, Stopwatch.GetElapsedTime(began).TotalSeconds);
        }

        return best;
    }

    // A song of our own, over again until it is long enough.
    private static StereoSound Made()
    {
        StereoSound once = SongRenderer.Render(Song.From(DemoSongs.All[0].Recipe));
        int length = (int)(Seconds * once.Rate);
        return new StereoSound(Again(once.Left), Again(once.Right), once.Rate);

        float[] Again(float[] samples) => [.. Enumerable.Range(0, length).Select(i => samples[i % samples.Length])];
    }

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
