using System.Text;
using Scuff.Analysis.Loads;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Levels;

/// <summary>Computes the level of a dance.</summary>
internal static class LevelComputer
{
    /// <summary>The level with its reasons.</summary>
    public static ComputedLevel Of(DanceAnalysis analysis)
    {
        Finding finding = new(analysis);
        finding.MeasureLength();
        finding.MeasureTurns();
        finding.MeasureRhythm();
        finding.MeasurePattern();
        finding.MeasureBody();
        finding.MeasureFigures();
        ValueList<LevelReason> reasons = [.. finding.Reasons.OrderByDescending(reason => reason.Level).ThenBy(reason => reason.Measure)];
        bool isComplete = analysis.Draft.Report.Complaints.All(complaint => complaint.Severity < Severity.Question)
            && !analysis.OnceTimeline.Steps.Any(step => step.Action.Kind == ActionKind.Unknown);
        return new ComputedLevel(reasons.Count == 0 ? Level.AbsoluteBeginner : reasons[0].Level, reasons, isComplete);
    }

    private sealed class Finding(DanceAnalysis analysis)
    {
        private const int MostNames = 5;

        private readonly Dance _dance = analysis.Dance;
        private readonly Timeline _timeline = analysis.OnceTimeline;

        public List<LevelReason> Reasons { get; } = [];

        public void MeasureLength()
        {
            int length = _dance.Length.Value.Floor;
            Add(LevelMeasure.Counts, length, null);
            if (LevelLimits.Of(LevelMeasure.NewCounts).AbsoluteBeginner is { } most && length > most)
            {
                Add(LevelMeasure.NewCounts, NewCounts(), null);
            }
        }

        public void MeasureTurns()
        {
            int figures = 0;
            Ratio largest = 0;
            WrittenStep? at = null;
            WrittenStep? last = null;
            foreach (WrittenMove move in _dance.Sections.Concat(_dance.Tags.Select(tag => tag.Body)).SelectMany(s => s.Lines).SelectMany(l => l.Moves))
            {
                Ratio turn = 0;
                foreach (WrittenStep step in move.Steps)
                {
                    turn += step.Action.Turn.Amount;
                    last = step.Action.Turn.Sign != 0 ? step : last;
                }

                figures += turn.Sign;
                if (turn > largest)
                {
                    largest = turn;
                    at = last;
                }
            }

            Add(LevelMeasure.Turns, figures, StepOf(last));
            Add(LevelMeasure.TurnSize, largest, StepOf(at));
            Add(LevelMeasure.TurnInOne, analysis.Load.TurnInOne);
            Add(LevelMeasure.TurnInTwo, analysis.Load.TurnInTwo);
            Add(LevelMeasure.TurnInEight, analysis.Load.TurnInEight);
            Add(LevelMeasure.TurnOnOneFoot, analysis.Load.TurnOnOneFoot);
        }

        public void MeasureRhythm()
        {
            int between = 0;
            int quarters = 0;
            TimedStep? firstBetween = null;
            TimedStep? firstQuarter = null;
            foreach (TimedStep step in _timeline.Steps)
            {
                Ratio place = step.Written.Count.Place.Value;
                if (!place.IsWhole)
                {
                    between++;
                    firstBetween ??= step;
                    if (!(place * 2).IsWhole)
                    {
                        quarters++;
                        firstQuarter ??= step;
                    }
                }
            }

            Add(LevelMeasure.OffBeats, between, firstBetween);
            Add(LevelMeasure.QuarterBeats, quarters, firstQuarter);
        }

        public void MeasurePattern()
        {
            Add(LevelMeasure.Parts, _dance.Parts.Count, null);
            Counts first = _dance.Parts.Count > 0 && _dance.Parts[0].Sections.Count > 0 ? _dance.Parts[0].Sections[0].Length : Counts.Zero;
            int tags = Sequenced(_dance.Sequence);
            int restarts = 0;
            int early = 0;
            foreach (Track? track in _dance.Tracks.Select(track => (Track?)track).Append(null))
            {
                Interruption[] breaks = [.. _dance.Interruptions, .. track?.Interruptions ?? default];
                tags = Math.Max(tags, Sequenced(track is { Sequence.Count: > 0 } ? track.Sequence : _dance.Sequence) + Times(breaks.Where(AddsCounts)));
                restarts = Math.Max(restarts, Times(breaks.Where(Restarts)));
                early = Math.Max(early, Times(breaks.Where(each => Restarts(each) && each.AfterCounts <= first)));
            }

            Add(LevelMeasure.Tags, tags, null);
            Add(LevelMeasure.Restarts, restarts, null);
            Add(LevelMeasure.EarlyRestarts, early, null);
        }

