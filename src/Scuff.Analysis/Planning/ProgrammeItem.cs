namespace Scuff.Analysis.Planning;

/// <summary>One line of a programme: a dance, a lesson or a rest. Equal by value.</summary>
public sealed record ProgrammeItem
{
    /// <summary>Index of its stretch, from 0.</summary>
    public required int Stretch { get; init; }

    /// <summary>Index within the stretch, from 0.</summary>
    public required int Place { get; init; }

    /// <summary>When it begins, in seconds from the beginning of the first stretch.</summary>
    public required int Start { get; init; }

    /// <summary>How long it takes, in seconds, with what is said before it.</summary>
    public required int Seconds { get; init; }

    /// <summary>The dance; empty for a rest.</summary>
    public string DanceId { get; init; } = "";

    /// <summary>The dance on the other side of a split floor; empty for none.</summary>
    public string OtherId { get; init; } = "";

    /// <summary>The key of its song; empty for a lesson or a rest.</summary>
    public string SongKey { get; init; } = "";

    /// <summary>Whether she pinned it there.</summary>
    public bool IsPinned { get; init; }

    /// <summary>How much of the floor can dance it, in percent of all people there.</summary>
    public int FloorShare { get; init; }

    /// <summary>Why it stands here, what weighs most first. Their points, with those of <see cref="Programme.Common"/>, add up to the points of the programme.</summary>
    public ValueList<ProgrammeReason> Reasons { get; init; }
}
