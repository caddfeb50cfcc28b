namespace Scuff.Music.Corrections;

/// <summary>
/// One thing that a person says about a track, stronger than what was heard. Places are seconds from the start of the sound, never beats: so it
/// still means the same after the track was analysed anew.
/// </summary>
public abstract record Correction
{
    private protected Correction()
    {
    }

    /// <summary>
    /// Somebody tapped along: the beats lie where the taps say (<see cref="TapFit"/>), and go on from there as the music does.
    /// </summary>
    /// <param name="Seconds">When the taps fell; order and stray taps do not matter, two are the least.</param>
    /// <param name="From">Where the stretch begins that they speak for; null for the start of the track.</param>
    /// <param name="To">Where that stretch ends; null for the end of the track.</param>
    public sealed record TapAlong(ValueList<double> Seconds, double? From = null, double? To = null) : Correction;

    /// <summary>The beat is half as fast, twice as fast, or halfway between what was taken for it.</summary>
    /// <param name="Level">Which.</param>
    /// <param name="From">Where the stretch begins that this is so in; null for the start of the track.</param>
    /// <param name="To">Where that stretch ends; null for the end of the track.</param>
    public sealed record ChangeBeat(BeatLevel Level, double? From = null, double? To = null) : Correction;

    /// <summary>Count 1 falls some beats later. Sections that nobody has placed move along.</summary>
    /// <param name="Beats">How many beats later; earlier if negative.</param>
    /// <param name="From">From where on; null for the whole track.</param>
    public sealed record ShiftOne(int Beats, double? From = null) : Correction;

    /// <summary>The beats fall into other bars. Counts run on from the first count 1; sections that nobody has placed move to the next bar line.</summary>
    /// <param name="Meter">The bars.</param>
    public sealed record SetMeter(Meter Meter) : Correction;

    /// <summary>A section begins elsewhere, on a count 1. Where none began near the first place, one begins at the second.</summary>
    /// <param name="From">Where it began until now.</param>
    /// <param name="To">Where it begins.</param>
    public sealed record MoveBoundary(double From, double To) : Correction;

    /// <summary>A section begins here, on a count 1.</summary>
    /// <param name="At">Where.</param>
    /// <param name="Label">Its letter; a new one if empty.</param>
    public sealed record AddBoundary(double At, string Label = "") : Correction;

    /// <summary>No section begins here: the one before goes on.</summary>
    /// <param name="At">Near where.</param>
    public sealed record RemoveBoundary(double At) : Correction;

    /// <summary>What a section is called.</summary>
    /// <param name="At">A place within it.</param>
    /// <param name="Label">Its letter; null leaves it.</param>
    /// <param name="Name">Its name; null leaves it.</param>
    public sealed record NameSection(double At, string? Label, string? Name) : Correction;

    /// <summary>How the halves of a beat are played.</summary>
    /// <param name="Ratio">Long to short: 1 is straight, 2 the triplet.</param>
    public sealed record SetSwing(double Ratio) : Correction;

    /// <summary>The dance starts here, on a count 1.</summary>
    /// <param name="At">Where.</param>
    public sealed record SetFirstCount(double At) : Correction;

    /// <summary>Something a newer Scuff has written: it is kept, and does nothing.</summary>
    /// <param name="Json">The words as they stood.</param>
    public sealed record Unknown(string Json) : Correction;
}
