namespace Scuff.Analysis.Loads;

/// <summary>A way over the floor, seen by a dancer who faces 12:00.</summary>
public enum FloorWay
{
    /// <summary>To the left.</summary>
    Left,

    /// <summary>To the right.</summary>
    Right,

    /// <summary>Towards the front wall.</summary>
    Forward,

    /// <summary>Away from the front wall.</summary>
    Back,
}
