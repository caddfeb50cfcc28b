using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Scuff.Analysis;
using Scuff.Analysis.Easier;
using Scuff.Analysis.Levels;
using Scuff.App.Easing;
using Scuff.App.Web.Contract;
using Scuff.Dances;
using Scuff.Prose;

namespace Scuff.App.Web.Routes;

/// <summary>Easier ways to dance some lines or all of a text, an easier version of it, and the dance in the other foot.</summary>
internal sealed class EasierRoutes : IRouteGroup
{
    private const int MostOffers = 3;

    public void Map(IEndpointRouteBuilder routes, Studio studio)
    {
        routes.MapPost("/api/easier", async context =>
        {
            EaseQuestion asked = await Exchange.Read<EaseQuestion>(context).ConfigureAwait(false);
            await Exchange.Answer(context, Offers(DanceRoutes.Analyse(studio, asked.Text), asked)).ConfigureAwait(false);
        });
        routes.MapPost("/api/easier/version", async context =>
        {
            EaseQuestion asked = await Exchange.Read<EaseQuestion>(context).ConfigureAwait(false);
            EasierText version = EasierText.Of(DanceRoutes.Analyse(studio, asked.Text), QuestionOf(asked));
            await Exchange.Answer(context, new VersionAnswer(version.Text, [.. Remarks(version)])).ConfigureAwait(false);
        });
        routes.MapPost("/api/mirror", async context =>
        {
            TextBody asked = await Exchange.Read<TextBody>(context).ConfigureAwait(false);
            MirroredText mirrored = MirrorWriter.Write(DanceRoutes.Analyse(studio, asked.Text).Draft);
            await Exchange.Answer(context, new VersionAnswer(mirrored.Text, [.. Remarks(mirrored)])).ConfigureAwait(false);
        });
    }

    private static EaseAnswer Offers(DanceAnalysis analysis, EaseQuestion asked)
    {
        EasierQuestion question = QuestionOf(asked);
        EasierOffers offers = new(analysis, question);
        return new EaseAnswer(EasierWords.Sought(question), [.. offers.Places.Select(place => Move(place, offers.For(place, MostOffers), question.Aim))]);
    }

    private static EasedMove Move(EasierPlace place, IReadOnlyList<EasierOffer> offers, EasierAim aim) => new(
        place.Place.Words,
        place.Move.Span.Start,
        place.Move.Span.End,
        Phrasing.Describe(place.Move),
        EasierWords.Of(place.Demand),
        [.. offers.Select(Offer)],
        offers.Count == 0 ? EasierWords.None(aim) : "");

    private static EasedOffer Offer(EasierOffer offer) => new(
        offer.Label,
        offer.Words,
        [.. offer.Way.Reasons.Select(reason => reason.Words)],
        new ReadFix("write it as an option", [.. offer.Edits.Select(edit => new ReadEdit(edit.Span.Start, edit.Span.End, edit.NewText))]));

    private static EasierQuestion QuestionOf(EaseQuestion asked)
    {
        if (EasierWords.Find(asked.For) is not { } aim)
        {
            throw new RefusalException(StatusCodes.Status400BadRequest, $"Something easier is asked for one of {string.Join(", ", EasierWords.Aims)}.");
        }

        if (LevelPhrases.Find(asked.Level) is not { } level || level == Level.Advanced)
        {
            throw new RefusalException(StatusCodes.Status400BadRequest, $"The level of the class is one of {EasierWords.Levels}.");
        }

        return new EasierQuestion
        {
            Aim = aim,
            Level = level,
            Lines = asked is { From: { } from, To: { } to } ? (LineOf(asked.Text, from), LineOf(asked.Text, Math.Max(from, to))) : null,
        };
    }

    private static int LineOf(string text, int place) => text.AsSpan(0, Math.Clamp(place, 0, text.Length)).Count('\n') + 1;

    private static IEnumerable<string> Remarks(EasierText version)
    {
        yield return version.Taken.Count == 0
            ? "Nothing in it had to be made easier."
            : $"{EasierWords.Moves(version.Taken.Count)} made easier. Ask who wrote the dance before you hand it on.";
        foreach (EasierPlace place in version.Left)
        {
            yield return $"Left as it is: {Phrasing.Describe(place.Move)} ({place.Place.Words}).";
        }
    }

    private static IEnumerable<string> Remarks(MirroredText mirrored)
    {
        foreach (Note note in mirrored.Notes)
        {
            yield return $"A note names a side and stands as it was: {note.Words}";
        }

        foreach (int line in mirrored.Open)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"Line {line} could not be turned round for certain; look at it.");
        }
    }
}
