namespace Scuff.Analysis.Planning;

/// <summary>
/// A place that a dance may take. Within a stretch the places in use come first; the last place of the last stretch, where the programme closes, is always in use
/// and stands by itself: nothing is asked of how it follows.
/// </summary>
/// <param name="Stretch">Index of the stretch.</param>
/// <param name="Place">Index within it.</param>
/// <param name="Wished">Effort wished for there, in tenths of a MET; 0 for none.</param>
/// <param name="IsClosing">Whether the programme closes there.</param>
internal readonly record struct ProgrammeSlot(int Stretch, int Place, int Wished, bool IsClosing);
