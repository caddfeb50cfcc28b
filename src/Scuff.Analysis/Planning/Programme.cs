namespace Scuff.Analysis.Planning;

/// <summary>A planned class or evening. Equal by value.</summary>
public sealed record Programme
{
    /// <summary>Its lines in order, lessons and rests among them.</summary>
    public required ValueList<ProgrammeItem> Items { get; init; }

    /// <summary>What belongs to no single line, such as time left unused.</summary>
    public ValueList<ProgrammeReason> Common { get; init; }

    /// <summary>What it is worth.</summary>
    public required int Points { get; init; }

    /// <summary>What no programme that keeps to her decisions can exceed.</summary>
    public required int Bound { get; init; }

    /// <summary>
    /// How far it is at most from the best there is, in percent of <see cref="Bound"/>, or of what its lines bring before all costs where that is more: an
    /// evening whose costs eat up what it brings is worth nearly nothing, and nothing can be said in percent of that. 0 when it is proven to be the best.
    /// </summary>
    public double GapPercent => GapOf(Points, Bound, Items.SelectMany(i => i.Reasons));

    /// <summary>The gap of a programme from its points, its bound and the reasons of its lines.</summary>
    public static double GapOf(int points, int bound, IEnumerable<ProgrammeReason> reasons)
        => bound <= points ? 0 : 100.0 * (bound - points) / Math.Max(1, Math.Max(Math.Abs(bound), reasons.Sum(r => Math.Max(0, r.Points))));

    /// <summary>Whether no better one exists.</summary>
    public bool IsProven => Bound <= Points;

    /// <summary>What was asked for or decided and is not in it, with the reason.</summary>
    public ValueList<ProgrammeMissed> Missed { get; init; }
}
