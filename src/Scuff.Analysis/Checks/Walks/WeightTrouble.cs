namespace Scuff.Analysis.Checks.Walks;

/// <summary>What can be wrong with the weight at one place. One cause has one of them.</summary>
internal enum WeightTrouble
{
    /// <summary>A step by the foot that has the weight.</summary>
    FootNotFree,

    /// <summary>A gesture by the foot that has the weight.</summary>
    GestureNotFree,

    /// <summary>A hop or scoot by the free foot.</summary>
    FootNotStanding,

    /// <summary>The same between two sections.</summary>
    HandOver,

    /// <summary>The same between the last count and count 1.</summary>
    DoesNotRepeat,

    /// <summary>From heel to heel without a step between.</summary>
    SwitchNeedsStep,

    /// <summary>A stomp whose foot moves next.</summary>
    StompUnclear,

    /// <summary>A slide, drag, press or sway which the next action contradicts.</summary>
    CloseUnclear,

    /// <summary>An unwind, swivel or the like which leaves the weight nowhere in particular.</summary>
    EndUnstated,

    /// <summary>A foot that is not named while both have weight.</summary>
    FootUnnamed,
}
