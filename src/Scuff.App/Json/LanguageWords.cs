namespace Scuff.App.Json;

/// <summary>An entry of a language in JSON.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Words">Its words.</param>
/// <param name="English">The English words of the key, or null when English has none.</param>
internal sealed record LanguageWords(string Key, string Words, string? English);
