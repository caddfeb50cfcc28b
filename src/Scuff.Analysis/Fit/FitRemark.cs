namespace Scuff.Analysis.Fit;

/// <summary>What a person should know of an answer; a front end puts it into words.</summary>
public enum FitRemark
{
    /// <summary>The map has no beats: nothing can be fitted.</summary>
    NoBeats,

    /// <summary>The dance has no counts: nothing can be fitted.</summary>
    NoSteps,

    /// <summary>The music is over before the dance is through once.</summary>
    TrackShorterThanDance,

    /// <summary>Words of the dance could not be read: where they stand, weight or facing is unknown, and no interruption is proposed.</summary>
    DanceHasUnknownWords,

    /// <summary>The dance does not end with the foot free that it begins with: fitted as if it did.</summary>
    DanceDoesNotRepeat,

    /// <summary>The dance and the track are not in the same meter.</summary>
    OtherMeter,

    /// <summary>The dance is counted at half or double the beat, because its tempo asks for it.</summary>
    CountedOtherwise,

    /// <summary>The map says itself that it is not sure of its beats.</summary>
    MapIsUnsure,

    /// <summary>The map knows no sections: phrases are counted from the first eight.</summary>
    NoSections,

    /// <summary>The search was given up before the best plan was proven.</summary>
    NotProven,

    /// <summary>The dance is not a whole number of counts long: the rest is left out.</summary>
    PartOfCount,

    /// <summary>No plan keeps to what was decided about it.</summary>
    NoPlanKeepsTo,
}
