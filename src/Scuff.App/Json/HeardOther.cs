namespace Scuff.App.Json;

/// <summary>Another answer.</summary>
internal sealed record HeardOther<T>(T Value, double Confidence);
