using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Scuff.Analysis;
using Scuff.Analysis.Compare;
using Scuff.Analysis.Floor;
using Scuff.App.Explaining;
using Scuff.App.Students;
using Scuff.App.Web.Contract;
using Scuff.Prose;
using Scuff.Sheets;
using Scuff.Sheets.Formats;
using Scuff.Sheets.Languages;
using Scuff.Timelines;

namespace Scuff.App.Web.Routes;

/// <summary>What can be said of a text: what is read in it, how it is danced, what could be written next, its sheet, what changed.</summary>
internal sealed class DanceRoutes : IRouteGroup
{
    // A dance of a thousand counts is a long one; what is far above is no dance, and would only make the page wait.
    private const int LargestText = 400_000;

    public void Map(IEndpointRouteBuilder routes, Studio studio)
    {
        routes.MapPost("/api/read", async context =>
        {
            ReadQuestion asked = await Exchange.Read<ReadQuestion>(context).ConfigureAwait(false);
            await Exchange.Answer(context, Reading.Of(Analyse(studio, asked.Text))).ConfigureAwait(false);
        });
        routes.MapPost("/api/floor", async context =>
        {
            FloorQuestion asked = await Exchange.Read<FloorQuestion>(context).ConfigureAwait(false);
            await Exchange.Answer(context, Floor(studio, asked)).ConfigureAwait(false);
        });
        routes.MapPost("/api/complete", async context =>
        {
            CompleteQuestion asked = await Exchange.Read<CompleteQuestion>(context).ConfigureAwait(false);
            Check(asked.Text);
            await Exchange.Answer(context, Completing.Of(asked.Text, Math.Clamp(asked.At, 0, asked.Text.Length))).ConfigureAwait(false);
        });
        routes.MapPost("/api/tidy", async context =>
        {
            TextBody asked = await Exchange.Read<TextBody>(context).ConfigureAwait(false);
            await Exchange.Answer(context, new TextBody(DanceWriter.Tidy(Analyse(studio, asked.Text).Draft))).ConfigureAwait(false);
        });
        routes.MapPost("/api/compare", async context =>
        {
            CompareQuestion asked = await Exchange.Read<CompareQuestion>(context).ConfigureAwait(false);
            DanceComparison comparison = DanceComparison.Of(Analyse(studio, asked.Before), Analyse(studio, asked.After));
            await Exchange.Answer(context, new CompareAnswer(comparison.IsSame, [.. ChangeWords.Of(comparison, SheetLanguage.English)])).ConfigureAwait(false);
        });
        routes.MapGet("/api/sheets", context => Exchange.Answer(context, new SheetOffers(
            [.. SheetFormats.All.Select(f => new SheetFormatOffer(f.Name, f.Extension))],
            [.. SheetLanguage.Codes.Select(c => new SheetLanguageOffer(c, SheetLanguage.Find(c)!.Name))])));
        routes.MapPost("/api/student", async context =>
        {
            TextBody asked = await Exchange.Read<TextBody>(context).ConfigureAwait(false);
            if (!StudentPageFile.Exists)
            {
                throw new RefusalException(StatusCodes.Status409Conflict, "This Scuff was built without its pages. Build it with Node.js at hand.");
            }

            // kept, not shown: its script stands in it, which pages of the studio may not have
            byte[] page = StudentPageFile.Write(StudentPageData.Of(Analyse(studio, asked.Text), ""));
            await Exchange.File(context, "text/html; charset=utf-8", "dance.student" + StudentPageFile.Extension, page).ConfigureAwait(false);
        });
        routes.MapPost("/api/sheet", async context =>
        {
            SheetQuestion asked = await Exchange.Read<SheetQuestion>(context).ConfigureAwait(false);
            await Sheet(studio, asked, context).ConfigureAwait(false);
        });
    }

    /// <summary>A text, read and analysed.</summary>
    /// <exception cref="RefusalException">It is too long for a dance.</exception>
    public static DanceAnalysis Analyse(Studio studio, string text)
    {
        Check(text);
        return studio.Analyse(text);
    }

    private static void Check(string text)
    {
        if (text.Length > LargestText)
        {
            throw new RefusalException(StatusCodes.Status413PayloadTooLarge, "This text is too long for a dance. Keep each dance in a text of its own.");
        }
    }

    /// <summary>A text danced.</summary>
    /// <exception cref="RefusalException">The text is too long, or the dancer no grown person.</exception>
    internal static FloorAnswer Floor(Studio studio, FloorQuestion asked)
    {
        DanceAnalysis analysis = asked.Easier ? Analyse(studio, asked.Text).Easier : Analyse(studio, asked.Text);
        if (asked.Height is < 1 or > 2.3)
        {
            throw new RefusalException(StatusCodes.Status400BadRequest, "The dancer's height is a number of metres from 1 to 2.3.");
        }

        if (asked.Plays is { } track)
        {
            return PlayedRoom.Floor(analysis, PlayedRoom.On(studio, analysis, track).Plan);
        }

        DancerSize size = asked.Height is { } height ? new DancerSize(height) : DancerSize.Default;
        return FloorSampler.Of(analysis, Danced(analysis, asked.Track, asked.Ending).Timeline, size);
    }

    /// <summary>A dance as danced on a track, with the title of that.</summary>
    /// <param name="analysis">The dance.</param>
    /// <param name="track">The track whose tags and restarts are danced; null as the sheet has it; <c>none</c> for plain repetitions.</param>
    /// <param name="withEnding">Whether the ending is danced.</param>
    internal static (Timeline Timeline, string TrackTitle) Danced(DanceAnalysis analysis, string? track, bool withEnding)
    {
        TimelineChoice choice = TimelineChoice.Of(analysis, track) ?? TimelineChoice.Of(analysis, TimelineChoice.Plain)!;
        Timeline timeline = withEnding && analysis.Dance.Ending is not null
            ? analysis.WithEnding(analysis.Dance.Tracks.FirstOrDefault(t => t.Title == choice.TrackTitle))
            : choice.Timeline;
        return (timeline, choice.TrackTitle);
    }

    private static async Task Sheet(Studio studio, SheetQuestion asked, HttpContext context)
    {
        if (SheetFormats.Find(asked.Format) is not { } format)
        {
            throw new RefusalException(StatusCodes.Status400BadRequest, $"There is no format {asked.Format}. The formats are {string.Join(", ", SheetFormats.All.Select(f => f.Name))}.");
        }

        if (SheetLanguage.Find(asked.Language) is null)
        {
            throw new RefusalException(StatusCodes.Status400BadRequest, $"There is no language {asked.Language}. The languages are {string.Join(", ", SheetLanguage.Codes)}.");
        }

        DanceAnalysis analysis = Analyse(studio, asked.Text);
        SheetModel sheet = SheetBuilder.Build(analysis, new SheetChoices
        {
            Language = asked.Language,
            Paper = asked.Paper == "letter" ? Paper.Letter : Paper.A4,
            IsLarge = asked.Large,
            IsCard = asked.Card,
            HasDiagrams = asked.Diagrams,
            Earlier = asked.Since is { } since ? Analyse(studio, since) : null,
        });
        using MemoryStream drawn = new();
        format.Write(sheet, drawn);
        await Exchange.File(context, format.MediaType, null, drawn.GetBuffer().AsMemory(0, (int)drawn.Length)).ConfigureAwait(false);
    }
}
