using Scuff.App.Playlists;

namespace Scuff.App.Handouts;

/// <summary>
/// The playlist of an evening: as a pack with the songs and the silence between them, and in every format alone, then without the silence, since one file has
/// nowhere to put it.
/// </summary>
internal sealed class PlayedEvening : IHandoutMaker<EveningOut>
{
    public IEnumerable<Handout<EveningOut>> Handouts =>
    [
        new(
            "playlist.zip",
            "Playlist with its songs and gaps (ZIP)",
            "application/zip",
            IsText: false,
            (evening, stream, cancel) => PlaylistPack.WriteAsync(EveningPlaylist.ForFolder(evening.Paper, evening.AudioPathOf, copies: true), evening.Now, stream, cancel)),
        .. PlaylistFormats.All.Select(format => new Handout<EveningOut>(
            "playlist." + format.Name,
            $"Playlist of this computer's songs, without gaps ({format.Name.ToUpperInvariant()})",
            format.MediaType,
            IsText: true,
            (evening, stream, cancel) => HandoutBytes.SendAsync(format.Write(EveningPlaylist.OfSongs(evening.Paper, evening.AudioPathOf)), withMark: false, stream, cancel))),
    ];
}
