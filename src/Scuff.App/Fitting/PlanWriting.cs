using Scuff.Analysis.Fit;
using Scuff.Dances;
using Scuff.Prose;

namespace Scuff.App.Fitting;

/// <summary>Puts a plan into the text of its dance.</summary>
internal static class PlanWriting
{
    /// <summary>
    /// The text with the plan in it, in place of what it says of that track; null, with the sentence, when it would not be danced as planned.
    /// </summary>
    /// <param name="text">The text.</param>
    /// <param name="answer">The answer that the plan belongs to.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="trouble">Why not, or null.</param>
    public static string? Put(string text, FitAnswer answer, FitPlan plan, out string? trouble)
    {
        Draft draft = DanceReader.Read(text);
        string made = EditWriter.Apply(text, EditWriter.ToTextEdits(draft, new DanceEdit.WriteTrack(plan.Track, plan.MadeTags)));
        Dance dance = DanceReader.Read(made).Dance;
        FitPlan? read = new DanceFitter(dance, new FitOptions { MostInterruptions = 0, BeatsPerCount = answer.BeatsPerCount }).Fit(answer.Music.Map).AsWritten;
        trouble = dance.Interruptions.Count > 0
            ? "The plan was not written: the text already tells of tags or restarts for every track. Put them under a track first."
            : read is null || !read.Walls.Select(w => (w.Begins, w.Facing)).SequenceEqual(plan.Walls.Select(w => (w.Begins, w.Facing)))
                ? "The plan was not written: read back, it would not be danced as planned."
                : null;
        return trouble is null ? made : null;
    }
}
