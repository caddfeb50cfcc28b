namespace Scuff.Diagnostics;

/// <summary>Another place that belongs to the trouble ("the weight moved here").</summary>
/// <param name="Span">Where.</param>
/// <param name="Words">Why, in a few words.</param>
public sealed record RelatedPlace(TextSpan Span, string Words);
