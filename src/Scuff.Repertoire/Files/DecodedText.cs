namespace Scuff.Repertoire.Files;

/// <summary>Bytes read as text, or the reason why they are none.</summary>
/// <param name="Text">The text; empty when there is a trouble.</param>
/// <param name="Form">How it was written.</param>
/// <param name="Trouble">The end of a sentence that begins with the name of the file, or null when it went well.</param>
public sealed record DecodedText(string Text, TextForm Form, string? Trouble = null);
