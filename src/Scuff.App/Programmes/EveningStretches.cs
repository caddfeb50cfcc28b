using Scuff.Analysis.Planning;
using Scuff.Repertoire;

namespace Scuff.App.Programmes;

/// <summary>Cuts an evening into its stretches: warm-up, revision, dancing and cool-down, with rests and lessons between.</summary>
internal static class EveningStretches
{
    private const int Minute = 60;

    /// <summary>The stretches of the whole evening.</summary>
    /// <param name="evening">Its length.</param>
    /// <param name="plan">Her wishes.</param>
    /// <param name="calm">The effort of a calm dance of those that might be danced, in tenths of a MET.</param>
    /// <param name="lively">That of a lively one.</param>
    public static IReadOnlyList<EveningStretch> Of(ClubEvening evening, EveningPlan plan, int calm, int lively)
    {
        int minutes = Math.Max(1, plan.Night?.EndMinute ?? evening.Minutes);
        int warm = Math.Clamp(plan.WarmUpMinutes, 0, minutes);
        int revised = Math.Clamp(warm + plan.RevisionMinutes, warm, minutes);
        int cool = Math.Clamp(minutes - Math.Max(0, plan.CoolDownMinutes), revised, minutes);
        List<EveningStretch> stretches = [];
        int at = 0;
        foreach (EveningStop stop in plan.Stops.OrderBy(s => s.AtMinute))
        {
            int from = Math.Clamp(stop.AtMinute, at, minutes);
            int to = Math.Min(minutes, from + Math.Max(0, stop.Minutes));
            Dance(at, from);
            Add(stop.IsLesson ? StretchKind.Lesson : StretchKind.Rest, from, to, stop.DanceId);
            at = to;
        }

        Dance(at, minutes);
        return stretches;

        void Dance(int from, int to)
        {
            foreach ((StretchKind kind, int begin, int end) in new[]
            {
                (StretchKind.WarmUp, 0, warm), (StretchKind.Revision, warm, revised), (StretchKind.Dancing, revised, cool), (StretchKind.CoolDown, cool, minutes),
            })
            {
                Add(kind, Math.Max(from, begin), Math.Min(to, end), "");
            }
        }

        void Add(StretchKind kind, int from, int to, string danceId)
        {
            if (to > from)
            {
                bool isDanced = kind is not (StretchKind.Lesson or StretchKind.Rest);
                stretches.Add(new EveningStretch
                {
                    Kind = kind,
                    Start = from * Minute,
                    Seconds = (to - from) * Minute,
                    EffortAtStart = isDanced ? Wished(from) : 0,
                    EffortAtEnd = isDanced ? Wished(to) : 0,
                    DanceId = kind == StretchKind.Lesson ? danceId : "",
                });
            }
        }

        // the course goes over the evening as it was meant, also when it has to end sooner
        int Wished(int minute)
            => calm + ((lively - calm) * EveningCurve.Find(plan.Curve).At(100.0 * minute / Math.Max(1, evening.Minutes)) / 100);
    }
}
