using System.Globalization;
using Scuff.Analysis;
using Scuff.Analysis.Floor;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Timelines;

namespace Scuff.App.Explaining;

/// <summary>A danced timeline as tables for people: what was shown once is afterwards only named.</summary>
internal sealed class ExplainedTables(TextWriter writer, Paint paint, DancerSize size)
{
    private static readonly string[] Head = ["count", "foot", "weight", "facing", "right", "front", "action"];

    /// <summary>Shows a dance.</summary>
    /// <param name="title">Its title, or its file.</param>
    /// <param name="timeline">The dance as danced.</param>
    /// <param name="wall">Only this wall; null for all.</param>
    /// <param name="all">Whether what was shown once is shown again.</param>
    public void Show(string title, Timeline timeline, int? wall, bool all)
    {
        writer.WriteLine(paint.Of(Tone.Name, Plain.Line(title)));
        HashSet<(StretchKind Kind, string Name)> shown = [];
        bool hasLeftOut = false;
        FloorPath floor = DanceAnalysis.FloorPathOf(timeline, size);
        ILookup<int, DancedStep> steps = timeline.Steps.Zip(floor.Keys, (step, key) => new DancedStep(step, key)).ToLookup(s => s.Step.Stretch);
        for (int i = 0; i < timeline.Stretches.Count; i++)
        {
            TimedStretch stretch = timeline.Stretches[i];
            if (wall is not null && stretch.Plan.Wall != wall)
            {
                continue;
            }

            string words = DancedPlace.Of(stretch);
            bool isNew = shown.Add((stretch.Plan.Kind, stretch.Plan.Name)) || stretch.Plan.Changes.Count > 0;
            if (!isNew && wall is null && !all)
            {
                hasLeftOut = true;
                string cut = stretch.Plan.IsCutByRestart ? $", {stretch.Plan.Counts.Length} counts" : "";
                writer.WriteLine(Plain.Line(words + cut));
                continue;
            }

            writer.WriteLine();
            writer.WriteLine(paint.Of(Tone.Name, Plain.Line(words)));
            Show([.. steps[i]], stretch.Plan.Kind);
        }

        writer.WriteLine();
        writer.WriteLine(paint.Of(Tone.Soft, Legend()));
        if (hasLeftOut)
        {
            writer.WriteLine(paint.Of(Tone.Soft, "What was shown once is only named after that; --wall N shows one wall, --all shows everything."));
        }
    }

    private void Show(List<DancedStep> steps, StretchKind kind)
    {
        int start = 0;
        while (start < steps.Count)
        {
            Section section = steps[start].Step.Section;
            int end = start;
            while (end < steps.Count && ReferenceEquals(steps[end].Step.Section, section))
            {
                end++;
            }

            if (kind is StretchKind.Wall or StretchKind.Quote)
            {
                string title = section.Title.Length > 0 ? $": {section.Title}" : "";
                writer.WriteLine($"  section {section.Number}{Plain.Line(title)}");
            }

            Table.Write(writer, paint, Head, [.. steps[start..end].Select(Row)]);
            start = end;
        }
    }

    private string Legend() => string.Create(
        CultureInfo.InvariantCulture,
        $"Places of the foot in cm, right and in front of the starting point as seen facing 12:00, for a dancer of {size.Height:0.00} m.");

    private static IReadOnlyList<string> Row(DancedStep danced)
    {
        TimedStep step = danced.Step;
        FloorPoint? place = !danced.Key.IsCertain ? null : step.Action.Foot switch
        {
            ActingFoot.Left => danced.Key.Left.Place,
            ActingFoot.Right => danced.Key.Right.Place,
            ActingFoot.Both => danced.Key.Body,
            _ => null,
        };
        return
        [
            step.CountLabel,
            StanceWords.Of(step.Action.Foot),
            StanceWords.Of(step.WeightAfter),
            step.FacingAfter?.ToString() ?? "?",
            place is { X: var x } ? Centimetres(x) : "",
            place is { Y: var y } ? Centimetres(y) : "",
            Plain.Line(DancedWords.Of(step)),
        ];
    }

    // a number too small to see must not print as -0
    private static string Centimetres(double metres)
        => ((int)Math.Round(metres * 100)).ToString(CultureInfo.InvariantCulture).PadLeft(5);

    /// <summary>A danced action and the dancer after it.</summary>
    private readonly record struct DancedStep(TimedStep Step, FloorKey Key);
}
