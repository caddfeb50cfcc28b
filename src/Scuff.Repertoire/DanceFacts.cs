namespace Scuff.Repertoire;

/// <summary>
/// What a list of dances shows about one, derived from its text by an <see cref="IDanceFactReader"/>. Never edited: the text is the truth.
/// </summary>
public sealed record DanceFacts
{
    /// <summary>The title as written; empty when the text has none.</summary>
    public required string Title { get; init; }

    /// <summary>Who made it, as written; empty when not said.</summary>
    public string Choreographer { get; init; } = "";

    /// <summary>The level in the words that are printed; empty when unknown. Searched by its exact words.</summary>
    public string Level { get; init; } = "";

    /// <summary>Counts of one repetition; null when not known.</summary>
    public int? Counts { get; init; }

    /// <summary>Walls; null when not known.</summary>
    public int? Walls { get; init; }

    /// <summary>The rhythm as written; empty when not said.</summary>
    public string Rhythm { get; init; } = "";

    /// <summary>The slowest tempo its tracks state, in beats a minute; null when none does.</summary>
    public double? SlowestTempo { get; init; }

    /// <summary>The fastest tempo its tracks state, in beats a minute; null when none does.</summary>
    public double? FastestTempo { get; init; }

    /// <summary>The songs its text names, each with its artist where the text says one, in the order of the text.</summary>
    public ValueList<string> Songs { get; init; }

    /// <summary>How many complaints are errors.</summary>
    public int Errors { get; init; }

    /// <summary>How many are questions.</summary>
    public int Questions { get; init; }

    /// <summary>How many are warnings.</summary>
    public int Warnings { get; init; }

    /// <summary>
    /// Equal for two dances whose feet do the same on the same counts, whatever the words; empty when the text has no steps, and then equal to
    /// nobody's.
    /// </summary>
    public string Fingerprint { get; init; } = "";

    /// <summary>What it asks of a body, in tenths of a MET; null when that cannot be said.</summary>
    public int? Effort { get; init; }

    /// <summary>The level as a number, to put dances in order: 0 for the easiest; the level it claims, else the one its steps have. Null when unknown.</summary>
    public int? Rank { get; init; }

    /// <summary>What its feet do, in a print by which dances are compared for likeness; empty when nobody made one.</summary>
    public string Feet { get; init; } = "";
}
