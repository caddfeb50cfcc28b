namespace Scuff.Audio.Bars;

/// <summary>The count of every beat.</summary>
/// <param name="Counts">1 to 8, in a waltz 1 to 6, [beats].</param>
/// <param name="BeatsInBar">4 or 3.</param>
/// <param name="Score">How well they agree with what was heard.</param>
/// <param name="Start">The logits of a section's start at each beat, [beats].</param>
internal sealed record CountRow(int[] Counts, int BeatsInBar, double Score, float[] Start);
