namespace Scuff.App.Json;

/// <summary>A source of an entry in JSON.</summary>
/// <param name="Key">Its key in the data files.</param>
/// <param name="Title">Its title.</param>
/// <param name="Url">Its address, or empty.</param>
internal sealed record CatalogueSource(string Key, string Title, string Url);
