namespace Scuff.App.Json;

/// <summary>A dance that a class is likely to forget.</summary>
/// <param name="Id">The dance.</param>
/// <param name="Title">Its title.</param>
/// <param name="Known">How well it was known last; empty when nobody marked it.</param>
/// <param name="LastDanced">The last day it was danced; null when it never was.</param>
/// <param name="LeftPercent">How much is likely left, 0 to 100.</param>
/// <param name="Due">How much it is due, 0 to 100.</param>
/// <param name="Reason">Why, as a sentence.</param>
internal sealed record BookDueRow(string Id, string Title, string Known, string? LastDanced, int LeftPercent, int Due, string Reason);
