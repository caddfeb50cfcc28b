using Scuff.Analysis.Calls;
using Scuff.App.Calling;

namespace Scuff.App.Json;

/// <summary>A call, for scripts. Counts are danced counts from the first count; seconds are those of the track, or from the start of the count-in.</summary>
/// <param name="Kind">What it is for.</param>
/// <param name="Words">What is said.</param>
/// <param name="Wall">The wall, from 1.</param>
/// <param name="At">The count on which it begins.</param>
/// <param name="For">The count on which begins what it names.</param>
/// <param name="Seconds">When it begins.</param>
/// <param name="Until">When it ends.</param>
/// <param name="Due">When that begins which it names.</param>
/// <param name="IsHers">Whether the words stand in the text.</param>
internal sealed record CallRow(string Kind, string Words, int Wall, double At, double For, double Seconds, double Until, double Due, bool IsHers)
{
    private const int Digits = 4;

    /// <summary>Of a call.</summary>
    public static CallRow Of(Call call) => new(
        HelpWords.Of(call.Kind),
        call.Words,
        call.Wall,
        Math.Round(call.At, Digits),
        call.For.Value.ToDouble(),
        Math.Round(call.Seconds, Digits),
        Math.Round(call.Until, Digits),
        Math.Round(call.Due, Digits),
        call.IsHers);
}
