using Scuff.Music;

namespace Scuff.Audio.Evaluation;

/// <summary>The map of a song of which everything is known: as if it had been heard without a fault.</summary>
public static class TruthMap
{
    /// <summary>The map. Sections begin on the beat nearest to where the truth has them.</summary>
    /// <param name="truth">What is true of the song; with bar positions and counts.</param>
    /// <param name="title">Title of the song.</param>
    /// <param name="artist">Who plays it.</param>
    /// <param name="seconds">Length of its sound in seconds.</param>
    /// <exception cref="ArgumentException">The truth has no counts.</exception>
    public static TrackMap Of(TrackTruth truth, string title, string artist, double seconds)
    {
        ArgumentNullException.ThrowIfNull(truth);
        if (truth.Counts is not { } counts || truth.BarPosition is not { } positions)
        {
            throw new ArgumentException("The truth of a song without counts makes no map.", nameof(truth));
        }

        TrackBeat[] beats = [.. truth.Beats.Select((b, i) => new TrackBeat(b, positions[i], counts[i]))];
        TruthSection[] sections = [.. truth.Sections ?? []];
        int[] firsts = [.. sections.Select(s => NearestTo(s.Start, beats))];
        int start = sections.Length > 1 && string.Equals(sections[0].Name, "intro", StringComparison.Ordinal) ? firsts[1] : firsts.FirstOrDefault();
        return new TrackMap
        {
            Title = title,
            Artist = artist,
            Seconds = seconds,
            Beats = [.. beats],
            Tempo = Estimate<double>.Said(truth.TempoBpm),
            Meter = Estimate<Meter>.Said(truth.Meter == 3 ? Meter.Three : Meter.Four),
            Swing = Estimate<double>.Said(truth.SwingRatio ?? 1),
            Sections = [.. sections.Select((s, i) => new TrackSection(firsts[i], s.Beats, s.Label, s.Name, 1))],
            Breaks = [.. (truth.Breaks ?? []).Select(b => new TrackBreak(b.Start, b.End, b.Kind == AnswerBreak.Stop, 1)).OrderBy(b => b.Start)],
            FirstCount = Estimate<int>.Said(start),
        };
    }

    private static int NearestTo(double seconds, TrackBeat[] beats)
        => Enumerable.Range(0, beats.Length).MinBy(i => Math.Abs(beats[i].Seconds - seconds));
}
