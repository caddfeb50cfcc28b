using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Tests.Prose;

/// <summary>What a dance means, one action a line, without regard to words and places in the text.</summary>
internal static class Danced
{
    /// <summary>Every section, tag and option: counts, actions, feet, weight and turns.</summary>
    public static List<string> Of(Dance dance)
    {
        List<string> told = [];
        foreach (Part part in dance.Parts)
        {
            Weight weight = dance.Start;
            foreach (Section section in part.Sections)
            {
                Tell(told, $"part {part.Name} section {section.Number}", section, ref weight);
            }
        }

        foreach (Tag tag in dance.Tags)
        {
            Weight weight = Weight.Unknown;
            Tell(told, $"{(tag.IsBridge ? "bridge" : "tag")} {tag.Name}", tag.Body, ref weight);
        }

        return told;
    }

    private static void Tell(List<string> told, string where, Section section, ref Weight weight)
    {
        told.Add($"{where}, {section.Length} counts");
        foreach (WrittenLine line in section.Lines)
        {
            foreach (WrittenStep step in line.Steps)
            {
                weight = step.Action.WeightAfter(weight);
                told.Add($"{where} {Action(step)} weight {weight}");
            }

            told.AddRange(line.Claims.Select(c => $"{where} [{c.Facing}]"));
            foreach (StepOption option in line.Options)
            {
                told.Add($"{where} option {option.Name} {option.Replaces.Start} to {option.Replaces.End}");
                told.AddRange(option.Moves.SelectMany(m => m.Steps).Select(s => $"{where} option {Action(s)}"));
            }
        }
    }

    private static string Action(WrittenStep step)
    {
        string with = string.Concat(step.With.Select(w => $" with {Words(w)}"));
        return $"{CountGrid.LabelOf(step.Count.Place)} {Words(step.Action)}{with}";
    }

    // where no foot acts (a clap, a snap) the way it goes is only manner
    private static string Words(StepAction action) => action.Foot == ActingFoot.None
        ? $"{action.Kind} {action.Effect} {action.Turn}"
        : $"{action.Kind} {action.Foot} {action.Direction} {action.Effect} {action.Turn}";
}
