using Scuff.Analysis.Lessons;
using Scuff.Sheets.Languages;

namespace Scuff.App.Json;

/// <summary>A chunk of a lesson in JSON.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="From">Its first count within one repetition, from zero.</param>
/// <param name="To">The count after its last.</param>
/// <param name="Points">How hard it is for the class.</param>
/// <param name="Reasons">Points by reason.</param>
internal sealed record LessonChunkRow(int Number, double From, double To, int Points, IReadOnlyDictionary<string, int> Reasons)
{
    /// <summary>A chunk for JSON.</summary>
    public static LessonChunkRow Of(LessonChunk chunk) => new(
        chunk.Number,
        chunk.Span.Start.Value.ToDouble(),
        chunk.Span.End.Value.ToDouble(),
        chunk.Points,
        chunk.Reasons.ToDictionary(r => SheetLanguage.KeyOf(r.Kind.ToString()), r => r.Points, StringComparer.Ordinal));
}
