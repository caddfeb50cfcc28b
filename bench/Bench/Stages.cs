using System.Diagnostics;
using System.Globalization;
using Scuff.Audio;
using Scuff.Audio.Bars;
using Scuff.Audio.Beats;
using Scuff.Audio.Decoding;
using Scuff.Audio.Ears;
using Scuff.Audio.Phrases;
using Scuff.Audio.Signals;

namespace Bench;

/// <summary>Where the time goes when a track is heard: seconds a minute of sound on one core, stage by stage.</summary>
internal static class Stages
{
    private const int Rounds = 7;

    /// <summary>Hears a file again and again and prints the least of each stage; the whole, heard by the front door in the same run, stands below.</summary>
    public static void Measure(TextWriter output, string file)
    {
        Dictionary<string, double> least = [];
        double minutes = 1;
        for (int round = 0; round < Rounds; round++)
        {
            MonoAudio audio = Timed("decoding", () => AudioFile.Read(file).Audio);
            minutes = audio.Seconds / 60;
            Spectrogram spectrum = Timed("spectrum", () => Hearing.Spectrum(audio));
            Activations heard = Timed("ears", () => Ear.ListenWithAll(spectrum, null, default));
            (double first, double last) = LoudnessMeter.Sounding(LoudnessMeter.Of(audio));
            BeatRow row = Timed("beats", () => SteadyBeats.Find(heard.Beat, first, last));
            BeatFeatures features = Timed("what beats sound like", () => BeatFeatures.Of(audio, spectrum, row.Seconds));
            SelfLikeness likeness = Timed("likeness", () => SelfLikeness.Of(features));
            float[] start = CountPath.Near(heard.Start, row.Seconds);
            _ = Timed("boundaries, one meter of two", () => BoundaryEvidence.Of(start, 4, features, likeness));
            _ = Timed("all but decoding", () => TrackListener.Listen(audio));
        }

        foreach ((string stage, double seconds) in least)
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{stage,-30} {seconds / minutes,7:F4}"));
        }

        T Timed<T>(string stage, Func<T> work)
        {
            long began = Stopwatch.GetTimestamp();
            T done = work();
            double seconds = Stopwatch.GetElapsedTime(began).TotalSeconds;
            least[stage] = Math.Min(least.GetValueOrDefault(stage, double.MaxValue), seconds);
            return done;
        }
    }
}
