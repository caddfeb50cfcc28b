namespace Scuff.Repertoire;

/// <summary>Which tracks are looked for. As it stands it asks for all that are not in the bin.</summary>
public sealed record TrackQuery
{
    /// <summary>Words as she types them, found as in <see cref="DanceQuery.Words"/> in title, artist, file name and tags.</summary>
    public string Words { get; init; } = "";

    /// <summary>Only tracks with this tag (case and accents aside); null for any.</summary>
    public string? Tag { get; init; }

    /// <summary>The tracks of the bin instead of those outside it.</summary>
    public bool InBin { get; init; }

    /// <summary>The order.</summary>
    public TrackOrder Order { get; init; }

    /// <summary>How many of the first are left out.</summary>
    public int Skip { get; init; }

    /// <summary>How many are given at most.</summary>
    public int Take { get; init; } = 50;
}
