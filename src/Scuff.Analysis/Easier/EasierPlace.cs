using Scuff.Dances;
using Scuff.Analysis.Loads;

namespace Scuff.Analysis.Easier;

/// <summary>A move that is worth making easier.</summary>
/// <param name="Move">The move.</param>
/// <param name="Section">Its section, or the body of its tag.</param>
/// <param name="Place">Where, as a teacher would name it.</param>
/// <param name="Demand">What it asks of a dancer.</param>
public sealed record EasierPlace(WrittenMove Move, Section Section, DancePlace Place, MoveDemand Demand);
