namespace Scuff.Repertoire;

/// <summary>A page of sessions.</summary>
/// <param name="Sessions">The sessions of the page, the latest day first; of one day, the one that was kept last first.</param>
/// <param name="Total">How many were found in all.</param>
public sealed record SessionPage(ValueList<ClassSession> Sessions, int Total);
