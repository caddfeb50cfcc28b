namespace Scuff.Repertoire;

/// <summary>What became of a class that was to be removed.</summary>
public enum ClassRemoval
{
    /// <summary>There is no such class.</summary>
    Gone,

    /// <summary>It has held sessions, so it was ended and stays with them.</summary>
    Ended,

    /// <summary>It is no more, and with it its sessions and marks.</summary>
    Removed,
}
