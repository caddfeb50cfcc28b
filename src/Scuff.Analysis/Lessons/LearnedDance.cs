namespace Scuff.Analysis.Lessons;

/// <summary>A dance that a class knows. Equal by value.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Feet">What its feet do (<see cref="Likeness.FeetPrint.Of"/>).</param>
public sealed record LearnedDance(string Title, string Feet);
