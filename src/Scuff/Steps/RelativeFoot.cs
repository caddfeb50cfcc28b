namespace Scuff.Steps;

/// <summary>Which foot acts in a catalogue row, relative to the foot that the figure is named by.</summary>
public enum RelativeFoot
{
    /// <summary>No foot.</summary>
    None,

    /// <summary>The same foot as the word in the name.</summary>
    Same,

    /// <summary>The other foot.</summary>
    Other,

    /// <summary>Both feet.</summary>
    Both,
}
