using Scuff.Analysis.Levels;
using Scuff.App.Easing;

namespace Scuff.App.Json;

/// <summary>An easier way, in JSON.</summary>
/// <param name="Counts">The counts it replaces, as printed.</param>
/// <param name="Words">What is danced instead.</param>
/// <param name="Option">The line that writes it into the text.</param>
/// <param name="Level">The easiest level that allows it.</param>
/// <param name="Away">How far from the others it ends, in metres.</param>
/// <param name="IsWider">Whether it takes more counts than those of the move.</param>
/// <param name="Reasons">Why it is easier and what stays.</param>
internal sealed record EasedOfferRow(string Counts, string Words, string Option, string Level, double Away, bool IsWider, IReadOnlyList<string> Reasons)
{
    /// <summary>The offer for JSON.</summary>
    public static EasedOfferRow Of(EasierOffer offer) => new(
        offer.Label,
        offer.Words,
        offer.Line,
        LevelPhrases.Name(offer.Way.After.Level),
        Math.Round(offer.Way.Away, 2),
        offer.Way.IsWider,
        [.. offer.Way.Reasons.Select(reason => reason.Words)]);
}
