namespace Scuff.App.Handouts;

/// <summary>
/// The front door to everything an evening can be taken out as: the program's commands and the page's downloads both ask here. A playlist with its songs in a folder
/// is not one file; it has a door of its own, <see cref="Playlists.PlaylistFolder"/>.
/// </summary>
internal static class EveningHandouts
{
    /// <summary>All forms, in order of their names.</summary>
    public static ValueList<Handout<EveningOut>> All { get; } = FoundHandouts.Of<EveningOut>();

    /// <summary>The form of a name, or null.</summary>
    public static Handout<EveningOut>? Find(string name) => All.FirstOrDefault(h => h.Name == name);
}
