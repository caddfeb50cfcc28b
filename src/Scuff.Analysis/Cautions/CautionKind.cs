namespace Scuff.Analysis.Cautions;

/// <summary>What a dance asks dancers to take care of.</summary>
public enum CautionKind
{
    /// <summary>Swivels, twists, grinds, unwinds: a foot that sticks twists the knee. The number is how many.</summary>
    KneeTwist,

    /// <summary>Turns on one foot. The number is the most, in eighths of a turn.</summary>
    OneFootSpin,

    /// <summary>Many turns in a row. The number is the most within eight counts, in eighths of a turn.</summary>
    ManyTurns,

    /// <summary>Jumps, leaps, hops and scoots. The number is how many.</summary>
    Jumps,

    /// <summary>Lunges and dips onto a bent knee. The number is how many.</summary>
    Kneel,

    /// <summary>Stomps. The number is how many.</summary>
    Stomps,

    /// <summary>Quick steps at the stated tempo. The number is weight changes a second.</summary>
    FastFeet,

    /// <summary>It travels out of the dancer's place. The number is metres, to a tenth.</summary>
    SharedFloor,
}
