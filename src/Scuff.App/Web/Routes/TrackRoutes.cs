using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Routing;
using Scuff.App.Tracks;
using Scuff.App.Web.Contract;
using Scuff.App.Web.Tracks;
using Scuff.Audio.Decoding;
using Scuff.Audio.Signals;
using Scuff.Audio.Songs;
using Scuff.Music.Corrections;
using Scuff.Music.Labels;
using Scuff.Repertoire;

namespace Scuff.App.Web.Routes;

/// <summary>The tracks of the club: taking them in, hearing them, playing them, what is said of them.</summary>
internal sealed class TrackRoutes : IRouteGroup
{
    private const int MostRows = 200;

    public void Map(IEndpointRouteBuilder routes, Studio studio)
    {
        MapFiles(routes, studio);
        MapTrack(routes, studio);
        MapWork(routes, studio);
    }

    // What comes in, and lists of what there is.
    private static void MapFiles(IEndpointRouteBuilder routes, Studio studio)
    {
        routes.MapGet("/api/tracks", context => Exchange.Answer(context, List(studio, context.Request.Query)));
        routes.MapPost("/api/tracks", async context => await Exchange.Answer(context, await Take(studio, context).ConfigureAwait(false)).ConfigureAwait(false));
        routes.MapPost("/api/tracks/text", async context =>
        {
            TrackTextBody body = await Exchange.Read<TrackTextBody>(context).ConfigureAwait(false);
            await Exchange.Answer(context, TakeText(studio, body)).ConfigureAwait(false);
        });
        routes.MapGet("/api/tracks/songs", context => Exchange.Answer(context, Songs(studio)));
        routes.MapPost("/api/tracks/songs", async context =>
        {
            SongQuestion asked = await Exchange.Read<SongQuestion>(context).ConfigureAwait(false);
            await Exchange.Answer(context, Play(studio, asked)).ConfigureAwait(false);
        });
    }

    // One track.
    private static void MapTrack(IEndpointRouteBuilder routes, Studio studio)
    {
        ClubTracks tracks = studio.Club.Tracks;
        routes.MapGet("/api/tracks/{id}", context => Exchange.Answer(context, Whole(studio, Id(context))));
        routes.MapPut("/api/tracks/{id}", async context =>
        {
            TrackFactsBody body = await Exchange.Read<TrackFactsBody>(context).ConfigureAwait(false);
            TrackRow row = studio.Tracks.Find(Id(context));
            tracks.SetFacts(row.Id, row.Facts with { Title = Short(body.Title), Artist = Short(body.Artist) });
            await Exchange.Answer(context, Whole(studio, row.Id)).ConfigureAwait(false);
        });
        routes.MapDelete("/api/tracks/{id}", context => tracks.Remove(studio.Tracks.Find(Id(context)).Id)
            ? Exchange.Answer(context, new DoneAnswer("The track lies in the bin. It can be brought back from there."))
            : throw new RefusalException(StatusCodes.Status409Conflict, "The track lies in the bin already."));
        routes.MapPost("/api/tracks/{id}/back", context => tracks.BringBack(studio.Tracks.Find(Id(context)).Id)
            ? Exchange.Answer(context, new DoneAnswer("The track is back in the club."))
            : throw new RefusalException(StatusCodes.Status409Conflict, "The track is not in the bin."));
        routes.MapPut("/api/tracks/{id}/tags", async context =>
        {
            TagsBody body = await Exchange.Read<TagsBody>(context).ConfigureAwait(false);
            TrackRow row = studio.Tracks.Find(Id(context));
            await Exchange.Answer(context, new TagsBody([.. tracks.SetTags(row.Id, body.Tags) ?? []])).ConfigureAwait(false);
        });
        routes.MapMethods("/api/tracks/{id}/sound", [HttpMethods.Get, HttpMethods.Head], context =>
        {
            TrackRow row = studio.Tracks.Find(Id(context));
            string path = tracks.AudioPath(row.Id)
                ?? throw new RefusalException(
                    StatusCodes.Status404NotFound,
                    $"The club keeps no sound for {KnownTrack.TitleOf(row)}. Drop its file once more to hear it.");
            return TrackSounds.Give(context, row, path);
        });
        routes.MapPost("/api/tracks/{id}/said", async context =>
        {
            TrackSayQuestion asked = await Exchange.Read<TrackSayQuestion>(context).ConfigureAwait(false);
            TrackSaying.Say(studio, Id(context), asked);
            await Exchange.Answer(context, Whole(studio, Id(context))).ConfigureAwait(false);
        });
        routes.MapGet("/api/tracks/{id}/as/{what}", context => Export(studio, context));
    }

