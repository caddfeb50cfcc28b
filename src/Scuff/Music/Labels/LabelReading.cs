namespace Scuff.Music.Labels;

/// <summary>A label file as it was read.</summary>
/// <param name="Lines">The lines that were understood, in order of their starts.</param>
/// <param name="Troubles">What was not.</param>
public sealed record LabelReading(ValueList<LabelLine> Lines, ValueList<TextTrouble> Troubles);
