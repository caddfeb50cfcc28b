namespace Scuff.Sheets;

/// <summary>An easier or harder replacement for some counts.</summary>
/// <param name="Name">Its level or name (<c>easier</c>).</param>
/// <param name="Counts">The counts it replaces (<c>7&amp;8</c>).</param>
/// <param name="Words">What is danced instead.</param>
public sealed record SheetOption(string Name, string Counts, string Words);
