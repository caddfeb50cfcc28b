namespace Scuff.Analysis.Lessons;

/// <summary>In which order the chunks are taught. Trade: teaching, 1.6.</summary>
public enum LessonOrder
{
    /// <summary>From the first to the last, each joined to everything before it.</summary>
    Forward,

    /// <summary>From the last to the first, each danced on to the end: for a dance whose ending is the hard part.</summary>
    Backward,
}
