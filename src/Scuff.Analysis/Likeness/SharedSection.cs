namespace Scuff.Analysis.Likeness;

/// <summary>A section that two dances share. Equal by value.</summary>
/// <param name="Section">Its name in the one dance.</param>
/// <param name="OtherSection">Its name in the other.</param>
/// <param name="Percent">How alike the two are, up to 100 for the same.</param>
/// <param name="IsMirrored">Whether the other has it in the other foot.</param>
public sealed record SharedSection(string Section, string OtherSection, int Percent, bool IsMirrored);
