using Scuff.Analysis.Cautions;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Analysis.Lessons;

/// <summary>
/// How a dance is taught to a class in a stated time. Values only; the words are made in the sheets room. The seconds of its steps add up to
/// <see cref="Seconds"/> exactly.
/// </summary>
public sealed record LessonPlan
{
    /// <summary>How long the lesson is: what was asked for, else what it takes, in seconds.</summary>
    public required int Seconds { get; init; }

    /// <summary>What teaching this dance usually takes, two runs with it, without warm-up and cool-down, in seconds.</summary>
    public required int UsualSeconds { get; init; }

    /// <summary>The least in which the whole dance can be taught, in seconds.</summary>
    public required int LeastSeconds { get; init; }

    /// <summary>The level of the class.</summary>
    public required Level Class { get; init; }

    /// <summary>The steps in order.</summary>
    public required ValueList<LessonStep> Steps { get; init; }

    /// <summary>What there was no time for, each as it usually would be, in the order of the lesson.</summary>
    public required ValueList<LessonStep> LeftOut { get; init; }

    /// <summary>All chunks of the dance, in its order.</summary>
    public required ValueList<LessonChunk> Chunks { get; init; }

    /// <summary>How many of them are taught: the first so many; all of them unless the time is too short.</summary>
    public required int Taught { get; init; }

    /// <summary>Whether the whole dance is taught, with its walls, tags and music; if not, the rest is for the next time.</summary>
    public required bool IsWhole { get; init; }

    /// <summary>In which order.</summary>
    public required LessonOrder Order { get; init; }

    /// <summary>Whether that order was asked for.</summary>
    public required bool IsOrderAsked { get; init; }

    /// <summary>Points a count in the last quarter of the dance, to a tenth: why the order is what it is.</summary>
    public required Ratio EndingPoints { get; init; }

    /// <summary>Points a count before it, to a tenth.</summary>
    public required Ratio OtherPoints { get; init; }

    /// <summary>Figures that are new to the class, in the order of the dance.</summary>
    public required ValueList<LessonFigure> NewFigures { get; init; }

    /// <summary>Sections that the class knows from other dances, in the order of the dance.</summary>
    public ValueList<LessonShared> Shared { get; init; }

    /// <summary>Where the pattern breaks on the track it is taught to.</summary>
    public required ValueList<LessonBreak> Breaks { get; init; }

    /// <summary>What can be offered instead, as far as it was asked for.</summary>
    public required ValueList<LessonOffer> Offers { get; init; }

    /// <summary>What to take care of.</summary>
    public required ValueList<Caution> Cautions { get; init; }

    /// <summary>What is to be said of the plan as a whole.</summary>
    public required ValueList<LessonNote> Notes { get; init; }

    /// <summary>Numbers of the chunks to practise at home: the hardest.</summary>
    public required ValueList<int> Practise { get; init; }

    /// <summary>How many walls the dance has; null when that is unknown or has no meaning.</summary>
    public int? Walls { get; init; }

    /// <summary>Where the second wall starts; null when it is the front or unknown.</summary>
    public Facing? SecondWall { get; init; }

    /// <summary>Counts a minute of the track, to a tenth.</summary>
    public required Ratio Tempo { get; init; }

    /// <summary>The track it is taught to; null when the dance names none.</summary>
    public Track? Track { get; init; }

    /// <summary>Seconds of teaching: without warm-up, cool-down and time left over.</summary>
    public int TeachingSeconds => Steps
        .Where(s => s.Kind is not (LessonStepKind.WarmUp or LessonStepKind.CoolDown or LessonStepKind.Spare))
        .Sum(s => s.Seconds);
}
