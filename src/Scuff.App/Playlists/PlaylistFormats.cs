namespace Scuff.App.Playlists;

/// <summary>The formats of playlists there are.</summary>
internal static class PlaylistFormats
{
    /// <summary>All formats, in order of their names.</summary>
    public static ValueList<IPlaylistFormat> All { get; } = typeof(PlaylistFormats).Assembly.GetTypes()
        .Where(t => t is { IsClass: true, IsAbstract: false } && t.IsAssignableTo(typeof(IPlaylistFormat)))
        .Select(t => (IPlaylistFormat)Activator.CreateInstance(t)!)
        .OrderBy(f => f.Name, StringComparer.Ordinal)
        .ToValueList();
}
