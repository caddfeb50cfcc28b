namespace Scuff.Stance;

/// <summary>Which foot an action is made by.</summary>
public enum ActingFoot
{
    /// <summary>No foot: a hold, a clap, the hips.</summary>
    None,

    /// <summary>The left foot.</summary>
    Left,

    /// <summary>The right foot.</summary>
    Right,

    /// <summary>Both feet at once.</summary>
    Both,
}
