using System.Globalization;
using System.Reflection;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Routing;
using Scuff.App.Clubs;
using Scuff.App.Complaints;
using Scuff.App.Memory;
using Scuff.App.Web.Contract;
using Scuff.App.Web.Hall;
using Scuff.Repertoire;

namespace Scuff.App.Web.Routes;

/// <summary>The dances of the club: finding, keeping, versions, tags, the bin, duplicates, folders.</summary>
internal sealed class LibraryRoutes : IRouteGroup
{
    private const int MostRows = 200;

    // a club with the music of an evening or two
    private const long LargestBackup = 8L * 1024 * 1024 * 1024;

    public void Map(IEndpointRouteBuilder routes, Studio studio)
    {
        ClubDances dances = studio.Club.Dances;
        routes.MapGet("/api/club", context => Exchange.Answer(context, Club(studio)));
        routes.MapGet("/api/dances", context => Exchange.Answer(context, List(dances, context.Request.Query)));
        routes.MapPost("/api/dances", async context =>
        {
            TextBody body = await Exchange.Read<TextBody>(context).ConfigureAwait(false);
            StoredDance added = dances.Add(body.Text, "page");
            await Exchange.Answer(context, Body(added), StatusCodes.Status201Created).ConfigureAwait(false);
        });
        routes.MapGet("/api/dances/{id}", context =>
        {
            StoredDance dance = Get(dances, context);
            studio.Club.Settings.Set(ClubPlace.LastDanceSetting, dance.Id);
            return Exchange.Answer(context, Body(dance));
        });
        routes.MapPut("/api/dances/{id}", async context =>
        {
            DanceSave save = await Exchange.Read<DanceSave>(context).ConfigureAwait(false);
            await Told(context, dances.Save(Exchange.Path(context, "id"), save.Text, save.Revision, save.Hand)).ConfigureAwait(false);
        });
        routes.MapDelete("/api/dances/{id}", context => dances.Remove(Exchange.Path(context, "id"))
            ? Exchange.Answer(context, new DoneAnswer("The dance lies in the bin. It can be brought back from there."))
            : throw Missing());
        routes.MapPost("/api/dances/{id}/back", context => dances.BringBack(Exchange.Path(context, "id"))
            ? Exchange.Answer(context, new DoneAnswer("The dance is back in the club."))
            : throw Missing());
        routes.MapPut("/api/dances/{id}/tags", async context =>
        {
            TagsBody body = await Exchange.Read<TagsBody>(context).ConfigureAwait(false);
            ValueList<string> kept = dances.SetTags(Exchange.Path(context, "id"), body.Tags) ?? throw Missing();
            await Exchange.Answer(context, new TagsBody([.. kept])).ConfigureAwait(false);
        });
        routes.MapGet("/api/dances/{id}/versions", context => Exchange.Answer(context, Versions(dances, Exchange.Path(context, "id"))));
        routes.MapPost("/api/dances/{id}/versions", async context =>
        {
            VersionName body = await Exchange.Read<VersionName>(context).ConfigureAwait(false);
            _ = dances.KeepVersion(Exchange.Path(context, "id"), body.Name) ?? throw Missing();
            await Exchange.Answer(context, Versions(dances, Exchange.Path(context, "id"))).ConfigureAwait(false);
        });
        routes.MapGet("/api/dances/{id}/versions/{number:int}", context => Exchange.Answer(
            context,
            new TextBody(dances.VersionText(Exchange.Path(context, "id"), Number(context)) ?? throw Missing())));
        routes.MapPost("/api/dances/{id}/versions/{number:int}/back", async context =>
        {
            VersionReturn body = await Exchange.Read<VersionReturn>(context).ConfigureAwait(false);
            await Told(context, dances.GoBack(Exchange.Path(context, "id"), Number(context), body.Revision)).ConfigureAwait(false);
        });
        routes.MapPost("/api/bin/empty", context =>
        {
            int gone = dances.EmptyBin();
            return Exchange.Answer(context, new DoneAnswer($"{Summary.Number(gone, "dance")} removed for good."));
        });
        routes.MapGet("/api/duplicates", context => Exchange.Answer(context, Duplicates(dances)));
        // the disk of this machine is chosen from at this machine
        routes.MapPost("/api/folder", async context =>
        {
            FolderBody body = await Exchange.Read<FolderBody>(context).ConfigureAwait(false);
            await Exchange.Answer(context, Link(studio.Club, body.Path.Trim())).ConfigureAwait(false);
        }).For(HallCircle.Here);
        routes.MapPost("/api/folder/look", context => Exchange.Answer(context, new FolderAnswer(FolderWords.Of(studio.Club.Linked.Rescan()))));
        routes.MapPost("/api/folder/import", async context =>
        {
            FolderBody body = await Exchange.Read<FolderBody>(context).ConfigureAwait(false);
            await Exchange.Answer(context, new FolderAnswer(FolderWords.Of(studio.Club.Import(Full(body), SameTitle.AddBeside)))).ConfigureAwait(false);
        }).For(HallCircle.Here);
        routes.MapPost("/api/folder/export", async context =>
        {
            FolderBody body = await Exchange.Read<FolderBody>(context).ConfigureAwait(false);
            await Exchange.Answer(context, new FolderAnswer(FolderWords.Of(studio.Club.Export(Full(body))))).ConfigureAwait(false);
        }).For(HallCircle.Here);
        routes.MapPost("/api/restore", context => Restore(studio, context)).For(HallCircle.Here);
        routes.MapPost("/api/backup", context => Backup(studio, context));
    }

