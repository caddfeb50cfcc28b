namespace Scuff.Stance;

/// <summary>One of the dancer's two feet.</summary>
public enum Foot
{
    /// <summary>The left foot.</summary>
    Left,

    /// <summary>The right foot.</summary>
    Right,
}
