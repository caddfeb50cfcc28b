namespace Scuff.Repertoire;

/// <summary>Which dances are looked for. As it stands it asks for all that are not in the bin.</summary>
public sealed record DanceQuery
{
    /// <summary>
    /// Words as she types them: all must be found, each as the beginning of a word of the title, choreographer, songs, tags or text, whatever its
    /// case and accents. Nothing typed is a command: what is neither letter nor digit only parts words, and what has no letter or digit at all (an
    /// emoji) is looked for as it is in title, choreographer, songs and tags.
    /// </summary>
    public string Words { get; init; } = "";

    /// <summary>Only dances with this tag (case and accents aside); null for any.</summary>
    public string? Tag { get; init; }

    /// <summary>Only dances of this level, in the words of <see cref="DanceFacts.Level"/>; null for any.</summary>
    public string? Level { get; init; }

    /// <summary>Only dances of so many walls; null for any.</summary>
    public int? Walls { get; init; }

    /// <summary>Only dances with an error, a question or a warning.</summary>
    public bool OnlyWithComplaints { get; init; }

    /// <summary>The dances of the bin instead of those outside it.</summary>
    public bool InBin { get; init; }

    /// <summary>The order.</summary>
    public DanceOrder Order { get; init; }

    /// <summary>How many of the first are left out.</summary>
    public int Skip { get; init; }

    /// <summary>How many are given at most.</summary>
    public int Take { get; init; } = 50;
}
