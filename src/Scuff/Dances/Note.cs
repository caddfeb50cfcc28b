using Scuff.Diagnostics;

namespace Scuff.Dances;

/// <summary>Words kept apart from the footwork.</summary>
/// <param name="Kind">style, arms, note.</param>
/// <param name="Words">Her words.</param>
/// <param name="Span">Where.</param>
public sealed record Note(string Kind, string Words, TextSpan Span);