    /// <summary>How a list shows a dance.</summary>
    internal static DanceItem Item(DanceRow row)
    {
        DanceFacts facts = row.Facts;
        List<string> said = [];
        if (facts.Counts is { } counts)
        {
            said.Add(Summary.Number(counts, "count"));
        }

        if (facts.Walls is { } walls)
        {
            said.Add(Summary.Number(walls, "wall"));
        }

        if (facts.Level.Length > 0)
        {
            said.Add(facts.Level);
        }

        if (facts.Rhythm.Length > 0)
        {
            said.Add(facts.Rhythm);
        }

        return new DanceItem(
            row.Id,
            facts.Title,
            facts.Choreographer,
            string.Join(", ", said),
            Standing(facts),
            facts.Errors + facts.Questions + facts.Warnings == 0,
            [.. facts.Songs],
            [.. row.Tags],
            row.SavedAt.ToString("o", CultureInfo.InvariantCulture),
            row.RemovedAt?.ToString("o", CultureInfo.InvariantCulture),
            row.FileName);
    }

    private static string Standing(DanceFacts facts)
    {
        string[] found =
        [
            .. new[] { (facts.Errors, "error"), (facts.Questions, "question"), (facts.Warnings, "warning") }
                .Where(f => f.Item1 > 0)
                .Select(f => Summary.Number(f.Item1, f.Item2)),
        ];
        return found.Length switch
        {
            0 => "clean",
            1 => found[0],
            _ => string.Join(", ", found[..^1]) + " and " + found[^1],
        };
    }

    /// <summary>Makes the first answers of a start once, so that the page does not wait for code that never ran.</summary>
    /// <exception cref="ClubTrouble">The club cannot be read.</exception>
    internal static void Warm(Studio studio)
    {
        ClubAnswer club = Club(studio);
        _ = JsonSerializer.SerializeToUtf8Bytes(club, StudioJson.Default.ClubAnswer);
        if (club.FirstDance is { } first && studio.Club.Dances.Get(first) is { } dance)
        {
            _ = JsonSerializer.SerializeToUtf8Bytes(Body(dance), StudioJson.Default.DanceBody);
        }
    }

    private static ClubAnswer Club(Studio studio)
    {
        ClubDances dances = studio.Club.Dances;
        DancePage first = dances.Search(new DanceQuery { Take = 1, Order = DanceOrder.LastSaved });
        return new ClubAnswer(
            studio.Club.Settings.Get(ClubPlace.NameSetting) ?? Path.GetFileName(studio.Club.Folder.TrimEnd(Path.DirectorySeparatorChar)),
            studio.Club.Folder,
            studio.Club.Linked.Path,
            first.Total,
            studio.Club.Tracks.Search(new TrackQuery { Take = 1 }).Total,
            dances.Search(new DanceQuery { Take = 1, InBin = true }).Total,
            [.. dances.Tags().Select(t => new TagUse(t.Tag, t.Count))],
            [.. dances.Levels()],
            studio.LastDance()?.Id,
            typeof(LibraryRoutes).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "");
    }

    private static DanceList List(ClubDances dances, IQueryCollection asked)
    {
        DancePage page = dances.Search(new DanceQuery
        {
            Words = asked["words"].ToString(),
            Tag = Said(asked["tag"].ToString()),
            Level = Said(asked["level"].ToString()),
            Walls = Whole(asked["walls"].ToString()),
            OnlyWithComplaints = asked["complaints"] == "yes",
            InBin = asked["bin"] == "yes",
            Order = asked["order"].ToString() switch { "title" => DanceOrder.Title, "saved" => DanceOrder.LastSaved, "added" => DanceOrder.LastAdded, "by" => DanceOrder.Choreographer, "counts" => DanceOrder.Counts, _ => DanceOrder.BestMatch },
            Skip = Math.Max(0, Whole(asked["skip"].ToString()) ?? 0),
            Take = Math.Clamp(Whole(asked["take"].ToString()) ?? 50, 1, MostRows),
        });
        return new DanceList([.. page.Rows.Select(Item)], page.Total);
    }

