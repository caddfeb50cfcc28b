using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Scuff.Analysis;
using Scuff.Analysis.Lessons;
using Scuff.Analysis.Levels;
using Scuff.App.Web.Contract;
using Scuff.Dances;
using Scuff.Sheets;
using Scuff.Sheets.Formats;
using Scuff.Sheets.Languages;
using Scuff.Timing;

namespace Scuff.App.Web.Routes;

/// <summary>How a dance is taught in the time there is, as a checklist and to print.</summary>
internal sealed class LessonRoutes : IRouteGroup
{
    public void Map(IEndpointRouteBuilder routes, Studio studio)
    {
        routes.MapPost("/api/lesson", async context =>
        {
            LessonQuestion asked = await Exchange.Read<LessonQuestion>(context).ConfigureAwait(false);
            DanceAnalysis analysis = DanceRoutes.Analyse(studio, asked.Text);
            await Exchange.Answer(context, Answer(analysis, analysis.Lesson(OptionsOf(studio, asked)), asked.Minutes is not null)).ConfigureAwait(false);
        });
        routes.MapPost("/api/lesson/sheet", async context =>
        {
            LessonSheetQuestion asked = await Exchange.Read<LessonSheetQuestion>(context).ConfigureAwait(false);
            if (SheetFormats.Find(asked.Format) is not { } format)
            {
                throw Refuse($"There is no format {asked.Format}. The formats are {string.Join(", ", SheetFormats.All.Select(f => f.Name))}.");
            }

            DanceAnalysis analysis = DanceRoutes.Analyse(studio, asked.Lesson.Text);
            LessonPlan plan = analysis.Lesson(OptionsOf(studio, asked.Lesson));
            using MemoryStream drawn = new();
            SheetChoices choices = new() { Paper = asked.Paper == "letter" ? Paper.Letter : Paper.A4, IsLarge = asked.Large };
            format.Write(LessonSheet.Of(analysis, plan, asked.Lesson.Minutes is not null, choices), drawn);
            await Exchange.File(context, format.MediaType, null, drawn.GetBuffer().AsMemory(0, (int)drawn.Length)).ConfigureAwait(false);
        });
    }

    private static RefusalException Refuse(string sentence) => new(StatusCodes.Status400BadRequest, sentence);

    private static LessonOptions OptionsOf(Studio studio, LessonQuestion asked)
    {
        if (asked.Minutes is < LessonLimits.LeastMinutes or > LessonLimits.MostMinutes)
        {
            throw Refuse(string.Create(CultureInfo.InvariantCulture, $"A lesson has {LessonLimits.LeastMinutes} to {LessonLimits.MostMinutes} minutes."));
        }

        if (asked.PracticeTempo is { } tempo && !(tempo is >= 20 and <= 400))
        {
            throw Refuse("A tempo lies between 20 and 400 counts a minute.");
        }

        LessonOptions options = new()
        {
            Minutes = asked.Minutes,
            Class = asked.Class is { } level
                ? LevelPhrases.Find(level) ?? throw Refuse($"There is no level {level}. The levels are {string.Join(", ", Enum.GetValues<Level>().Select(LevelPhrases.Name))}.")
                : null,
            Track = asked.Track ?? "",
            PracticeTempo = asked.PracticeTempo is { } counts ? new Ratio((long)Math.Round(counts * 10), 10) : null,
            Order = asked.Order switch
            {
                null => null,
                "forward" => LessonOrder.Forward,
                "backward" => LessonOrder.Backward,
                _ => throw Refuse("The order is forward or backward."),
            },
            ForKnees = asked.Knees,
            ForBeginners = asked.Beginners,
            HasWarmUp = asked.WarmUp,
        };
        return asked.Knows is { } ids
            ? options.Knowing(ids.Select(id => studio.Club.Dances.Get(id)).OfType<Repertoire.StoredDance>().Select(d => studio.Analyse(d.Text)))
            : options;
    }

    private static LessonAnswer Answer(DanceAnalysis analysis, LessonPlan plan, bool isAsked)
    {
        LessonWords words = new(plan, analysis.Dance, SheetLanguage.English);
        return new LessonAnswer(
            words.Title,
            [.. words.Facts(isAsked)],
            [.. words.Notes],
            [.. words.Cautions],
            [.. words.More.Select(Told)],
            LevelPhrases.Name(plan.Class),
            plan.Seconds,
            plan.UsualSeconds,
            plan.LeastSeconds,
            plan.IsWhole,
            [.. plan.Steps.Select(s => Step(s, plan, words))]);
    }

    private static LessonTold Told(SheetNote note) => new(note.Kind, note.Words);

    private static LessonStepItem Step(LessonStep step, LessonPlan plan, LessonWords words)
    {
        bool isWalked = step.From > 0 && step.To >= step.From;
        return new LessonStepItem(
            step.Id,
            SheetLanguage.KeyOf(step.Kind.ToString()),
            words.Phase(step.Kind),
            words.Step(step),
            [.. words.Details(step).Select(Told)],
            step.Start,
            step.Seconds,
            step.Times,
            step.LeaveOut,
            isWalked ? plan.Chunks[step.From - 1].Span.Start.Value.ToDouble() : null,
            isWalked ? plan.Chunks[step.To - 1].Span.End.Value.ToDouble() : null,
            step.Kind == LessonStepKind.SecondWall ? 2 : step.Break is { Walls.Count: > 0 } pause ? pause.Walls[0] : 1,
            step.Percent,
            step.Pace?.ToDouble(),
            step.Kind switch
            {
                LessonStepKind.Rung or LessonStepKind.EveryStep => "every-step",
                LessonStepKind.Headings => "headings",
                LessonStepKind.Warnings => "warnings",
                LessonStepKind.Silent => "silent",
                _ => null,
            });
    }
}
