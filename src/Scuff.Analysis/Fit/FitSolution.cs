namespace Scuff.Analysis.Fit;

/// <summary>A plan as the search found it.</summary>
/// <param name="Price">All it pays.</param>
/// <param name="Start">Which of the starts.</param>
/// <param name="Events">What happens, in order.</param>
/// <param name="IsProven">Whether no plan with as few acts is cheaper; false only when the search was given up.</param>
public sealed record FitSolution(int Price, int Start, ValueList<FitEvent> Events, bool IsProven)
{
    /// <summary>How many acts it has.</summary>
    public int Acts => Events.Count(e => !e.IsBegin);
}
