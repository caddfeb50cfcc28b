namespace Scuff.Audio.Songs;

/// <summary>One note as it is played, with the player's own looseness.</summary>
/// <param name="Part">Who plays it.</param>
/// <param name="Start">Seconds from the start of the song.</param>
/// <param name="Length">Seconds until it is let go.</param>
/// <param name="Pitch">Semitones, 69 for 440 Hz; for drums the number of the <see cref="DrumVoice"/>.</param>
/// <param name="Force">From 0 to 1.</param>
public readonly record struct SongNote(SongPart Part, double Start, double Length, int Pitch, double Force);
