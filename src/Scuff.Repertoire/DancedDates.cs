namespace Scuff.Repertoire;

/// <summary>When a class danced a dance. Equal by value.</summary>
/// <param name="DanceId">The dance; it may lie in the bin.</param>
/// <param name="Dates">The days on which a held session had it, in whatever role, ascending, each once.</param>
/// <param name="FirstTaught">The first day on which it was taught as a new dance; null when the book does not say.</param>
public sealed record DancedDates(string DanceId, ValueList<DateOnly> Dates, DateOnly? FirstTaught);
