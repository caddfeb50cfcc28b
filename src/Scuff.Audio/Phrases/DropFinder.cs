using Scuff.Music;

namespace Scuff.Audio.Phrases;

/// <summary>Sections in which the drums are gone.</summary>
internal static class DropFinder
{
    // Against a section with drums: rises in the high bands, as sticks and cymbals make them.
    private const double Share = 0.45;

    /// <summary>Sections between the first and the last whose drums have dropped out; none in a track that never has any.</summary>
    public static TrackBreak[] Find(double[] beats, int[] starts, BeatFeatures features)
    {
        double[] drums = [.. starts.Select((s, i) => features.Drums[s..(i + 1 < starts.Length ? starts[i + 1] : beats.Length)].Average(d => (double)d))];
        if (drums.Length < 3)
        {
            return [];
        }

        double usual = drums.Order().ElementAt(drums.Length * 3 / 4);
        return
        [
            .. Enumerable.Range(1, drums.Length - 2)
                .Where(i => drums[i] < Share * usual)
                .Select(i => new TrackBreak(beats[starts[i]], beats[starts[i + 1]], false, Math.Clamp(1 - (drums[i] / usual), 0, 1))),
        ];
    }
}
