namespace Scuff.Stance;

/// <summary>The part of the acting foot that meets the floor first or only.</summary>
public enum Contact
{
    /// <summary>None: the foot is in the air, or no foot acts.</summary>
    Air,

    /// <summary>The whole sole.</summary>
    Flat,

    /// <summary>The ball of the foot.</summary>
    Ball,

    /// <summary>The heel.</summary>
    Heel,

    /// <summary>The tip of the toe.</summary>
    Toe,
}
