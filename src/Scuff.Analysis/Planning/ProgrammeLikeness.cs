namespace Scuff.Analysis.Planning;

/// <summary>Two dances that resemble each other. Equal by value.</summary>
/// <param name="DanceId">One dance.</param>
/// <param name="OtherId">The other.</param>
/// <param name="Percent">How much, from 0 to 100.</param>
public sealed record ProgrammeLikeness(string DanceId, string OtherId, int Percent);
