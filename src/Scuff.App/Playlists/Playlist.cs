namespace Scuff.App.Playlists;

/// <summary>A playlist with everything in its place: formats only write it. Equal by value.</summary>
internal sealed record Playlist
{
    /// <summary>Its title.</summary>
    public required string Title { get; init; }

    /// <summary>What plays, in order, silence among it.</summary>
    public required ValueList<PlaylistEntry> Entries { get; init; }

    /// <summary>What had to be left out, a sentence each.</summary>
    public ValueList<string> LeftOut { get; init; }
}
