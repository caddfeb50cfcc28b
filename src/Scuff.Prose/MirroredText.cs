using Scuff.Dances;

namespace Scuff.Prose;

/// <summary>A dance in the other foot, as a text.</summary>
/// <param name="Text">The text.</param>
/// <param name="Notes">Notes of the author that name a side or a clock time; they stand as she wrote them, and she has to look at them.</param>
/// <param name="Open">Lines, from 1, that could not be brought to mean the mirror; empty for almost every dance.</param>
public sealed record MirroredText(string Text, ValueList<Note> Notes, ValueList<int> Open);
