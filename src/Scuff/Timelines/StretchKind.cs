namespace Scuff.Timelines;

/// <summary>What a stretch of the danced dance is.</summary>
public enum StretchKind
{
    /// <summary>Counts of a part: a wall or a piece of one.</summary>
    Wall,

    /// <summary>A tag or bridge.</summary>
    Tag,

    /// <summary>Counts of the dance quoted in an interruption.</summary>
    Quote,

    /// <summary>Standing through counts.</summary>
    Wait,

    /// <summary>The ending.</summary>
    Ending,
}
