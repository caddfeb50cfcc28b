namespace Scuff.Audio.Songs;

/// <summary>A note of a melody.</summary>
/// <param name="Bar">Bar of the section, from 0.</param>
/// <param name="At">Place in the bar, in beats from 0; below 0 before it.</param>
/// <param name="Length">Length in beats.</param>
/// <param name="Step">Step of the scale above the tonic.</param>
internal readonly record struct MelodyNote(int Bar, double At, double Length, int Step);
