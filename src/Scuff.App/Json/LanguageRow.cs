namespace Scuff.App.Json;

/// <summary>A language of sheets in JSON.</summary>
/// <param name="Code">Its ISO 639-1 code.</param>
/// <param name="Name">Its name in itself.</param>
/// <param name="EnglishName">Its English name.</param>
/// <param name="Sourced">How many entries have a trade word found on a page.</param>
/// <param name="CommonPractice">How many are common practice.</param>
/// <param name="FromMemory">How many are from memory.</param>
/// <param name="EnglishKept">How many keep an English word.</param>
/// <param name="Missing">Keys it lacks; its sheets are English there.</param>
/// <param name="ToRead">The entries from memory, which a dancer of that language should read first.</param>
/// <param name="Sources">The pages its words were found on.</param>
internal sealed record LanguageRow(
    string Code,
    string Name,
    string EnglishName,
    int Sourced,
    int CommonPractice,
    int FromMemory,
    int EnglishKept,
    IReadOnlyList<string> Missing,
    IReadOnlyList<LanguageWords> ToRead,
    IReadOnlyList<CatalogueSource> Sources);
