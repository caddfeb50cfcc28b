namespace Scuff.Audio.Songs;

/// <summary>A beat of the notation.</summary>
/// <param name="Position">Place in its bar, from 1.</param>
/// <param name="BeatsInBar">Length of its bar.</param>
/// <param name="Section">Index of its section; -1 before the first, the number of sections for the last chord.</param>
/// <param name="Count">The dancer's count, from 1.</param>
internal readonly record struct GridBeat(int Position, int BeatsInBar, int Section, int Count);
