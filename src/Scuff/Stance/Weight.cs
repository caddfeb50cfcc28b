namespace Scuff.Stance;

/// <summary>Where the dancer's weight is. The foot without weight is the free foot.</summary>
public enum Weight
{
    /// <summary>Not known, because words before this place could not be read. Checks stay silent about it.</summary>
    Unknown,

    /// <summary>All on the left foot; the right is free.</summary>
    Left,

    /// <summary>All on the right foot; the left is free.</summary>
    Right,

    /// <summary>On both feet: either may move next, if it is named.</summary>
    Shared,
}
