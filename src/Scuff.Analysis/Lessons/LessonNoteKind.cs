namespace Scuff.Analysis.Lessons;

/// <summary>What is to be said of a plan as a whole.</summary>
public enum LessonNoteKind
{
    /// <summary>There are no counts to teach yet.</summary>
    NothingToTeach,

    /// <summary>Some words could not be read, so that part of the dance may be harder and its turns are not sure. The number is how many moves.</summary>
    UnknownWords,

    /// <summary>The time is too short for the whole dance. The number is the least minutes it takes.</summary>
    TooShort,

    /// <summary>The time is shorter than usual: things are repeated less or left out. The number is the usual minutes.</summary>
    Shorter,

    /// <summary>More time than the dance needs. The number is the minutes left over.</summary>
    LeftOver,

    /// <summary>More new figures than a class keeps at once. The number is how many.</summary>
    ManyNew,

    /// <summary>The dance is graded above the class. The number is how many levels.</summary>
    AboveClass,

    /// <summary>No tempo is stated; one was taken. The number is counts a minute.</summary>
    TempoTaken,

    /// <summary>A practice speed below what is advised. The number is percent of the full tempo.</summary>
    TooSlow,

    /// <summary>The practice music is as fast as the track or faster, so it is no rung. The number is percent of the full tempo.</summary>
    NotSlower,

    /// <summary>Long teaching wants a drink between. The number is its minutes.</summary>
    LongBlock,

    /// <summary>No track of that title is in the dance; the first one was taken.</summary>
    OtherTrack,
}
