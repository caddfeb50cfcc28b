namespace Scuff.Analysis.Fit;

/// <summary>A row of the music.</summary>
/// <param name="From">Its first count.</param>
/// <param name="Counts">How many counts it has.</param>
/// <param name="Seconds">When it begins.</param>
/// <param name="Section">The section of the map it belongs to; -1 before the first.</param>
/// <param name="BeginsSection">Whether the section begins with it.</param>
public sealed record FitChartRow(int From, int Counts, double Seconds, int Section, bool BeginsSection);
