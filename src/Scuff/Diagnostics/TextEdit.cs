namespace Scuff.Diagnostics;

/// <summary>A replacement in the text.</summary>
/// <param name="Span">What goes.</param>
/// <param name="NewText">What comes.</param>
public sealed record TextEdit(TextSpan Span, string NewText);
