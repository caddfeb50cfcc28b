using System.Globalization;
using System.Text.Json;
using Scuff.Audio;
using Scuff.Audio.Bars;
using Scuff.Audio.Decoding;
using Scuff.Audio.Ears;
using Scuff.Audio.Evaluation;
using Scuff.Audio.Phrases;
using Scuff.Audio.Rhythm;
using Scuff.Audio.Signals;
using Scuff.Music;

namespace Bench;

/// <summary>
/// How the weights of <see cref="BoundaryEvidence"/> and <see cref="SectionLabels"/> are found again: logistic regressions over the songs of corpora of
/// which the sections are known, each checked on songs it was not made for; and the swing of songs whose true beats are given.
/// </summary>
internal static class Weigh
{
    // Songs are dealt out by turns to so many lots; each lot is judged by what the others say.
    private const int Lots = 5;

    private const double Near = 0.5;

    // Small against the counts of the pairs: it only keeps clues apart that say the same.
    private const double Ridge = 1;

    /// <summary>Prints both regressions over the songs of all the corpora that have sections, beside the weights that are used.</summary>
    public static void Sections(TextWriter output, string[] corpora)
    {
        List<Song> songs = [.. Hear<Song>(output, corpora, Heard)];
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{songs.Count} songs with sections"));
        output.WriteLine("boundaries: what speaks for a section's start at a count 1");
        Print(BoundaryEvidence.Clues, BoundaryEvidence.Weights, songs.ConvertAll(s => s.Starts));
        output.WriteLine("labels: what speaks for two sections being the same music");
        Print(SectionLabels.Clues, SectionLabels.Weights, songs.ConvertAll(s => s.Pairs));

        double used = songs.Average(s => s.LabelF(SectionLabels.Weights));
        double other = Enumerable.Range(0, Lots).SelectMany(lot => Of(lot, Fit([.. songs.Where((_, i) => i % Lots != lot).SelectMany(s => s.Pairs)], SectionLabels.Clues.Count)))
            .Average();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"label F with the true sections: {used:F3} as weighed now, {other:F3} five-fold by song"));

        IEnumerable<double> Of(int lot, double[] weights) => songs.Where((_, i) => i % Lots == lot).Select(s => s.LabelF(weights));

        void Print(IReadOnlyList<string> clues, IReadOnlyList<double> weights, List<List<Row>> rows)
        {
            double[] fit = Fit([.. rows.SelectMany(r => r)], clues.Count);
            double checkedLoss = Enumerable.Range(0, Lots)
                .Select(lot => Loss([.. rows.Where((_, i) => i % Lots == lot).SelectMany(r => r)], Fit([.. rows.Where((_, i) => i % Lots != lot).SelectMany(r => r)], clues.Count)))
                .Average();
            output.WriteLine("  " + string.Concat(clues.Select(c => $"{c,13}")));
            Line("now", weights, Loss([.. rows.SelectMany(r => r)], weights));
            Line("fit", fit, checkedLoss);
        }

        void Line(string name, IReadOnlyList<double> weights, double loss) => output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"  {name,-4}{string.Concat(weights.Select(w => string.Create(CultureInfo.InvariantCulture, $"{w,10:F2}   ")))} log loss {loss:F4}{(name == "fit" ? ", five-fold" : "")}"));
    }

    /// <summary>Prints, for all songs of the corpora of which the swing is known, how many are heard of the right class by their true beats, and the error.</summary>
    public static void Swing(TextWriter output, string[] corpora)
    {
        List<SwungSong> songs =
        [
            .. Hear(output, corpora, (truth, audio) => truth is { SwingRatio: double ratio, Checks.Swing: true }
                ? new SwungSong(truth.Id, ratio, SwingMeter.Of(Hearing.Spectrum(audio), [.. truth.Beats]).Ratio.Value) : null),
        ];
        List<SwungSong> other = songs.FindAll(s => SwingMeasures.IsClassRight(s.True, s.Heard) == false);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{songs.Count} songs with their true beats: mean error of the ratio {songs.Average(s => SwingMeasures.Error(s.True, s.Heard) ?? 0):F3}, {other.Count} of the other class"));
        foreach (SwungSong song in other)
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {song.Id}: {song.True:F2}, heard {song.Heard:F2}"));
        }
    }

    private static IEnumerable<T> Hear<T>(TextWriter output, string[] corpora, Func<TrackTruth, MonoAudio, T?> hear)
        where T : class
    {
        List<(string Corpus, string Id, string Audio)> files = [];
        foreach (string corpus in corpora)
        {
            using JsonDocument manifest = JsonDocument.Parse(File.ReadAllText(Path.Combine(corpus, "manifest.json")));
            files.AddRange(manifest.RootElement.GetProperty("songs").EnumerateArray().Where(s => s.GetProperty("group").GetString() != "degraded")
                .Select(s => (corpus, s.GetProperty("id").GetString()!, Path.Combine(corpus, s.GetProperty("audio").GetString()!))).Where(s => File.Exists(s.Item3)));
        }

        T?[] heard = new T?[files.Count];
        Parallel.For(0, files.Count, i =>
        {
            TrackTruth truth = TrackTruth.Read(File.ReadAllText(Path.Combine(files[i].Corpus, "truth", files[i].Id + ".json")));
            try
            {
                heard[i] = hear(truth, AudioFile.Read(files[i].Audio).Audio);
            }
            catch (AudioException e)
            {
                lock (output)
                {
                    output.WriteLine($"{files[i].Id}: {e.Message}");
                }
            }
        });
        return heard.OfType<T>();
    }

    private static Song? Heard(TrackTruth truth, MonoAudio audio)
    {
        if (!truth.Checks.Sections || truth.Sections is not { Count: > 1 } sections)
        {
            return null;
        }

        TrackMap map = TrackListener.Listen(audio);
        if (map.Beats.Count == 0)
        {
            return null;
        }

        // what was heard of the map's own beats, once more
        double[] beats = [.. map.Beats.Select(b => b.Seconds)];
        Spectrogram spectrum = Hearing.Spectrum(audio);
        BeatFeatures features = BeatFeatures.Of(audio, spectrum, beats);
        SelfLikeness likeness = SelfLikeness.Of(features);
        float[] start = CountPath.Near(Ear.ListenWithAll(spectrum, null, default).Start, beats);
        int inBar = map.Meter.Value.BeatsInBar;
        List<Row> starts = [];
        for (int at = 0; at < beats.Length; at++)
        {
            if (map.Beats[at].Count == 1 && BoundaryEvidence.CluesAt(at, start, inBar, features, likeness) is double[] clues)
            {
                starts.Add(new Row(clues, 0, sections.Any(s => Math.Abs(s.Start - beats[at]) < Near)));
            }
        }

        int[] known = [.. sections.Select(s => Nearest(beats, s.Start)).Distinct()];
        string[] labels = [.. known.Select(b => sections.MinBy(s => Math.Abs(s.Start - beats[b]))!.Label)];
        List<Row> pairs = [];
        for (int a = 0; a < known.Length; a++)
        {
            for (int b = a + 1; b < known.Length; b++)
            {
                if (SectionLabels.CluesOf(a, b, known, beats.Length, features, SectionLabels.Weights) is ({ } clues, double raised))
                {
                    pairs.Add(new Row(clues, raised, labels[a] == labels[b]));
                }
            }
        }

        return new Song(starts, pairs, weights =>
        {
            string[] found = SectionLabels.Find(known, beats.Length, features, weights);
            AnswerSection[] answer = [.. known.Select((b, i) => new AnswerSection(beats[b], i + 1 < known.Length ? beats[known[i + 1]] : sections[^1].End, found[i]))];
            return SectionMeasures.LabelF([.. sections.Select(s => new AnswerSection(s.Start, s.End, s.Label))], answer);
        });
    }

    private static int Nearest(double[] beats, double seconds) => Enumerable.Range(0, beats.Length).MinBy(i => Math.Abs(beats[i] - seconds));

    private static double Loss(List<Row> rows, IReadOnlyList<double> weights)
        => rows.Average(r => -Math.Log(Math.Max(1e-12, r.Is ? r.Chance(weights) : 1 - r.Chance(weights))));

    // Newton's method: some eight steps come to rest.
    private static double[] Fit(List<Row> rows, int clues)
    {
        double[] weights = new double[clues];
        for (int round = 0; round < 50; round++)
        {
            double[,] curve = new double[clues, clues + 1];
            for (int i = 0; i < clues; i++)
            {
                curve[i, i] = i + 1 < clues ? Ridge : 0;
                curve[i, clues] = -curve[i, i] * weights[i];
            }

            foreach (Row row in rows)
            {
                double chance = row.Chance(weights);
                for (int i = 0; i < clues; i++)
                {
                    curve[i, clues] += row.Clues[i] * ((row.Is ? 1 : 0) - chance);
                    for (int k = 0; k < clues; k++)
                    {
                        curve[i, k] += row.Clues[i] * row.Clues[k] * chance * (1 - chance);
                    }
                }
            }

            double[] step = Solve(curve);
            for (int i = 0; i < clues; i++)
            {
                weights[i] += step[i];
            }

            if (step.Max(Math.Abs) < 1e-6)
            {
                break;
            }
        }

        return weights;
    }

    // Gauss elimination with the largest first; the right side is the last column.
    private static double[] Solve(double[,] rows)
    {
        int n = rows.GetLength(0);
        for (int i = 0; i < n; i++)
        {
            int largest = Enumerable.Range(i, n - i).MaxBy(r => Math.Abs(rows[r, i]));
            for (int k = i; k <= n; k++)
            {
                (rows[i, k], rows[largest, k]) = (rows[largest, k], rows[i, k]);
            }

            for (int r = 0; r < n; r++)
            {
                double part = r == i ? 0 : rows[r, i] / rows[i, i];
                for (int k = i; k <= n; k++)
                {
                    rows[r, k] -= part * rows[i, k];
                }
            }
        }

        return [.. Enumerable.Range(0, n).Select(i => rows[i, n] / rows[i, i])];
    }

    private sealed record Row(double[] Clues, double Raised, bool Is)
    {
        public double Chance(IReadOnlyList<double> weights) => 1 / (1 + Math.Exp(-(Clues.Zip(weights, (c, w) => c * w).Sum() + Raised)));
    }

    private sealed record Song(List<Row> Starts, List<Row> Pairs, Func<IReadOnlyList<double>, double> LabelF);

    private sealed record SwungSong(string Id, double True, double Heard);
}
