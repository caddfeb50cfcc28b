namespace Scuff.App.Web.Contract;

/// <summary>What changed in the club, by whichever page, program or hand.</summary>
/// <param name="Dances">Dances whose text, tags or place in the bin changed.</param>
/// <param name="Tracks">Tracks of which something changed.</param>
/// <param name="Classes">Classes of which something changed, their sessions and marks included.</param>
/// <param name="Evenings">Evenings that changed.</param>
/// <param name="Everything">Whether all of it is another club now (a backup was restored).</param>
internal sealed record ClubNews(IReadOnlyList<string> Dances, IReadOnlyList<string> Tracks, IReadOnlyList<string> Classes, IReadOnlyList<string> Evenings, bool Everything);
