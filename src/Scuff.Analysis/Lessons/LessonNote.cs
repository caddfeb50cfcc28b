using Scuff.Timing;

namespace Scuff.Analysis.Lessons;

/// <summary>Something to be said of a plan as a whole, as data.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Number">How much; its unit follows from the kind.</param>
public sealed record LessonNote(LessonNoteKind Kind, Ratio Number);
