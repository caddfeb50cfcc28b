using Scuff.Audio.Songs;

namespace Scuff.App.Tracks;

/// <summary>Under which name a song of the demo club is written.</summary>
internal static class DemoSongFile
{
    /// <summary>The name of its file: by title, since a dance may have two songs.</summary>
    public static string NameOf(DemoSong song)
        => string.Concat(song.Recipe.Title.ToLowerInvariant().Select(c => char.IsLetterOrDigit(c) ? c : '-')) + ".wav";
}
