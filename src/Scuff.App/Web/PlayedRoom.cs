using Microsoft.AspNetCore.Http;
using Scuff.Analysis;
using Scuff.Analysis.Fit;
using Scuff.Analysis.Floor;
using Scuff.App.Web.Contract;
using Scuff.App.Web.Tracks;
using Scuff.Dances;
using Scuff.Music;
using Scuff.Repertoire;
using Scuff.Timing;

namespace Scuff.App.Web;

/// <summary>Answers how a dance is danced on a track by the plan that stands in its text.</summary>
internal static class PlayedRoom
{
    private const int MostTracks = 40;

    /// <summary>The dance on a track of the club, or why it is on none.</summary>
    public static PlayedAnswer Of(Studio studio, DanceAnalysis written, PlayedQuestion asked)
    {
        List<(TrackRow Row, Track Named, TrackMap Map)> known = [.. Known(studio, written.Dance)];
        PlayedTrack[] tracks = [.. known.Select(k => new PlayedTrack(k.Row.Id, KnownTrack.TitleOf(k.Row)))];
        int at = asked.Track is null ? 0 : known.FindIndex(k => k.Row.Id == asked.Track);
        if (at < 0 || at >= known.Count)
        {
            return None(Why(written.Dance));
        }

        (TrackRow row, Track named, TrackMap map) = known[at];
        DanceAnalysis danced = asked.Easier ? written.Easier : written;
        return Planned(danced, map) is var (plan, table)
            ? new PlayedAnswer(tracks, row.Id, named.Title, Floor(danced, plan), [.. table.Select(t => new[] { t.Count, Math.Round(t.Seconds, 4) })], "")
            : None(NoPlan(named.Title));

        PlayedAnswer None(string sentence) => new(tracks, null, "", null, [], sentence);
    }

    /// <summary>The plan that the text has for a track of the club, with the seconds of its counts.</summary>
    /// <param name="studio">The studio.</param>
    /// <param name="danced">The dance.</param>
    /// <param name="track">The track's name in the club.</param>
    /// <exception cref="RefusalException">The track is not there, was not heard, or the text has no plan for it.</exception>
    public static (FitPlan Plan, ValueList<CountTime> Table) On(Studio studio, DanceAnalysis danced, string track)
    {
        TrackRow row = studio.Tracks.Find(track);
        TrackMap map = studio.Tracks.Ready(row)
            ?? throw new RefusalException(StatusCodes.Status409Conflict, $"{KnownTrack.TitleOf(row)} was not heard yet. Hear it first, then dance to it.");
        return Planned(danced, map) ?? throw new RefusalException(StatusCodes.Status422UnprocessableEntity, NoPlan(map.Title));
    }

    /// <summary>A plan danced: however it ends, the music does not begin again.</summary>
    public static FloorAnswer Floor(DanceAnalysis danced, FitPlan plan) => FloorSampler.Of(danced, plan.WithEnding, DancerSize.Default) with { GoesRound = false };

    private static (FitPlan Plan, ValueList<CountTime> Table)? Planned(DanceAnalysis danced, TrackMap map)
    {
        Ratio? beats = DanceFitter.IsCountable(danced.Dance.BeatsPerCount) ? danced.Dance.BeatsPerCount : null;
        FitAnswer fit = danced.Fit(map, new FitOptions { MostInterruptions = 0, BeatsPerCount = beats });
        return fit.AsWritten is { } plan && fit.Music.Performed(plan.Begins) is { Count: > 1 } table ? (plan, table) : null;
    }

    private static string NoPlan(string title)
        => $"The text has no plan for {title} that its music can be danced by. Choose one in the room Fit and put it into the text.";

    private static string Why(Dance dance) => dance.Tracks.Count == 0
        ? "The text names no track. Choose one in the room Fit and put the plan into the text; then it can be practised here."
        : "No track that the text names was heard in this club yet. Drop its file in the room Listen, and hear it.";

    private static IEnumerable<(TrackRow Row, Track Named, TrackMap Map)> Known(Studio studio, Dance dance)
    {
        foreach (Track named in dance.Tracks.Where(t => t.Title.Length > 0))
        {
            TrackPage page = studio.Club.Tracks.Search(new TrackQuery { Words = named.Title, Take = MostTracks });
            foreach (TrackRow row in page.Rows)
            {
                if (row is { HasMap: true, HasAudio: true } && studio.Tracks.Ready(row) is { } map && DanceFitter.IsOf(named, map))
                {
                    yield return (row, named, map);
                }
            }
        }
    }
}
