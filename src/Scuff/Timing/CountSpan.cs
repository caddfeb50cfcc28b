namespace Scuff.Timing;

/// <summary>
/// A half-open stretch of counts: the start belongs to it, the end does not. Touching spans do not overlap;
/// a span of no length is an instant.
/// </summary>
public readonly record struct CountSpan
{
    /// <summary>Makes the span from <paramref name="start"/> up to <paramref name="end"/>.</summary>
    /// <exception cref="ArgumentException">The end lies before the start.</exception>
    public CountSpan(Counts start, Counts end)
    {
        if (end < start)
        {
            throw new ArgumentException("A span of counts cannot end before it starts.", nameof(end));
        }

        Start = start;
        End = end;
    }

    /// <summary>First instant of the span.</summary>
    public Counts Start { get; }

    /// <summary>First instant after the span.</summary>
    public Counts End { get; }

    /// <summary>How many counts the span lasts.</summary>
    public Counts Length => End - Start;

    /// <summary>Whether the place lies in the span; an instant contains just itself.</summary>
    public bool Contains(Counts place) => place == Start || (place > Start && place < End);

    /// <summary>Whether the two share more than an edge, or are the same instant.</summary>
    public bool Overlaps(CountSpan other) => (Start < other.End && other.Start < End) || (Start == other.Start && End == other.End);
}
