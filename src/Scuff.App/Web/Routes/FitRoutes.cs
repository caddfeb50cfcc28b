using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Scuff.Analysis.Fit;
using Scuff.Analysis.Floor;
using Scuff.App.Fitting;
using Scuff.App.Json;
using Scuff.App.Web.Contract;
using Scuff.App.Web.Tracks;
using Scuff.Dances;
using Scuff.Music;
using Scuff.Prose;
using Scuff.Repertoire;

namespace Scuff.App.Web.Routes;

/// <summary>How dances and tracks go together: plans, the floor that dances them, matches both ways.</summary>
internal sealed class FitRoutes : IRouteGroup
{
    private const int MostNamed = 100;

    // A dance takes some ten milliseconds to be looked at; in a library of ten thousand those of another tempo are left out first.
    private const int MostDances = 400;

    private const int Page = 500;

    public void Map(IEndpointRouteBuilder routes, Studio studio)
    {
        routes.MapPost("/api/fit", async context =>
        {
            DanceFitQuestion asked = await Exchange.Read<DanceFitQuestion>(context).ConfigureAwait(false);
            await Exchange.Answer(context, FitRoom.Of(studio, DanceRoutes.Analyse(studio, asked.Text), asked)).ConfigureAwait(false);
        });
        routes.MapPost("/api/fit/floor", async context =>
        {
            DanceFitQuestion asked = await Exchange.Read<DanceFitQuestion>(context).ConfigureAwait(false);
            Analysis.DanceAnalysis analysis = DanceRoutes.Analyse(studio, asked.Text);
            FitPlan plan = FitRoom.Chosen(studio, analysis, asked);

            // however it ends, the music does not begin again
            await Exchange.Answer(context, FloorSampler.Of(analysis, plan.WithEnding, DancerSize.Default) with { GoesRound = false }).ConfigureAwait(false);
        });
        routes.MapPost("/api/played", async context =>
        {
            PlayedQuestion asked = await Exchange.Read<PlayedQuestion>(context).ConfigureAwait(false);
            await Exchange.Answer(context, PlayedRoom.Of(studio, DanceRoutes.Analyse(studio, asked.Text), asked)).ConfigureAwait(false);
        });
        routes.MapPost("/api/match/tracks", async context =>
        {
            MatchTracksQuestion asked = await Exchange.Read<MatchTracksQuestion>(context).ConfigureAwait(false);
            await Exchange.Answer(context, Tracks(studio, asked, context.RequestAborted)).ConfigureAwait(false);
        });
        routes.MapPost("/api/match/dances", async context =>
        {
            MatchDancesQuestion asked = await Exchange.Read<MatchDancesQuestion>(context).ConfigureAwait(false);
            await Exchange.Answer(context, Dances(studio, asked, context.RequestAborted)).ConfigureAwait(false);
        });
    }

    private static MatchAnswer Tracks(Studio studio, MatchTracksQuestion asked, CancellationToken cancel)
    {
        Dance dance = DanceRoutes.Analyse(studio, asked.Text).Dance;
        List<(string Id, TrackMap Map)> tracks = [];
        foreach (TrackRow row in Rows(studio))
        {
            cancel.ThrowIfCancellationRequested();
            if (row.HasMap && studio.Tracks.Ready(row) is { } map)
            {
                tracks.Add((row.Id, map));
            }
        }

        // one core stays for what she types meanwhile
        int workers = Math.Max(1, Environment.ProcessorCount - 1);
        IReadOnlyList<MatchRow> rows = Matching.Tracks((dance.Title, dance), tracks, asked.NoTags, Math.Clamp(asked.Most, 1, MostNamed), workers, cancel);
        string sentence = tracks.Count == 0 ? "No track of the club was heard yet. Drop a file in the listen room, or take the songs of the demo club."
            : rows.Count == 0 ? "None of the tracks suits without a tag or restart."
            : "";
        return new MatchAnswer([.. rows.Select(r => new MatchedItem(r, r.Track, null))], sentence);
    }

    private static MatchAnswer Dances(Studio studio, MatchDancesQuestion asked, CancellationToken cancel)
    {
        TrackRow track = studio.Tracks.Find(asked.Track);
        TrackMap map = studio.Tracks.Ready(track)
            ?? throw new RefusalException(
                StatusCodes.Status409Conflict,
                $"{KnownTrack.TitleOf(track)} was not heard yet. Hear it first, then look for dances.");
        DancePage all = studio.Club.Dances.Search(new DanceQuery { Take = int.MaxValue });
        DanceRow[] near = [.. all.Rows.OrderBy(r => Away(r.Facts, map.Tempo.Value)).Take(MostDances)];
        Dictionary<string, string> titles = near.ToDictionary(r => r.Id, r => r.Facts.Title);
        IEnumerable<(string, Dance)> dances = near
            .Select(r => studio.Club.Dances.Get(r.Id))
            .OfType<StoredDance>()
            .Select(d => (d.Id, DanceReader.Read(d.Text).Dance))
            .Where(d => d.Dance.Length > Timing.Counts.Zero);
        IReadOnlyList<MatchRow> rows = Matching.Dances(dances, [(map.Title, map)], asked.NoTags, Math.Clamp(asked.Most, 1, MostNamed), cancel);
        string sentence = all.Total > near.Length
            ? $"Looked at the {near.Length} dances whose tempo is nearest, of {all.Total}."
            : rows.Count == 0 ? "None of the dances suits without a tag or restart." : "";
        return new MatchAnswer([.. rows.Select(r => new MatchedItem(r with { Dance = titles[r.Dance] }, track.Id, r.Dance))], sentence);
    }

    private static IEnumerable<TrackRow> Rows(Studio studio)
    {
        for (int skip = 0; ; skip += Page)
        {
            TrackPage page = studio.Club.Tracks.Search(new TrackQuery { Order = TrackOrder.Title, Skip = skip, Take = Page });
            foreach (TrackRow row in page.Rows)
            {
                yield return row;
            }

            if (page.Rows.Count < Page)
            {
                yield break;
            }
        }
    }

    // How far the tempo of a dance is from that of the music, at half, the same or double; a dance that states none may be of any.
    private static double Away(DanceFacts facts, double tempo)
    {
        if (facts is not { SlowestTempo: { } slow, FastestTempo: { } fast } || tempo <= 0)
        {
            return 0;
        }

        return new[] { 0.5, 1, 2 }.Min(f => Math.Log2(f * tempo) is var at && at < Math.Log2(slow) ? Math.Log2(slow) - at : Math.Max(0, Math.Log2(f * tempo) - Math.Log2(fast)));
    }
}
