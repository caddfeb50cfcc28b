using Scuff.Dances;
using Scuff.Timelines;

namespace Scuff.App.Explaining;

/// <summary>A danced timeline as tables for people: what was shown once is afterwards only named.</summary>
internal sealed class ExplainedTables(TextWriter writer, Paint paint)
{
    private static readonly string[] Head = ["count", "foot", "weight", "facing", "action"];

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
        ILookup<int, TimedStep> steps = timeline.Steps.ToLookup(s => s.Stretch);
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

        if (hasLeftOut)
        {
            writer.WriteLine();
            writer.WriteLine(paint.Of(Tone.Soft, "What was shown once is only named after that; --wall N shows one wall, --all shows everything."));
        }
    }

    private void Show(List<TimedStep> steps, StretchKind kind)
    {
        int start = 0;
        while (start < steps.Count)
        {
            Section section = steps[start].Section;
            int end = start;
            while (end < steps.Count && ReferenceEquals(steps[end].Section, section))
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

    private static IReadOnlyList<string> Row(TimedStep step) =>
    [
        step.CountLabel,
        StanceWords.Of(step.Action.Foot),
        StanceWords.Of(step.WeightAfter),
        step.FacingAfter?.ToString() ?? "?",
        Plain.Line(DancedWords.Of(step)),
    ];
}
