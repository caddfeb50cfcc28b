using Scuff.Music;
using Scuff.Timing;

namespace Scuff.Analysis.Fit;

/// <summary>A track in the counts of a dance: when each count falls, and how much of the music begins on it.</summary>
public sealed class CountedMusic
{
    // How much begins, in hundredths of a section: phrases of four, of two and of one eight; an eight that is cut short is hardly felt as a beginning.
    internal const int FourEights = 80;
    internal const int TwoEights = 50;
    internal const int OneEight = 25;
    internal const int CutEight = 10;

    // A beginning that was heard with little confidence still counts for so much.
    private const int LeastSection = 60;

    private const double MiddleOfBeat = 0.5;

    private readonly double[] _seconds;
    private readonly int[] _strengths;
    private readonly int[] _sections;
    private readonly bool[] _stops;
    private readonly int _firstBeat;

    private CountedMusic(TrackMap map, Ratio beatsPerCount)
    {
        Map = map;
        BeatsPerCount = beatsPerCount;
        int beats = map.Beats.Count;
        int likely = map.FirstCount.Value >= 0 && map.FirstCount.Value < beats ? map.FirstCount.Value : 0;

        // at half time, counts fall on every second beat: on those that the likely start stands on
        _firstBeat = beatsPerCount.IsWhole ? likely % beatsPerCount.Numerator : 0;
        int counts = beats == 0 ? 0 : Math.Max(0, (((Ratio)(beats - 1 - _firstBeat) / beatsPerCount) + 1).Floor);
        _seconds = new double[counts + 1];
        _strengths = new int[counts];
        _sections = new int[counts];
        _stops = new bool[counts];
        int[] strengths = StrengthsOf(map);
        int[] sections = SectionsOf(map);
        for (int i = 0; i <= counts; i++)
        {
            _seconds[i] = SecondsAt(map, BeatOf(i));
        }

        for (int i = 0; i < counts; i++)
        {
            Ratio beat = BeatOf(i);
            int whole = beat.Floor;
            _strengths[i] = beat.IsWhole ? strengths[whole] : 0;
            _sections[i] = sections[whole];
            double middle = (_seconds[i] + _seconds[i + 1]) / 2;
            _stops[i] = map.Breaks.Any(b => b.IsStop && b.Start <= middle && middle < b.End);
        }

        Likely = counts == 0 ? 0 : Math.Clamp(CountAt(likely), 0, counts - 1);
    }

    /// <summary>The track.</summary>
    public TrackMap Map { get; }

    /// <summary>Beats of the music that a count takes: 1, 2 in half time, 1/2 in double time.</summary>
    public Ratio BeatsPerCount { get; }

    /// <summary>How many counts the music has.</summary>
    public int Counts => _strengths.Length;

    /// <summary>The count on which the dance would most likely begin.</summary>
    public int Likely { get; }

    /// <summary>Counts a minute.</summary>
    public double CountsPerMinute => Map.Tempo.Value / BeatsPerCount.ToDouble();

    /// <summary>A track in counts of a dance.</summary>
    /// <param name="map">The track.</param>
    /// <param name="beatsPerCount">Beats that a count takes: a whole number, or one over a whole number.</param>
    /// <exception cref="ArgumentOutOfRangeException">No dance is counted so.</exception>
    public static CountedMusic Of(TrackMap map, Ratio beatsPerCount)
    {
        ArgumentNullException.ThrowIfNull(map);
        if (beatsPerCount.Sign <= 0 || (!beatsPerCount.IsWhole && beatsPerCount.Numerator != 1) || beatsPerCount > 8 || beatsPerCount < new Ratio(1, 8))
        {
            throw new ArgumentOutOfRangeException(nameof(beatsPerCount));
        }

        return new CountedMusic(map, beatsPerCount);
    }

    /// <summary>When a count falls, in seconds; that after the last is the end of the last.</summary>
    public double SecondsOf(int count) => _seconds[count];

    /// <summary>
    /// When everything falls for who dances or plays it: counts from the start of the dance with their seconds, both rising, from the first
    /// count of the music to the end of the last. Where the beat swings and a count is a beat, the middle of each count is there too, late as
    /// the band plays it.
    /// </summary>
    /// <param name="begins">The count of the music on which the dance begins.</param>
    public ValueList<CountTime> Performed(int begins)
    {
        double share = Map.Swing.Value / (1 + Map.Swing.Value);
        bool swings = BeatsPerCount == 1 && double.IsFinite(share) && share is > MiddleOfBeat and < 1;
        List<CountTime> times = [];
        for (int i = 0; i <= Counts && Counts > 0; i++)
        {
            // a last count without length would stand still
            if (times.Count == 0 || _seconds[i] > times[^1].Seconds)
            {
                times.Add(new CountTime(i - begins, _seconds[i]));
            }

            if (swings && i < Counts && _seconds[i + 1] > _seconds[i])
            {
                times.Add(new CountTime(i - begins + 0.5, _seconds[i] + (share * (_seconds[i + 1] - _seconds[i]))));
            }
        }

        return times.ToValueList();
    }

