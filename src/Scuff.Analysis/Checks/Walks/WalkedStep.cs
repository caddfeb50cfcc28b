using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Analysis.Checks.Walks;

/// <summary>A written action on its way through a check, with what it belongs to.</summary>
/// <param name="Written">The action.</param>
/// <param name="Move">The move it is part of.</param>
/// <param name="Section">The section, tag body or replacement it stands in.</param>
/// <param name="IsDoubtful">Whether the reader already complained about its line, so that its weight proves nothing.</param>
internal sealed record WalkedStep(WrittenStep Written, WrittenMove Move, Section Section, bool IsDoubtful)
{
    /// <summary>Whether counts are missing just before it, so that the weight there is anybody's guess.</summary>
    public bool IsAfterGap { get; init; }

    public StepAction Action => Written.Action;

    /// <summary>The single foot that acts, or null.</summary>
    public Foot? Foot => Written.Action.Foot.ToFoot();

    /// <summary>The count as printed: <c>3&amp;</c>.</summary>
    public string Label => CountGrid.LabelOf(Written.Count.Place);

    /// <summary>Whether only the free foot may do this.</summary>
    public bool NeedsFreeFoot => Foot is not null && Action.Traits.FootRule == FootRule.Free;
}
