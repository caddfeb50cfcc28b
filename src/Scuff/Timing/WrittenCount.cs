namespace Scuff.Timing;

/// <summary>A count label as the author wrote it (<c>3</c>, <c>&amp;</c>, <c>a</c>) beside the exact place it stands for.</summary>
/// <param name="Label">The written label, kept for printing.</param>
/// <param name="Place">The place in the section, counted from zero; below zero for a pick-up before count 1.</param>
public readonly record struct WrittenCount(string Label, Counts Place);