    private static string? Said(string words) => words.Length > 0 ? words : null;

    private static int? Whole(string words) => int.TryParse(words, NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : null;

    private static int Number(HttpContext context) => Whole(Exchange.Path(context, "number")) ?? throw Missing();

    private static StoredDance Get(ClubDances dances, HttpContext context) => dances.Get(Exchange.Path(context, "id")) ?? throw Missing();

    private static DanceBody Body(StoredDance dance) => new(Item(dance.Row), dance.Revision, dance.Text);

    private static RefusalException Missing() => new(StatusCodes.Status404NotFound, "This dance is not in the club any more. Look for it in the book, or in its bin.");

    private static Task Told(HttpContext context, SaveOutcome outcome) => outcome switch
    {
        SaveOutcome.Saved saved => Exchange.Answer(context, new DanceSaved(saved.Revision, saved.FileTrouble)),
        SaveOutcome.Changed changed => Exchange.Answer(
            context,
            new DanceClash("This dance was changed elsewhere in the meantime. Nothing is lost: choose which text to go on with.", changed.Revision, changed.Text),
            StatusCodes.Status409Conflict),
        _ => throw Missing(),
    };

    private static DanceVersions Versions(ClubDances dances, string id)
        => new([.. dances.Versions(id).Select(v => new VersionItem(v.Number, v.Name, v.SavedAt.ToString("o", CultureInfo.InvariantCulture)))]);

    private static DuplicateList Duplicates(ClubDances dances) => new(
    [
        .. dances.Duplicates().Select(g => new DuplicateItem(
            g.Reason switch
            {
                DuplicateReason.SameText => "The same text",
                DuplicateReason.SameSteps => "Other words, but the feet do the same",
                _ => "The same title",
            },
            [.. g.Ids.Select(dances.Get).OfType<StoredDance>().Select(d => Item(d.Row))])),
        .. LikenessDesk.NearlySameGroups(dances.Every()).Select(g => new DuplicateItem("Nearly the same steps", [.. g.Select(Item)])),
    ]);

    // Made whole before the first byte leaves: a backup that ends in the middle would pass for one.
    private static async Task Backup(Studio studio, HttpContext context)
    {
        string file = Path.GetTempFileName();
        FileStream made = new(file, FileMode.Create, FileAccess.ReadWrite, FileShare.None, 64 * 1024, FileOptions.DeleteOnClose);
        await using (made.ConfigureAwait(false))
        {
            studio.Club.Backup(made, withMusic: context.Request.Query["music"] == "yes");
            made.Position = 0;
            string day = studio.Clock.GetLocalNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            context.Response.ContentType = "application/zip";
            context.Response.ContentLength = made.Length;
            context.Response.Headers.ContentDisposition = $"attachment; filename=\"scuff-club-{day}.zip\"";
            await made.CopyToAsync(context.Response.Body, context.RequestAborted).ConfigureAwait(false);
        }
    }

    private static async Task Restore(Studio studio, HttpContext context)
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
        {
            limit.MaxRequestBodySize = LargestBackup;
        }

        string file = Path.GetTempFileName();
        try
        {
            FileStream taken = new(file, FileMode.Create, FileAccess.Write, FileShare.None);
            await using (taken.ConfigureAwait(false))
            {
                await context.Request.Body.CopyToAsync(taken, context.RequestAborted).ConfigureAwait(false);
            }

            RestoreReport report = studio.Club.Restore(file);
            string aside = report.KeptAside is { } kept ? $" The club as it was lies in {kept}." : "";
            string silent = report.WithoutAudio > 0 ? $" {Summary.Number(report.WithoutAudio, "track")} came without sound, since the backup has none." : "";
            await Exchange.Answer(context, new DoneAnswer($"{Summary.Number(report.Dances, "dance")} and {Summary.Number(report.Tracks, "track")} are back.{silent}{aside}")).ConfigureAwait(false);
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static FolderAnswer Link(Club club, string path)
    {
        if (path.Length == 0)
        {
            club.Linked.Unlink();
            return new FolderAnswer(["The folder is on its own again. The dances stay in the club, the files in the folder."]);
        }

        return new FolderAnswer(FolderWords.Of(club.Linked.Link(Full(new FolderBody(path)))));
    }

    private static string Full(FolderBody body) => Path.IsPathFullyQualified(body.Path.Trim())
        ? Path.GetFullPath(body.Path.Trim())
        : throw new RefusalException(StatusCodes.Status400BadRequest, "Name the folder by its whole path, from the root of the disk.");
}
