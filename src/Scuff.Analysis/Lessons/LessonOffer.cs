using Scuff.Dances;

namespace Scuff.Analysis.Lessons;

/// <summary>Something easier that is offered with a chunk. "Offer the easy version first and add the original back later" (trade: teaching, 1 [6]).</summary>
/// <param name="Kind">What is offered.</param>
/// <param name="Chunk">Number of the chunk.</param>
/// <param name="ForKnees">Whether it spares knees and ankles.</param>
/// <param name="ForBeginners">Whether it makes it easier to learn.</param>
public sealed record LessonOffer(LessonOfferKind Kind, int Chunk, bool ForKnees, bool ForBeginners)
{
    /// <summary>The dance's own option; null for every other kind.</summary>
    public StepOption? Option { get; init; }
}
