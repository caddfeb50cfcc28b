using Scuff.Analysis;
using Scuff.Analysis.Fit;
using Scuff.Analysis.Floor;
using Scuff.App.Web.Contract;
using Scuff.App.Web.Tracks;
using Scuff.Dances;
using Scuff.Music;
using Scuff.Repertoire;

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
        Timing.Ratio? beats = DanceFitter.IsCountable(danced.Dance.BeatsPerCount) ? danced.Dance.BeatsPerCount : null;
        FitAnswer fit = danced.Fit(map, new FitOptions { MostInterruptions = 0, BeatsPerCount = beats });
        if (fit.AsWritten is not { } plan)
        {
            return None($"The text has no plan for {named.Title} that its music can be danced by. Choose one in the room Fit and put it into the text.");
        }

        // however it ends, the music does not begin again
        FloorAnswer floor = FloorSampler.Of(danced, plan.WithEnding, DancerSize.Default) with { GoesRound = false };
        return new PlayedAnswer(tracks, row.Id, named.Title, floor, [.. fit.Music.Performed(plan.Begins).Select(t => new[] { t.Count, Math.Round(t.Seconds, 4) })], "");

        PlayedAnswer None(string sentence) => new(tracks, null, "", null, [], sentence);
    }

    private static string Why(Dance dance) => dance.Tracks.Count == 0
        ? "The text names no track. Choose one in the room Fit and put the plan into the text."
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
