namespace Scuff.Audio.Phrases;

/// <summary>Where a section begins.</summary>
/// <param name="Beat">On which beat, an index into those of the track.</param>
/// <param name="Confidence">How likely it is that one does, from 0 to 1; of the first, that the music itself begins there.</param>
internal sealed record SectionStart(int Beat, double Confidence);
