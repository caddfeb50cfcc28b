namespace Scuff.Analysis.Planning;

/// <summary>A wish that the programme does not meet. Equal by value.</summary>
/// <param name="DanceId">The dance.</param>
/// <param name="Kind">Why not.</param>
/// <param name="OtherId">The dance that stands in its way; empty for none.</param>
/// <param name="Points">What the programme would lose by it; 0 when it cannot be at all or nobody knows.</param>
public sealed record ProgrammeMissed(string DanceId, ProgrammeMissedKind Kind, string OtherId = "", int Points = 0);
