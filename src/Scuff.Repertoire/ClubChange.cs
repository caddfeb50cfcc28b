namespace Scuff.Repertoire;

/// <summary>What has changed in a club, told after it is on the disk.</summary>
/// <param name="dances">Dances that came, changed in text, tags or facts, or went.</param>
/// <param name="tracks">Tracks of which the same is true.</param>
/// <param name="everything">Whether anything may have changed, as after restoring; the lists are empty then.</param>
public sealed class ClubChange(ValueList<string> dances, ValueList<string> tracks, bool everything = false) : EventArgs
{
    /// <summary>Dances that came, changed in text, tags or facts, or went.</summary>
    public ValueList<string> Dances { get; } = dances;

    /// <summary>Tracks that came, changed in map, corrections, tags or facts, or went.</summary>
    public ValueList<string> Tracks { get; } = tracks;

    /// <summary>Whether anything may have changed, as after restoring; the lists are empty then.</summary>
    public bool Everything { get; } = everything;
}
