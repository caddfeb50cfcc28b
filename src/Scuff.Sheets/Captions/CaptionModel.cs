namespace Scuff.Sheets.Captions;

/// <summary>What is laid beside or over a teaching film: finished words with their seconds. Equal by value.</summary>
/// <param name="Title">The dance.</param>
/// <param name="Calls">The calls: each stands from when it is said until that begins which it names, or the next is said.</param>
/// <param name="Chapters">A mark for each section of each wall, each tag and the ending; each ends where the next begins.</param>
/// <param name="Counts">Every whole count.</param>
public sealed record CaptionModel(string Title, ValueList<CaptionCue> Calls, ValueList<CaptionCue> Chapters, ValueList<CaptionCount> Counts);
