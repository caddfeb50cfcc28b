namespace Scuff.Analysis.Planning;

/// <summary>Finds the programme that is worth most. The same question, seed and effort give the same programme.</summary>
public interface IProgrammeSolver
{
    /// <summary>Solves within a budget. Never throws for what is asked; decisions that cannot hold are let go and named.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="seconds">How long it may look, about.</param>
    /// <param name="stop">Ends the search early; the best so far is the answer.</param>
    Programme Solve(ProgrammeQuestion question, double seconds, CancellationToken stop);
}
