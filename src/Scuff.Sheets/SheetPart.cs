namespace Scuff.Sheets;

/// <summary>A part of a phrased dance, or the whole of an ordinary one.</summary>
/// <param name="Heading">For example <c>Part A, 32 counts</c>; empty for an ordinary dance.</param>
/// <param name="Sections">Its sections.</param>
public sealed record SheetPart(string Heading, ValueList<SheetSection> Sections);
