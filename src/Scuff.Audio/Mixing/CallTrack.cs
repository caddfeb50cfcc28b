using Scuff.Audio.Songs;

namespace Scuff.Audio.Mixing;

/// <summary>A call track.</summary>
/// <param name="Sound">The whole of it; no sample beyond full scale.</param>
/// <param name="Unspoken">Words that no voice could say, each once, in the order met; they are missing from the sound.</param>
/// <param name="Overlong">Calls that last longer than their time even when hurried; they end late, or are cut where the next begins.</param>
public sealed record CallTrack(StereoSound Sound, ValueList<string> Unspoken, ValueList<CallTime> Overlong);
