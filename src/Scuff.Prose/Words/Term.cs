using Scuff.Diagnostics;

namespace Scuff.Prose.Words;

/// <summary>A phrase of a line with its meaning.</summary>
internal readonly record struct Term(Meaning Meaning, TextSpan Span, string Text, bool Corrected = false)
{
    public TermKind Kind => Meaning.Kind;
}
