namespace Scuff.Analysis.Calls;

/// <summary>What a call is for.</summary>
public enum CallKind
{
    /// <summary>A number of the count-in.</summary>
    CountIn,

    /// <summary>Names a move.</summary>
    Move,

    /// <summary>Names what a section begins with.</summary>
    Heading,

    /// <summary>A tag or bridge is coming.</summary>
    Tag,

    /// <summary>The dance begins again.</summary>
    Restart,

    /// <summary>A wall begins that faces another way.</summary>
    NewWall,

    /// <summary>The last wall begins.</summary>
    LastOne,

    /// <summary>The ending is coming.</summary>
    Ending,

    /// <summary>Everybody stands still for some counts.</summary>
    Wait,
}
