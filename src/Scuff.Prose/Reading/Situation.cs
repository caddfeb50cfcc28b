using Scuff.Stance;

namespace Scuff.Prose.Reading;

/// <summary>What is known just before a clause is danced.</summary>
/// <param name="Weight">Where the weight is.</param>
/// <param name="Last">The row before, or null.</param>
internal readonly record struct Situation(Weight Weight, PlacedRow? Last);
