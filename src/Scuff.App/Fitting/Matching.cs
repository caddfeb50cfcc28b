using Scuff.Analysis.Fit;
using Scuff.App.Json;
using Scuff.Dances;
using Scuff.Music;

namespace Scuff.App.Fitting;

/// <summary>Ranks tracks for a dance, and dances for a track, the best first.</summary>
internal static class Matching
{
    /// <summary>The tracks that suit a dance.</summary>
    /// <param name="dance">What the dance is called, and the dance.</param>
    /// <param name="tracks">What each track is called, and its map under its title.</param>
    /// <param name="noTags">Only those that need no interruption.</param>
    /// <param name="most">How many are named.</param>
    /// <param name="workers">How many work at the same time.</param>
    /// <param name="cancel">Stops the work.</param>
    public static IReadOnlyList<MatchRow> Tracks(
        (string Name, Dance Dance) dance, IReadOnlyList<(string Name, TrackMap Map)> tracks, bool noTags, int most, int workers, CancellationToken cancel = default)
    {
        Dictionary<TrackMap, string> names = new(ReferenceEqualityComparer.Instance);
        foreach ((string name, TrackMap map) in tracks)
        {
            names[map] = name;
        }

        IEnumerable<TrackMatch> ranked = new TrackMatcher(dance.Dance).Rank([.. tracks.Select(t => t.Map)], noTags ? tracks.Count : most, workers, cancel);
        return [.. ranked.Where(m => !noTags || m.Interruptions == 0).Take(most).Select((m, i) => MatchRow.Of(i + 1, dance.Name, names[m.Map], m))];
    }

    /// <summary>The dances that suit tracks; each dance stands there once for each track.</summary>
    /// <param name="dances">What each dance is called, and the dance.</param>
    /// <param name="tracks">What each track is called, and its map under its title.</param>
    /// <param name="noTags">Only those that need no interruption.</param>
    /// <param name="most">How many are named.</param>
    /// <param name="cancel">Stops the work.</param>
    public static IReadOnlyList<MatchRow> Dances(
        IEnumerable<(string Name, Dance Dance)> dances, IReadOnlyList<(string Name, TrackMap Map)> tracks, bool noTags, int most, CancellationToken cancel = default)
    {
        List<(string Dance, string Track, TrackMatch Match)> all = [];
        foreach ((string name, Dance dance) in dances)
        {
            cancel.ThrowIfCancellationRequested();
            TrackMatcher matcher = new(dance);
            all.AddRange(tracks.Select(t => (name, t.Name, matcher.Of(t.Map))));
        }

        return
        [
            .. all.Where(m => !noTags || m.Match.Interruptions == 0).OrderBy(m => m.Match.Points).Take(most)
                .Select((m, i) => MatchRow.Of(i + 1, m.Dance, m.Track, m.Match)),
        ];
    }
}
