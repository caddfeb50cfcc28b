namespace Scuff.Analysis.Likeness;

/// <summary>What the feet do in one section. Equal by value.</summary>
/// <param name="Name">Its number, with the letter of its part in a phrased dance: <c>3</c>, <c>B2</c>.</param>
/// <param name="Steps">Its steps in order.</param>
public sealed record FeetSection(string Name, ValueList<FeetStep> Steps)
{
    /// <summary>The same in the other foot.</summary>
    internal FeetSection Mirrored() => this with { Steps = Steps.Select(s => s.Mirrored()).ToValueList() };
}
