namespace Scuff.Analysis.Lessons;

/// <summary>What can be offered instead of something that not everybody should or can do yet.</summary>
public enum LessonOfferKind
{
    /// <summary>An option that the dance has itself.</summary>
    Own,

    /// <summary>A small swivel or a step-touch in place of a twist. Trade: body and floor, 6.</summary>
    SmallSwivel,

    /// <summary>Walk around in place of a spin or turn on one foot. Trade: body and floor, 6.</summary>
    WalkAround,

    /// <summary>No turn: face the same way and step in place. Trade: body and floor, 3 ("give a no-turn option", common practice).</summary>
    NoTurn,

    /// <summary>Step or lift the heel in place of a jump or hop. Trade: body and floor, 3 (older dancers: no hops, common practice).</summary>
    StepForJump,

    /// <summary>Bend only a little in place of a lunge or dip. Common practice, no source.</summary>
    LessBend,

    /// <summary>Flat, with a soft knee, or a touch in place of a stomp. Trade: body and floor, 6.</summary>
    SoftStomp,

    /// <summary>Leave the step on the &amp; out: one step a count. Trade: teaching, 4 ("one step per count" [14]) and 1 (easy version first [6]).</summary>
    WholeCounts,
}
