using System.Globalization;
using Scuff.App.Tracks;
using Scuff.App.Web.Contract;
using Scuff.Music;
using Scuff.Music.Corrections;
using Scuff.Repertoire;

namespace Scuff.App.Web.Tracks;

/// <summary>Tracks as the page shows them.</summary>
internal static class TrackPages
{
    // A bar of the drawing a tenth of a second wide is finer than a pixel of any screen that shows a whole track.
    private const double LoudnessPerSecond = 10;

    // What is quieter than this below the loudest moment is drawn as nothing.
    private const float Range = 26;

    // The ratios that a person can tell apart by ear, and their words in TrackWords.
    private static readonly double[] Swings = [1, 1.5, 2];

    private static readonly Meter[] Meters = [Meter.Four, Meter.Three, new(4, IsCompound: true)];

    /// <summary>A track in a list.</summary>
    public static TrackItem Item(TrackRow row, TrackDesk desk) => new(
        row.Id,
        KnownTrack.TitleOf(row),
        row.Facts.Artist,
        FactsOf(row),
        row.Facts.Seconds,
        row.Facts.Tempo,
        row.FileName,
        TrackSounds.MediaTypeOf(row),
        TrackSounds.NeedsSamples(row),
        row.HasMap,
        TrackDesk.IsOld(row),
        TrackDesk.IsByHand(row),
        [.. row.Tags],
        row.RemovedAt?.ToString("o", CultureInfo.InvariantCulture),
        desk.Jobs.Of(row.Id, Job));

    /// <summary>Long work.</summary>
    public static TrackJobItem Job(TrackJob job)
        => new(job.Id, job.Kind, job.Title, job.Track, job.State.ToString().ToLowerInvariant(), job.Part, job.Sentence);

    /// <summary>A track with its music.</summary>
    public static TrackAnswer Answer(KnownTrack track, TrackDesk desk) => new()
    {
        Track = Item(track.Row, desk),
        Music = track.Map is { } map ? Music(map, track.Said) : null,
        Said = [.. track.Said.All.Select(c => new TrackSaid(CorrectionWords.Of(c), TrackSaying.Text(c)))],
        Revision = track.Row.CorrectionsRevision,
        Notes = Notes(track),
    };

    private static string FactsOf(TrackRow row) => (row.Facts.Seconds, row.Facts.Tempo, row.HasMap) switch
    {
        (_, _, false) => "not heard yet",
        ({ } seconds, { } tempo, _) => $"{TrackWords.Length(seconds)}, {TrackWords.Tempo(tempo)} beats a minute",
        ({ } seconds, null, _) => $"{TrackWords.Length(seconds)}, no beat found",
        _ => "",
    };

    private static string[] Notes(KnownTrack track) =>
    [
        .. new[]
        {
            track.Trouble is { } trouble ? $"What was said of this track cannot be read. {trouble}" : "",
            track.Warning ?? "",
            track.Map?.Remark ?? "",
            track.Map is null || track.Heard.Doubts.Count == 0 ? "" : $"No more than a guess: {string.Join(", ", track.Heard.Doubts)}. Listen, and say it right.",
        }.Where(n => n.Length > 0),
    ];

    private static TrackMusic Music(TrackMap map, TrackCorrections said)
    {
        return new TrackMusic
        {
            Seconds = map.Seconds,
            Beats = [.. map.Beats.Select(b => Math.Round(b.Seconds, 4))],
            Counts = [.. map.Beats.Select(b => b.Count)],
            Bars = [.. map.Beats.Select(b => b.BarPosition)],
            Eight = map.Meter.Value.BeatsInEight,
            Eights = Eights(map),
            Sections = [.. map.Sections.Select(s => Part(map, s))],
            Breaks = [.. map.Breaks.Select(b => new TrackGap(b.Start, b.End, b.IsStop, TrackWords.Break(map, b)))],
            Loudness = Loudness(map.Loudness),
            LoudnessPerSecond = LoudnessPerSecond,
            Tempo = Tempo(map, said.All.Any(c => c is Correction.TapAlong or Correction.ChangeBeat)),
            Meter = MeterOf(map, said.All.Any(c => c is Correction.SetMeter)),
            Swing = Swing(map, said.All.Any(c => c is Correction.SetSwing)),
            Start = Start(map, said.All.Any(c => c is Correction.SetFirstCount)),
            StartBeat = map.FirstCount.Value,
            And = map.Swing.Value / (1 + map.Swing.Value),
        };
    }

    private static TrackEight[] Eights(TrackMap map)
    {
        HashSet<int> odd = [.. OddEight.In(map).Select(o => o.FirstBeat)];
        HashSet<int> begins = [.. map.Sections.Select(s => s.FirstBeat)];
        int[] starts = [.. Enumerable.Range(0, map.Beats.Count).Where(i => i == 0 || map.Beats[i].Count == 1 || begins.Contains(i))];
        return
        [
            .. starts.Select((start, i) =>
            {
                int end = i + 1 < starts.Length ? starts[i + 1] : map.Beats.Count;
                return new TrackEight(
                    start, end - start, SecondsOf(map, start), SecondsOf(map, end), TrackWords.SectionNumberAt(map, start), begins.Contains(start), odd.Contains(start));
            }),
        ];
    }

