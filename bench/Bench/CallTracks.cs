using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Scuff.Audio.Decoding;
using Scuff.Audio.Mixing;
using Scuff.Audio.Songs;
using Scuff.Audio.Stretching;
using Scuff.Audio.Voices;

namespace Bench;

/// <summary>
/// How long the call track of a song of four minutes takes, step by step, beside ffmpeg's own stretching (atempo) of the same file in the same run.
/// </summary>
internal static partial class CallTracks
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

            Dictionary<string, Taken> best = [];
            for (int i = 0; i < Times; i++)
            {
                foreach ((string step, Taken taken) in Run(song, Path.Combine(place.FullName, "calls.wav")))
                {
                    best[step] = best.TryGetValue(step, out Taken? before) ? before.OrLess(taken) : taken;
                }
            }

            Taken? reference = Reference(song, Path.Combine(place.FullName, "reference.wav"));
            output.WriteLine(Line($"a song of {Seconds:F0} s at {Speed * 100:F0} %, a call every 1.9 s, {Environment.ProcessorCount} cores, best of {Times}"));
            output.WriteLine();
            output.WriteLine("step                                 clock  processor     ratio");
            foreach ((string step, Taken taken) in best)
            {
                output.WriteLine(Line($"{step,-34}{taken.Clock,6:F2} s {taken.Processor,8:F2} s {taken.Processor / (reference?.Processor ?? double.NaN),9:F2}"));
            }

            output.WriteLine(reference is { } theirs
                ? Line($"{"reference: ffmpeg atempo",-34}{theirs.Clock,6:F2} s {theirs.Processor,8:F2} s {1,9:F2}")
                : "ffmpeg is not on this machine: no reference");
            Strikes(output, place.FullName);
        }
        finally
        {
            place.Delete(recursive: true);
        }
    }

    private static List<(string Step, Taken Taken)> Run(string song, string to)
    {
        List<(string, Taken)> steps = [];
        Taken start = Taken.Now();
        Taken last = start;
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
        steps.Add(("the whole call track", Taken.Since(start)));
        return steps;

        void Done(string step)
        {
            steps.Add((step, Taken.Since(last)));
            last = Taken.Now();
        }
    }

    private static Taken? Reference(string song, string to)
    {
        Taken best = new(double.MaxValue, double.MaxValue);
        for (int i = 0; i < Times; i++)
        {
            ProcessStartInfo start = new("ffmpeg") { UseShellExecute = false, RedirectStandardError = true };
            foreach (string argument in (string[])["-nostdin", "-hide_banner", "-nostats", "-benchmark", "-y", "-i", song,
                "-filter:a", string.Create(CultureInfo.InvariantCulture, $"atempo={Speed}"), to])
            {
                start.ArgumentList.Add(argument);
            }

            long began = Stopwatch.GetTimestamp();
            try
            {
                using Process process = Process.Start(start)!;
                string said = process.StandardError.ReadToEnd();
                process.WaitForExit();

                // it tells itself what it used: bench: utime=0.912s stime=0.120s rtime=1.050s
                double used = Used().Matches(said).Sum(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture));
                best = best.OrLess(new Taken(Stopwatch.GetElapsedTime(began).TotalSeconds, used));
            }
            catch (Win32Exception)
            {
                return null;
            }
        }

        return best;
    }

    [GeneratedRegex("[us]time=([0-9.]+)s", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Used();

    // Strikes over a chord: how far from the map each lands, ours and the reference's.
    private static void Strikes(TextWriter output, string folder)
    {
        const int rate = SongRenderer.Rate;
        float[] strike = [.. Enumerable.Range(0, 1500).Select(i => (float)(0.7 * Math.Exp(-i / 300.0) * Math.Sin(2 * Math.PI * 900 * i / rate)))];
        float[] samples = [.. Enumerable.Range(0, 30 * rate).Select(i => (float)(0.1 * (Math.Sin(2 * Math.PI * 220 * i / rate) + Math.Sin(2 * Math.PI * 331.7 * i / rate))))];
        Random random = new(3);
        List<double> times = [];
        for (double t = 0.5; t < 29; t += 0.2 + (0.2 * random.NextDouble()))
        {
            times.Add(t);
            for (int i = 0; i < strike.Length; i++)
            {
                samples[(int)(t * rate) + i] += strike[i];
            }
        }

        StereoSound sound = new(samples, samples, rate);
        string file = Path.Combine(folder, "strikes.wav");
        using (FileStream written = File.Create(file))
        {
            sound.WriteWav(written);
        }

        output.WriteLine();
        Tell("strikes, ours", MusicStretch.Stretch(sound, TimeMap.AtSpeed(Speed)).Left);
        string theirs = Path.Combine(folder, "strikes-reference.wav");
        if (Reference(file, theirs) is not null)
        {
            Tell("strikes, reference", AudioFile.ReadSides(theirs).Sound.Left);
        }

        void Tell(string name, float[] played)
        {
            double[] off = [.. times.Select(t => 1000 * Math.Abs(Lag(played, strike, (int)(t / Speed * rate))) / rate)];
            output.WriteLine(Line($"{name,-34}off by {off.Average():F2} ms on average, {off.Max():F2} at most, of {off.Length}"));
        }
    }

    private static double Lag(float[] played, float[] strike, int expected)
    {
        const int reach = 1800;
        return Enumerable.Range(-reach, (2 * reach) + 1).MaxBy(lag =>
        {
            double alike = 0;
            for (int i = 0; i < strike.Length && expected + lag + i < played.Length; i++)
            {
                alike += strike[i] * played[expected + lag + i];
            }

            return alike;
        });
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

    // Seconds by the clock, and of all processors together.
    private sealed record Taken(double Clock, double Processor)
    {
        public static Taken Now()
        {
            using Process own = Process.GetCurrentProcess();
            return new Taken((double)Stopwatch.GetTimestamp() / Stopwatch.Frequency, own.TotalProcessorTime.TotalSeconds);
        }

        public static Taken Since(Taken start)
        {
            Taken now = Now();
            return new Taken(now.Clock - start.Clock, now.Processor - start.Processor);
        }

        public Taken OrLess(Taken other) => new(Math.Min(Clock, other.Clock), Math.Min(Processor, other.Processor));
    }
}
