using Scuff.Music;

namespace Scuff.App.Json;

/// <summary>An answer, how sure it is from 0 to 1, and what else it might be.</summary>
internal sealed record HeardValue<T>(T Value, double Confidence, IReadOnlyList<HeardOther<T>> Others)
{
    /// <summary>An estimate, in the words of the answer.</summary>
    public static HeardValue<T> Of<TFrom>(Estimate<TFrom> estimate, Func<TFrom, T> said)
        => new(said(estimate.Value), estimate.Confidence, [.. estimate.Alternatives.Select(a => new HeardOther<T>(said(a.Value), a.Confidence))]);
}
