namespace Scuff.Repertoire;

/// <summary>How well a class knew a dance on a day. The last mark before a day holds on it. Equal by value.</summary>
/// <param name="ClassId">The class.</param>
/// <param name="DanceId">The dance.</param>
/// <param name="Date">The day.</param>
/// <param name="Knowing">How well; null takes the marks back from that day on (they do not know it at all).</param>
public sealed record KnownMark(string ClassId, string DanceId, DateOnly Date, Knowing? Knowing);
