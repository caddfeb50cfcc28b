namespace Scuff.Analysis.Levels;

/// <summary>What the published levels limit.</summary>
public enum LevelMeasure
{
    /// <summary>Counts of one repetition (of all parts, for a phrased dance).</summary>
    Counts,

    /// <summary>Counts that are not danced before in the same repetition, on either foot.</summary>
    NewCounts,

    /// <summary>Figures that turn.</summary>
    Turns,

    /// <summary>Most turn in one figure, in eighths.</summary>
    TurnSize,

    /// <summary>Most turn on one count, in eighths.</summary>
    TurnInOne,

    /// <summary>Most turn one way within two counts, in eighths.</summary>
    TurnInTwo,

    /// <summary>Most turn one way within eight counts, in eighths.</summary>
    TurnInEight,

    /// <summary>Most turn on one foot, in eighths.</summary>
    TurnOnOneFoot,

    /// <summary>Actions between two counts.</summary>
    OffBeats,

    /// <summary>Actions on the first or the last quarter of a beat.</summary>
    QuarterBeats,

    /// <summary>How often a tag is danced on one track.</summary>
    Tags,

    /// <summary>How often the dance begins again within a wall on one track.</summary>
    Restarts,

    /// <summary>How often it does so within the first section or straight after it.</summary>
    EarlyRestarts,

    /// <summary>Parts of a phrased dance.</summary>
    Parts,

    /// <summary>Counts a minute.</summary>
    Tempo,

    /// <summary>Most weight changes a second over six counts.</summary>
    StepRate,

    /// <summary>Jumps and leaps.</summary>
    Jumps,

    /// <summary>Different figures of several actions that dancers usually meet at a higher level.</summary>
    HigherFigures,
}
