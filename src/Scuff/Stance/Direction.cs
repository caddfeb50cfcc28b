namespace Scuff.Stance;

/// <summary>
/// Where a foot (or a body part) goes, relative to the body after that position's share of the turn.
/// "Side" is the acting foot's own side. When both feet act at once (a jump), the crosses are told of the right foot:
/// <see cref="CrossFront"/> lands with the right in front, <see cref="CrossBehind"/> with the left in front, and
/// <see cref="Across"/> leaves open which.
/// </summary>
public enum Direction
{
    /// <summary>Not stated, or any.</summary>
    Unstated,

    /// <summary>Straight ahead.</summary>
    Forward,

    /// <summary>Straight back.</summary>
    Back,

    /// <summary>To the acting foot's own side.</summary>
    Side,

    /// <summary>45 degrees between forward and the acting foot's own side.</summary>
    DiagonalForward,

    /// <summary>45 degrees between back and the acting foot's own side.</summary>
    DiagonalBack,

    /// <summary>45 degrees forward, across to the other side.</summary>
    DiagonalForwardAcross,

    /// <summary>45 degrees back, across to the other side.</summary>
    DiagonalBackAcross,

    /// <summary>Across in front of the standing foot.</summary>
    CrossFront,

    /// <summary>Across behind the standing foot.</summary>
    CrossBehind,

    /// <summary>Crossed tightly in front of the standing foot.</summary>
    LockFront,

    /// <summary>Crossed tightly behind the standing foot.</summary>
    LockBehind,

    /// <summary>Beside the other foot.</summary>
    Together,

    /// <summary>Back to where the foot started the figure, under the body.</summary>
    Home,

    /// <summary>Where the foot already is.</summary>
    InPlace,

    /// <summary>Outwards, to about hip or shoulder width.</summary>
    Out,

    /// <summary>Inwards, to the centre.</summary>
    In,

    /// <summary>Upwards.</summary>
    Up,

    /// <summary>Downwards.</summary>
    Down,

    /// <summary>Across the standing leg in the air or on the floor, without weight.</summary>
    Across,

    /// <summary>Behind the standing leg, without weight.</summary>
    Behind,

    /// <summary>Towards the dancer's left.</summary>
    Left,

    /// <summary>Towards the dancer's right.</summary>
    Right,

    /// <summary>To the middle position of a swivel.</summary>
    Centre,

    /// <summary>Round, clockwise seen from above.</summary>
    Clockwise,

    /// <summary>Round, anticlockwise seen from above.</summary>
    Anticlockwise,
}
