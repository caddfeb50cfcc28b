namespace Scuff.Solving;

/// <summary>One equation: the sum of its terms lies between two bounds.</summary>
/// <param name="Low">The least it may be; <see cref="long.MinValue"/> for none.</param>
/// <param name="High">The most it may be; <see cref="long.MaxValue"/> for none.</param>
/// <param name="Variables">Indices of variables, each once.</param>
/// <param name="Factors">Their factors; null when all are 1.</param>
internal sealed record WholeNumberRow(long Low, long High, int[] Variables, long[]? Factors);
