namespace Scuff.Analysis.Fit;

/// <summary>What is danced over some counts.</summary>
public enum FitChartKind
{
    /// <summary>Nothing yet.</summary>
    Intro,

    /// <summary>Counts of a wall.</summary>
    Wall,

    /// <summary>A tag, bridge or quotation.</summary>
    Tag,

    /// <summary>Everybody stands.</summary>
    Hold,
}
