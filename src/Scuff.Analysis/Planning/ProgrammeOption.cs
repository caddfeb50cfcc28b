namespace Scuff.Analysis.Planning;

/// <summary>What can stand at one place: a dance with a song, or two dances with one song.</summary>
internal sealed class ProgrammeOption
{
    /// <summary>Index of the dance in the question.</summary>
    public required int Dance { get; init; }

    /// <summary>Index of the dance on the other side of a split floor; -1 for none.</summary>
    public required int Other { get; init; }

    /// <summary>Index of the song among all songs.</summary>
    public required int Song { get; init; }

    /// <summary>Key of the song.</summary>
    public required string SongKey { get; init; }

    /// <summary>How long it takes, with what is said before it.</summary>
    public required int Seconds { get; init; }

    /// <summary>0 for easy, 1 for middling, 2 for hard.</summary>
    public required int Difficulty { get; init; }

    /// <summary>0 for slow, 1 for middling or unknown, 2 for fast.</summary>
    public required int Tempo { get; init; }

    /// <summary>Tenths of a MET.</summary>
    public required int Effort { get; init; }

    /// <summary>Percent of all people there who can dance it.</summary>
    public required int Floor { get; init; }

    /// <summary>The groups most of which can dance it, as bits.</summary>
    public required uint Dancing { get; init; }

    /// <summary>Whether it is a floor split.</summary>
    public bool IsSplit => Other >= 0;
}
