namespace Scuff.Steps;

/// <summary>A page or book that an entry of the catalogue was checked against.</summary>
/// <param name="Key">Its key in the data files.</param>
/// <param name="Title">Its title.</param>
/// <param name="Url">Its address, or empty.</param>
/// <param name="Kind">What it is (<c>club page</c>), or empty.</param>
public sealed record StepSource(string Key, string Title, string Url, string Kind);
