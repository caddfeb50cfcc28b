namespace Scuff.Music.Corrections;

/// <summary>
/// Applies corrections one after the other. What is said about places is kept in seconds on the way, so that the beats may change beneath it; at the
/// end everything is put on the beats there are.
/// </summary>
internal sealed class CorrectionRun
{
    // A boundary that is this near to the place named is the one that is meant.
    private const double NearSeconds = 4;

    // Nothing that a person would call a section is shorter, so a boundary set this near to another one takes its place.
    private const int NearBeats = 4;

    // More beats than an hour has at 400 a minute: what asks for more is no music.
    private const int MostBeats = 24_000;

    private static readonly double[] SimpleRatios = [0.25, 1.0 / 3, 0.5, 2.0 / 3, 1, 1.5, 2, 3, 4];

    private readonly TrackMap _heard;
    private readonly List<double> _ones = [];
    private readonly List<Place> _sections = [];
    private double[] _beats;
    private Estimate<Meter> _meter;
    private Estimate<double> _swing;
    private (double Seconds, double Confidence)? _first;
    private bool _areBeatsNew;
    private bool _isLaidAnew;

    public CorrectionRun(TrackMap heard)
    {
        _heard = heard;
        _beats = [.. heard.Beats.Select(b => b.Seconds)];
        _meter = heard.Meter;
        _swing = heard.Swing;
        _ones.AddRange(CountRun.RestartsIn(heard.Beats, heard.Meter.Value).Select(i => heard.Beats[i].Seconds));
        foreach (TrackSection section in heard.Sections.Where(s => s.FirstBeat >= 0 && s.FirstBeat < heard.Beats.Count))
        {
            _sections.Add(new Place(_beats[section.FirstBeat], section.Label, section.Name, section.Confidence));
        }

        if (heard.FirstCount.Value >= 0 && heard.FirstCount.Value < _beats.Length)
        {
            _first = (_beats[heard.FirstCount.Value], heard.FirstCount.Confidence);
        }
    }

    /// <summary>Applies one.</summary>
    public void Apply(Correction correction)
    {
        switch (correction)
        {
            case Correction.TapAlong taps:
                Tap(taps);
                break;
            case Correction.SetSwing swing when double.IsFinite(swing.Ratio) && swing.Ratio > 0:
                _swing = Estimate<double>.Said(swing.Ratio);
                break;
            case Correction.SetSwing or Correction.Unknown:
                break;
            case Correction.SetMeter meter:
                Measure(meter.Meter);
                break;
            case var _ when _beats.Length < 2:
                // everything else speaks of beats, and there are none
                break;
            case Correction.ChangeBeat change:
                Change(change.Level, change.From ?? double.NegativeInfinity, change.To ?? double.PositiveInfinity);
                break;
            case Correction.ShiftOne shift:
                Shift(Math.Clamp(shift.Beats, -64, 64), shift.From ?? double.NegativeInfinity);
                break;
            case Correction.MoveBoundary move when double.IsFinite(move.From) && double.IsFinite(move.To):
                Move(move.From, move.To);
                break;
            case Correction.AddBoundary add when double.IsFinite(add.At):
                Add(add.At, add.Label);
                break;
            case Correction.RemoveBoundary remove when double.IsFinite(remove.At):
                Remove(remove.At);
                break;
            case Correction.NameSection name when double.IsFinite(name.At):
                Name(name);
                break;
            case Correction.SetFirstCount first when double.IsFinite(first.At):
                SetOne(Beat(first.At));
                _first = (Beat(first.At), 1);
                break;
            default:
                // a place that is no number
                break;
        }

        // what was moved may have passed its neighbours
        Place[] inOrder = [.. _sections.OrderBy(s => s.Seconds)];
        _sections.Clear();
        _sections.AddRange(inOrder);
        _ones.Sort();
    }

