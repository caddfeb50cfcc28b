using Scuff.Analysis.Lessons;
using Scuff.Sheets;
using Scuff.Sheets.Languages;

namespace Scuff.App.Json;

/// <summary>A step of a lesson in JSON.</summary>
/// <param name="Id">Its name within the plan.</param>
/// <param name="Kind">What is done, in one word.</param>
/// <param name="Start">When it begins, in seconds.</param>
/// <param name="Seconds">How long it takes.</param>
/// <param name="Times">How often it is danced.</param>
/// <param name="UsualTimes">How often it usually is.</param>
/// <param name="IsNeeded">Whether it is never left out.</param>
/// <param name="LeaveOut">Its turn when the class runs late; null when it is never left out.</param>
/// <param name="Words">The step as a sentence.</param>
internal sealed record LessonStepRow(string Id, string Kind, int Start, int Seconds, int Times, int UsualTimes, bool IsNeeded, int? LeaveOut, string Words)
{
    /// <summary>A step for JSON.</summary>
    public static LessonStepRow Of(LessonStep step, LessonWords words) => new(
        step.Id,
        SheetLanguage.KeyOf(step.Kind.ToString()),
        step.Start,
        step.Seconds,
        step.Times,
        step.Usual,
        step.IsNeeded,
        step.LeaveOut,
        words.Step(step));
}
