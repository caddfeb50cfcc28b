using System.Globalization;
using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Timelines;

namespace Scuff.App.Explaining;

/// <summary>Which dancing of a dance is explained.</summary>
/// <param name="Timeline">The dance as danced.</param>
/// <param name="TrackTitle">The track it is danced to, or empty.</param>
internal sealed record TimelineChoice(Timeline Timeline, string TrackTitle)
{
    /// <summary>The word for plain repetitions.</summary>
    public const string Plain = "none";

    /// <summary>
    /// Not asked: as the sheet has it danced, with its tags and restarts (on the first track that has any), or plain repetitions
    /// when nothing breaks the pattern. Asked: the track of a number or of words of its title.
    /// </summary>
    /// <returns>The choice, or null when there is no such track.</returns>
    public static TimelineChoice? Of(DanceAnalysis analysis, string? asked)
    {
        if (asked is null)
        {
            return analysis.TrackTimelines.Count > 0 ? From(analysis.TrackTimelines[0]) : new TimelineChoice(analysis.PlainTimeline, "");
        }

        if (string.Equals(asked, Plain, StringComparison.OrdinalIgnoreCase))
        {
            return new TimelineChoice(analysis.PlainTimeline, "");
        }

        Track? track = Find(analysis.Dance.Tracks, asked);
        if (track is null)
        {
            return null;
        }

        // a track without breaks of its own is danced as every track is
        TrackTimeline? own = analysis.TrackTimelines.FirstOrDefault(t => ReferenceEquals(t.Track, track))
            ?? analysis.TrackTimelines.FirstOrDefault(t => t.Track is null);
        return new TimelineChoice(own?.Timeline ?? analysis.PlainTimeline, track.Title);
    }

    private static TimelineChoice From(TrackTimeline danced) => new(danced.Timeline, danced.Track?.Title ?? "");

    private static Track? Find(ValueList<Track> tracks, string asked)
        => int.TryParse(asked, NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            ? (number >= 1 && number <= tracks.Count ? tracks[number - 1] : null)
            : tracks.FirstOrDefault(t => t.Title.Contains(asked, StringComparison.OrdinalIgnoreCase));
}