    /// <summary>The corrected map.</summary>
    public TrackMap Result()
    {
        TrackMap map = _heard with { Swing = _swing, Meter = _meter };
        if (_beats.Length == 0)
        {
            return map;
        }

        if (_isLaidAnew || _areBeatsNew)
        {
            map = map with { Beats = Laid() };
        }

        (int Start, Place Section)[] places =
        [
            .. _sections.GroupBy(s => Nearest(s.Seconds))
                .Select(g => (g.Key, g.OrderBy(s => s.Confidence).Last()))
                .OrderBy(p => p.Key),
        ];
        TrackSection[] sections =
        [
            .. places.Select((p, i) => new TrackSection(
                p.Start,
                (i + 1 < places.Length ? places[i + 1].Start : _beats.Length) - p.Start,
                p.Section.Label,
                p.Section.Name,
                p.Section.Confidence)),
        ];
        double tempo = _areBeatsNew ? TempoOf(_beats) : _heard.Tempo.Value;
        return map with
        {
            Sections = [.. sections],
            FirstCount = FirstOf(sections),
            Tempo = _areBeatsNew
                ? new Estimate<double>(tempo, 1, [new Alternative<double>(tempo / 2, 0), new Alternative<double>(tempo * 2, 0)])
                : _heard.Tempo,

            // it spoke of beats that were missing
            Remark = _heard.Beats.Count == 0 ? "" : _heard.Remark,
        };
    }

    private static double TempoOf(double[] beats)
    {
        double[] lengths = [.. beats.Zip(beats.Skip(1), (a, b) => b - a).Order()];
        if (lengths.Length == 0)
        {
            return 0;
        }

        double middle = lengths[lengths.Length / 2];
        return 60 / lengths.Where(l => Math.Abs(l - middle) <= 0.06 * middle).Average();
    }

    private Estimate<int> FirstOf(TrackSection[] sections)
    {
        if (_first is not { } first)
        {
            return new Estimate<int>(sections.Length > 0 ? sections[0].FirstBeat : Nearest(_ones.Count > 0 ? _ones[0] : 0), 0.5);
        }

        int beat = Nearest(first.Seconds);
        return !_areBeatsNew && !_isLaidAnew && beat == _heard.FirstCount.Value && first.Confidence < 1 ? _heard.FirstCount : new Estimate<int>(beat, first.Confidence);
    }

    private ValueList<TrackBeat> Laid() => CountRun.Lay(_beats, _meter.Value, _ones.Concat(_sections.Select(s => s.Seconds)).Select(Nearest));

    private int Nearest(double seconds)
    {
        int i = Array.BinarySearch(_beats, seconds);
        if (i >= 0)
        {
            return i;
        }

        int after = Math.Clamp(~i, 0, _beats.Length - 1);
        return after > 0 && seconds - _beats[after - 1] <= _beats[after] - seconds ? after - 1 : after;
    }

    private double Beat(double seconds) => _beats[Nearest(seconds)];

    private void Tap(Correction.TapAlong taps)
    {
        double[] tapped = TapFit.BeatsOf(taps.Seconds);
        if (tapped.Length < 2 || tapped.Length > MostBeats)
        {
            return;
        }

        double period = (tapped[^1] - tapped[0]) / (tapped.Length - 1);
        double from = Math.Max(taps.From ?? (_beats.Length > 0 ? Math.Min(_beats[0], tapped[0]) : 0), 0) - (period / 4);
        double to = (taps.To ?? Math.Max(_beats.Length > 0 ? _beats[^1] : _heard.Seconds, tapped[^1])) + (period / 4);
        List<double> row = [.. tapped.Where(t => t >= from && t <= to)];
        if (row.Count == 0 || (to - from) / period > MostBeats)
        {
            return;
        }

        // the music as it was heard bends the row beyond the taps, as far as it can be counted in these beats at all
        BeatCurve? curve = _beats.Length < 2 ? null : new BeatCurve(_beats);
        double stride = curve is null ? 0 : (curve.BeatAt(tapped[^1]) - curve.BeatAt(tapped[0])) / (tapped.Length - 1);
        double simple = SimpleRatios.MinBy(r => Math.Abs(Math.Log(r / Math.Max(stride, 1e-6))));
        if (curve is not null && Math.Abs((stride / simple) - 1) < 0.05)
        {
            double last = curve.BeatAt(row[^1]);
            for (int k = 1; curve.SecondsAt(last + (k * simple)) is double at && at <= to; k++)
            {
                row.Add(at);
            }

            double first = curve.BeatAt(row[0]);
            for (int k = 1; curve.SecondsAt(first - (k * simple)) is double at && at >= Math.Max(from, 0); k++)
            {
                row.Insert(0, at);
            }
        }
        else
        {
            for (double at = row[^1] + period; at <= to; at += period)
            {
                row.Add(at);
            }

            for (double at = row[0] - period; at >= Math.Max(from, 0); at -= period)
            {
                row.Insert(0, at);
            }
        }

        bool hadBeats = _beats.Length > 0;
        _beats =
        [
            .. _beats.Where(b => b < from && b < row[0] - (period / 2)),
            .. row,
            .. _beats.Where(b => b > to && b > row[^1] + (period / 2)),
        ];
        _areBeatsNew = true;
        if (!hadBeats)
        {
            _ones.Add(row.MinBy(b => Math.Abs(b - tapped[0])));
            _sections.Add(new Place(_ones[0], "A", "", 0.5));
        }
    }

