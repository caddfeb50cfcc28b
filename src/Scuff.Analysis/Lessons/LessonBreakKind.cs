namespace Scuff.Analysis.Lessons;

/// <summary>How a wall breaks the pattern.</summary>
public enum LessonBreakKind
{
    /// <summary>A tag or other counts are added, then the dance begins again or goes on as it would.</summary>
    Tag,

    /// <summary>A bridge: counts are added within the wall, and the dance goes on.</summary>
    Bridge,

    /// <summary>Everybody stands through counts.</summary>
    Wait,

    /// <summary>The dance begins again before its last count, with nothing between.</summary>
    Restart,
}
