using Scuff.Analysis.Checks.Walks;
using Scuff.Analysis.Fit;
using Scuff.Analysis.Levels;
using Scuff.Analysis.Loads;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>What a check may look at: the dance and what was computed from it, each once and on demand.</summary>
public sealed class CheckContext
{
    private readonly DanceAnalysis _analysis;
    private readonly Lazy<ValueList<WeightFinding>> _weights;
    private readonly Lazy<FacingWalk> _facings;
    private readonly Lazy<DoubtfulPlaces> _doubts;
    private readonly Dictionary<Section, WeightWalk> _walks = new(ReferenceEqualityComparer.Instance);

    /// <summary>Makes the context of one analysis.</summary>
    public CheckContext(DanceAnalysis analysis)
    {
        _analysis = analysis;
        _weights = new Lazy<ValueList<WeightFinding>>(() => FindWeights().ToValueList());
        _facings = new Lazy<FacingWalk>(FindFacings);
        _doubts = new Lazy<DoubtfulPlaces>(() => new DoubtfulPlaces(Draft.Report));
    }

    /// <summary>The text, the dance and the reader's complaints.</summary>
    public Draft Draft => _analysis.Draft;

    /// <summary>The dance as written.</summary>
    public Dance Dance => _analysis.Dance;

    /// <summary>One plain repetition as danced.</summary>
    public Timeline WallTimeline => _analysis.WallTimeline;

    /// <summary>Plain repetitions until the floor is back at the front.</summary>
    public Timeline PlainTimeline => _analysis.PlainTimeline;

    /// <summary>The dance on each track that breaks its pattern.</summary>
    public ValueList<TrackTimeline> TrackTimelines => _analysis.TrackTimelines;

    /// <summary>Turn of one repetition, or null when it is unknown.</summary>
    public Turn? NetTurn => _analysis.NetTurn;

    /// <summary>Number of walls, or null when it is unknown.</summary>
    public int? Walls => _analysis.Walls;

    /// <summary>Other sheets with the same title.</summary>
    public ValueList<Namesake> Namesakes => _analysis.Namesakes;

    /// <summary>What the dance asks of a body.</summary>
    public DanceLoad Load => _analysis.Load;

    /// <summary>How much floor it uses.</summary>
    public FloorUse FloorUse => _analysis.FloorUse;

    /// <summary>The dance as its text has it on each of its tracks whose map is known.</summary>
    public ValueList<TrackFit> Fits => _analysis.Fits;

    /// <summary>The fastest tempo stated for it, or null.</summary>
    public DancedTempo? Tempo => _analysis.Tempo;

    /// <summary>The level that the published definitions give it.</summary>
    public ComputedLevel Level => _analysis.Level;

    /// <summary>Every interruption of the sheet, of all tracks.</summary>
    public IEnumerable<Interruption> Interruptions => Dance.Interruptions.Concat(Dance.Tracks.SelectMany(track => track.Interruptions));

    /// <summary>Troubles with the weight, everywhere in the dance.</summary>
    internal ValueList<WeightFinding> Weights => _weights.Value;

    /// <summary>False facings of an ordinary dance.</summary>
    internal FacingWalk Facings => _facings.Value;

    /// <summary>Whether the reader already has an error or a question there, so that what stands there proves nothing.</summary>
    public bool IsDoubtful(TextSpan span) => _doubts.Value.Touch(span);

    /// <summary>The part an interruption is in, or null when it is not there.</summary>
    public Part? PartOf(Interruption interruption) => interruption.PartName.Length > 0
        ? Dance.FindPart(interruption.PartName)
        : Dance.Parts.Count == 1 ? Dance.Parts[0] : null;

    /// <summary>The actions of a section.</summary>
    /// <param name="section">The section.</param>
    /// <param name="isAfterGap">Whether counts are missing just before it.</param>
    internal IEnumerable<WalkedStep> StepsOf(Section section, bool isAfterGap = false)
    {
        HashSet<int> missing = [.. MissingCounts.Gaps(section)];
        foreach (WrittenLine line in section.Lines)
        {
            bool isDoubtful = IsDoubtful(line.Span);
            isAfterGap |= missing.Contains(line.Counts.Start.Value.Floor);
            foreach (WrittenMove move in line.Moves)
            {
                foreach (WrittenStep step in move.Steps)
                {
                    yield return new WalkedStep(step, move, section, isDoubtful) { IsAfterGap = isAfterGap };
                    isAfterGap = false;
                }
            }
        }
    }

    /// <summary>The actions of a part.</summary>
    internal IEnumerable<WalkedStep> StepsOf(Part part)
    {
        bool isOpen = false;
        foreach (Section section in part.Sections)
        {
            foreach (WalkedStep step in StepsOf(section, isOpen))
            {
                yield return step;
            }

            isOpen = EndsOpen(part, section);
        }
    }

