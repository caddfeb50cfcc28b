using Scuff.Analysis.Levels;
using Scuff.Analysis.Planning;
using Scuff.App.Programmes;
using Scuff.Repertoire;
using Scuff.Sheets;

namespace Scuff.App.Handouts;

/// <summary>Makes the paper of an evening from its plan.</summary>
internal static class EveningPapers
{
    /// <summary>Makes the paper of a plan that has a programme.</summary>
    /// <param name="evening">The evening.</param>
    /// <param name="plan">Its plan.</param>
    /// <param name="words">What is said of the programme.</param>
    /// <param name="trackOf">What is known of a track by its id, or null.</param>
    /// <exception cref="ArgumentException">The plan has no programme.</exception>
    public static EveningPaper Of(ClubEvening evening, EveningPlan plan, EveningWords words, Func<string, TrackFacts?> trackOf)
    {
        EveningProgramme programme = plan.Programme ?? throw new ArgumentException("An evening without a programme has no paper.", nameof(plan));

        // a social is danced through; only a class has its parts named
        bool isClass = programme.Stretches.Any(s => s.Kind is StretchKind.WarmUp or StretchKind.Revision or StretchKind.CoolDown);
        return new EveningPaper
        {
            Title = evening.Title,
            Date = evening.Date,
            Starts = evening.Starts,
            Minutes = evening.Minutes,
            Place = evening.Place,
            Lines = [.. programme.Items.Select((item, i) => LineOf(item, i < words.Items.Count ? words.Items[i].ToValueList() : default))],
            Remarks = words.Common.Concat(words.Missed).ToValueList(),
        };

        EveningLine LineOf(EveningItem item, ValueList<string> reasons)
        {
            StretchKind kind = item.Stretch < programme.Stretches.Count ? programme.Stretches[item.Stretch].Kind : StretchKind.Dancing;
            TrackFacts? facts = item.TrackId.Length > 0 ? trackOf(item.TrackId) : null;
            return new EveningLine
            {
                Kind = kind switch
                {
                    StretchKind.Lesson => EveningLineKind.Lesson,
                    StretchKind.Rest => EveningLineKind.Rest,
                    _ => EveningLineKind.Dance,
                },
                StartSeconds = item.Start,
                Seconds = item.Seconds,
                Heading = isClass ? HeadingOf(kind) : "",
                DanceId = item.DanceId,
                Title = item.Title,
                Level = LevelPhrases.Find(item.Level),
                OtherId = item.OtherId,
                OtherTitle = item.OtherTitle,
                OtherLevel = LevelPhrases.Find(item.OtherLevel),
                Song = facts is { Title.Length: > 0 } ? facts.Title : item.SongTitle,
                Artist = facts is { Title.Length: > 0 } ? facts.Artist : "",
                SongSeconds = item.SongSeconds,
                TrackId = item.TrackId,
                Reasons = reasons,
            };
        }
    }

    private static string HeadingOf(StretchKind kind) => kind switch
    {
        StretchKind.WarmUp => "Warm-up",
        StretchKind.Revision => "Revision",
        StretchKind.Dancing => "Dancing",
        StretchKind.Lesson => "Lesson",
        StretchKind.Rest => "Rest",
        StretchKind.CoolDown => "Cool-down",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}
