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

    /// <summary>All the weight is on the left foot afterwards, whatever foot acts (a swivel of both feet that ends on the left).</summary>
    ToLeft,

    /// <summary>All the weight is on the right foot afterwards, whatever foot acts.</summary>
    ToRight,

    /// <summary>Not known.</summary>
    Unknown,
}
