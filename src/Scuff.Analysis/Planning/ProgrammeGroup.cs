using Scuff.Dances;

namespace Scuff.Analysis.Planning;

/// <summary>People of one level who are there. Equal by value.</summary>
/// <param name="Name">What she calls them, such as the name of a class.</param>
/// <param name="Level">Their level.</param>
/// <param name="People">How many, about; at least 1.</param>
public sealed record ProgrammeGroup(string Name, Level Level, int People);
