using Scuff.Analysis.Planning;

namespace Scuff.App.Programmes;

/// <summary>A line of a programme, with the titles as they were when it was made.</summary>
internal sealed record EveningItem
{
    /// <summary>Index of its stretch in the whole evening, from 0.</summary>
    public required int Stretch { get; init; }

    /// <summary>Index within the stretch, from 0, with what was danced there already.</summary>
    public required int Place { get; init; }

    /// <summary>When it begins, in seconds from the beginning of the evening.</summary>
    public required int Start { get; init; }

    /// <summary>How long it takes, in seconds, with what is said before it.</summary>
    public required int Seconds { get; init; }

    /// <summary>The dance; empty for a rest.</summary>
    public string DanceId { get; set; } = "";

    /// <summary>Its title; empty for a rest.</summary>
    public string Title { get; set; } = "";

    /// <summary>Its level in words; empty for a rest.</summary>
    public string Level { get; set; } = "";

    /// <summary>The dance on the other side of a split floor; empty for none.</summary>
    public string OtherId { get; set; } = "";

    /// <summary>The title of that one.</summary>
    public string OtherTitle { get; set; } = "";

    /// <summary>The level of that one, in words.</summary>
    public string OtherLevel { get; set; } = "";

    /// <summary>The key of its song; empty for a lesson or a rest.</summary>
    public string SongKey { get; set; } = "";

    /// <summary>The song, with its artist where known.</summary>
    public string SongTitle { get; set; } = "";

    /// <summary>The track of the club that plays it; empty when the club has none.</summary>
    public string TrackId { get; set; } = "";

    /// <summary>How long the song plays, in seconds; 0 for a lesson or a rest.</summary>
    public int SongSeconds { get; set; }

    /// <summary>Counts a minute; 0 when nobody knows.</summary>
    public int CountsPerMinute { get; set; }

    /// <summary>What it asks of a body, in tenths of a MET; 0 for a rest.</summary>
    public int Effort { get; set; }

    /// <summary>How much of the floor can dance it, in percent.</summary>
    public int FloorShare { get; set; }

    /// <summary>Whether she pinned it there.</summary>
    public bool IsPinned { get; set; }

    /// <summary>Why it stands here, what weighs most first.</summary>
    public IReadOnlyList<ProgrammeReason> Reasons { get; set; } = [];
}
