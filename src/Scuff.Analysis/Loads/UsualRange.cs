namespace Scuff.Analysis.Loads;

/// <summary>A range of tempo that is usual for a rhythm.</summary>
/// <param name="Rhythm">The rhythm, as it is named in a heading.</param>
/// <param name="From">The slowest, in counts a minute.</param>
/// <param name="To">The fastest.</param>
public readonly record struct UsualRange(string Rhythm, int From, int To);
