using Scuff.Analysis.Planning;
using Scuff.Repertoire;
using Scuff.Sheets;

namespace Scuff.App.Handouts;

/// <summary>Makes the paper of an evening from its planned programme.</summary>
internal static class EveningPapers
{
    /// <summary>Makes the paper.</summary>
    /// <param name="evening">The evening.</param>
    /// <param name="question">What was asked of the planner: titles, levels and songs stand in it.</param>
    /// <param name="programme">Its answer.</param>
    /// <param name="reasonsOf">Why a line stands where it does, in finished sentences.</param>
    /// <param name="trackOf">What is known of a track by its id, or null.</param>
    /// <param name="remarks">What belongs to no line, in finished sentences.</param>
    public static EveningPaper Of(
        ClubEvening evening,
        ProgrammeQuestion question,
        Programme programme,
        Func<ProgrammeItem, ValueList<string>> reasonsOf,
        Func<string, TrackFacts?> trackOf,
        ValueList<string> remarks = default)
    {
        Dictionary<string, ProgrammeDance> dances = question.Dances.ToDictionary(d => d.Id, StringComparer.Ordinal);

        // a social is danced through; only a class has its parts named
        bool isClass = question.Stretches.Any(s => s.Kind is StretchKind.WarmUp or StretchKind.Revision or StretchKind.CoolDown);
        return new EveningPaper
        {
            Title = evening.Title,
            Date = evening.Date,
            Starts = evening.Starts,
            Minutes = evening.Minutes,
            Place = evening.Place,
            Lines = [.. programme.Items.Select(LineOf)],
            Remarks = remarks,
        };

        EveningLine LineOf(ProgrammeItem item)
        {
            StretchKind kind = question.Stretches[item.Stretch].Kind;
            ProgrammeDance? dance = dances.GetValueOrDefault(item.DanceId);
            ProgrammeDance? other = dances.GetValueOrDefault(item.OtherId);
            ProgrammeSong? song = item.SongKey.Length == 0 ? null : dance?.Songs.FirstOrDefault(s => s.Key == item.SongKey);
            TrackFacts? facts = song is { TrackId.Length: > 0 } ? trackOf(song.TrackId) : null;
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
                Title = dance?.Title ?? "",
                Level = dance?.Level,
                OtherId = item.OtherId,
                OtherTitle = other?.Title ?? "",
                OtherLevel = other?.Level,
                Song = facts is { Title.Length: > 0 } ? facts.Title : song?.Title ?? "",
                Artist = facts is { Title.Length: > 0 } ? facts.Artist : "",
                SongSeconds = song?.Seconds ?? 0,
                TrackId = song?.TrackId ?? "",
                Reasons = reasonsOf(item),
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
