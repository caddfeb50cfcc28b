namespace Scuff.Repertoire;

/// <summary>What restoring brought.</summary>
/// <param name="Dances">How many dances the club has now, outside the bin.</param>
/// <param name="Tracks">How many tracks it has now, outside the bin.</param>
/// <param name="WithoutAudio">How many of these should have audio but have none here, because the backup was made without music.</param>
/// <param name="KeptAside">Full path of a backup of the club as it was before; null when there was none to keep.</param>
/// <param name="Unlinked">The folder that was linked before and is not any more, since its files may differ from what was restored; or null.</param>
public sealed record RestoreReport(int Dances, int Tracks, int WithoutAudio, string? KeptAside, string? Unlinked);
