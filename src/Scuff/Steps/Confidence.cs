namespace Scuff.Steps;

/// <summary>How sure the trade is of an entry.</summary>
public enum Confidence
{
    /// <summary>At least one named source defines it.</summary>
    Sourced,

    /// <summary>General trade usage, no source read.</summary>
    CommonPractice,

    /// <summary>Less sure.</summary>
    FromMemory,
}
