using Scuff.Diagnostics;

namespace Scuff.Prose.Words;

/// <summary>A phrase of a line with its meaning.</summary>
internal readonly record struct Term(Meaning Meaning, TextSpan Span, string Text, bool Corrected = false)
{
    public TermKind Kind => Meaning.Kind;

    /// <summary>The word with the slip, when one was mended.</summary>
    public TextSpan SlipSpan { get; init; }

    /// <summary>What it is read as.</summary>
    public string SlipWord { get; init; } = "";
}
