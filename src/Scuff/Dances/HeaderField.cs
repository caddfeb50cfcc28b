using Scuff.Diagnostics;

namespace Scuff.Dances;

/// <summary>A header field as written.</summary>
/// <param name="Key">Key in canonical form (<c>level</c>), or as written when it is not one we know.</param>
/// <param name="Value">Value as written, trimmed.</param>
/// <param name="Span">The value in the text.</param>
/// <param name="Line">One-based line.</param>
/// <param name="IsKnown">Whether the key means something to Scuff.</param>
public sealed record HeaderField(string Key, string Value, TextSpan Span, int Line, bool IsKnown = true);
