namespace Scuff.Analysis.Easier;

/// <summary>For whom something easier is asked.</summary>
public enum EasierAim
{
    /// <summary>For a class of a level: nothing that is met above it.</summary>
    Level,

    /// <summary>For knees: no twist on a foot that bears weight, no jump or hop, no deep bend, no turn on one foot.</summary>
    Knees,

    /// <summary>For who gets dizzy: no turn, or the smallest that still ends at the same wall.</summary>
    Turns,

    /// <summary>For who is not so quick: whole counts only, and fewer steps.</summary>
    Speed,
}
