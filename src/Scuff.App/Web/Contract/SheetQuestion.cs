namespace Scuff.App.Web.Contract;

/// <summary>Which sheet is asked for.</summary>
/// <param name="Text">The text.</param>
/// <param name="Format">html, pdf, docx, text or markdown.</param>
/// <param name="Language">ISO 639-1 code.</param>
/// <param name="Paper">a4 or letter.</param>
/// <param name="Large">Whether it is printed large.</param>
/// <param name="Card">Whether it is the caller's card.</param>
/// <param name="Diagrams">Whether the feet are drawn.</param>
/// <param name="Since">The text of an earlier version, for a list of what changed; or null.</param>
internal sealed record SheetQuestion(string Text, string Format, string Language, string Paper, bool Large, bool Card, bool Diagrams, string? Since);

/// <summary>What a sheet can be.</summary>
/// <param name="Formats">Formats.</param>
/// <param name="Languages">Languages.</param>
internal sealed record SheetOffers(IReadOnlyList<SheetFormatOffer> Formats, IReadOnlyList<SheetLanguageOffer> Languages);

/// <summary>A format.</summary>
/// <param name="Name">Its word.</param>
/// <param name="Extension">Extension of its files, with the dot.</param>
internal sealed record SheetFormatOffer(string Name, string Extension);

/// <summary>A language.</summary>
/// <param name="Code">ISO 639-1 code.</param>
/// <param name="Name">Its own name.</param>
internal sealed record SheetLanguageOffer(string Code, string Name);
