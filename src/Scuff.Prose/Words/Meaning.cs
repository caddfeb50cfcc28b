using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Words;

/// <summary>The meaning of a phrase in the lexicon; one phrase may be a primitive and a figure at once.</summary>
internal sealed record Meaning(TermKind Kind)
{
    /// <summary>Which foot or side, for those kinds and for sided directions.</summary>
    public Foot? Side { get; init; }

    /// <summary>Direction, for direction words.</summary>
    public Direction Direction { get; init; }

    /// <summary>Eighths, times, or a size.</summary>
    public int Value { get; init; }

    /// <summary>Part word: heel, toe, ball, flat, knee.</summary>
    public string Part { get; init; } = "";

    /// <summary>The primitive, when the phrase names one.</summary>
    public ActionKind? Verb { get; init; }

    /// <summary>The primitive without weight (stomp up).</summary>
    public bool VerbKeepsWeight { get; init; }

    /// <summary>Catalogue entries that the phrase names.</summary>
    public ValueList<StepDefinition> Figures { get; init; }

    /// <summary>Special words of a direction term: lock, diagonal, shoulder; of a filler, "me" for who speaks and "you" for who is spoken to; "aside" where a remark may begin.</summary>
    public string Special { get; init; } = "";

    /// <summary>Whether the form is an -ing form.</summary>
    public bool IsIng { get; init; }

    /// <summary>Whether the phrase itself says how far to turn.</summary>
    public bool NamesAmount { get; init; }

    /// <summary>Whether every word of the phrase means something by itself, so that it may be detail rather than a name.</summary>
    public bool IsComposable { get; init; }
}
