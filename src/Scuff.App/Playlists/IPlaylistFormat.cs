namespace Scuff.App.Playlists;

/// <summary>A way to write a playlist. A class that implements it, with a constructor without arguments, is found and offered; no list names it.</summary>
internal interface IPlaylistFormat
{
    /// <summary>Its word (<c>m3u8</c>).</summary>
    string Name { get; }

    /// <summary>Its media type.</summary>
    string MediaType { get; }

    /// <summary>The playlist as text, which is written as UTF-8 without a mark; lines end in one line feed.</summary>
    string Write(Playlist playlist);
}