    private void Change(BeatLevel level, double from, double to)
    {
        int first = Array.FindIndex(_beats, b => b >= from);
        int last = Array.FindLastIndex(_beats, b => b <= to);
        if (first < 0 || last <= first)
        {
            return;
        }

        double[] between = [.. Enumerable.Range(first, last - first).Select(i => (_beats[i] + _beats[i + 1]) / 2)];
        double beyond = _beats[last] + ((_beats[last] - _beats[last - 1]) / 2);
        if (last + 1 < _beats.Length)
        {
            beyond = (_beats[last] + _beats[last + 1]) / 2;
        }

        List<double> changed = [];
        switch (level)
        {
            case BeatLevel.Half:
                ValueList<TrackBeat> laid = Laid();
                int[] ones = [.. Enumerable.Range(first, last - first + 1).Where(i => laid[i].Count == 1)];
                int kept = ones.Count(i => i % 2 == 1) * 2 > ones.Length ? 1 : 0;
                changed.AddRange(Enumerable.Range(first, last - first + 1).Where(i => i % 2 == kept).Select(i => _beats[i]));
                break;
            case BeatLevel.Double:
                changed.AddRange(_beats[first..(last + 1)].Concat(between).Order());
                if (beyond <= Math.Max(_heard.Seconds, _beats[^1]))
                {
                    changed.Add(beyond);
                }

                break;
            default:
                changed.AddRange(between);
                if (beyond <= Math.Max(_heard.Seconds, _beats[^1]))
                {
                    changed.Add(beyond);
                }

                MoveAll(s => s >= _beats[first] - 0.001 && s <= _beats[last] + 0.001
                    ? (s + (Nearest(s) + 1 < _beats.Length ? _beats[Nearest(s) + 1] : beyond + (beyond - s))) / 2
                    : s);
                break;
        }

        _beats = [.. _beats[..first], .. changed, .. _beats[(last + 1)..]];
        _areBeatsNew = true;
    }

    private void Shift(int by, double from)
    {
        if (by == 0)
        {
            return;
        }

        ValueList<TrackBeat> laid = Laid();
        int cycle = _meter.Value.BeatsInEight;
        int first = Enumerable.Range(0, laid.Count).FirstOrDefault(i => laid[i].Seconds >= from - 0.001 && laid[i].Count == 1, -1);
        if (first < 0)
        {
            return;
        }

        double place = laid[first].Seconds;
        List<double> moved = [place, .. _ones.Where(o => o > place + 0.001)];
        _ones.RemoveAll(o => o >= place - 0.001);
        _ones.AddRange(moved.Select(Moved));
        for (int i = 0; i < _sections.Count; i++)
        {
            Place section = _sections[i];
            if (section.Seconds >= place - 0.001 && section.Confidence < 1)
            {
                _sections[i] = section with { Seconds = Moved(section.Seconds) };
            }
        }

        if (_first is { Confidence: < 1 } start && start.Seconds >= place - 0.001)
        {
            _first = start with { Seconds = Moved(start.Seconds) };
        }

        _isLaidAnew = true;

        double Moved(double seconds)
        {
            int beat = Nearest(seconds) + by;
            while (beat < 0)
            {
                beat += cycle;
            }

            return _beats[Math.Min(beat, _beats.Length - 1)];
        }
    }

