namespace Scuff.Steps;

/// <summary>Where the weight must be before, or is after, a figure, relative to the foot it is named by.</summary>
public enum RelativeWeight
{
    /// <summary>Anywhere (before), or unchanged (after).</summary>
    Any,

    /// <summary>On the named foot.</summary>
    Same,

    /// <summary>On the other foot.</summary>
    Other,

    /// <summary>On both.</summary>
    Both,
}
