namespace Scuff.Analysis.Planning;

/// <summary>What brings or costs points in a programme.</summary>
public enum ProgrammeReasonKind
{
    /// <summary>She pinned it.</summary>
    Pinned,

    /// <summary>It was asked for; the value says by how many.</summary>
    Requested,

    /// <summary>So much of the floor can dance it; the value is a percentage.</summary>
    Floor,

    /// <summary>It is due for revision; the value is from 0 to 100.</summary>
    Due,

    /// <summary>It was not danced for long; the value is days, or -1 for never.</summary>
    Fresh,

    /// <summary>How far its effort is from what is wished there; the value is the effort wished, in tenths of a MET.</summary>
    Effort,

    /// <summary>It follows a dance as hard, or as easy.</summary>
    SameDifficulty,

    /// <summary>It follows a dance as fast, or as slow.</summary>
    SameTempo,

    /// <summary>It brings change after the dance before it, in difficulty or tempo. Brings no points.</summary>
    Change,

    /// <summary>It opens, and so much of the floor cannot dance it; the value is a percentage.</summary>
    Opening,

    /// <summary>It closes, and so much of the floor cannot dance it; the value is a percentage.</summary>
    Closing,

    /// <summary>Two dances at once to one song.</summary>
    Split,

    /// <summary>It stays where it was.</summary>
    Stays,

    /// <summary>A group has now sat out too long; its name stands beside it, the value is how many dances in a row.</summary>
    SatOut,

    /// <summary>It is danced after its lesson. Brings no points.</summary>
    JustTaught,

    /// <summary>Time that a stretch leaves unused; the value is seconds.</summary>
    EmptyTime,
}