    // What takes long.
    private static void MapWork(IEndpointRouteBuilder routes, Studio studio)
    {
        routes.MapPost("/api/tracks/{id}/hear", context =>
            Exchange.Answer(context, TrackPages.Job(studio.Tracks.Hear(studio.Tracks.Find(Id(context)))), StatusCodes.Status202Accepted));
        routes.MapPost("/api/tracks/{id}/samples", async context =>
        {
            TrackRow row = studio.Tracks.Find(Id(context));
            MonoAudio audio = await Samples(context).ConfigureAwait(false);
            await Exchange.Answer(context, TrackPages.Job(studio.Tracks.Hear(row, audio)), StatusCodes.Status202Accepted).ConfigureAwait(false);
        });
        routes.MapGet("/api/jobs", context => Exchange.Answer(context, new TrackJobList(studio.Tracks.Jobs.All(TrackPages.Job))));
        routes.MapDelete("/api/jobs/{id}", context => studio.Tracks.Jobs.Stop(Id(context))
            ? Exchange.Answer(context, new DoneAnswer("Stopped."))
            : throw new RefusalException(StatusCodes.Status404NotFound, "This is over already."));
    }

    private static string Id(HttpContext context) => Exchange.Path(context, "id");

    private static string Short(string words) => words.Trim() is { Length: > 300 } trimmed ? trimmed[..300] : words.Trim();

    private static TrackAnswer Whole(Studio studio, string id) => TrackPages.Answer(studio.Tracks.Known(id), studio.Tracks);

    private static TrackList List(Studio studio, IQueryCollection asked)
    {
        TrackPage page = studio.Club.Tracks.Search(new TrackQuery
        {
            Words = asked["words"].ToString(),
            Tag = asked["tag"].ToString() is { Length: > 0 } tag ? tag : null,
            InBin = asked["bin"] == "yes",
            Order = asked["order"].ToString() switch
            {
                "title" => TrackOrder.Title,
                "artist" => TrackOrder.Artist,
                "added" => TrackOrder.LastAdded,
                "tempo" => TrackOrder.Tempo,
                _ => TrackOrder.BestMatch,
            },
            Skip = Number(asked, "skip", 0, int.MaxValue),
            Take = Number(asked, "take", 50, MostRows),
        });
        return new TrackList([.. page.Rows.Select(r => TrackPages.Item(r, studio.Tracks))], page.Total);
    }

    private static int Number(IQueryCollection asked, string name, int usual, int most)
        => int.TryParse(asked[name].ToString(), NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? Math.Min(number, most) : usual;

    // Looked at before it goes into the club: what is no sound never gets there.
    private static async Task<TrackTaken> Take(Studio studio, HttpContext context)
    {
        string given = context.Request.Query["name"].ToString();
        string shown = TrackSounds.NameOf(given, "");
        Unlimit(context, ClubTracks.LargestBytes);
        if (context.Request.ContentLength > ClubTracks.LargestBytes)
        {
            throw new RefusalException(
                StatusCodes.Status413PayloadTooLarge,
                $"{shown} is too large: Scuff takes sound files of up to 1 GB. Save it as MP3 or FLAC, or cut out the part you dance to.");
        }

        FileStream file = new(Path.GetTempFileName(), FileMode.Create, FileAccess.ReadWrite, FileShare.None, 64 * 1024, FileOptions.DeleteOnClose | FileOptions.Asynchronous);
        await using (file.ConfigureAwait(false))
        {
            await context.Request.Body.CopyToAsync(file, context.RequestAborted).ConfigureAwait(false);
            file.Position = 0;
            SoundLook look = Look(file, shown, context.RequestAborted);
            file.Position = 0;
            TrackAdded added = studio.Club.Tracks.Add(
                file, TrackSounds.NameOf(given, look.Format), new TrackFacts { Title = look.Title ?? "", Artist = look.Artist ?? "" });
            TrackRow row = added.Track;
            bool isNeeded = !row.HasMap;
            if (isNeeded && look.IsDecodedHere)
            {
                studio.Tracks.Hear(row);
            }

            string sentence = !added.WasNew ? $"The club has this very file already, as {KnownTrack.TitleOf(row)}."
                : added.SameSong.Count > 0 ? $"The club has another file of {KnownTrack.TitleOf(row)} that is as long: perhaps the same song."
                : "";
            return new TrackTaken(TrackPages.Item(studio.Tracks.Find(row.Id), studio.Tracks), added.WasNew, sentence, isNeeded && !look.IsDecodedHere);
        }
    }

    private static SoundLook Look(FileStream file, string name, CancellationToken cancel)
    {
        try
        {
            return AudioFile.Look(file, cancel);
        }
        catch (AudioException trouble)
        {
            throw new RefusalException(StatusCodes.Status422UnprocessableEntity, $"{name} was not taken. {trouble.Message}");
        }
    }

    private static async Task<MonoAudio> Samples(HttpContext context)
    {
        string said = context.Request.Query["rate"].ToString();
        if (!int.TryParse(said, NumberStyles.None, CultureInfo.InvariantCulture, out int rate) || rate is < SampleIntake.SlowestRate or > SampleIntake.FastestRate)
        {
            throw new RefusalException(
                StatusCodes.Status400BadRequest,
                string.Create(CultureInfo.InvariantCulture, $"The rate is a number of samples a second from {SampleIntake.SlowestRate} to {SampleIntake.FastestRate}."));
        }

        Unlimit(context, (long)rate * sizeof(float) * ((AudioFile.LongestMinutes * 60) + 60));
        SampleIntake intake = new(rate, Hearing.Rate);
        byte[] some = new byte[64 * 1024];
        try
        {
            int got;
            while ((got = await context.Request.Body.ReadAsync(some, context.RequestAborted).ConfigureAwait(false)) > 0)
            {
                intake.Add(some.AsSpan(0, got));
            }

            return intake.Finish();
        }
        catch (AudioException trouble)
        {
            throw new RefusalException(StatusCodes.Status422UnprocessableEntity, trouble.Message);
        }
    }

    // Questions are small; sound is not.
    private static void Unlimit(HttpContext context, long most)
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
        {
            size.MaxRequestBodySize = most;
        }
    }

