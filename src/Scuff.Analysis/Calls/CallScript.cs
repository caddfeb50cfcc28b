namespace Scuff.Analysis.Calls;

/// <summary>What is called through a dance. Equal by value.</summary>
/// <param name="Calls">In the order said; none overlaps another.</param>
/// <param name="Unsaid">What she wrote to be called and the music leaves no room for: those calls, at the place where they would have been.</param>
/// <param name="CountIn">Counts before the first count that the caller needs: from there on the calls begin.</param>
public sealed record CallScript(ValueList<Call> Calls, ValueList<Call> Unsaid, int CountIn);
