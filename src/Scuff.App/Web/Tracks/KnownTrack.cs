using Scuff.App.Tracks;
using Scuff.Music;
using Scuff.Music.Corrections;
using Scuff.Repertoire;

namespace Scuff.App.Web.Tracks;

/// <summary>A track of the club with all that is known of its music.</summary>
/// <param name="Row">What the club lists of it.</param>
/// <param name="Map">What holds: as heard, corrected by what she said, under its title in the club; null when it was not heard.</param>
/// <param name="Warning">What is wrong with its file though it could be heard; null when nothing is.</param>
/// <param name="Said">What she said.</param>
/// <param name="Trouble">Why what she said cannot be read, or null.</param>
internal sealed record KnownTrack(TrackRow Row, TrackMap? Map, string? Warning, TrackCorrections Said, string? Trouble)
{
    /// <summary>Its title, or the name of its file without the ending.</summary>
    public string Title => TitleOf(Row);

    /// <summary>It as the commands see a track.</summary>
    public HeardTrack Heard => new(Row.FileName, Map, Warning, Map is null ? $"{Title} was not heard yet." : null);

    /// <summary>The title of a track, or the name of its file without the ending.</summary>
    public static string TitleOf(TrackRow row) => row.Facts.Title.Length > 0 ? row.Facts.Title : HeardTrack.StemOf(row.FileName);
}
