using Scuff.Audio.Bars;
using Scuff.Audio.Beats;
using Scuff.Audio.Ears;
using Scuff.Audio.Phrases;
using Scuff.Audio.Rhythm;
using Scuff.Audio.Signals;
using Scuff.Music;

namespace Scuff.Audio;

/// <summary>The front door of the analysis: from sound to the map of a track. The same sound always gives the same map.</summary>
public static class TrackListener
{
    private const int FewestBeats = 8;

    // Counts of the longest intro that a floor waits for.
    private const int LongestIntro = 64;

    // Where beats were found in noise their mean logit is lower; in music it is higher.
    private const float LeastClarity = -0.4f;

    // Music that comes back comes back at the same place in the bar nearly always, in the eight not quite so (made songs of other seeds).
    private const double EchoedOnes = 3;

    private const double EchoedEights = 1;

    // The mean logit of beats that are none: a minute of white, pink or brown noise has -2.1 to -1.7, the least clear of the songs made without
    // drums 1.7.
    private const float NoBeat = -1;

    // Below this the loudest moment of a file is noise of its own making.
    private const float Silence = -70;

    /// <summary>Listens to a piece of sound at <see cref="Hearing.Rate"/>; silence or sound without a beat gives a map with a remark and no beats.</summary>
    /// <param name="audio">The sound.</param>
    /// <param name="progress">Is told the part of the work that is done, 0 to 1.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentException">The sound is at another rate.</exception>
    public static TrackMap Listen(MonoAudio audio, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(audio);
        if (audio.Rate != Hearing.Rate)
        {
            throw new ArgumentException($"The ear listens at {Hearing.Rate} samples a second, not at {audio.Rate}.", nameof(audio));
        }

        LoudnessCurve loudness = LoudnessMeter.Of(audio);
        TrackMap empty = new() { Seconds = audio.Seconds, Loudness = loudness };
        if (loudness.Decibels.All(d => d < Silence))
        {
            return empty with { Remark = "There is nothing to hear in this track: it is silent from end to end." };
        }

        (double first, double last) = LoudnessMeter.Sounding(loudness);
        Spectrogram spectrum = Hearing.Spectrum(audio);
        cancel.ThrowIfCancellationRequested();
        Activations heard = Ear.ListenWithAll(spectrum, progress, cancel);
        cancel.ThrowIfCancellationRequested();
        BeatRow row = SideOfBeat.Find(SteadyBeats.Find(heard.Beat, first, last), heard, first, last);
        if (row.Seconds.Length < FewestBeats || CountPath.Near(heard.Beat, row.Seconds).Average() < NoBeat)
        {
            return empty with { Remark = "No beat was found in this track. Tap along, or write the beats by hand." };
        }

        return Complete(empty, BeatFeatures.Of(audio, spectrum, row.Seconds), heard, row, SwingMeter.Of(spectrum, row.Seconds));
    }

