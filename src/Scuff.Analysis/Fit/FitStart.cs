namespace Scuff.Analysis.Fit;

/// <summary>A place where the dance may begin.</summary>
/// <param name="Count">The count of the music.</param>
/// <param name="Price">What it costs to begin there.</param>
public readonly record struct FitStart(int Count, int Price);
