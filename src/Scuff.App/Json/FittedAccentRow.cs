using Scuff.Analysis.Fit;
using Scuff.Prose;

namespace Scuff.App.Json;

/// <summary>A stop of the music and what the dance does there: where it falls, what is danced, and what would meet it.</summary>
internal sealed record FittedAccentRow(int Wall, string Part, int Section, string Count, double Seconds, int Counts, string Danced, bool Meets, string? Suggested)
{
    /// <summary>An accent as a row.</summary>
    public static FittedAccentRow Of(FitAccent accent) => new(
        accent.Wall,
        accent.Part,
        accent.Section,
        accent.Count,
        accent.Seconds,
        accent.Counts,
        string.Join(", ", accent.Danced.Select(s => Phrasing.Describe(s.Action))),
        accent.Meets,
        accent.Suggested is { } action ? Phrasing.Describe(action) : null);
}
