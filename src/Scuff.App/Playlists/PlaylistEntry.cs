namespace Scuff.App.Playlists;

/// <summary>Something that plays: a song, or silence of a certain length. Equal by value.</summary>
internal sealed record PlaylistEntry
{
    /// <summary>The title of the song; for silence, what happens meanwhile.</summary>
    public required string Title { get; init; }

    /// <summary>The artist; empty when unknown, and for silence.</summary>
    public string Artist { get; init; } = "";

    /// <summary>What is danced to it, which players show where they show an album; empty for silence.</summary>
    public string Dance { get; init; } = "";

    /// <summary>When it begins in the evening and what level it is, as a remark; empty for none.</summary>
    public string Remark { get; init; } = "";

    /// <summary>How long it plays, in whole seconds; 0 when nobody knows.</summary>
    public required int Seconds { get; init; }

    /// <summary>The sound file it is copied from, by its full path; empty for silence.</summary>
    public string Source { get; init; } = "";

    /// <summary>
    /// Where a player finds it: a name in the folder of the playlist that needs no escaping in a URI but for letters and blanks, or the full path of a file.
    /// </summary>
    public required string Location { get; init; }

    /// <summary>Whether it is silence.</summary>
    public bool IsSilence => Source.Length == 0;

    /// <summary>Whether its location is a name in the folder of the playlist.</summary>
    public bool IsBeside => !Path.IsPathRooted(Location);
}
