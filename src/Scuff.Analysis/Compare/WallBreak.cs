using Scuff.Dances;

namespace Scuff.Analysis.Compare;

/// <summary>A break of the pattern in one wall.</summary>
/// <param name="Bare">It, freed from its place in the text and from her brackets.</param>
/// <param name="Written">The sentence that says it, perhaps of several walls.</param>
internal sealed record WallBreak(Interruption Bare, Interruption Written);