        public void MeasureBody()
        {
            Add(LevelMeasure.Jumps, analysis.Load.Jumps.Count, analysis.Load.Jumps.Count > 0 ? analysis.Load.Jumps[0] : null);
            if (analysis.Tempo is { } tempo)
            {
                Add(LevelMeasure.Tempo, tempo.CountsPerMinute, null);
                if (analysis.Load.StepsInSix is { } steps)
                {
                    Add(LevelMeasure.StepRate, tempo.PerSecond(steps.Amount, steps.Counts), steps.At);
                }
            }
        }

        /// <summary>A level allows so many figures that are first met above it; what is met two levels above counts at both.</summary>
        public void MeasureFigures()
        {
            Dictionary<string, (Level Level, string Name)> figures = [];
            foreach (WrittenMove move in _dance.Sections.Concat(_dance.Tags.Select(tag => tag.Body)).SelectMany(s => s.Lines).SelectMany(l => l.Moves))
            {
                if (move.Definition is { Rows.Count: > 1 } figure && LevelPhrases.Find(figure.Level) is { } level && level > Level.AbsoluteBeginner)
                {
                    figures.TryAdd(figure.Id, (level, figure.Name));
                }
            }

            LevelLimit limit = LevelLimits.Of(LevelMeasure.HigherFigures);
            for (Level level = Level.Intermediate; level >= Level.AbsoluteBeginner; level--)
            {
                string[] above = [.. figures.Values.Where(figure => figure.Level > level).Select(figure => figure.Name).Distinct(StringComparer.Ordinal)];
                if (limit.Of(level) is { } most && above.Length > most)
                {
                    Reasons.Add(new LevelReason(level + 1, limit.Measure, above.Length, most, null, limit.Source) { Figures = Names(above) });
                    return;
                }
            }
        }

        private static string Names(string[] figures) => figures.Length <= MostNames
            ? LevelPhrases.Join(figures)
            : LevelPhrases.Join([.. figures.Take(MostNames), "others"]);

        private static int Sequenced(ValueList<SequenceItem> sequence) => sequence.Count(item => item.IsTag);

        private static int Times(IEnumerable<Interruption> breaks) => breaks.Sum(each => each.Walls.Distinct().Count());

        private static bool AddsCounts(Interruption interruption) => interruption.Acts.Any(act => act is not (InterruptionAct.Restart or InterruptionAct.GoOn));

        // a restart at the end of a wall is none
        private bool Restarts(Interruption interruption) => interruption.Restarts
            && interruption.AfterCounts is { } after
            && (_dance.IsPhrased || after < _dance.Length);

        // Two counts at a time, without regard to the foot and to turns, which are limited by themselves.
        private int NewCounts()
        {
            HashSet<string> seen = [];
            int fresh = 0;
            foreach (Section section in _dance.Sections)
            {
                int length = section.Length.Value.Floor;
                WrittenStep[] steps = [.. section.Steps];
                for (int start = 0; start < length; start += 2)
                {
                    if (seen.Add(Shape(steps, start)))
                    {
                        fresh += Math.Min(2, length - start);
                    }
                }
            }

            return fresh;
        }

        private static string Shape(WrittenStep[] steps, int start)
        {
            StringBuilder shape = new();
            bool? isMirrored = null;
            foreach (WrittenStep step in steps)
            {
                int count = step.Count.Place.Value.Floor;
                if (count < start || count >= start + 2)
                {
                    continue;
                }

                isMirrored ??= step.Action.Foot.ToFoot() is { } foot ? foot == Foot.Left : null;
                StepAction action = isMirrored == true ? step.Action.Mirrored() : step.Action;
                shape.Append((step.Count.Place.Value - start).ToString())
                    .Append(' ').Append((int)action.Kind)
                    .Append(' ').Append((int)action.Foot)
                    .Append(' ').Append((int)action.Direction)
                    .Append(' ').Append((int)action.Effect)
                    .Append(';');
            }

            return shape.ToString();
        }

        private TimedStep? StepOf(WrittenStep? written) => written is null
            ? null
            : _timeline.Steps.FirstOrDefault(step => ReferenceEquals(step.Written, written));

        private void Add(LevelMeasure measure, LoadPeak? peak)
        {
            if (peak is not null)
            {
                Add(measure, peak.Amount, peak.At);
            }
        }

        private void Add(LevelMeasure measure, Ratio value, TimedStep? at)
        {
            LevelLimit limit = LevelLimits.Of(measure);
            Level level = limit.LevelOf(value);
            if (level > Level.AbsoluteBeginner && limit.Of(level - 1) is { } most)
            {
                Reasons.Add(new LevelReason(level, measure, value, most, at is null ? null : DancePlace.Of(at, _timeline), limit.Source));
            }
        }
    }
}
