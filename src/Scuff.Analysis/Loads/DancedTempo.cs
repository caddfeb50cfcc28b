using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Analysis.Loads;

/// <summary>How fast a dance is danced on one of its tracks.</summary>
/// <param name="BeatsPerMinute">The music's beat, to a tenth.</param>
/// <param name="CountsPerMinute">The dancer's counts, to a tenth: half of the beats where the dance is counted in half time.</param>
/// <param name="TrackTitle">The track, or empty when the tempo stands in the heading.</param>
public sealed record DancedTempo(Ratio BeatsPerMinute, Ratio CountsPerMinute, string TrackTitle)
{
    // A pulse is felt between about 40 and 300 beats a minute (trade: music facts, 5); what is far outside is a slip, and proves nothing.
    private const int Slowest = 20;
    private const int Fastest = 400;

    /// <summary>The fastest of the dance's stated tempi, or null when none is stated that can be believed.</summary>
    public static DancedTempo? FastestOf(Dance dance)
    {
        DancedTempo? fastest = null;
        foreach (Track track in dance.Tracks)
        {
            if (track.Tempo is { } tempo && Of(dance, tempo.BeatsPerMinute, track.Title) is { } found
                && (fastest is null || found.CountsPerMinute > fastest.CountsPerMinute))
            {
                fastest = found;
            }
        }

        return fastest ?? (OfHeading(dance) is { } stated ? Of(dance, stated, "") : null);
    }

    /// <summary>The tempo that the heading states (<c>bpm: 112</c>), or null.</summary>
    public static Ratio? OfHeading(Dance dance)
    {
        string? words = dance.Header.FirstOrDefault(field => field.Key == "bpm")?.Value;
        int start = words is null ? -1 : words.AsSpan().IndexOfAnyInRange('0', '9');
        if (start < 0)
        {
            return null;
        }

        int number = 0;
        for (int i = start; i < words!.Length && char.IsAsciiDigit(words[i]) && number < 1000; i++)
        {
            number = (number * 10) + words[i] - '0';
        }

        return IsBelievable(number) ? number : null;
    }

    /// <summary>So much in so many counts, in a second.</summary>
    public Ratio PerSecond(Ratio amount, Ratio counts) => amount * CountsPerMinute / (counts * 60);

    /// <summary>Whether so many beats a minute can be a tempo at all.</summary>
    public static bool IsBelievable(Ratio beatsPerMinute) => beatsPerMinute >= Slowest && beatsPerMinute <= Fastest;

    private static DancedTempo? Of(Dance dance, Ratio beats, string track) => IsBelievable(beats) && dance.BeatsPerCount.Sign > 0
        ? new DancedTempo(Tenths(beats), Tenths(beats / dance.BeatsPerCount), track)
        : null;

    private static Ratio Tenths(Ratio value) => new(((value * 10) + new Ratio(1, 2)).Floor, 10);
}