    private static TrackAnswer TakeText(Studio studio, TrackTextBody body)
    {
        string name = TrackSounds.NameOf(body.Name, "");
        if (name.EndsWith(TrackFiles.CorrectionsEnding, StringComparison.OrdinalIgnoreCase))
        {
            if (body.Track is not { } of)
            {
                throw new RefusalException(
                    StatusCodes.Status400BadRequest,
                    $"{name} holds corrections. Choose the track that they are about, then drop them on it.");
            }

            TrackSaying.Replace(studio, of, body.Text, body.Revision);
            return Whole(studio, of);
        }

        HeardTrack track = name switch
        {
            _ when name.EndsWith(TrackFiles.MapEnding, StringComparison.OrdinalIgnoreCase) => TrackReader.ByHand(name, TrackMapText.Read(body.Text)),
            _ when name.EndsWith(TrackFiles.BeatsEnding, StringComparison.OrdinalIgnoreCase) => TrackReader.FromLabels(name, body.Text, body.Sections),
            _ => throw new RefusalException(
                StatusCodes.Status415UnsupportedMediaType,
                $"{name} is no text about a track. Scuff reads maps by hand ({TrackFiles.MapEnding}), labels of beats ({TrackFiles.BeatsEnding}) and corrections ({TrackFiles.CorrectionsEnding})."),
        };
        if (track.Map is not { } map)
        {
            throw new RefusalException(StatusCodes.Status422UnprocessableEntity, track.Trouble!);
        }

        string id = body.Track is { } given ? studio.Tracks.Find(given).Id : studio.Club.Tracks.AddWithoutAudio(name, new TrackFacts { Title = map.Title, Artist = map.Artist }).Id;
        studio.Tracks.KeepByHand(id, track);
        return Whole(studio, id);
    }

    private static Task Export(Studio studio, HttpContext context)
    {
        KnownTrack track = studio.Tracks.Known(Id(context));
        if (track.Map is not { } map)
        {
            throw new RefusalException(StatusCodes.Status409Conflict, $"{track.Title} was not heard yet, so there is nothing to write.");
        }

        string stem = HeardTrack.StemOf(TrackSounds.NameOf(track.Row.FileName, ""));
        (string ending, string type, string text) = Exchange.Path(context, "what") switch
        {
            "beats" => (TrackFiles.BeatsEnding, "text/plain; charset=utf-8", LabelFile.Write(TrackLabels.BeatsOf(map))),
            "sections" => (TrackFiles.SectionsEnding, "text/plain; charset=utf-8", LabelFile.Write(TrackLabels.SectionsOf(map))),
            "corrections" => (TrackFiles.CorrectionsEnding, "application/json; charset=utf-8", CorrectionsText.Write(track.Said)),
            "picture" => (".svg", "image/svg+xml", TrackPicture.Draw(track.Heard)),
            _ => throw new RefusalException(StatusCodes.Status404NotFound, "A track is written as beats, sections, corrections or a picture."),
        };
        return Exchange.File(context, type, stem + ending, Encoding.UTF8.GetBytes(text));
    }

    private static SongList Songs(Studio studio)
    {
        return new SongList(
        [
            .. DemoSongs.All.Select(s => new SongItem(
                s.Recipe.Title,
                s.Artist,
                s.Dance,
                s.Recipe.Tempo,
                studio.Club.Tracks.Search(new TrackQuery { Words = s.Recipe.Title, Take = 20 }).Rows.FirstOrDefault(r => r.FileName == DemoSongFile.NameOf(s))?.Id)),
        ]);
    }

    private static TrackJobList Play(Studio studio, SongQuestion asked)
    {
        DemoSong[] songs = [.. DemoSongs.All.Where(s => asked.Titles.Count == 0 || asked.Titles.Contains(s.Recipe.Title))];
        if (songs.Length == 0)
        {
            throw new RefusalException(
                StatusCodes.Status404NotFound,
                $"The demo club has no song of that title. It has {string.Join(", ", DemoSongs.All.Select(s => s.Recipe.Title))}.");
        }

        foreach (DemoSong song in songs)
        {
            studio.Tracks.Play(song);
        }

        return new TrackJobList(studio.Tracks.Jobs.All(TrackPages.Job));
    }
}
