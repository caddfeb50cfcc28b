using Scuff.Stance;

namespace Scuff.Analysis.Fit;

/// <summary>A wall of a plan, where it begins in the music.</summary>
/// <param name="Number">The repetition, from 1.</param>
/// <param name="Part">The part of a phrased dance; empty for an ordinary dance.</param>
/// <param name="Begins">The count of the music on which it begins (an index into those of the <see cref="CountedMusic"/>).</param>
/// <param name="Seconds">When that is.</param>
/// <param name="Facing">Where the floor faces then; null when words that could not be read leave it unknown.</param>
/// <param name="Danced">How many counts of the dance are danced in it.</param>
/// <param name="Strength">How much of the music begins with it: 100 a section, 0 nothing.</param>
/// <param name="Section">The section of the music it begins in, an index into those of the map; -1 before the first.</param>
public sealed record FitWall(int Number, string Part, int Begins, double Seconds, Facing? Facing, int Danced, int Strength, int Section);
