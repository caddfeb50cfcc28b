using Scuff.Analysis.Calls;
using Scuff.App.Calling;

namespace Scuff.App.Json;

/// <summary>The calls of a dance, for scripts.</summary>
/// <param name="File">Where the dance came from.</param>
/// <param name="Dance">Its title.</param>
/// <param name="Track">The track, or empty.</param>
/// <param name="CountIn">Counts of the count-in.</param>
/// <param name="Calls">In the order said.</param>
/// <param name="Unsaid">Her own words that have no room.</param>
internal sealed record CallsRow(string File, string Dance, string Track, int CountIn, IReadOnlyList<CallRow> Calls, IReadOnlyList<string> Unsaid)
{
    /// <summary>Of a called dance.</summary>
    public static CallsRow Of(string file, CalledDance called, CallScript script) => new(
        file,
        called.Dance.Title,
        called.TrackTitle,
        script.CountIn,
        [.. script.Calls.Select(CallRow.Of)],
        [.. script.Unsaid.Select(c => c.Words)]);
}