    /// <summary>The map of a track whose beats are known.</summary>
    /// <param name="map">What is known of it without them.</param>
    /// <param name="features">What the beats sound like.</param>
    /// <param name="heard">What the ears heard.</param>
    /// <param name="row">The beats.</param>
    /// <param name="feel">How the beat is divided, and whether into three.</param>
    internal static TrackMap Complete(TrackMap map, BeatFeatures features, Activations heard, BeatRow row, (Estimate<double> Swing, bool IsCompound) feel)
    {
        double[] beats = row.Seconds;
        float[] start = CountPath.Near(heard.Start, beats);
        SelfLikeness likeness = SelfLikeness.Of(features);
        float[] one = Echoes.Joined(OneEvidence.Of(heard, beats, features), EchoedOnes, likeness);
        float[] eight = Echoes.Joined(CountPath.Near(heard.Eight, beats), EchoedEights, likeness);
        CountRow four = CountPath.Find(beats, 4, one, eight, BoundaryEvidence.Of(start, 4, features, likeness));
        CountRow three = CountPath.Find(beats, 3, one, eight, BoundaryEvidence.Of(start, 3, features, likeness));
        bool isThree = three.Score > four.Score;
        CountRow counts = isThree ? three : four;
        double meterSure = Sureness(Math.Abs(three.Score - four.Score) / Math.Sqrt(beats.Length));
        SectionStart[] found = SectionFinder.Find(counts, beats);
        int[] starts = [.. found.Select(s => s.Beat)];
        string[] labels = SectionLabels.Find(starts, beats.Length, features);
        Meter meter = isThree ? Meter.Three : new Meter(4, feel.IsCompound);
        float clarity = CountPath.Near(heard.Beat, beats).Average();
        return map with
        {
            Beats = [.. beats.Select((b, i) => new TrackBeat(b, ((counts.Counts[i] - 1) % counts.BeatsInBar) + 1, counts.Counts[i]))],
            Tempo = TempoOf(row, heard.Beat, clarity),
            Meter = new Estimate<Meter>(meter, meterSure, [new Alternative<Meter>(isThree ? Meter.Four : Meter.Three, 1 - meterSure)]),
            Swing = feel.Swing,
            Sections =
            [
                .. starts.Select((s, i) => new TrackSection(s, (i + 1 < starts.Length ? starts[i + 1] : beats.Length) - s, labels[i], "", found[i].Confidence)),
            ],
            Breaks = [.. StopFinder.Find(beats, counts.Counts, heard).Concat(DropFinder.Find(beats, starts, features)).OrderBy(b => b.Start)],
            FirstCount = FirstCountOf(found, counts),
            Remark = clarity < LeastClarity ? "The beat of this track is hard to hear. Check it by tapping along before you trust what stands here." : "",
        };
    }

    // A dance usually starts where the intro ends, if the intro is one that people wait for; else with the music. Common practice.
    private static Estimate<int> FirstCountOf(SectionStart[] starts, CountRow counts)
    {
        if (starts.Length == 0)
        {
            return new Estimate<int>(0, 0);
        }

        int music = starts[0].Beat;
        int intro = starts.Length > 1 ? starts[1].Beat - music : 0;
        bool isWaitedFor = intro is >= FewestBeats and <= LongestIntro;
        int first = isWaitedFor ? starts[1].Beat : music;
        double sure = isWaitedFor ? starts[1].Confidence : 0.5;
        int eight = counts.BeatsInBar == 3 ? 6 : 8;
        IEnumerable<int> others = new[] { music, music + (2 * eight), music + (4 * eight) }.Where(b => b != first && b < counts.Counts.Length).Distinct();
        return new Estimate<int>(first, sure, [.. others.Select(b => new Alternative<int>(b, (1 - sure) / 3))]);
    }

    // The same beats counted twice as fast or slow, by how well those rows agree with what was heard.
    private static Estimate<double> TempoOf(BeatRow row, float[] heard, float clarity)
    {
        double tempo = TempoOf(row.Seconds);
        double length = 60 / tempo;
        List<Alternative<double>> others = [];
        double all = 1;
        foreach (double factor in new[] { 0.5, 2.0 })
        {
            BeatRow other = BeatPath.Find(heard, row.Seconds[0], row.Seconds[^1] + length, length / factor * 0.9, length / factor * 1.1);
            double weight = other.Seconds.Length < 2 ? 0 : Math.Exp(Math.Min(0, (other.Score - row.Score) / (4 * Math.Sqrt(row.Seconds.Length))));
            others.Add(new Alternative<double>(tempo * factor, weight));
            all += weight;
        }

        double clear = Sureness(1.5 * (clarity + 0.5));
        return new Estimate<double>(tempo, clear / all, [.. others.Select(o => o with { Confidence = o.Confidence * clear / all }).OrderByDescending(o => o.Confidence)]);
    }

    private static double Sureness(double logit) => 1 / (1 + Math.Exp(-logit));

    // The middle of the beat lengths, made finer by the mean of those near it.
    private static double TempoOf(double[] beats)
    {
        double[] lengths = [.. beats.Zip(beats.Skip(1), (a, b) => b - a).Order()];
        double middle = lengths[lengths.Length / 2];
        return 60 / lengths.Where(l => Math.Abs(l - middle) < 0.06 * middle).Average();
    }
}
