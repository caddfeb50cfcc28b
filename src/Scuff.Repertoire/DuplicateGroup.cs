namespace Scuff.Repertoire;

/// <summary>Dances, or tracks, that look like one and the same.</summary>
/// <param name="Reason">Why.</param>
/// <param name="Ids">Two or more of them, the eldest first.</param>
public sealed record DuplicateGroup(DuplicateReason Reason, ValueList<string> Ids);
