namespace Scuff.Analysis.Fit;

/// <summary>
/// Something that a person has decided about a plan. Places are counts of the music; the plan is the cheapest of those that keep to it.
/// </summary>
public abstract record FitPin
{
    private FitPin()
    {
    }

    /// <summary>The dance begins again here: a wall begins on this count, whether after a restart or because the one before is over.</summary>
    /// <param name="At">The count of the music.</param>
    public sealed record Begins(int At) : FitPin;

    /// <summary>Extra counts begin here: a tag, bridge or quotation, or everybody stands.</summary>
    /// <param name="At">The count of the music.</param>
    public sealed record Extra(int At) : FitPin;

    /// <summary>Nothing interrupts the dance here.</summary>
    /// <param name="From">The first count of the music of which this is so.</param>
    /// <param name="To">The count after the last.</param>
    public sealed record Undisturbed(int From, int To) : FitPin;
}
