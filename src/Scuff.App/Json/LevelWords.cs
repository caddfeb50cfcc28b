using Scuff.Dances;

namespace Scuff.App.Json;

/// <summary>Levels in words.</summary>
internal static class LevelWords
{
    /// <summary>The level that a heading states: in the trade's words, else in hers; null when it states none.</summary>
    public static string? Of(Dance dance) => dance.ClaimedLevel switch
    {
        Level.AbsoluteBeginner => "absolute beginner",
        Level.Beginner => "beginner",
        Level.Improver => "improver",
        Level.Intermediate => "intermediate",
        Level.Advanced => "advanced",
        null => dance.Header.FirstOrDefault(h => h.Key == "level")?.Value,
        _ => throw new ArgumentOutOfRangeException(nameof(dance)),
    };
}
