namespace Scuff.Analysis.Lessons;

/// <summary>What is done in a step of a lesson, in the usual order (trade: teaching, 1).</summary>
public enum LessonStepKind
{
    /// <summary>Easy low dances first. Trade: body and floor, 5 (common practice).</summary>
    WarmUp,

    /// <summary>Say title, song, counts, walls, level, tags and what is new. Trade: teaching, 1.1 (common practice).</summary>
    Name,

    /// <summary>Play the music so that the class hears the beat and the start. Trade: teaching, 1.2 (common practice).</summary>
    Listen,

    /// <summary>Teach a new figure alone, on both feet. Trade: teaching, 1.3 (common practice).</summary>
    Figure,

    /// <summary>Walk a chunk without music, slowly, by counts and step names. Trade: teaching, 1.4 and 1.5 ("once dry" [1]).</summary>
    Chunk,

    /// <summary>Join a chunk to what is known already. Trade: teaching, 1.5 and 1.6 ("chain them" [1]).</summary>
    Join,

    /// <summary>Dance the whole from the front, counted aloud. Trade: teaching, 1.7 and 1.9.</summary>
    Whole,

    /// <summary>Turn the class and dance it from the second wall, before the music. Trade: teaching, 1.7 (the dreaded second wall [3]).</summary>
    SecondWall,

    /// <summary>Learn what a tag is made of. Trade: teaching, 1.8.</summary>
    Tag,

    /// <summary>Walk a tag or restart on the very wall where it falls, with the cue word agreed. Trade: teaching, 1.8.</summary>
    Break,

    /// <summary>Dance to slowed music. Trade: teaching, 1.9.</summary>
    Rung,

    /// <summary>Dance with the music, every step called. Trade: teaching, 1.10 (common practice).</summary>
    EveryStep,

    /// <summary>Dance with the music, only headings called. Trade: teaching, 1.10 (common practice).</summary>
    Headings,

    /// <summary>Dance with the music, only tags and restarts called. Trade: teaching, 1.10 (common practice).</summary>
    Warnings,

    /// <summary>Dance with the music, silent. Trade: teaching, 1.10 (common practice).</summary>
    Silent,

    /// <summary>Time left over: known dances, questions, a drink. Trade: teaching, 6 (common practice).</summary>
    Spare,

    /// <summary>Say what to practise; hand out the sheet now, not before. Trade: teaching, 1.11 [1].</summary>
    Practise,

    /// <summary>One slow dance and the stretches. Trade: body and floor, 5 (common practice).</summary>
    CoolDown,
}
