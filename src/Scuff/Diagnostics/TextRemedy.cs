namespace Scuff.Diagnostics;

/// <summary>Mends by replacing text.</summary>
/// <param name="Edits">Edits that do not overlap.</param>
public sealed record TextRemedy(ValueList<TextEdit> Edits) : Remedy;
