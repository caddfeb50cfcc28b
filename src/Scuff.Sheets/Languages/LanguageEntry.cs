using Scuff.Steps;

namespace Scuff.Sheets.Languages;

/// <summary>One entry of a language's file. Equal by value.</summary>
/// <param name="Key">What it says (<c>act.touch.together</c>), the same in every language.</param>
/// <param name="Text">The words, with places in braces for what differs; may be empty.</param>
/// <param name="Confidence">How sure its trade word is; the sentence around it is always ours.</param>
/// <param name="Source">Key of the page it was found on, or empty when the file's pages as a whole are meant or none.</param>
/// <param name="IsEnglishKept">Whether it keeps an English word because dancers of that language say it.</param>
public sealed record LanguageEntry(string Key, string Text, Confidence Confidence, string Source, bool IsEnglishKept);
