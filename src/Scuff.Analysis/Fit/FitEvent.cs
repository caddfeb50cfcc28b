namespace Scuff.Analysis.Fit;

/// <summary>Something that happens in a plan: a part begins, or an act.</summary>
/// <param name="At">The count of the music.</param>
/// <param name="Part">The part that begins, or in which the act happens.</param>
/// <param name="Count">The count of the part before which it happens; 0 where the part begins.</param>
/// <param name="Act">Which of the acts there; -1 where the part begins.</param>
public readonly record struct FitEvent(int At, int Part, int Count, int Act)
{
    /// <summary>Whether a part begins.</summary>
    public bool IsBegin => Act < 0;
}
