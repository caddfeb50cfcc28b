namespace Scuff.Sheets.Languages;

/// <summary>A page on which words of a language were found. Equal by value.</summary>
/// <param name="Key">Its key in the language's file.</param>
/// <param name="Title">Its title.</param>
/// <param name="Address">Where it is.</param>
public sealed record LanguageSource(string Key, string Title, string Address);
