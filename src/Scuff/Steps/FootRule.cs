namespace Scuff.Steps;

/// <summary>Which foot may make an action.</summary>
public enum FootRule
{
    /// <summary>Only the free foot.</summary>
    Free,

    /// <summary>The standing foot.</summary>
    Standing,

    /// <summary>Both feet at once.</summary>
    Both,

    /// <summary>Either foot, or none: the floor does not care.</summary>
    Any,
}