    /// <summary>Whether counts are missing (or too many) at a section's end, so that nobody knows which foot it should end on.</summary>
    private bool EndsOpen(Part part, Section section) => SectionShape.MissingTail(Dance, part, section).Any()
        || (section.ClaimedLength is { } claimed && claimed != section.Length)
        || (section.ClaimedLength is null && Dance.BeatsPerBar == 3 && section.Length.Value.Floor % 3 != 0);

    /// <summary>The actions danced instead of others in a section.</summary>
    internal IEnumerable<WalkedStep> StepsOf(ValueList<WrittenMove> moves, Section section, TextSpan span)
    {
        bool isDoubtful = IsDoubtful(span);
        return moves.SelectMany(move => move.Steps.Select(step => new WalkedStep(step, move, section, isDoubtful)));
    }

    /// <summary>Weight just before a place of a section: before its first action that is not earlier; unknown when there is none.</summary>
    internal Weight WeightBefore(Section section, Counts place)
    {
        _ = Weights;
        return WalkedWeight(section, place);
    }

    private Weight WalkedWeight(Section section, Counts place) => _walks.TryGetValue(section, out WeightWalk? walk)
        && section.Steps.FirstOrDefault(step => step.Count.Place >= place) is { } step
        ? walk.Before(step)
        : Weight.Unknown;

    private IEnumerable<WeightFinding> FindWeights()
    {
        List<WeightFinding> found = [];
        string first = Dance.Sequence.FirstOrDefault(item => !item.IsTag)?.Name ?? "";
        for (int i = 0; i < Dance.Parts.Count; i++)
        {
            Part part = Dance.Parts[i];
            bool isFirst = first.Length == 0 ? i == 0 : string.Equals(part.Name, first, StringComparison.OrdinalIgnoreCase);
            List<WalkedStep> steps = [.. StepsOf(part)];
            WeightWalk walk = WeightWalk.Over(steps, isFirst ? StartOf(steps) : Weight.Unknown, Repeats(part));
            found.AddRange(walk.Findings);
            foreach (Section section in part.Sections)
            {
                _walks[section] = walk;
            }
        }

        foreach (Section section in Dance.Parts.SelectMany(part => part.Sections))
        {
            foreach (StepOption option in section.Lines.SelectMany(line => line.Options))
            {
                found.AddRange(Inside(StepsOf(option.Moves, section, option.Span)));
            }
        }

        foreach (Section body in Dance.Tags.Select(tag => tag.Body)
            .Concat(Interruptions.SelectMany(i => i.Acts).OfType<InterruptionAct.Dance>().Select(act => act.Body))
            .Concat(Dance.Tracks.Select(track => track.Ending).Append(Dance.Ending).Select(ending => ending?.Body).OfType<Section>()))
        {
            found.AddRange(Inside(StepsOf(body)));
        }

        foreach (Interruption interruption in Interruptions)
        {
            found.AddRange(interruption.Changes.SelectMany(change => InChange(interruption, change)));
        }

        return found;
    }

    /// <summary>Whether the last count of the part leads into its first, and is there.</summary>
    private bool Repeats(Part part) => !Dance.IsPhrased && part.Sections.Count > 0 && !EndsOpen(part, part.Sections[^1]);

    /// <summary>Troubles within counts that are danced differently before a restart or tag.</summary>
    private IReadOnlyList<WeightFinding> InChange(Interruption interruption, ChangedCounts change)
    {
        Counts start = Counts.Zero;
        foreach (Section section in PartOf(interruption)?.Sections ?? default)
        {
            if (change.Replaces.Start < start + section.Length)
            {
                Weight before = WalkedWeight(section, change.Replaces.Start - start);
                return WeightWalk.Over([.. StepsOf(change.Moves, section, interruption.Span)], before, repeats: false).Findings;
            }

            start += section.Length;
        }

        return [];
    }

    /// <summary>Troubles within a piece whose start is judged elsewhere.</summary>
    private static IReadOnlyList<WeightFinding> Inside(IEnumerable<WalkedStep> steps)
        => WeightWalk.Over([.. steps], Weight.Unknown, repeats: false).Findings;

    /// <summary>Where no start is stated, a dance that begins with L starts with the weight on R.</summary>
    private Weight StartOf(IReadOnlyList<WalkedStep> steps)
        => !Dance.StartIsStated && WeightWalk.FirstNeed(steps) is { Written.FootIsNamed: true, Foot: { } foot }
            ? foot.Other().ToWeight()
            : Dance.Start;

    private FacingWalk FindFacings() => FacingWalk.Over(
        Dance.IsPhrased || Dance.Parts.Count == 0 ? [] : Dance.Parts[0].Sections.SelectMany(section => section.Lines),
        Facing.Front,
        line => IsDoubtful(line.Span));
}
