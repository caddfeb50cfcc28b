using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

/// <summary>Makes a catalogue entry of a move that a dance defines itself.</summary>
internal static class OwnMove
{
    /// <summary>The entry, right-named as the dance wrote it; null when its words could not be read.</summary>
    public static StepDefinition? From(string name, ValueList<WrittenMove> moves)
    {
        List<WrittenStep> steps = moves.SelectMany(m => m.Steps).ToList();
        if (steps.Count == 0 || steps.Exists(s => s.Action.Kind == ActionKind.Unknown) || name.Length == 0)
        {
            return null;
        }

        Foot first = steps.Select(s => s.Action.Foot.ToFoot()).FirstOrDefault(f => f is not null) ?? Foot.Right;
        Timing.Counts start = Timing.Counts.FromWhole(steps[0].Count.Place.Value.Floor);
        List<PatternRow> rows = [];
        foreach (WrittenStep step in steps)
        {
            StepAction action = first == Foot.Right ? step.Action : step.Action.Mirrored();
            RelativeFoot foot = action.Foot switch
            {
                ActingFoot.Right => RelativeFoot.Same,
                ActingFoot.Left => RelativeFoot.Other,
                ActingFoot.Both => RelativeFoot.Both,
                _ => RelativeFoot.None,
            };
            Timing.Counts at = step.Count.Place - start;
            rows.Add(new PatternRow(Timing.CountGrid.LabelOf(at), at, foot, action, false, action.Traits.Stretches));
        }

        return new StepDefinition
        {
            Id = "own_" + name.ToLowerInvariant().Replace(' ', '_'),
            Name = name.ToLowerInvariant(),
            Level = "",
            NamedBy = NamedBy.FirstFoot,
            Rows = rows.ToValueList(),
            Confidence = Confidence.CommonPractice,
        };
    }
}
