namespace Scuff.Steps;

/// <summary>How far a step goes compared with the usual of its kind.</summary>
public enum StepSize
{
    /// <summary>As usual.</summary>
    Usual,

    /// <summary>Smaller.</summary>
    Small,

    /// <summary>Larger.</summary>
    Large,
}
