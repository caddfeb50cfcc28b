using Scuff.Analysis.Loads;
using Scuff.Dances;
using Scuff.Music;
using Scuff.Timing;

namespace Scuff.Analysis.Fit;

/// <summary>Ranks tracks for a dance, and dances for a track, by tempo, meter, feel, length and how the phrases fit. The weights are ours.</summary>
public sealed class TrackMatcher
{
    // A hundredth of tempo away from what the dance is danced at; listeners notice 3 to 4 (trade: music, 5), and a twentieth weighs as much as a tag.
    private const int PointsPerHundredth = 100;
    private const int OtherMeter = 5000;
    private const int OtherFeel = 600;
    private const int DoubtfulMap = 300;
    private const int PointsPerTenSeconds = 30;

    // Common practice: a track of 2.5 to 4.5 minutes.
    private const double ShortTrack = 150;
    private const double LongTrack = 270;

    // How many interruptions are worth ranking: who needs more looks for other music.
    private const int MostInterruptions = 3;

    // Below this a beat is divided straight, above the other it swings.
    private const double Straight = 1.25;
    private const double Swung = 1.5;

    private readonly DanceFitter _fitter;
    private readonly double? _tempo;
    private readonly ValueList<UsualRange> _usual;
    private readonly bool? _wantsSwing;

    /// <summary>Prepares a dance.</summary>
    public TrackMatcher(Dance dance)
    {
        ArgumentNullException.ThrowIfNull(dance);
        Dance = dance;
        _fitter = new DanceFitter(dance, new FitOptions { MostInterruptions = MostInterruptions });
        _tempo = DancedTempo.FastestOf(dance)?.CountsPerMinute.ToDouble();
        _usual = UsualTempo.Of(dance.Rhythm);
        _wantsSwing = FeelOf(dance.Rhythm);
    }

    /// <summary>The dance.</summary>
    public Dance Dance { get; }

    /// <summary>
    /// The tracks that suit the dance best, the best first; of equal ones in the order given. Tracks are only fitted as far as they can still be among
    /// those: what is cheap to know is known first.
    /// </summary>
    /// <param name="maps">The tracks.</param>
    /// <param name="most">How many are wanted.</param>
    /// <param name="workers">How many work at the same time.</param>
    /// <param name="cancel">Stops the work.</param>
    public ValueList<TrackMatch> Rank(IReadOnlyList<TrackMap> maps, int most, int workers, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(maps);
        TrackMatch[] cheap = new TrackMatch[maps.Count];
        ParallelOptions parallel = new() { MaxDegreeOfParallelism = Math.Max(1, workers), CancellationToken = cancel };
        Parallel.For(0, maps.Count, parallel, i => cheap[i] = AtLeast(maps[i]));
        int[] order = [.. Enumerable.Range(0, maps.Count).OrderBy(i => cheap[i].Points).ThenBy(i => i)];

        // in lots, until nothing that is left can be among the best
        List<(TrackMatch Match, int Index)> best = [];
        int lot = Math.Max(16, workers * 16);
        for (int from = 0; from < order.Length; from += lot)
        {
            if (best.Count >= most && cheap[order[from]].Points > best[most - 1].Match.Points)
            {
                break;
            }

            TrackMatch[] fitted = new TrackMatch[Math.Min(lot, order.Length - from)];
            int limit = best.Count >= most ? best[most - 1].Match.Points : int.MaxValue;
            Parallel.For(0, fitted.Length, parallel, i => fitted[i] = Fitted(cheap[order[from + i]], limit));
            best.AddRange(fitted.Select((m, i) => (m, order[from + i])));
            best = [.. best.OrderBy(b => b.Match.Points).ThenBy(b => b.Index).Take(most)];
        }

        return [.. best.Select(b => b.Match)];
    }

    /// <summary>How one track suits the dance.</summary>
    public TrackMatch Of(TrackMap map) => Fitted(AtLeast(map), int.MaxValue);

    /// <summary>Whether a rhythm is danced to swung music: yes, no, or null when either will do or nothing is said.</summary>
    private static bool? FeelOf(string rhythm)
    {
        // triplet swing is the feel of these, straight of those (trade: music, 4)
        string[] swung = ["east coast", "west coast", "swing", "shuffle", "blues", "jive"];
        string[] straight = ["cha", "polka", "samba", "rumba", "nightclub", "disco", "hustle"];
        return swung.Any(r => rhythm.Contains(r, StringComparison.OrdinalIgnoreCase)) ? true
            : straight.Any(r => rhythm.Contains(r, StringComparison.OrdinalIgnoreCase)) ? false
            : null;
    }

    // Everything but the phrases: a match never has fewer points than this.
    private TrackMatch AtLeast(TrackMap map)
    {
        Ratio beats = _fitter.CountedFor(map);
        double counts = map.Tempo.Value / beats.ToDouble();
        double away = Away(counts);
        double swing = map.Swing.Value;
        bool isOther = map.Beats.Count > 0 && (Dance.BeatsPerBar == 3) != (map.Meter.Value.BeatsInBar == 3);
        double seconds = map.Seconds < ShortTrack ? ShortTrack - map.Seconds : map.Seconds > LongTrack ? map.Seconds - LongTrack : 0;
        return new TrackMatch
        {
            Map = map,
            Dance = Dance,
            CountsPerMinute = counts,
            TempoAway = away,
            Tempo = map.Beats.Count == 0 ? FitModel.Never / 2 : (int)Math.Round(Math.Abs(away) * 100 * PointsPerHundredth),
            Meter = isOther ? OtherMeter : 0,
            Feel = (_wantsSwing == true && swing < Straight) || (_wantsSwing == false && swing > Swung) ? OtherFeel : 0,
            Length = (int)Math.Round(Math.Min(seconds, 600) * PointsPerTenSeconds / 10),
            Doubt = map.Remark.Length > 0 ? DoubtfulMap : 0,
            Phrases = 0,
            Interruptions = null,
        };
    }

    private double Away(double counts)
    {
        if (_tempo is { } tempo)
        {
            return (counts / tempo) - 1;
        }

        return _usual.Count == 0 ? 0 : _usual.Select(r => counts < r.From ? (counts / r.From) - 1 : counts > r.To ? (counts / r.To) - 1 : 0).MinBy(Math.Abs);
    }

    private TrackMatch Fitted(TrackMatch match, int limit)
    {
        if (match.Map.Beats.Count == 0)
        {
            return match;
        }

        (int Price, int Interruptions)? kindest = _fitter.Kindest(match.Map, limit - match.Points);
        return kindest is { } found ? match with { Phrases = found.Price, Interruptions = found.Interruptions } : match with { Phrases = FitModel.Never / 2 };
    }
}
