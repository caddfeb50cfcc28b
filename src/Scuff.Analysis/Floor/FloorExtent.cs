namespace Scuff.Analysis.Floor;

/// <summary>How far the feet get from the spot below the hips at the start, in metres, all at or above zero.</summary>
/// <param name="Left">To the left, seen by a dancer who faces 12:00.</param>
/// <param name="Right">To the right.</param>
/// <param name="Forward">Forward.</param>
/// <param name="Back">Back.</param>
public readonly record struct FloorExtent(double Left, double Right, double Forward, double Back);
