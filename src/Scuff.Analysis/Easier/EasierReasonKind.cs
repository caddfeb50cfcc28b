namespace Scuff.Analysis.Easier;

/// <summary>Why a way is easier, and what it keeps.</summary>
public enum EasierReasonKind
{
    /// <summary>No turn any more. Before in eighths.</summary>
    NoTurn,

    /// <summary>Less turn. Before and after in eighths.</summary>
    SmallerTurn,

    /// <summary>No turn on one foot. Before in eighths.</summary>
    NoSpin,

    /// <summary>No jump or hop. Before is how many.</summary>
    NoLanding,

    /// <summary>No twist on a foot that bears weight. Before is how many.</summary>
    NoTwist,

    /// <summary>No deep bend. Before is how many.</summary>
    NoBend,

    /// <summary>Whole counts only. Before is how many actions stood between counts.</summary>
    WholeCounts,

    /// <summary>Fewer steps. Before and after in weight changes.</summary>
    FewerSteps,

    /// <summary>A lower level. Before and after are levels.</summary>
    Level,

    /// <summary>The same foot is free and the same wall is faced afterwards.</summary>
    SameEnd,

    /// <summary>It ends beside the others. After in centimetres.</summary>
    Away,

    /// <summary>It takes more counts than those of the move. After in counts.</summary>
    Wider,
}
