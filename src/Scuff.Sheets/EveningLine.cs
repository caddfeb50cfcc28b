using Scuff.Dances;

namespace Scuff.Sheets;

/// <summary>A line of an evening, finished: what it is, when, and to which song. Equal by value.</summary>
public sealed record EveningLine
{
    /// <summary>What it is.</summary>
    public required EveningLineKind Kind { get; init; }

    /// <summary>When it begins, in seconds from the beginning of the evening.</summary>
    public required int StartSeconds { get; init; }

    /// <summary>How long it takes, in seconds, with what is said before the music.</summary>
    public required int Seconds { get; init; }

    /// <summary>What stands over it and the lines after it, such as the warm-up of a class; empty for what stood before.</summary>
    public string Heading { get; init; } = "";

    /// <summary>The dance, by its id in the club; empty for a rest, and for a dance that the club does not have.</summary>
    public string DanceId { get; init; } = "";

    /// <summary>The title of the dance; empty for a rest.</summary>
    public string Title { get; init; } = "";

    /// <summary>The level of the dance; null when nobody says, and for a rest.</summary>
    public Level? Level { get; init; }

    /// <summary>The dance on the other side of a split floor, by its id in the club; empty for none.</summary>
    public string OtherId { get; init; } = "";

    /// <summary>The title of the dance on the other side of a split floor; empty for none.</summary>
    public string OtherTitle { get; init; } = "";

    /// <summary>The level of the dance on the other side; null when nobody says.</summary>
    public Level? OtherLevel { get; init; }

    /// <summary>The title of the song; empty when none is named, and for a lesson or a rest.</summary>
    public string Song { get; init; } = "";

    /// <summary>The artist of the song; empty when unknown, or when the title names him.</summary>
    public string Artist { get; init; } = "";

    /// <summary>How long the song plays, in seconds; 0 when nobody knows.</summary>
    public int SongSeconds { get; init; }

    /// <summary>The track of the club that plays it, by its id; empty when the club has none.</summary>
    public string TrackId { get; init; } = "";

    /// <summary>Why it stands here: finished sentences.</summary>
    public ValueList<string> Reasons { get; init; }

    /// <summary>Her own words about it.</summary>
    public string Note { get; init; } = "";

    /// <summary>Whether two dances are danced at once, one on each side of the floor.</summary>
    public bool IsSplit => OtherTitle.Length > 0;

    /// <summary>Seconds from the beginning of the line to the first note of its song; 0 when its length is not known.</summary>
    public int LeadSeconds => SongSeconds == 0 ? 0 : Math.Max(0, Seconds - SongSeconds);
}
