namespace Scuff.Prose.Words;

/// <summary>What kind of characters a token is made of.</summary>
internal enum WordTokenKind
{
    /// <summary>Letters.</summary>
    Word,

    /// <summary>A whole number.</summary>
    Number,

    /// <summary>A fraction, possibly with a whole before it; the value is in eighths.</summary>
    Fraction,

    /// <summary>A clock time in eighths, 12:00 being 0.</summary>
    Clock,

    /// <summary>One punctuation character.</summary>
    Mark,
}
