namespace Scuff.Music;

/// <summary>An eight that is cut short, or goes on too long: the reason why dances have tags and restarts.</summary>
/// <param name="FirstBeat">The beat of its count 1, an index into the beats of the track.</param>
/// <param name="Beats">How many beats it has.</param>
/// <param name="Expected">How many it should have.</param>
public sealed record OddEight(int FirstBeat, int Beats, int Expected)
{
    /// <summary>All of them in order. The last eight of a track may end anywhere, and so is never odd.</summary>
    public static ValueList<OddEight> In(TrackMap map)
    {
        int expected = map.Meter.Value.BeatsInEight;
        int[] ones = [.. Enumerable.Range(0, map.Beats.Count).Where(i => map.Beats[i].Count == 1)];
        return
        [
            .. ones.Zip(ones.Skip(1), (a, b) => new OddEight(a, b - a, expected)).Where(e => e.Beats != expected),
        ];
    }
}
