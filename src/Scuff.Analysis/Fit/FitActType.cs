namespace Scuff.Analysis.Fit;

/// <summary>What happens at an interruption.</summary>
public enum FitActType
{
    /// <summary>The dance begins again.</summary>
    Restart,

    /// <summary>Extra counts are danced; then the dance goes on.</summary>
    Tag,

    /// <summary>The dancers stand still; then the dance goes on.</summary>
    Hold,
}
