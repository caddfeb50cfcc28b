namespace Scuff.App.Json;

/// <summary>One position of an entry in JSON.</summary>
/// <param name="Count">Count label.</param>
/// <param name="Foot">L, R, both or none, when it is named right.</param>
/// <param name="Action">The action in words.</param>
/// <param name="Weight">Weight after it: L, R, both, unchanged or unknown.</param>
internal sealed record CatalogueRow(string Count, string Foot, string Action, string Weight);
