namespace Scuff.Analysis.Lessons;

/// <summary>Why a chunk is as hard as it is for a class. What each is worth stands in <see cref="LessonLimits"/>.</summary>
public enum LessonReasonKind
{
    /// <summary>So many counts. The number is counts.</summary>
    Counts,

    /// <summary>Figures that the class has not met. The number is how many.</summary>
    NewFigures,

    /// <summary>Actions between two counts. The number is how many.</summary>
    OffBeats,

    /// <summary>Actions on a quarter of a count. The number is how many.</summary>
    QuarterBeats,

    /// <summary>Turns. The number is eighths of a turn.</summary>
    Turns,

    /// <summary>Turns on one foot. The number is eighths of a turn.</summary>
    OneFoot,

    /// <summary>Steps that cross or lock. The number is how many.</summary>
    Crossing,

    /// <summary>Steps that follow each other quickly at the dance's tempo. The number is how many.</summary>
    Speed,

    /// <summary>Jumps, hops, leaps and scoots. The number is how many.</summary>
    Landings,

    /// <summary>Figures that came before, perhaps on the other foot: easier. The number is how many.</summary>
    Repeats,

    /// <summary>Words that could not be read. The number is how many.</summary>
    Unknown,
}
