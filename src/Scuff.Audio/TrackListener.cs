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

    // Below this the loudest moment of a file is noise of its own making.
    private const float Silence = -70;

    /// <summary>Listens to a piece of sound at <see cref="Hearing.Rate"/>; silence or sound without a beat gives a map with a remark and no beats.</summary>
    /// <param name="audio">The sound.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentException">The sound is at another rate.</exception>
    public static TrackMap Listen(MonoAudio audio, CancellationToken cancel = default)
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
        Activations heard = Ear.ListenWithAll(spectrum);
        cancel.ThrowIfCancellationRequested();
        BeatRow row = BeatPath.Find(heard.Beat, first, last);
        if (row.Seconds.Length < FewestBeats)
        {
            return empty with { Remark = "No beat was found in this track. Tap along, or write the beats by hand." };
        }

        return Complete(empty, audio, spectrum, heard, row);
    }

    private static TrackMap Complete(TrackMap map, MonoAudio audio, Spectrogram spectrum, Activations heard, BeatRow row)
    {
        double[] beats = row.Seconds;
        BeatFeatures features = BeatFeatures.Of(audio, spectrum, beats);
        float[] start = CountPath.Near(heard.Start, beats);
        CountRow four = CountPath.Find(beats, heard, 4, BoundaryEvidence.Of(start, 4, features));
        CountRow three = CountPath.Find(beats, heard, 3, BoundaryEvidence.Of(start, 3, features));
        bool isThree = three.Score > four.Score;
        CountRow counts = isThree ? three : four;
        double sure = Sureness(Math.Abs(three.Score - four.Score) / Math.Sqrt(beats.Length));
        int[] starts = SectionFinder.Find(counts);
        string[] labels = SectionLabels.Find(starts, beats.Length, features);
        double tempo = TempoOf(beats);
        return map with
        {
            Beats = [.. beats.Select((b, i) => new TrackBeat(b, ((counts.Counts[i] - 1) % counts.BeatsInBar) + 1, counts.Counts[i]))],
            Tempo = new Estimate<double>(tempo, 0.5, [new Alternative<double>(tempo / 2, 0.25), new Alternative<double>(tempo * 2, 0.25)]),
            Meter = new Estimate<Meter>(isThree ? Meter.Three : Meter.Four, sure, [new Alternative<Meter>(isThree ? Meter.Four : Meter.Three, 1 - sure)]),
            Swing = SwingMeter.Of(spectrum, beats),
            Sections =
            [
                .. starts.Select((s, i) => new TrackSection(s, (i + 1 < starts.Length ? starts[i + 1] : beats.Length) - s, labels[i], "", Sureness(counts.Start[s]))),
            ],
            Breaks = [.. StopFinder.Find(beats, counts.Counts, heard)],
            FirstCount = new Estimate<int>(starts.Length > 0 ? starts[0] : 0, 0.5),
        };
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
