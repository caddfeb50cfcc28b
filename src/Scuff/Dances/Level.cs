namespace Scuff.Dances;

/// <summary>The levels of the trade, easiest first.</summary>
public enum Level
{
    /// <summary>For people who have never danced in line.</summary>
    AbsoluteBeginner,

    /// <summary>First classes.</summary>
    Beginner,

    /// <summary>Between beginner and intermediate.</summary>
    Improver,

    /// <summary>Experienced floor.</summary>
    Intermediate,

    /// <summary>The hardest.</summary>
    Advanced,
}
