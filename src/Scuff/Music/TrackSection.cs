namespace Scuff.Music;

/// <summary>A stretch of music that belongs together: an intro, a verse, a chorus.</summary>
/// <param name="FirstBeat">The beat it begins on, an index into the beats of the track.</param>
/// <param name="Beats">How many beats it lasts.</param>
/// <param name="Label">The same letter where the music is the same.</param>
/// <param name="Name">What a person calls it; empty where nobody has said.</param>
/// <param name="Confidence">How sure it is that something begins here, from 0 to 1.</param>
public sealed record TrackSection(int FirstBeat, int Beats, string Label, string Name, double Confidence);
