namespace Scuff.Sheets;

/// <summary>Words kept apart from the footwork.</summary>
/// <param name="Kind">What they are about: style, arms, note, or a word of her own.</param>
/// <param name="Words">Her words.</param>
public sealed record SheetNote(string Kind, string Words);
