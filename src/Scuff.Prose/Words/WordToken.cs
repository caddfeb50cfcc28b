using Scuff.Diagnostics;

namespace Scuff.Prose.Words;

/// <summary>A word, number or mark of a line.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Text">Lower-case text; for a mark the character.</param>
/// <param name="Value">The number, or eighths.</param>
/// <param name="Span">Where it stands.</param>
/// <param name="IsCorrected">Whether a slip of the fingers was mended in it.</param>
/// <param name="SpaceBefore">Whether blank space comes before it.</param>
internal readonly record struct WordToken(WordTokenKind Kind, string Text, int Value, TextSpan Span, bool SpaceBefore, bool IsCorrected = false);
