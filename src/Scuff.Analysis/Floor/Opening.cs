namespace Scuff.Analysis.Floor;

/// <summary>Whether a diagonal step belongs to a pair that opens the feet (a V step, a jump apart) or goes its own way (a skate).</summary>
internal enum Opening
{
    /// <summary>It goes its own way.</summary>
    None,

    /// <summary>It is the first of the pair.</summary>
    First,

    /// <summary>It is the second and lands level with the first.</summary>
    Second,
}