    private void Measure(Meter meter)
    {
        bool isSame = meter == _meter.Value;
        _meter = Estimate<Meter>.Said(meter);
        if (isSame || _beats.Length == 0)
        {
            return;
        }

        double first = _ones.Count > 0 ? _ones[0] : _beats[0];
        _ones.Clear();
        _ones.Add(first);
        ValueList<TrackBeat> bars = CountRun.Lay(_beats, meter, [Nearest(first)]);
        double[] lines = [.. bars.Where(b => b.BarPosition == 1).Select(b => b.Seconds)];
        if (lines.Length > 0)
        {
            for (int i = 0; i < _sections.Count; i++)
            {
                Place section = _sections[i];
                _sections[i] = section.Confidence < 1 ? section with { Seconds = lines.MinBy(l => Math.Abs(l - section.Seconds)) } : section;
            }

            if (_first is { Confidence: < 1 } start)
            {
                _first = start with { Seconds = lines.MinBy(l => Math.Abs(l - start.Seconds)) };
            }
        }

        _isLaidAnew = true;
    }

    private void Move(double from, double to)
    {
        int index = NearestSection(from);
        if (index < 0)
        {
            Add(to, "");
            return;
        }

        Place old = _sections[index];
        double place = Beat(to);
        _sections.RemoveAt(index);
        _ones.RemoveAll(o => Nearest(o) == Nearest(old.Seconds));
        SetOne(place);
        Put(old with { Seconds = place, Confidence = 1 });
        if (_first is { Confidence: < 1 } first && Nearest(first.Seconds) == Nearest(old.Seconds))
        {
            _first = first with { Seconds = place };
        }
    }

    private void Add(double at, string label)
    {
        double place = Beat(at);
        string letter = label.Length > 0 ? label : NewLetter();
        int same = _sections.FindIndex(s => Math.Abs(Nearest(s.Seconds) - Nearest(place)) < NearBeats);
        if (same >= 0 && label.Length == 0)
        {
            letter = _sections[same].Label;
        }

        SetOne(place);
        Put(new Place(place, letter, same >= 0 ? _sections[Math.Min(same, _sections.Count - 1)].Name : "", 1));
    }

    private void Remove(double at)
    {
        int index = NearestSection(at);

        // before the first section there is nothing that could go on
        if (index > 0)
        {
            double place = _sections[index].Seconds;
            _sections.RemoveAt(index);
            _ones.RemoveAll(o => Nearest(o) == Nearest(place));
            _isLaidAnew = true;
        }
    }

    private void Name(Correction.NameSection name)
    {
        // a place on the boundary belongs to what begins there, even if the boundary has moved by a hair since it was named
        int index = _sections.FindLastIndex(s => s.Seconds <= name.At + 0.3);
        if (index >= 0)
        {
            _sections[index] = _sections[index] with { Label = name.Label ?? _sections[index].Label, Name = name.Name ?? _sections[index].Name };
        }
    }

    // A count 1 that somebody has set: what was heard within half an eight of it was the same, at the wrong place.
    private void SetOne(double place)
    {
        int beat = Nearest(place);
        _ones.RemoveAll(o => Math.Abs(Nearest(o) - beat) < NearBeats);
        for (int i = 0; i < _sections.Count; i++)
        {
            if (_sections[i].Confidence < 1 && Math.Abs(Nearest(_sections[i].Seconds) - beat) < NearBeats)
            {
                _sections[i] = _sections[i] with { Seconds = place };
            }
        }

        _ones.Add(place);
        _isLaidAnew = true;
    }

    private void Put(Place section)
    {
        _sections.RemoveAll(s => Nearest(s.Seconds) == Nearest(section.Seconds));
        _sections.Add(section);
        _isLaidAnew = true;
    }

    private int NearestSection(double seconds)
    {
        if (_sections.Count == 0)
        {
            return -1;
        }

        int nearest = Enumerable.Range(0, _sections.Count).MinBy(i => Math.Abs(_sections[i].Seconds - seconds));
        return Math.Abs(_sections[nearest].Seconds - seconds) <= NearSeconds ? nearest : -1;
    }

    private string NewLetter()
    {
        for (char letter = 'A'; letter <= 'Z'; letter++)
        {
            if (_sections.TrueForAll(s => s.Label != letter.ToString()))
            {
                return letter.ToString();
            }
        }

        return "Z";
    }

    private void MoveAll(Func<double, double> moved)
    {
        for (int i = 0; i < _ones.Count; i++)
        {
            _ones[i] = moved(_ones[i]);
        }

        for (int i = 0; i < _sections.Count; i++)
        {
            _sections[i] = _sections[i] with { Seconds = moved(_sections[i].Seconds) };
        }

        _first = _first is { } first ? (moved(first.Seconds), first.Confidence) : null;
    }

    private sealed record Place(double Seconds, string Label, string Name, double Confidence);
}
