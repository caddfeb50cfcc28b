using Scuff.App.Json;
using Scuff.Dances;
using Scuff.Timelines;

namespace Scuff.App.Explaining;

/// <summary>Names where in the dance a danced action stands.</summary>
internal static class DancedPlace
{
    /// <summary>The section number, or the name of a part's section (<c>A1</c>), of a tag, or <c>ending</c>.</summary>
    public static SectionName Of(TimedStep step, Timeline timeline)
    {
        PlanStretch stretch = timeline.Stretches[step.Stretch].Plan;
        return stretch.Kind switch
        {
            StretchKind.Tag => new SectionName(0, stretch.Name.Length > 0 ? stretch.Name : "tag"),
            StretchKind.Wait => new SectionName(0, "wait"),
            StretchKind.Ending => new SectionName(0, "ending"),
            _ when stretch.Name.Length > 0 => new SectionName(0, stretch.Name + step.Section.Number),
            _ => new SectionName(step.Section.Number, null),
        };
    }

    /// <summary>What a section is called where a stretch dances it: <c>section 2</c>, <c>part A section 1</c>, <c>tag</c>.</summary>
    public static string NameOf(PlanStretch stretch, Section section) => stretch.Kind switch
    {
        StretchKind.Tag => stretch.Name.Length > 0 ? $"tag “{stretch.Name}”" : "tag",
        StretchKind.Wait => "wait",
        StretchKind.Ending => "ending",
        _ => stretch.Name.Length > 0 ? $"part {stretch.Name} section {section.Number}" : $"section {section.Number}",
    };

    /// <summary>What a stretch is, in words: <c>Wall 2, starts at 9:00</c>.</summary>
    public static string Of(TimedStretch stretch)
    {
        PlanStretch plan = stretch.Plan;
        string facing = stretch.Facing?.ToString() ?? "an unknown wall";
        string name = plan.Name.Length > 0 ? $" “{plan.Name}”" : "";
        string part = plan.Name.Length > 0 ? $"Part {plan.Name} (wall {plan.Wall})" : $"Wall {plan.Wall}";
        return plan.Kind switch
        {
            StretchKind.Wall => plan.StartsWall ? $"{part}, starts at {facing}" : $"{part} goes on, facing {facing}",
            StretchKind.Tag => $"Tag{name}, facing {facing}",
            StretchKind.Quote => $"{(plan.Name.Length > 0 ? $"Part {plan.Name} section" : "Section")} {plan.Sections[0].Number} once more, facing {facing}",
            StretchKind.Wait => $"Wait {plan.Counts.Length} counts, facing {facing}",
            StretchKind.Ending => $"Ending, facing {facing}",
            _ => throw new ArgumentOutOfRangeException(nameof(stretch)),
        };
    }
}
