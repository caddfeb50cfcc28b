namespace Scuff.Repertoire;

/// <summary>An evening as a list shows it: everything but its plan.</summary>
/// <param name="Id">Its name within the club.</param>
/// <param name="Title">What she calls it.</param>
/// <param name="Date">The day.</param>
/// <param name="Starts">When it begins.</param>
/// <param name="Minutes">How long it lasts, in minutes.</param>
/// <param name="Place">Where; empty when she does not say.</param>
/// <param name="ClassId">The class whose session it plans; null for a social.</param>
/// <param name="Revision">How often it changed, from 1.</param>
public sealed record EveningRow(
    string Id, string Title, DateOnly Date, TimeOnly Starts, int Minutes, string Place, string? ClassId, int Revision);
