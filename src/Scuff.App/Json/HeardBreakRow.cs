namespace Scuff.App.Json;

/// <summary>A break: <c>stop</c> where everybody stops, <c>thin</c> where the drums are gone.</summary>
internal sealed record HeardBreakRow(double Start, double End, string Kind, double Confidence);
