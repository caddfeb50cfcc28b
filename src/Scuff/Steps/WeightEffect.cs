namespace Scuff.Steps;

/// <summary>What an action does to the weight.</summary>
public enum WeightEffect
{
    /// <summary>The weight stays where it was.</summary>
    Keeps,

    /// <summary>All the weight is on the acting foot afterwards.</summary>
    Takes,

    /// <summary>The weight is on both feet afterwards.</summary>
    Shares,

    /// <summary>Not known.</summary>
    Unknown,
}