    private static TrackPart Part(TrackMap map, TrackSection section) => new(
        section.FirstBeat,
        section.Beats,
        SecondsOf(map, section.FirstBeat),
        SecondsOf(map, section.FirstBeat + section.Beats),
        section.Label,
        section.Name,
        $"{TrackWords.Section(section)}, {TrackWords.Counts(section.Beats)}",
        TrackWords.Sure(section.Confidence),
        section.Confidence);

    private static double SecondsOf(TrackMap map, int beat)
        => Math.Round(beat < map.Beats.Count ? map.Beats[beat].Seconds : Math.Max(map.Seconds, map.Beats[^1].Seconds), 4);

    private static int[] Loudness(LoudnessCurve curve)
    {
        if (curve.Decibels.Count == 0)
        {
            return [];
        }

        float loudest = curve.Decibels.Max();
        int many = (int)Math.Ceiling(curve.Decibels.Count / curve.PerSecond * LoudnessPerSecond);
        int[] drawn = new int[many];
        for (int i = 0; i < many; i++)
        {
            int from = (int)(i * curve.PerSecond / LoudnessPerSecond);
            int to = Math.Clamp((int)((i + 1) * curve.PerSecond / LoudnessPerSecond), from + 1, curve.Decibels.Count);
            float loud = curve.Decibels.Span[Math.Min(from, to - 1)..to].ToArray().Max();
            drawn[i] = (int)Math.Round(100 * Math.Clamp(1 + ((loud - loudest) / Range), 0, 1));
        }

        return drawn;
    }

    private static TrackEstimate Estimate<T>(Estimate<T> heard, bool isSaid, string words, params IEnumerable<TrackOther> others)
        => new(words, isSaid ? "said by you" : TrackWords.Sure(heard.Confidence), heard.Confidence, isSaid, [.. others]);

    private static TrackEstimate Tempo(TrackMap map, bool isSaid)
    {
        // who wrote the beats by hand may be wrong by half too
        double[] tempos = map.Tempo.Alternatives.Count > 0 ? [.. map.Tempo.Alternatives.Select(a => a.Value)] : [map.Tempo.Value / 2, map.Tempo.Value * 2];
        IEnumerable<TrackOther> others = map.Beats.Count < 2 ? [] :
        [
            .. tempos.Select(t => new TrackOther(
                $"{TrackWords.Tempo(Math.Round(t))}, {(t < map.Tempo.Value ? "half" : "twice")} as fast", new TrackSay("beat") { Is = t < map.Tempo.Value ? "half" : "double" })),
            new TrackOther("as fast, but halfway between", new TrackSay("beat") { Is = "off-beat" }),
        ];
        return Estimate(map.Tempo, isSaid, map.Beats.Count == 0 ? "no beat" : $"{TrackWords.Tempo(map.Tempo.Value)} beats a minute", others);
    }

    private static TrackEstimate MeterOf(TrackMap map, bool isSaid) => Estimate(
        map.Meter,
        isSaid,
        TrackWords.Meter(map.Meter.Value),
        Meters.Where(m => m != map.Meter.Value).Select(m => new TrackOther(
            TrackWords.Meter(m), new TrackSay("meter") { Is = m.IsCompound ? "6/8" : string.Create(CultureInfo.InvariantCulture, $"{m.BeatsInBar}/4") })));

    private static TrackEstimate Swing(TrackMap map, bool isSaid) => Estimate(
        map.Swing,
        isSaid,
        TrackWords.Swing(map.Swing.Value),
        Swings.Where(s => TrackWords.Swing(s) != TrackWords.Swing(map.Swing.Value)).Select(s => new TrackOther(TrackWords.Swing(s), new TrackSay("swing") { Ratio = s })));

    private static TrackEstimate Start(TrackMap map, bool isSaid)
    {
        if (map.FirstCount.Value < 0 || map.FirstCount.Value >= map.Beats.Count)
        {
            return Estimate(map.FirstCount, isSaid, "unknown");
        }

        return Estimate(
            map.FirstCount,
            isSaid,
            Words(map.FirstCount.Value),
            map.FirstCount.Alternatives.Where(a => a.Value >= 0 && a.Value < map.Beats.Count)
                .Select(a => new TrackOther(Words(a.Value), new TrackSay("first-count") { At = Math.Round(map.Beats[a.Value].Seconds, 3) })));

        string Words(int beat)
        {
            int counts = beat - TrackWords.PickupOf(map);
            return counts <= 0 ? $"at once, at {TrackWords.Time(map.Beats[beat].Seconds)}" : $"after {TrackWords.Counts(counts)}, at {TrackWords.Time(map.Beats[beat].Seconds)}";
        }
    }
}
