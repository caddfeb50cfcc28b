using Scuff.Timing;

namespace Scuff.Analysis.Lessons;

/// <summary>One step of a lesson. Which of its particulars are there follows from its kind.</summary>
public sealed record LessonStep
{
    /// <summary>What is done.</summary>
    public required LessonStepKind Kind { get; init; }

    /// <summary>Its name within the plan (<c>chunk-2</c>), the same whatever the length of the lesson.</summary>
    public required string Id { get; init; }

    /// <summary>When it begins, in seconds from the start of the lesson.</summary>
    public int Start { get; init; }

    /// <summary>How long it takes, in seconds.</summary>
    public required int Seconds { get; init; }

    /// <summary>How often it is danced in that time; on each foot, for a figure alone.</summary>
    public required int Times { get; init; }

    /// <summary>How often it usually would be.</summary>
    public required int Usual { get; init; }

    /// <summary>How long that would take, in seconds.</summary>
    public required int UsualSeconds { get; init; }

    /// <summary>Whether it is never left out.</summary>
    public bool IsNeeded { get; init; }

    /// <summary>Its turn when steps have to be left out because the class runs late, from 1; null when it is never left out.</summary>
    public int? LeaveOut { get; init; }

    /// <summary>The chunk it teaches, or the one that it joins to what is known.</summary>
    public LessonChunk? Chunk { get; init; }

    /// <summary>The first chunk of those danced in a row.</summary>
    public int From { get; init; }

    /// <summary>The last chunk of those danced in a row.</summary>
    public int To { get; init; }

    /// <summary>The figure taught alone.</summary>
    public LessonFigure? Figure { get; init; }

    /// <summary>The tag or restart.</summary>
    public LessonBreak? Break { get; init; }

    /// <summary>Speed of the music in percent of the full tempo; zero where there is no music.</summary>
    public int Percent { get; init; }

    /// <summary>The pace, in counts a minute, to a tenth; null where nothing is danced.</summary>
    public Ratio? Pace { get; init; }

    /// <summary>Whether the music is other, slower music and not the track.</summary>
    public bool IsOtherMusic { get; init; }

    /// <summary>How many walls are danced; zero where it is the whole track, or no music.</summary>
    public int Walls { get; init; }
}