    /// <summary>How much of the music begins on a count: 100 for a section, 0 for nothing.</summary>
    public int StrengthOf(int count) => _strengths[count];

    /// <summary>The section of the music in which a count lies, an index into those of the map; -1 before the first.</summary>
    public int SectionOf(int count) => _sections[count];

    /// <summary>Whether a section of the music begins on a count.</summary>
    public bool BeginsSection(int count) => _sections[count] >= 0 && (count == 0 || _sections[count - 1] != _sections[count]);

    /// <summary>Whether everybody stops during a count.</summary>
    public bool IsStop(int count) => _stops[count];

    /// <summary>The beat on which a count falls; between two beats at double time.</summary>
    public Ratio BeatOf(int count) => BeatsPerCount.IsWhole ? _firstBeat + (count * BeatsPerCount.Numerator) : _firstBeat + (count * BeatsPerCount);

    /// <summary>The count that is danced on a beat, or the last before it.</summary>
    public int CountAt(int beat) => ((beat - _firstBeat) / BeatsPerCount).Floor;

    /// <summary>Counts from the first count 1 of the music to a count: the intro, when the dance begins there.</summary>
    public int IntroOf(int count)
    {
        int one = 0;
        while (one < Counts && !(BeatOf(one) is { IsWhole: true } beat && Map.Beats[beat.Floor].Count == 1))
        {
            one++;
        }

        return count >= one && one < Counts ? count - one : count;
    }

    // What begins on each beat. Where sections are not known, the first eight begins one.
    private static int[] StrengthsOf(TrackMap map)
    {
        int[] strengths = new int[map.Beats.Count];
        int eight = map.Meter.Value.BeatsInEight;
        IEnumerable<TrackSection> sections = map.Sections.Count > 0
            ? map.Sections
            : [new TrackSection(Math.Max(0, Enumerable.Range(0, strengths.Length).FirstOrDefault(i => map.Beats[i].Count == 1)), strengths.Length, "", "", 1)];
        foreach (TrackSection section in sections)
        {
            int end = Math.Min(strengths.Length, section.FirstBeat + section.Beats);
            int from = section.FirstBeat;
            for (int beat = from; beat >= 0 && beat < end; beat++)
            {
                if (beat == section.FirstBeat)
                {
                    strengths[beat] = Math.Max(LeastSection, (int)Math.Round(100 * section.Confidence));
                }
                else if (map.Beats[beat].Count == 1)
                {
                    // after an eight that is cut short, the music counts anew
                    from = (beat - from) % eight == 0 ? from : beat;
                    strengths[beat] = StrengthOf(beat - from, end - beat, eight);
                }
            }
        }

        return strengths;
    }

    private static int StrengthOf(int since, int left, int eight)
    {
        int begins = since % (4 * eight) == 0 ? FourEights : since % (2 * eight) == 0 ? TwoEights : OneEight;
        int room = left < eight ? CutEight : left < 2 * eight ? OneEight : left < 4 * eight ? TwoEights : FourEights;
        return Math.Min(begins, room);
    }

    private static int[] SectionsOf(TrackMap map)
    {
        int[] sections = new int[map.Beats.Count];
        int at = -1;
        for (int beat = 0; beat < sections.Length; beat++)
        {
            while (at + 1 < map.Sections.Count && map.Sections[at + 1].FirstBeat <= beat)
            {
                at++;
            }

            sections[beat] = at;
        }

        return sections;
    }

    private static double SecondsAt(TrackMap map, Ratio beat)
    {
        ValueList<TrackBeat> beats = map.Beats;
        if (beats.Count == 0)
        {
            return 0;
        }

        if (beat.IsWhole && beat.Numerator < beats.Count)
        {
            return beats[beat.Numerator].Seconds;
        }

        int before = Math.Min(beat.Floor, beats.Count - 1);
        double share = (beat - before).ToDouble();
        double length = before + 1 < beats.Count ? beats[before + 1].Seconds - beats[before].Seconds
            : beats.Count > 1 ? beats[before].Seconds - beats[before - 1].Seconds : 0;
        return Math.Min(beats[before].Seconds + (share * length), Math.Max(map.Seconds, beats[before].Seconds));
    }
}
